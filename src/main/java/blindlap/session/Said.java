package blindlap.session;

import blindlap.plan.Blinding;
import blindlap.session.Sight.Place;
import blindlap.session.day.Source;
import blindlap.session.day.Twice;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What an entry says of the value of one measure and lap.
 *
 * @param place of the entry
 * @param speaks false for what gives no value and takes none out, such as a watch that starts
 * @param value null for none
 * @param time the watch's record behind the value, if there is one
 * @param whose whose record it is; null where that was not said
 * @param source where the value comes from
 * @param replaces entries that count no more because of this one
 * @param against what a person chose this value against; empty but for a {@link ValueChosen}
 * @param decidedBy who chose it; empty for what was recorded or corrected
 * @param origin the notebook that the value was written in, before anybody chose it
 */
record Said(
    Place place,
    boolean speaks,
    @Nullable BigDecimal value,
    @Nullable TimeRecord time,
    Blinding.@Nullable RecordOf whose,
    Source source,
    Set<Place> replaces,
    List<Said> against,
    String decidedBy,
    NotebookId origin) {
  Said {
    replaces = Set.copyOf(replaces);
    against = List.copyOf(against);
  }

  /** A value as it was recorded. */
  static Said recorded(
      Entry entry,
      @Nullable BigDecimal value,
      @Nullable TimeRecord time,
      Blinding.@Nullable RecordOf whose,
      Source source) {
    return new Said(
        Place.of(entry),
        value != null,
        value,
        time,
        whose,
        source,
        Set.of(),
        List.of(),
        "",
        entry.notebook());
  }

  /** Something that gives no value, and after which the one before does not stand. */
  static Said nothing(Entry entry) {
    return recorded(entry, null, null, null, Source.SCREEN);
  }

  /** Another value in place of this one, whose record it stays. */
  Said corrected(Entry entry, @Nullable BigDecimal now) {
    return new Said(
        Place.of(entry), true, now, time, whose, source, Set.of(), List.of(), "", entry.notebook());
  }

  /** This value, as a person chose it. */
  Said chosen(Entry entry, List<Said> others, String who) {
    return new Said(
        Place.of(entry), true, value, time, whose, source, Set.of(), others, who, origin);
  }

  Said replacing(Set<Place> places) {
    return new Said(place, speaks, value, time, whose, source, places, against, decidedBy, origin);
  }

  /** The same, with what was chosen against before by those of the replaced that were choices. */
  Said keeping(List<Said> replaced) {
    List<Said> kept = new ArrayList<>(against);
    for (Said choice : replaced) {
      if (!choice.against.isEmpty()) {
        kept.add(choice);
        kept.addAll(choice.against);
      }
    }
    return kept.size() == against.size()
        ? this
        : new Said(place, speaks, value, time, whose, source, replaces, kept, decidedBy, origin);
  }

  boolean same(Said other) {
    return shown().same(other.value);
  }

  Twice.Value shown() {
    return new Twice.Value(value, whose, origin.brief());
  }
}
