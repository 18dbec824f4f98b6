package blindlap.review;

import blindlap.fault.Problem;
import blindlap.fault.Unusable;
import blindlap.plan.Measure;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Looks at the primary measure otherwise (docs/method.md#beside). */
final class Sensitivities {
  private final DayRecord day;
  private final Assignments set;
  private final Measure measure;
  private final StintValues planned;
  private final List<Sensitivity> found = new ArrayList<>();
  private int aside;

  /**
   * @param set the admissible orders
   * @param measure the primary measure
   * @param planned its stints as analysed
   */
  Sensitivities(DayRecord day, Assignments set, Measure measure, StintValues planned) {
    this.day = day;
    this.set = set;
    this.measure = measure;
    this.planned = planned;
  }

  /** A measure beside the primary with the values that were set aside; nothing where none were. */
  static List<Sensitivity> aside(DayRecord day, Measure measure) {
    StintValues planned = StintValues.counted(day, measure);
    Sensitivities all = new Sensitivities(day, day.plan().rule().assignments(), measure, planned);
    all.setAside(day.key().setups());
    return all.found;
  }

  List<Sensitivity> found() {
    StintValues all = StintValues.of(day, measure, StintValues.Laps.ALL_RIDDEN);
    Set<Integer> voided = new TreeSet<>();
    for (int stint = 1; stint <= all.stints(); stint++) {
      if (all.voidLaps(stint) > 0) {
        voided.add(stint);
      }
    }
    int[] order = day.key().setups();
    withoutCovariates(order);
    if (!voided.isEmpty()) {
      boolean left = StintValues.Laps.counting(day.plan()) == StintValues.Laps.ALL_RIDDEN;
      StintValues other = left ? StintValues.of(day, measure, StintValues.Laps.NOT_VOID) : all;
      Sensitivity.Kind kind = left ? Sensitivity.Kind.VOIDS_LEFT_OUT : Sensitivity.Kind.ALL_RIDDEN;
      add(kind, voided, set, order, other, other.valid());
    }
    setAside(order);
    Set<Integer> broken = KnownStints.of(day);
    if (!broken.isEmpty()) {
      boolean[] valid = planned.validWithout(broken);
      add(Sensitivity.Kind.BLIND_BROKEN_MASKED, broken, set, order, planned, valid);
    }
    Set<Integer> wrong = day.wrongFits();
    if (!wrong.isEmpty()) {
      boolean[] valid = planned.validWithout(wrong);
      add(Sensitivity.Kind.WRONG_FITS_MASKED, wrong, set, order, planned, valid);
    }
    if (day.plan().steps() != null) {
      Set<Integer> off = day.levelsOff();
      off.addAll(wrong);
      wrong = off;
    }
    if (!wrong.isEmpty()) {
      int[] fitted = day.asFitted();
      Assignments only = Assignments.listed(Orders.renamings(fitted, set.setups()));
      add(Sensitivity.Kind.AS_FITTED, wrong, only, fitted, planned, planned.valid());
    }
    return found;
  }

  /** Where any covariate is taken out: the result without, on every stint with a value. */
  private void withoutCovariates(int[] order) {
    StintValues raw = StintValues.counted(day, measure);
    if (!TakenOut.of(day, measure, raw).used().isEmpty()) {
      add(Sensitivity.Kind.WITHOUT_COVARIATES, Set.of(), set, order, raw, raw.valid());
    }
  }

  /** As often as there are values for a lap beside the one that counts; none is left out. */
  private void setAside(int[] order) {
    Set<Integer> stints = new TreeSet<>();
    int most = 0;
    for (DayRecord.Lap lap : day.laps()) {
      int aside = lap.setAside(measure.name());
      if (aside > 0 && lap.id().lap() > day.plan().laps().settling()) {
        stints.add(lap.id().stint());
        most = Math.max(most, aside);
      }
    }
    for (aside = 1; aside <= most; aside++) {
      StintValues others = StintValues.others(day, measure, aside);
      add(Sensitivity.Kind.SET_ASIDE, stints, set, order, others, others.valid());
    }
    aside = 0;
  }

  private void add(
      Sensitivity.Kind kind,
      Set<Integer> stints,
      Assignments orders,
      int[] order,
      StintValues values,
      boolean[] valid) {
    Optional<OneDifference> two = Optional.empty();
    Optional<ManySetups> many = Optional.empty();
    Optional<Problem> why = Optional.empty();
    try {
      Nuisance nuisance =
          kind == Sensitivity.Kind.WITHOUT_COVARIATES
              ? Nuisance.of(measure.drift())
              : TakenOut.of(day, measure, values.masked(valid)).nuisance();
      if (kind == Sensitivity.Kind.AS_FITTED && day.plan().steps() != null) {
        two = Optional.of(OfDay.asFitted(day, set, values.values(), valid, nuisance));
      } else if (day.plan().oneDifference()) {
        two =
            Optional.of(OfDay.compare(day.plan(), orders, order, values.values(), valid, nuisance));
      } else {
        many =
            Optional.of(
                ManySetups.compare(
                    orders, order, values.values(), valid, nuisance, Sampling.PREFERRED));
      }
    } catch (Unusable e) {
      why = Optional.of(e.problem());
    }
    found.add(new Sensitivity(kind, stints, two, many, why, aside));
  }
}
