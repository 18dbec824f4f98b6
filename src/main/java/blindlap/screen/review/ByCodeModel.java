package blindlap.screen.review;

import blindlap.desk.ScoredByCode;
import blindlap.desk.Sessions;
import blindlap.plan.Measure;
import blindlap.screen.part.Background;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.wording.AloneWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/** One person's values, scored later by code: nothing here tells the order of riding. */
public final class ByCodeModel {
  private final ScoredByCode scoring;
  private final SessionState state;
  private final String assessor;
  private final Background background;
  private final Consumer<SessionState> recorded;
  private final Map<LapId, Map<String, String>> typed = new LinkedHashMap<>();
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private String who;
  private @Nullable Boolean knows;

  /**
   * @param recorded takes the session once the values are on record
   */
  ByCodeModel(
      Sessions sessions,
      SessionState state,
      String assessor,
      Background background,
      Consumer<SessionState> recorded) {
    this.scoring = new ScoredByCode(sessions);
    this.state = state;
    this.assessor = assessor;
    this.background = background;
    this.recorded = recorded;
    this.who = assessor;
  }

  /** Why nothing was recorded; empty if nothing was wrong. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Who was planned to score. */
  public String assessor() {
    return assessor;
  }

  /** What is scored. */
  public List<Measure> measures() {
    return state.plan().scoredBy(assessor);
  }

  /** The laps by the size of their codes. */
  public List<ScoredByCode.Row> rows() {
    return ScoredByCode.rows(state);
  }

  /** How a row is called: its code, and which lap of it where a stint has several. */
  public String title(ScoredByCode.Row row) {
    int scored = state.plan().laps().scored();
    return scored == 1
        ? String.valueOf(row.code())
        : AloneWords.say("code.lap", row.code(), row.number(), scored);
  }

  /** A value as typed. */
  public void type(LapId lap, String measure, String value) {
    typed.computeIfAbsent(lap, each -> new LinkedHashMap<>()).put(measure, value);
  }

  /** Who scores. */
  public void who(String name) {
    who = name;
  }

  /** Whether that person knows which is which. */
  public void knows(boolean yes) {
    knows = yes;
  }

  /** Records what was scored. */
  public void record() {
    Boolean said = knows;
    if (said == null || who.isBlank()) {
      trouble.set(AloneWords.say(said == null ? "code.say" : "code.name"));
      return;
    }
    if (typed.values().stream().flatMap(row -> row.values().stream()).allMatch(String::isBlank)) {
      trouble.set(AloneWords.say("code.nothing"));
      return;
    }
    background.run(
        () -> scoring.record(state, typed, who, said),
        result -> {
          if (result instanceof Sessions.Result.Refused refused) {
            trouble.set(String.join(" ", Problems.sentences(refused.problems())));
          } else {
            trouble.set("");
            recorded.accept(((Sessions.Result.Done) result).state());
          }
        },
        e -> trouble.set(Trouble.sentence(e)));
  }
}
