package blindlap.phone;

import blindlap.plan.BlindLevel;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.ride.RideQuestions;
import blindlap.session.day.Day;
import blindlap.session.day.PhoneRole;
import blindlap.wording.day.PhoneWords;
import blindlap.wording.day.RideTrialWords;
import blindlap.wording.day.RideWords;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What never changes on a day: it goes over once. None of it hangs on the order. */
final class DayJson {
  private DayJson() {}

  static Reply of(Day day, PhoneRole role) {
    Plan plan = day.plan();
    RideQuestions asked = RideQuestions.of(plan);
    Map<String, @Nullable Object> tree = new TreeMap<>();
    tree.put("session", day.id().text());
    tree.put("role", role.text());
    tree.put("place", asked.place());
    tree.put("plate", asked.plate());
    tree.put("stints", text(plan.stints()));
    tree.put("codes", day.codes().stream().map(String::valueOf).toList());
    tree.put(
        "laps",
        Map.of(
            "settling", text(plan.laps().settling()),
            "per_stint", text(plan.laps().perStint()),
            "warm_up", text(plan.laps().warmUp())));
    tree.put("covariates", plan.covariates().stream().map(DayJson::covariate).toList());
    tree.put(
        "timed",
        plan.askedOnTheDay().stream()
            .filter(measure -> measure.kind().timed())
            .map(Measure::name)
            .toList());
    tree.put("cap", day.lapCap().map(String::valueOf).orElse(null));
    tree.put("alone", plan.level() != BlindLevel.HELPER);
    tree.put("masked", plan.level() == BlindLevel.MASKED);
    if (role == PhoneRole.RIDER) {
      tree.put("questions", asked.questions().stream().map(DayJson::question).toList());
      tree.put("setups", asked.setups());
      tree.put("guesses", plan.asksGuesses());
    }
    TellingRun run = plan.telling();
    if (run != null) {
      tree.put("trial", trial(run));
      tree.put("words", PhoneWords.ofTrials());
    }
    return Reply.json(200, tree);
  }

  private static Map<String, String> trial(TellingRun run) {
    return Map.of(
        "laps", text(run.task().laps()),
        "first", text(run.task().firstNamed()),
        "question", RideTrialWords.question(run),
        "before", RideTrialWords.before(run));
  }

  private static Map<String, String> question(RideQuestions.Question question) {
    return Map.of(
        "name", question.name(),
        "kind", question.kind().name(),
        "low", question.low(),
        "high", question.high());
  }

  private static Map<String, Object> covariate(Covariate covariate) {
    return Map.of(
        "name", covariate.name(),
        "title", RideWords.say("covariate.title", covariate.name(), covariate.unit()),
        "who", RideWords.say("covariate." + covariate.by().name()),
        "by", covariate.by().name(),
        "per_lap", covariate.perLap(),
        "timed", covariate.kind().timed());
  }

  private static String text(int number) {
    return String.valueOf(number);
  }
}
