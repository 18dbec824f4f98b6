package blindlap.picture;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plot.RiddenContent;
import blindlap.plot.RiddenOrder;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.session.Recorded;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** A measure by code in ridden order while the key is sealed: nothing here can know a setup. */
public final class BlindPicture {
  private static final Words WORDS = Words.of("pictures");

  private BlindPicture() {}

  /**
   * The picture of a measure, one point a stint (the mean of its scored laps).
   *
   * @param asked stints in which a value is asked about
   * @return empty if no stint has a value
   */
  public static Optional<Drawing> of(SessionState state, Measure measure, Set<Integer> asked) {
    Plan plan = state.plan();
    List<RiddenContent.Stint> stints = new ArrayList<>();
    for (int stint = 1; stint <= plan.stints(); stint++) {
      stints.add(stint(state, measure, stint, asked.contains(stint)));
    }
    if (stints.stream().noneMatch(s -> s.value().isPresent())) {
      return Optional.empty();
    }
    return Optional.of(
        RiddenOrder.of(
            new RiddenContent(
                stints,
                List.of(),
                List.of(),
                OrderPicture.axis(measure),
                WORDS.say("stint"),
                "",
                new Spoken(WORDS.say("spoken.blind", measure.name(), plan.stints()), ""))));
  }

  private static RiddenContent.Stint stint(
      SessionState state, Measure measure, int stint, boolean asked) {
    Plan plan = state.plan();
    Recorded recorded = state.recorded();
    double sum = 0;
    int n = 0;
    Optional<LapState.Voided> voided = Optional.empty();
    boolean all = true;
    for (int at = plan.laps().settling() + 1; at <= plan.laps().perStint(); at++) {
      Optional<LapState> lap = state.lap(new LapId(stint, at)).filter(LapState::ridden);
      if (lap.isEmpty()) {
        continue;
      }
      all &= lap.get().voided().isPresent();
      voided = lap.get().voided().isPresent() ? lap.get().voided() : voided;
      Optional<BigDecimal> value = recorded.counting(plan, measure, lap.get());
      if (value.isPresent()) {
        sum += value.get().doubleValue();
        n++;
      }
    }
    boolean isVoid = voided.isPresent() && all;
    return new RiddenContent.Stint(
        stint,
        n == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / n),
        Optional.empty(),
        String.valueOf(state.code(stint)),
        isVoid
            ? RiddenContent.Standing.VOID
            : asked ? RiddenContent.Standing.KEPT_IN_QUESTION : RiddenContent.Standing.KEPT,
        isVoid ? WORDS.say("void", voided.get().event().text()) : asked ? WORDS.say("asked") : "");
  }
}
