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
import org.jspecify.annotations.Nullable;

/**
 * What is asked of covariates: once a stint while the bike is waited for, before it is handed over,
 * and for every lap once it is done. What is asked hangs on the plan alone.
 */
public final class RideCovariates {
  private final RideHand hand;
  private final RiderDays days;

  RideCovariates(RideHand hand, RiderDays days) {
    this.hand = hand;
    this.days = days;
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
    BigDecimal known = day.covariates().get(at);
    return new Asked(
        at,
        RideWords.say("covariate.title", covariate.name(), covariate.unit()),
        RideWords.say("covariate." + covariate.by().name()),
        known == null ? "" : known.toPlainString());
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
    hand.save(() -> days.covariate(hand.session(), at, value), latest -> {});
  }
}
