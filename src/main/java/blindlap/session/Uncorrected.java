package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.session.day.Guess;
import blindlap.session.day.LapInput;
import blindlap.session.day.LapState;
import blindlap.session.day.VoidEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Cells of a row that no correction changes: guesses and answers, conditions, and which event made
 * a lap void. One that says something else than is recorded is refused, so that nobody believes it
 * was taken.
 */
final class Uncorrected {
  private final SessionState state;
  private final Plan plan;

  Uncorrected(SessionState state) {
    this.state = state;
    this.plan = state.plan();
  }

  /**
   * The cells of a row, which is whole and sound, that say something else than is recorded.
   *
   * @param known the lap as recorded
   */
  List<Problem> problems(LapInput lap, LapState known) {
    List<Problem> problems = new ArrayList<>();
    for (String column : columns(lap, known)) {
      int number = lap.lap().ofDay(plan.laps().perStint());
      problems.add(Problem.of(SessionFault.NOT_CORRECTED, lap.where(), column, number));
    }
    return problems;
  }

  private List<String> columns(LapInput lap, LapState known) {
    List<String> columns = new ArrayList<>();
    Optional<Guess> recorded = Optional.ofNullable(state.guesses().get(lap.lap().stint()));
    String guess = typed(lap.guess());
    if (!guess.isEmpty()
        && !recorded.map(this::text).equals(GuessWords.parse(plan, guess).map(this::text))) {
      columns.add(plan.telling() == null ? "guess" : "answer");
    }
    String sureness = typed(lap.sureness());
    if (!sureness.isEmpty()
        && !recorded.map(Guess::sureness).equals(Guess.Sureness.parse(sureness))) {
      columns.add("sureness");
    }
    if (!lap.cue().isBlank() && recorded.filter(g -> g.cue().equals(lap.cue())).isEmpty()) {
      columns.add("cue");
    }
    String event = typed(lap.voidReason());
    if (!event.isEmpty()
        && known
            .voided()
            .filter(v -> !VoidEvent.parse(event).equals(Optional.of(v.event())))
            .isPresent()) {
      columns.add("void");
    }
    lap.conditions().entrySet().stream()
        .filter(each -> !each.getValue().equals(known.conditions().get(each.getKey())))
        .map(Map.Entry::getKey)
        .sorted()
        .forEach(columns::add);
    return columns;
  }

  private String text(Guess guess) {
    return GuessWords.text(plan, guess);
  }

  private static String typed(@Nullable String cell) {
    return cell == null ? "" : cell.strip();
  }
}
