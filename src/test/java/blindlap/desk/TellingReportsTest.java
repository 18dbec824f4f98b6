package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.compute.StrictJson;
import blindlap.fault.Problem;
import blindlap.plan.TellingRun;
import blindlap.plan.TellingTask;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import blindlap.session.day.Trial;
import blindlap.wording.NotebookWords;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Random telling runs of every task and length, up to a hundred trials: text, JSON, report, package
 * and list say the same count, and a package gives its finding again.
 */
class TellingReportsTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  private static SessionState act(TestDay day, Function<SessionState, Outcome> decide) {
    return ((Sessions.Result.Done) day.desk().sessions().act(day.id(), decide)).state();
  }

  /** Rides some trials with random answers, voids and notes, and closes the day. */
  private static void ride(TestDay day, Random random, int ridden) {
    TellingRun run = day.state().plan().telling();
    for (int trial = 1; trial <= ridden; trial++) {
      boolean spoiled = trial < ridden && random.nextInt(9) == 0;
      List<LapInput> laps = new ArrayList<>();
      for (int stint = run.firstStint(trial); stint <= run.lastStint(trial); stint++) {
        boolean last = stint == run.lastStint(trial);
        int first = run.task().firstNamed();
        String answer =
            last && !spoiled
                ? String.valueOf(first + random.nextInt(run.task().laps() - first + 1))
                : null;
        String sure = last && random.nextBoolean() ? "certain" : "";
        laps.add(
            new LapInput(
                new LapId(stint, 1),
                Map.of(),
                spoiled && stint == run.firstStint(trial) ? "crash" : null,
                random.nextInt(8) == 0 ? "gust in the gate" : "",
                answer,
                answer == null ? "" : sure,
                "",
                Map.of(),
                "line " + stint,
                Map.of()));
        if (spoiled) {
          break;
        }
      }
      act(day, state -> new DayCommands(state).record(laps, Source.FILE));
    }
  }

  private static SessionState unsealed(TestDay day) {
    act(day, state -> new LifeCommands(state).closeDay());
    day.desk().keys().closeReview(day.id());
    return ((Sessions.Result.Done) day.desk().keys().unseal(day.state(), day.phrase())).state();
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }

  @Test
  void everySurfaceSaysTheSameCountAndAPackageGivesItAgain() {
    Random random = new Random(23);
    for (int number = 0; number < 18; number++) {
      TellingTask task = TellingTask.values()[number % 3];
      int trials = number == 0 ? 100 : 1 + random.nextInt(30);
      int ridden = random.nextInt(3) == 0 ? 1 + random.nextInt(trials) : trials;
      String plan =
          random.nextBoolean()
              ? TellingTestDay.levels(task, trials)
              : TellingTestDay.shocks(task, trials);
      boolean nullRun = random.nextInt(5) == 0;
      try (TestDay day =
          new TestDay(
              folder.resolve("run-" + number + ".blindlap"),
              plan,
              number,
              nullRun ? Optional.of(0) : Optional.empty())) {
        ride(day, random, ridden);
        if (ridden < trials) {
          act(
              day,
              state ->
                  new LifeCommands(state)
                      .cutShort(state.day().latestStint(), "darkness", "M. Oster", false));
        }
        if (random.nextInt(3) == 0) {
          act(day, state -> new LifeCommands(state).blindBroken(1, "The dial showed."));
        }
        SessionState state = unsealed(day);
        agree(day.desk(), state, nullRun);
      }
    }
  }

  private static void agree(Desk desk, SessionState state, boolean nullRun) {
    int answered = 0;
    int voided = 0;
    for (Trial trial : Trial.of(state.day())) {
      answered += trial.standing() == Trial.Standing.ANSWERED ? 1 : 0;
      voided += trial.standing() == Trial.Standing.VOID ? 1 : 0;
    }
    JsonNode json = StrictJson.parse(desk.reviews().json(state));
    JsonNode run = json.path("telling_run");
    assertThat(run.path("answered").asInt()).isEqualTo(answered);
    assertThat(run.path("void").asInt()).isEqualTo(voided);
    assertThat(run.path("null_run").asBoolean()).isEqualTo(nullRun);
    int right = 0;
    for (JsonNode trial : run.path("trials")) {
      right += trial.path("differed").asInt() == trial.path("named").asInt() ? 1 : 0;
    }
    assertThat(run.path("correct").asInt()).isEqualTo(right);
    assertThat(json.path("verdict")).isEqualTo(run.path("verdict"));
    String count = right + " of " + answered + (answered == 1 ? " trial" : " trials");
    assertThat(desk.reviews().text(state).get(0)).contains(count);
    assertThat(desk.reviews().headline(state).orElseThrow()).contains(count);
    Map<String, byte[]> report = desk.reviews().report(state, true);
    report.forEach(
        (name, bytes) -> {
          if (name.endsWith(".html")) {
            String body = text(bytes).replaceAll("(?s)<style>.*?</style>", "");
            assertThat(body).contains(count).doesNotContain("NaN").doesNotContain("Optional[");
          } else {
            assertThat(bytes.length).isGreaterThan(10_000);
          }
        });
    Map<String, byte[]> exported = desk.reviews().export(state);
    PackageReview again = PackageReview.of(exported);
    assertThat(again.altered()).isEmpty();
    assertThat(again.text()).containsAll(desk.reviews().text(state));
    assertThat(StrictJson.parse(again.json())).isEqualTo(json);
    while (desk.sessionList().keepVerdicts(1)) {
      // one by one, as the window does
    }
    SessionSummary listed = desk.sessionList().find("").get(0);
    assertThat(NotebookWords.outcome(listed).get(1))
        .isEqualTo("right in " + count + ", guessing gives " + guessed(run));
    assertThat(NotebookWords.kept(listed.verdict())).isTrue();
  }

  private static String guessed(JsonNode run) {
    double guessed =
        run.path("answered").asInt()
            * (run.path("task").asText().equals("triangle") ? 1.0 / 3 : 0.5);
    return Math.abs(guessed - Math.rint(guessed)) < 1e-9
        ? String.valueOf(Math.round(guessed))
        : String.format(java.util.Locale.ROOT, "%.1f", guessed);
  }

  @Test
  void aPackageWhoseAnswerWasChangedIsCalledAltered() {
    try (TestDay day = new TestDay(folder, TellingTestDay.levels(TellingTask.TRIANGLE, 6), 5)) {
      ride(day, new Random(4), 6);
      SessionState state = unsealed(day);
      Map<String, byte[]> files = new HashMap<>(day.desk().reviews().export(state));
      String trials = text(files.get("trials.csv"));
      String other = trials.contains(",true,") ? trials.replaceFirst(",true,", ",false,") : "";
      files.put("trials.csv", other.getBytes(StandardCharsets.UTF_8));
      assertThat(PackageReview.of(files).differences()).anyMatch(d -> d.contains("trials.csv"));
      String stints = text(day.desk().reviews().export(state).get("stints.csv"));
      files = new HashMap<>(day.desk().reviews().export(state));
      files.put(
          "stints.csv",
          stints.replaceFirst("(?m)^(3,\\d+,[AB]),\\d", "$1,9").getBytes(StandardCharsets.UTF_8));
      Map<String, byte[]> wrong = files;
      org.assertj.core.api.Assertions.assertThatThrownBy(() -> PackageReview.of(wrong))
          .isInstanceOf(blindlap.fault.Unreadable.class);
    }
  }

  @Test
  void aRunWithoutOneAnswerIsNotClosed() {
    try (TestDay day = new TestDay(folder, TellingTestDay.shocks(TellingTask.DUO_TRIO, 4), 6)) {
      act(
          day,
          state ->
              new DayCommands(state)
                  .record(List.of(LapInput.of(new LapId(1, 1), Map.of())), Source.FILE));
      Sessions.Result refused =
          day.desk().sessions().act(day.id(), state -> new LifeCommands(state).closeDay());
      assertThat(((Sessions.Result.Refused) refused).problems())
          .extracting(Problem::fault)
          .containsExactly(SessionFault.NO_TRIAL_ANSWERED);
    }
  }

  @Test
  void wordsOfSingleLapsAreNotMadeForALongRun() {
    try (TestDay day = new TestDay(folder, TellingTestDay.shocks(TellingTask.TRIANGLE, 22), 8)) {
      OneStints.Made made = day.desk().oneStints().make(day.helper(), day.state());
      assertThat(((OneStints.Made.Refused) made).problems())
          .extracting(Problem::fault)
          .containsExactly(DeskFault.ONE_STINT_TOO_MANY);
    }
  }

  @Test
  void aGuessOfWhatWasFittedIsNoAnswer() {
    try (TestDay day = new TestDay(folder, TellingTestDay.shocks(TellingTask.TWO_CHOICE, 4), 6)) {
      LapInput named =
          new LapInput(
              new LapId(1, 1), Map.of(), null, "", "Shock K", "", "", Map.of(), "line 2", Map.of());
      Sessions.Result refused =
          day.desk()
              .sessions()
              .act(day.id(), s -> new DayCommands(s).record(List.of(named), Source.FILE));
      assertThat(((Sessions.Result.Refused) refused).problems())
          .extracting(Problem::fault)
          .containsExactly(SessionFault.NOT_A_LAP_OF_TRIAL);
      assertThat(day.state().entries().stream().map(e -> e.entry().fact()))
          .noneMatch(Fact.LapRidden.class::isInstance);
    }
  }
}
