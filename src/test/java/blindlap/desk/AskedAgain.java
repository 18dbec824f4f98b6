package blindlap.desk;

import blindlap.plan.Plan;
import blindlap.seal.SessionKind;
import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** More sessions of one question in the notebook of a test day: committed, ridden, unsealed. */
public final class AskedAgain {
  private final TestDay day;
  private final Desk desk;

  public AskedAgain(TestDay day) {
    this.day = day;
    this.desk = day.desk();
  }

  /** The plan of the day with another question and another primary measure. */
  public static String byGrip() {
    return TestDay.EIGHT
        .replace("Is Shock L quicker than Shock K?", "Does Shock L grip better?")
        .replace("role: primary, worthwhile: 0.5}", "worthwhile: 0.5}")
        .replace(
            "unit: points, low_words: none at all, high_words: all",
            "unit: points, role: primary, worthwhile: 5, low_words: none at all, high_words: all");
  }

  static Plan plan(String text) {
    PlanPreview preview = PlanPreview.of(text, BundledProtocols.load());
    return preview.plan().orElseThrow(() -> new AssertionError(preview.problems().toString()));
  }

  /** Commits an ordinary comparison. */
  public Committing.Result.Committed commit(String plan) {
    return commit(plan, SessionKind.comparison());
  }

  Committing.Result.Committed commit(String plan, SessionKind kind) {
    return Commits.commit(desk, plan(plan), kind, List.of("R. Lind"));
  }

  SessionState state(SessionId id) {
    return desk.sessions().state(id).orElseThrow();
  }

  /** Rides all stints, the second setup quicker by so many seconds, and closes the review. */
  void ride(SessionId id, String phrase, double quicker) {
    ride(id, phrase, quicker, state(id).plan().stints());
  }

  /** The same, with times of the first so many stints alone. */
  void ride(SessionId id, String phrase, double quicker, int timed) {
    Plan plan = state(id).plan();
    HelperDay helper = ((HelperDays.Opened.Day) desk.helperDays().open(state(id), phrase)).day();
    Random random = new Random(5);
    for (int stint = 1; stint <= plan.stints(); stint++) {
      double noise = 0.6 * random.nextGaussian();
      double seconds = 183 + noise - quicker * helper.work(stint).setup();
      List<Fact> facts = laps(plan, stint, stint <= timed ? seconds : Double.NaN);
      done(desk.sessions().act(id, s -> new Outcome.Accepted(facts)));
    }
    done(desk.sessions().act(id, s -> new LifeCommands(s).closeDay()));
    done(desk.sessions().act(id, s -> new LifeCommands(s).closeReview()));
  }

  /** The same, and opens the seal; a day goes by. */
  public SessionState unsealed(SessionId id, String phrase, double quicker) {
    ride(id, phrase, quicker);
    done(desk.keys().unseal(state(id), phrase));
    day.clock().move(Duration.ofDays(1));
    return state(id);
  }

  /** The same of a session that was just committed. */
  public SessionState unsealed(Committing.Result.Committed committed, double quicker) {
    return unsealed(committed.state().id(), committed.sealed().phrase().text(), quicker);
  }

  private static List<Fact> laps(Plan plan, int stint, double seconds) {
    LapId lap = new LapId(stint, 1);
    List<Fact> facts = new ArrayList<>(List.of(new Fact.LapRidden(lap, Source.PAPER)));
    Random random = new Random(stint);
    plan.measures().stream()
        .filter(measure -> !(measure.kind().timed() && Double.isNaN(seconds)))
        .forEach(
            measure -> {
              BigDecimal value =
                  measure.kind().timed()
                      ? BigDecimal.valueOf(Math.round(seconds * 1000), 3)
                      : BigDecimal.valueOf(1 + random.nextInt(4));
              facts.add(new Fact.ScoreGiven(lap, measure.name(), value, Source.PAPER));
            });
    return facts;
  }

  static void done(Sessions.Result result) {
    if (result instanceof Sessions.Result.Refused refused) {
      throw new AssertionError(refused.problems().toString());
    }
  }
}
