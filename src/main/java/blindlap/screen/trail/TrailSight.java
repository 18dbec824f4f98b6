package blindlap.screen.trail;

import blindlap.desk.TrailDraft;
import blindlap.desk.TrailShape;
import blindlap.session.TrailTitle;
import java.util.List;
import java.util.Optional;

/**
 * What the Trail page shows.
 *
 * @param draft line and gates in hand; empty while there is no trail
 * @param shape the same in metres
 * @param chosen index of the gate in hand; −1 if none is
 * @param kept the version that the draft came from; empty for a new line
 * @param changed true if keeping it would make a new version
 * @param uses plans that are timed on the version, a line each
 */
public record TrailSight(
    Optional<TrailDraft> draft,
    Optional<TrailShape> shape,
    int chosen,
    Optional<TrailTitle> kept,
    boolean changed,
    List<String> uses) {
  static final TrailSight NOTHING =
      new TrailSight(Optional.empty(), Optional.empty(), -1, Optional.empty(), false, List.of());

  public TrailSight {
    uses = List.copyOf(uses);
  }

  static TrailSight of(TrailDraft draft, int chosen, Optional<TrailTitle> kept, boolean changed) {
    return new TrailSight(
        Optional.of(draft), Optional.of(TrailShape.of(draft)), chosen, kept, changed, List.of());
  }

  TrailSight with(List<String> lines) {
    return new TrailSight(draft, shape, chosen, kept, changed, lines);
  }

  /** The gate in hand. */
  public Optional<TrailDraft.Across> gate() {
    return draft
        .filter(d -> chosen >= 0 && chosen < d.gates().size())
        .map(d -> d.gates().get(chosen));
  }
}
