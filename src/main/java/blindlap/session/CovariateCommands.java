package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Covariate;
import blindlap.plan.Plan;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Decides what may be said of covariates, and when (docs/method.md#covariates). What the rider says
 * is said before the hand-over: after the lap the setup would have touched it.
 */
public final class CovariateCommands {
  private final SessionState state;
  private final Plan plan;

  public CovariateCommands(SessionState state) {
    this.state = state;
    this.plan = state.plan();
  }

  /**
   * Said on the page, or taken back there before it is too late.
   *
   * @param value null takes it back
   */
  public Outcome say(CovariateAt at, @Nullable BigDecimal value) {
    List<Problem> problems = new ArrayList<>(ReviewOver.problems(state));
    if (problems.isEmpty() && !state.step().day()) {
      problems.add(Problem.of(SessionFault.RECORDING_IS_OVER, "", state.step()));
    }
    problems.addAll(place(at, ""));
    if (problems.isEmpty() && late(at)) {
      problems.add(tooLate(at, ""));
    }
    if (!problems.isEmpty()) {
      return new Outcome.Refused(problems);
    }
    BigDecimal before = state.day().covariates().get(at);
    return new Outcome.Accepted(
        same(before, value) ? List.of() : List.of(new CovariateSaid(at, value, Source.SCREEN, "")));
  }

  /** Changes a covariate in the review, with a reason; null takes it out. */
  public Outcome correct(CovariateAt at, @Nullable BigDecimal value, String reason) {
    List<Problem> problems = new ArrayList<>(ReviewOver.problems(state));
    if (reason.isBlank()) {
      problems.add(Problem.of(SessionFault.REASON_MISSING, "", ReasonFor.CORRECTION));
    }
    problems.addAll(place(at, ""));
    if (problems.isEmpty()) {
      problems.addAll(added(at, ""));
    }
    return problems.isEmpty()
        ? Outcome.accepted(new CovariateSaid(at, value, Source.SCREEN, reason))
        : new Outcome.Refused(problems);
  }

  /** What cannot be said with a lap of a file or from paper. */
  List<Problem> problems(LapInput lap, Source source) {
    List<Problem> problems = new ArrayList<>();
    for (Map.Entry<String, Optional<BigDecimal>> said : lap.covariates().entrySet()) {
      if (said.getValue().isEmpty()) {
        continue;
      }
      String where = lap.where(said.getKey());
      Covariate covariate = plan.covariate(said.getKey()).orElse(null);
      if (covariate == null) {
        problems.add(unknown(said.getKey(), where));
        continue;
      }
      CovariateAt at = at(covariate, lap.lap());
      problems.addAll(row(covariate, lap.lap(), where));
      problems.addAll(place(at, where));
      boolean ridden = state.day().stintBegun(at.stint());
      if (problems.isEmpty() && source != Source.PAPER && rider(covariate) && ridden) {
        problems.addAll(added(at, where));
      }
    }
    return problems;
  }

  /** What is said with a lap that is recorded; what stands already is said once. */
  List<Fact> facts(LapInput lap, Source source) {
    List<Fact> facts = new ArrayList<>();
    lap.covariates()
        .forEach(
            (name, value) -> {
              CovariateAt at = at(plan.covariate(name).orElseThrow(), lap.lap());
              if (value.isPresent() && !same(state.day().covariates().get(at), value.get())) {
                facts.add(new CovariateSaid(at, value.get(), source, ""));
              }
            });
    return facts;
  }

  /** True if a lap typed again says of a covariate what stands already, or nothing. */
  boolean addsOnly(LapInput lap) {
    return lap.covariates().entrySet().stream()
        .filter(said -> said.getValue().isPresent())
        .allMatch(
            said -> {
              CovariateAt at = at(plan.covariate(said.getKey()).orElseThrow(), lap.lap());
              BigDecimal before = state.day().covariates().get(at);
              return before == null || same(before, said.getValue().get());
            });
  }

  /** What a lap typed again corrects. */
  List<Fact> corrections(LapInput lap, String reason) {
    List<Fact> facts = new ArrayList<>();
    lap.covariates()
        .forEach(
            (name, value) -> {
              Covariate covariate = plan.covariate(name).orElseThrow();
              CovariateAt at = at(covariate, lap.lap());
              boolean here = row(covariate, lap.lap(), "").isEmpty();
              if (here && !same(state.day().covariates().get(at), value.orElse(null))) {
                facts.add(new CovariateSaid(at, value.orElse(null), Source.FILE, reason));
              }
            });
    return facts;
  }

  private static boolean same(@Nullable BigDecimal one, @Nullable BigDecimal two) {
    return one == null || two == null ? one == two : one.compareTo(two) == 0;
  }

  private static boolean rider(Covariate covariate) {
    return covariate.by() == Covariate.By.RIDER;
  }

  private static CovariateAt at(Covariate covariate, LapId lap) {
    return new CovariateAt(covariate.name(), lap.stint(), covariate.perLap() ? lap.lap() : 0);
  }

  /** In which rows of a file it may stand: once a stint, or with every scored lap. */
  private List<Problem> row(Covariate covariate, LapId lap, String where) {
    int first = plan.laps().settling() + 1;
    if (covariate.perLap() || lap.lap() <= first) {
      return List.of();
    }
    LapId wanted = new LapId(lap.stint(), first);
    return List.of(
        Problem.of(
            rider(covariate) ? SessionFault.COVARIATE_AFTER_LAP : SessionFault.COVARIATE_ROW,
            where,
            covariate.name(),
            lap.stint(),
            wanted.ofDay(plan.laps().perStint())));
  }

  private List<Problem> place(CovariateAt at, String where) {
    Covariate covariate = plan.covariate(at.covariate()).orElse(null);
    if (covariate == null) {
      return List.of(unknown(at.covariate(), where));
    }
    int last = state.day().lastStint();
    if (at.stint() > last) {
      return List.of(Problem.of(SessionFault.NO_SUCH_STINT, where, at.stint(), last));
    }
    boolean scored = at.lap() > plan.laps().settling() && at.lap() <= plan.laps().perStint();
    if (covariate.perLap() ? !scored : at.lap() != 0) {
      return List.of(
          Problem.of(
              covariate.perLap()
                  ? SessionFault.COVARIATE_OF_LAPS
                  : SessionFault.COVARIATE_OF_STINTS,
              where,
              covariate.name()));
    }
    return List.of();
  }

  private Problem unknown(String name, String where) {
    return Problem.of(
        SessionFault.UNKNOWN_COVARIATE,
        where,
        name,
        plan.covariates().stream().map(Covariate::name).collect(Collectors.joining(", ")));
  }

  /** What the rider did not say in time is not said later; a typing error is corrected. */
  private List<Problem> added(CovariateAt at, String where) {
    boolean rider = plan.covariate(at.covariate()).filter(CovariateCommands::rider).isPresent();
    return rider && !state.day().covariates().containsKey(at)
        ? List.of(tooLate(at, where))
        : List.of();
  }

  private boolean late(CovariateAt at) {
    return plan.covariate(at.covariate()).filter(CovariateCommands::rider).isPresent()
        && (state.day().handedOver(at.stint()) || state.day().stintBegun(at.stint()));
  }

  private static Problem tooLate(CovariateAt at, String where) {
    return Problem.of(SessionFault.COVARIATE_TOO_LATE, where, at.covariate(), at.stint());
  }
}
