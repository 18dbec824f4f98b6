package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Blinding;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Twice;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Decides on values that two machines recorded apart (docs/method.md#two-values). Once somebody has
 * both before him, neither is written over: one of them counts by the plan, and otherwise only by a
 * choice that someone makes who knows neither key nor setups.
 */
public final class TwoValues {
  private final SessionState state;

  public TwoValues(SessionState state) {
    this.state = state;
  }

  /**
   * Who makes another value count.
   *
   * @param name as typed
   * @param knowsNeither true if that person declares to know neither key nor setups
   */
  public record Decider(String name, boolean knowsNeither) {
    /** Nobody is named. */
    public static final Decider NOBODY = new Decider("", false);
  }

  /** True if a plan leaves a choice: below blind, whoever decides knows the setups. */
  public static boolean choice(SessionState state) {
    return state.plan().blinding().blinded();
  }

  /** What stands twice, if anything does. */
  public Optional<Twice> at(LapId lap, String measure) {
    return state.lap(lap).map(LapState::twice).map(twice -> twice.get(measure));
  }

  /** Why a fact may not be written: it would write over one of two values. */
  List<Problem> refuse(Fact fact) {
    if (fact instanceof Fact.ScoreGiven given) {
      return refuse(given.lap(), given.measure(), "");
    } else if (fact instanceof Fact.TimeTaken taken) {
      return refuse(taken.lap(), taken.measure(), "");
    } else if (fact instanceof Fact.WatchStarted started) {
      return refuse(started.lap(), started.measure(), "");
    } else if (fact instanceof Fact.WatchReset reset) {
      return refuse(reset.lap(), reset.measure(), "");
    } else if (fact instanceof Fact.ScoreCorrected corrected) {
      return refuse(corrected.lap(), corrected.measure(), "");
    }
    return List.of();
  }

  private List<Problem> refuse(LapId lap, String measure, String where) {
    return at(lap, measure).isEmpty()
        ? List.of()
        : List.of(
            Problem.of(
                choice(state) ? SessionFault.TWO_VALUES : SessionFault.TWO_VALUES_UNBLINDED,
                where,
                number(lap),
                measure));
  }

  /**
   * Another of two values is to count.
   *
   * @param value one of those recorded; null for none, where a machine had taken its value out
   * @param reason "typing error", alone or with further words
   */
  public Outcome choose(
      LapId lap, String measure, @Nullable BigDecimal value, String reason, Decider decider) {
    List<Problem> problems = new ArrayList<>(ReviewOver.problems(state));
    if (problems.isEmpty() && at(lap, measure).isEmpty()) {
      problems.add(Problem.of(SessionFault.NOT_TWICE, "", number(lap), measure));
    }
    if (problems.isEmpty()) {
      problems.addAll(problems(lap, measure, value, reason, decider, ""));
    }
    return problems.isEmpty()
        ? Outcome.accepted(chosen(lap, measure, value, reason, decider))
        : new Outcome.Refused(problems);
  }

  static ValueChosen chosen(
      LapId lap, String measure, @Nullable BigDecimal value, String reason, Decider decider) {
    return new ValueChosen(lap, measure, value, reason.strip(), decider.name().strip());
  }

  List<Problem> problems(
      LapId lap,
      String measure,
      @Nullable BigDecimal value,
      String reason,
      Decider decider,
      String where) {
    boolean named = !decider.name().isBlank() && decider.knowsNeither();
    if (!choice(state) || !named || !ValueChosen.reason(reason)) {
      return refuse(lap, measure, where);
    }
    if (knowsKey(decider.name())) {
      return List.of(Problem.of(SessionFault.DECIDER_KNOWS, where, decider.name().strip()));
    }
    return at(lap, measure).stream()
            .flatMap(twice -> twice.values().stream())
            .anyMatch(one -> one.same(value))
        ? List.of()
        : List.of(Problem.of(SessionFault.NOT_RECORDED, where, number(lap), measure));
  }

  /** Whoever the plan names as knowing the key. */
  private boolean knowsKey(String name) {
    Blinding blinding = state.plan().blinding();
    String typed = plain(name);
    return Stream.of(blinding.helper(), blinding.othersWhoKnow())
        .map(TwoValues::plain)
        .anyMatch(known -> !known.isEmpty() && known.equals(typed));
  }

  private static String plain(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }

  private int number(LapId lap) {
    return lap.ofDay(state.plan().laps().perStint());
  }
}
