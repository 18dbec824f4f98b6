package blindlap.ride;

import blindlap.desk.day.RiderDays;
import blindlap.fault.TypedNumber;
import blindlap.plan.Covariate;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/**
 * What is asked of covariates: once a stint while the bike is waited for, before it is handed over,
 * and for every lap once it is done. What is asked hangs on the plan alone.
 */
public final class RideCovariates {
  private final RideHand hand;
  private final RiderDays days;
  private final RideUndo undo;
  private BiConsumer<CovariateAt, String> restored = (at, typed) -> {};

  RideCovariates(RideHand hand, RiderDays days, RideUndo undo) {
    this.hand = hand;
    this.days = days;
    this.undo = undo;
  }

  /**
   * Something asked.
   *
   * @param title name and unit
   * @param who says it, in words
   * @param given what was said, as it is typed; empty while nothing was
   */
  public record Asked(CovariateAt at, String title, String who, String given) {}

  /** What is asked now; nothing where nothing is. */
  public List<Asked> asked() {
    Day day = hand.day().orElse(null);
    LapId lap = hand.sheet().lap();
    if (day == null || lap == null) {
      return List.of();
    }
    boolean laps = hand.sheet().stage() == RideSheet.Stage.DONE;
    boolean stints = hand.sheet().stage() == RideSheet.Stage.HAND_OVER;
    boolean scored = lap.lap() > day.plan().laps().settling();
    return day.plan().covariates().stream()
        .filter(c -> c.perLap() ? laps && scored : stints)
        .map(c -> asked(day, c, new CovariateAt(c.name(), lap.stint(), c.perLap() ? lap.lap() : 0)))
        .toList();
  }

  private static Asked asked(Day day, Covariate covariate, CovariateAt at) {
    Optional<BigDecimal> known = Optional.ofNullable(day.covariates().get(at));
    return new Asked(
        at,
        RideWords.say("covariate.title", covariate.name(), covariate.unit()),
        RideWords.say("covariate." + covariate.by().name()),
        typed(known));
  }

  /** What was typed; nothing takes it back. */
  public void say(CovariateAt at, String typed) {
    boolean timed =
        hand.day()
            .flatMap(day -> day.plan().covariate(at.covariate()))
            .filter(c -> c.kind().timed())
            .isPresent();
    if (typed.isBlank()) {
      save(at, null);
      return;
    }
    Optional<BigDecimal> value = timed ? TypedNumber.time(typed) : TypedNumber.number(typed);
    if (value.isEmpty()) {
      hand.refuse(RideWords.say("covariate.no.number", at.covariate(), typed.strip()));
    } else {
      save(at, value.get());
    }
  }

  private void save(CovariateAt at, @Nullable BigDecimal value) {
    Day before = hand.day().orElse(null);
    hand.save(
        () -> days.covariate(hand.session(), at, value),
        latest -> undo.covariate(at, before, latest, was -> restored.accept(at, typed(was))));
  }

  private static String typed(Optional<BigDecimal> known) {
    return known.map(BigDecimal::toPlainString).orElse("");
  }

  /**
   * What is done once an answer was taken back: whoever shows the fields last says it.
   *
   * @param then gets where, and what stands there again as it is typed; empty for nothing
   */
  public void whenRestored(BiConsumer<CovariateAt, String> then) {
    restored = then;
  }
}
