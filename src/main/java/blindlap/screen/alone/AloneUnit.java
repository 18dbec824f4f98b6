package blindlap.screen.alone;

import blindlap.desk.LapWaits;
import blindlap.session.MountedUnit;
import blindlap.wording.AloneWords;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was seen so far of a prepared unit.
 *
 * @param stint whose unit it is
 * @param whole whether cover and seal are whole; null while that was not said
 * @param words what could be seen where they are not
 */
record AloneUnit(int stint, @Nullable Boolean whole, String words) {
  /** The unit of a stint, not looked at yet. */
  static AloneUnit of(int stint) {
    return new AloneUnit(stint, null, "");
  }

  /** It was looked at. */
  AloneUnit whole(boolean yes) {
    return new AloneUnit(stint, yes, yes ? "" : words);
  }

  /** What could be seen. */
  AloneUnit seen(String said) {
    return new AloneUnit(stint, whole, said.strip());
  }

  /** True while it has to be looked at, or said what could be seen. */
  boolean open() {
    return whole == null || !whole && words.isBlank();
  }

  /** What of it a lap still waits for; empty if for nothing. */
  List<LapWaits.Part> waits() {
    String key = whole == null ? "cover" : "words";
    return open()
        ? List.of(
            new LapWaits.Part(
                AloneWords.say("waits." + key),
                AloneWords.say(whole == null ? "unit.whole" : "unit.words")))
        : List.of();
  }

  /** As it is recorded. */
  MountedUnit mounted() {
    return new MountedUnit(stint, whole == null || whole, words);
  }
}
