package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.desk.Desk;
import blindlap.desk.Keys;
import blindlap.seal.HelperSchedule;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SeriesTest {
  @TempDir Path folder;
  private CommandLineSession session;
  private final List<String> phrases = new ArrayList<>();
  private final List<String> ids = new ArrayList<>();

  @BeforeEach
  void start() {
    session = new CommandLineSession(folder);
  }

  private static String plan(String rider, int sessions, boolean flipped) {
    String setups =
        flipped ? "[{name: Shock L}, {name: Shock K}]" : "[{name: Shock K}, {name: Shock L}]";
    return """
    question: Is Shock L quicker than Shock K?
    rider: %s
    trail: Quarry loop
    day: 2026-11-14
    setups: %s
    measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}]
    protocol: eight-stints
    stints: 8
    series: k-or-l
    %s
    """
        .formatted(rider, setups, sessions == 0 ? "" : "series_sessions: " + sessions);
  }

  private CommandLineSession.Ran ok(String... arguments) {
    CommandLineSession.Ran ran = session.run(arguments);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.code()).isZero();
    return ran;
  }

  /** Commits, rides and closes; the difference is that of Shock L to Shock K. */
  private void ride(String plan, double first, double step) {
    commit(plan);
    rideCommitted(ids.size() - 1, first, step);
  }

  private void commit(String plan) {
    CommandLineSession.Ran ran = ok("commit", session.file("plan.yaml", plan).toString());
    if (ran.out().contains("covered: session")) {
      phrases.add("");
      ids.add(ran.after("covered: session"));
      return;
    }
    String after = ran.out().substring(ran.out().indexOf("shown this once:") + 16).strip();
    phrases.add(after.lines().findFirst().orElseThrow().strip());
    ids.add(ran.after("sealed: session"));
  }

  private void rideCommitted(int which, double first, double step) {
    String id = ids.get(which);
    StringBuilder laps = new StringBuilder("lap;lap time\n");
    for (int lap = 1; lap <= 8; lap++) {
      laps.append(lap).append(';').append(first + step * (lap * lap % 7)).append('\n');
    }
    ok("record", id, session.file("laps.csv", laps.toString()).toString());
    ok("close-day", id);
    ok("close-review", id);
  }

  private CommandLineSession.Ran unseal(int which, String... more) {
    session.types(phrases.get(which));
    List<String> all = new ArrayList<>(List.of("unseal", ids.get(which)));
    all.addAll(List.of(more));
    return session.run(all.toArray(String[]::new));
  }

  private JsonNode json() throws Exception {
    return new ObjectMapper().readTree(ok("series", "k-or-l", "--json").out());
  }

  @Test
  void aDeclaredSeriesIsUnsealedTogetherAndPooledForThatRider() throws Exception {
    ride(plan("R. Lind", 2, false), 95, 0.3);
    assertThat(unseal(0).err()).contains("1 of 2 declared sessions ready", "Nothing was opened");
    assertThat(ok("series").out()).contains("1 of 2 declared sessions closed");
    ride(plan("R. Lind", 2, true), 90, 0.5);
    assertThat(ok("series", "k-or-l").out()).contains("Ready to open", "not opened yet");
    assertThat(unseal(0).code()).isZero();
    assertThat(ok("series", "k-or-l").out())
        .contains("Of 2 declared sessions 1 are opened", "opened, told when all are")
        .doesNotContain("faster", "interval");
    assertThat(json().get("sessions").get(0).get("estimate").isNull()).isTrue();
    assertThat(json().has("these_riders_on_these_days")).isFalse();
    assertThat(unseal(1).code()).isZero();
    String text = ok("series", "k-or-l").out();
    assertThat(text).contains("for R. Lind on these 2 days", "from all 2,500 combinations");
    assertThat(text).contains("2 are pooled").doesNotContain("in general");
    JsonNode found = json();
    assertThat(found.get("verdict").isTextual()).isTrue();
    assertThat(found.get("no_verdict").isNull()).isTrue();
    assertThat(found.get("these_riders_on_these_days").get("count").asInt()).isEqualTo(2500);
    // Setups are matched by id: the second plan lists them the other way round.
    JsonNode review = new ObjectMapper().readTree(ok("review", ids.get(1), "--json").out());
    double own = review.get("measures").get(0).get("estimate").asDouble();
    assertThat(found.get("sessions").get(1).get("estimate").asDouble())
        .isCloseTo(-own, within(1e-9));
  }

  @Test
  void whatWouldBeARepeatAfterAResultIsRefusedAtPlanAndAtCommit() throws Exception {
    ride(plan("R. Lind", 2, false), 95, 0.3);
    ride(plan("R. Lind", 2, false), 95, 0.4);
    unseal(0);
    session.later(3600);
    for (String command : List.of("plan", "commit")) {
      assertThat(refused(command, plan("R. Lind", 2, false)))
          .contains("series: Session " + ids.get(0).substring(0, 8), "repeat after a result")
          .contains("Nothing was committed");
    }
    unseal(1);
    assertThat(json().get("pooled_sessions").asInt()).isEqualTo(2);
  }

  @Test
  void theListOfSessionsSaysWhereEachStandsInItsSeriesAndAtItsEndWhatThatAnswers() {
    ride(plan("R. Lind", 2, false), 95, 0.3);
    assertThat(listed(0)).endsWith("session 1 of 2 of series k-or-l, unfinished");
    ride(plan("M. Oster", 2, false), 95, 0.5);
    unseal(0);
    for (int i = 0; i < 2; i++) {
      assertThat(listed(i))
          .endsWith("session %d of 2 of series k-or-l, unfinished".formatted(i + 1))
          .doesNotContain("Shock L is", "settled", "interval", "verdict");
    }
    unseal(1);
    // Two riders are too few for an answer; both lines say so, and a second look keeps it.
    for (int look = 0; look < 2; look++) {
      assertThat(listed(0))
          .contains("best estimate: Shock L")
          .endsWith("session 1 of 2 of series k-or-l: no verdict");
      assertThat(listed(1)).endsWith("session 2 of 2 of series k-or-l: no verdict");
    }
    session.later(3600);
    commit(plan("R. Lind", 0, false).replace("k-or-l", "again"));
    assertThat(ok("notebook").out()).contains("session 1 of series again, unfinished");
  }

  /** The lines of a session in the list. */
  private String listed(int which) {
    String all = ok("notebook").out();
    String from = all.substring(all.indexOf(ids.get(which).substring(0, 8)));
    StringBuilder own = new StringBuilder();
    for (String line : from.lines().toList()) {
      if (own.length() > 0 && !line.startsWith("          ")) {
        break;
      }
      own.append(line).append('\n');
    }
    return own.toString().strip();
  }

  private String refused(String command, String plan) {
    CommandLineSession.Ran ran =
        session.run(command, session.file("refused.yaml", plan).toString());
    assertThat(ran.code()).as(ran.out()).isEqualTo(2);
    return ran.err();
  }

  @Test
  void aPlanThatDiffersFromItsSeriesIsRefusedByItsFieldWithBothValues() {
    commit(plan("R. Lind", 8, false));
    String first = "(" + ids.get(0).substring(0, 8) + ") of the series \"k-or-l\"";
    Map<String, String> others =
        Map.of(
            plan("R. Lind", 8, false).replace("worthwhile: 0.5", "worthwhile: 0.3"),
            "measures[1].worthwhile: 0.3 s here, 0.5 s declared by session 1 " + first,
            plan("R. Lind", 7, false),
            "series_sessions: 7 sessions here, 8 sessions declared by session 1 " + first,
            plan("R. Lind", 0, false),
            "series_sessions: no number of sessions here, 8 sessions declared",
            plan("R. Lind", 8, false).replace("worthwhile: 0.5", "worthwhile: 0.5, drift: none"),
            "measures[1].drift: drift none here, drift line declared",
            plan("R. Lind", 8, false).replace("worthwhile: 0.5", "worthwhile: 0.5, scale: ratio"),
            "measures[1].scale: ratio scale here, raw scale declared",
            plan("R. Lind", 8, false).replace("{name: Shock L}", "{name: Shock L, id: other-l}"),
            "setups: Shock K, Shock L (id other-l) here, Shock K, Shock L declared",
            plan("R. Lind", 8, false).replace("eight-stints", "whole-day"),
            "protocol: ",
            plan("R. Lind", 8, false) + "blinding: {blinded: no}\n",
            "blinding.level: open here, helper declared");
    others.forEach(
        (plan, sentence) -> {
          assertThat(refused("plan", plan)).contains(sentence, "would not be pooled");
          assertThat(refused("commit", plan)).contains(sentence);
        });
    assertThat(ok("notebook").out().lines().filter(l -> l.contains("Shock"))).hasSize(1);
    commit(plan("M. Oster", 8, true));
  }

  @Test
  void theNextSessionOfASeriesBeginsWithWhatWasDeclaredAndIsNumbered() throws Exception {
    ride(plan("R. Lind", 3, false), 95, 0.3);
    Path file = folder.resolve("next.yaml");
    CommandLineSession.Ran ran = ok("series", "k-or-l", "--next", "--out", file.toString());
    assertThat(ran.out()).contains("Session 2 of 3 of the series \"k-or-l\".");
    String next = Files.readString(file);
    assertThat(next)
        .contains("series: k-or-l", "series_sessions: 3", "worthwhile: 0.5", "name: Shock K")
        .contains("protocol: eight-stints", "day:  #");
    ride(next.replace("day:  #", "day: 2026-11-21  #"), 95, 0.4);
    assertThat(ok("series", "k-or-l", "--next").out()).contains("Session 3 of 3");
    ride(next.replace("day:  #", "day: 2026-11-28  #"), 95, 0.4);
    CommandLineSession.Ran full = session.run("series", "k-or-l", "--next");
    assertThat(full.code()).isEqualTo(2);
    assertThat(full.err()).contains("has all 3 declared sessions", "Nothing was committed");
    for (int i = 0; i < 3; i++) {
      assertThat(unseal(i).code()).isZero();
    }
    assertThat(json().get("pooled_sessions").asInt()).isEqualTo(3);
    assertThat(json().get("verdict").isTextual()).isTrue();
  }

  @Test
  void aCopyOfAPlanStaysInASeriesThatIsUnderWay() throws Exception {
    ride(plan("R. Lind", 2, false), 95, 0.3);
    Path file = folder.resolve("copy.yaml");
    assertThat(ok("plan", "--like", ids.get(0), "--out", file.toString()).out())
        .contains("It stays in the series \"k-or-l\", which is under way");
    assertThat(Files.readString(file)).contains("series: k-or-l", "series_sessions: 2");
    ride(Files.readString(file).replace("day:  #", "day: 2026-11-21  #"), 95, 0.3);
    Path over = folder.resolve("over.yaml");
    assertThat(ok("plan", "--like", ids.get(0), "--out", over.toString()).out())
        .doesNotContain("It stays");
    assertThat(Files.readString(over)).doesNotContain("series:", "series_sessions");
  }

  @Test
  void aConcealedNullRunIsRefusedInASeriesBeforeAnythingIsDrawn() {
    CommandLineSession.Ran ran =
        session.run(
            "commit",
            session.file("plan.yaml", plan("R. Lind", 2, false)).toString(),
            "--null-run",
            "--yes");
    assertThat(ran.code()).isEqualTo(2);
    assertThat(ran.err()).contains("cannot be a concealed null run", "Nothing was sealed");
    assertThat(ran.out()).doesNotContain("shown this once");
  }

  @Test
  void anAbandonedSessionIsReplacedOnlyWhereNobodyCouldHaveDroppedItForItsResult()
      throws Exception {
    // Before a lap, anybody may.
    commit(plan("R. Lind", 2, false));
    ok("abandon", ids.get(0), "--reason", "thunderstorm");
    assertThat(ok("series", "k-or-l", "--next").out())
        .contains("Session 1 of 2", "takes the place of session " + ids.get(0).substring(0, 8));
    // With scored laps it keeps its place, unless whoever decides declares not to know.
    ride(plan("R. Lind", 2, false), 95, 0.3);
    CommandLineSession.Ran kept = session.run("abandon", ids.get(1), "--reason", "cold hands");
    assertThat(kept.code()).isEqualTo(2);
    assertThat(kept.err()).contains("keeps its place in the series", "Nothing was abandoned");
    ok("abandon", ids.get(1), "--reason", "cold hands", "--unaware", "R. Lind");
    assertThat(ok("series", "k-or-l").out()).contains("abandoned: cold hands");
    ride(plan("R. Lind", 2, false), 95, 0.3);
    ride(plan("R. Lind", 2, false), 95, 0.4);
    assertThat(unseal(2).code()).isZero();
    assertThat(unseal(3).code()).isZero();
    assertThat(json().get("pooled_sessions").asInt()).isEqualTo(2);
    assertThat(json().get("verdict").isTextual()).isTrue();
  }

  @Test
  void aSessionThatAnOlderProgramAbandonedAfterItsLapsKeepsItsPlaceAndLeavesNoVerdict()
      throws Exception {
    ride(plan("R. Lind", 2, false), 95, 0.3);
    try (Desk desk = session.desk()) {
      SessionState state = desk.sessions().find(ids.get(0)).state().orElseThrow();
      desk.sessions().act(state.id(), latest -> new LifeCommands(latest).abandon("cold hands"));
    }
    ride(plan("R. Lind", 2, false), 95, 0.4);
    assertThat(refused("commit", plan("R. Lind", 2, false))).contains("has all 2 declared");
    assertThat(unseal(1).code()).isZero();
    assertThat(json().get("no_verdict").asText()).isEqualTo("falls short");
    assertThat(ok("series", "k-or-l").out())
        .contains("so it keeps its place and is not pooled: cold hands");
  }

  @Test
  void anUndeclaredSeriesAndOneEndedEarlyHaveNumbersButNoVerdict() throws Exception {
    ride(plan("R. Lind", 0, false), 95, 0.3);
    unseal(0);
    assertThat(ok("series", "k-or-l").out()).contains("No number of sessions was declared");
    assertThat(json().get("verdict").isNull()).isTrue();
  }

  @Test
  void endingEarlyNeedsAReasonAndGivesUpTheVerdict() throws Exception {
    ride(plan("R. Lind", 3, false), 95, 0.3);
    ride(plan("R. Lind", 3, false), 95, 0.4);
    assertThat(unseal(0, "--end-series", " ", "--decided-by", "A. Quill").err()).contains("reason");
    assertThat(unseal(0, "--end-series", "broken wrist").err()).contains("who decided");
    assertThat(unseal(0, "--end-series", "broken wrist", "--decided-by", "A. Quill").code())
        .isZero();
    assertThat(unseal(1).code()).isZero();
    assertThat(ok("series", "k-or-l").out())
        .contains("The series was ended early", "by A. Quill: broken wrist", "2 of 3 declared");
    assertThat(json().get("no_verdict").asText()).isEqualTo("ended early");
    // A day of it says why by itself, also from a package that lies alone.
    Path alone = session.folder.resolve("alone");
    ok("export", ids.get(1), "--out", alone.toString());
    for (String said : List.of(ok("review", ids.get(1)).out(), from(alone))) {
      assertThat(said)
          .contains(
              "Session 2 of 3 declared in the series \"k-or-l\". The series itself has no verdict."
                  + " Ended early on ",
              "by A. Quill: broken wrist");
    }
  }

  private String from(Path folder) {
    return ok("review", "--from", folder.toString()).out();
  }

  @Test
  void whatIsRiddenAfterAnEarlyEndBringsNoVerdictBack() throws Exception {
    // All three plans are fixed before the first result, and far enough apart for any test.
    for (int i = 0; i < 3; i++) {
      commit(plan("R. Lind", 3, false));
    }
    rideCommitted(0, 95, 0.2);
    assertThat(unseal(0, "--end-series", "rain to come", "--decided-by", "A. Quill").code())
        .isZero();
    rideCommitted(1, 95, 0.2);
    rideCommitted(2, 95, 0.2);
    unseal(1);
    unseal(2);
    assertThat(json().get("no_verdict").asText()).isEqualTo("ended early");
    assertThat(json().get("verdict").isNull()).isTrue();
    assertThat(json().get("ended_early").get("decided_by").asText()).isEqualTo("A. Quill");
    assertThat(json().get("unsealed_early").get(0).get("open")).hasSize(2);
    assertThat(ok("series", "k-or-l").out())
        .contains(
            "no verdict",
            "by A. Quill: rain to come",
            "while 2 sessions of the series were not closed")
        .doesNotContain("worthwhile:", "real, and large enough");
  }

  private static String watched(String rider, int sessions) {
    return plan(rider, sessions, false)
        .replace(
            "worthwhile: 0.5}]",
            "worthwhile: 0.5}, {name: grip, kind: line scale, unit: points, role: secondary,"
                + " low_words: loose, high_words: glued}, {name: braking, kind: line scale, unit:"
                + " points, role: secondary, low_words: weak, high_words: strong}, {name: arms,"
                + " kind: line scale, unit: points, better: lower, role: watch for harm,"
                + " worthwhile: 5, low_words: fresh, high_words: pumped}]");
  }

  @Test
  void otherMeasuresOfASeriesArePooledOverTheProductAndAHarmStandsInTheHeadline() throws Exception {
    for (int i = 0; i < 2; i++) {
      commit(watched("R. Lind", 2));
      String id = ids.get(i);
      session.types(phrases.get(i));
      boolean[] onL = onL(id);
      StringBuilder laps = new StringBuilder("lap;lap time;grip;braking;arms\n");
      for (int lap = 1; lap <= 8; lap++) {
        int wobble = lap * lap % 5;
        laps.append(
            "%d;%d;%d;%d;%d\n"
                .formatted(
                    lap,
                    95 + wobble % 3,
                    50 + wobble + (onL[lap - 1] ? 20 : 0),
                    40 + (lap * 7 % 4),
                    20 + wobble + (onL[lap - 1] ? 30 : 0)));
      }
      ok("record", id, session.file("laps.csv", laps.toString()).toString());
      ok("close-day", id);
      ok("close-review", id);
    }
    unseal(0);
    assertThat(json().get("other_measures")).as("told before the end").isEmpty();
    unseal(1);
    JsonNode others = json().get("other_measures");
    assertThat(others).hasSize(3);
    JsonNode grip = others.get(0);
    assertThat(grip.get("estimate").asDouble()).isCloseTo(20, within(4.0));
    // 2 of 2,500 combinations can reach a difference as clear as this, 4 with equal ones.
    assertThat(grip.get("p").asDouble()).isBetween(2 / 2500.0, 20 / 2500.0);
    assertThat(grip.get("p_adjusted").asDouble()).isBetween(grip.get("p").asDouble(), 0.02);
    JsonNode braking = others.get(1);
    assertThat(braking.get("p_adjusted").asDouble())
        .isGreaterThanOrEqualTo(braking.get("p").asDouble());
    JsonNode arms = others.get(2).get("harm");
    assertThat(arms.get("second_against_first").asText()).isEqualTo("harm of D or more shown");
    assertThat(arms.get("first_against_second").asText()).isEqualTo("harm of D or more ruled out");
    String text = ok("series", "k-or-l").out();
    assertThat(text.lines().findFirst().orElseThrow())
        .contains("but Shock L did harm in arms: higher by 5 points or more.");
    assertThat(text)
        .contains(
            "grip, on these days:",
            "adjusted for the number of secondary measures",
            "Shock L against Shock K, arms: harm of 5 points or more shown",
            "Shock K against Shock L, arms: harm of 5 points or more ruled out");
  }

  /** Which stints have Shock L, from the helper's schedule. */
  private boolean[] onL(String id) {
    try (Desk desk = session.desk()) {
      SessionState state = desk.sessions().find(id).state().orElseThrow();
      HelperSchedule schedule =
          ((Keys.Result.Open) desk.keys().helper(state, phrases.get(ids.indexOf(id)))).schedule();
      boolean[] on = new boolean[8];
      for (int i = 0; i < 8; i++) {
        on[i] = schedule.fit(i + 1).fitted() == 1;
      }
      return on;
    }
  }

  @Test
  void nothingIsToldOfASessionOfAnUnfinishedSeriesByAnyCommand() throws Exception {
    ride(plan("R. Lind", 2, false), 95, 0.3);
    ride(plan("R. Lind", 2, false), 95, 0.5);
    assertThat(unseal(0).out()).contains("Nothing of it is told").doesNotContain("Order ridden");
    for (List<String> words :
        List.of(
            List.of("review", ids.get(0)),
            List.of("review", ids.get(0), "--json"),
            List.of("export", ids.get(0), "--out", folder.resolve("package").toString()),
            List.of("report", ids.get(0), "--out", folder.resolve("report").toString()),
            List.of("card", ids.get(0), "--out", folder.resolve("card").toString()))) {
      CommandLineSession.Ran ran = session.run(words.toArray(String[]::new));
      assertThat(ran.code()).as("%s", words).isEqualTo(2);
      assertThat(ran.err()).contains("is not at its end: 1 of 2 sessions");
      assertThat(ran.out()).doesNotContain("p =", "faster");
    }
    assertThat(folder.resolve("report")).doesNotExist();
    assertThat(folder.resolve("card")).doesNotExist();
    assertThat(folder.resolve("package")).doesNotExist();
    assertThat(ok("notebook").out()).doesNotContain("faster", "not settled", "real");

    unseal(1);
    assertThat(ok("review", ids.get(0)).out())
        .contains(
            "Session 1 of 2 declared in the series \"k-or-l\". All its 2 days together: ",
            "That is the answer to the question; this day alone is a part of it.");
    JsonNode beside =
        new ObjectMapper().readTree(ok("review", ids.get(1), "--json").out()).get("series");
    assertThat(beside.get("place").asInt()).isEqualTo(2);
    assertThat(beside.get("estimate").asDouble())
        .isEqualTo(
            json().get("these_riders_on_these_days").get("estimate").asDouble(), within(1e-12));
  }

  @Test
  void ridersInGeneralAreKeptApartFromTheseRidersAndNeedFour() throws Exception {
    String[] names = {"R. Lind", "M. Oster", "T. Falk", "J. Ebner"};
    for (int i = 0; i < 4; i++) {
      ride(plan(names[i], 4, false), 90 + i, 0.3 + 0.1 * i);
    }
    for (int i = 0; i < 2; i++) {
      unseal(i);
    }
    assertThat(ok("series", "k-or-l").out()).contains("2 are opened").doesNotContain("faster");
    unseal(2);
    unseal(3);
    String text = ok("series", "k-or-l").out();
    assertThat(text).contains("for riders in general, from 4 riders");
    assertThat(text).contains("These riders on these days:", "It says nothing of other riders");
    for (String name : names) {
      assertThat(text).contains(name + ": Shock");
    }
    JsonNode general = json().get("riders_in_general");
    double sum = 0;
    for (JsonNode rider : json().get("riders")) {
      sum += rider.get("estimate").asDouble();
    }
    assertThat(general.get("estimate").asDouble()).isCloseTo(sum / 4, within(1e-9));
    assertThat(general.get("method").asText()).isEqualTo("equal weight t");
  }

  @Test
  void twoRidersAreTooFewForAVerdictAndAbandonedSessionsAreListed() throws Exception {
    CommandLineSession.Ran first =
        ok("commit", session.file("plan.yaml", plan("T. Falk", 2, false)).toString());
    ok("abandon", first.after("sealed: session"), "--reason", "thunderstorm");
    ride(plan("R. Lind", 2, false), 95, 0.3);
    ride(plan("M. Oster", 2, false), 92, 0.4);
    unseal(0);
    unseal(1);
    assertThat(ok("series", "k-or-l").out())
        .contains("2 riders are too few", "abandoned: thunderstorm", "four are the least");
    assertThat(json().get("no_verdict").asText()).isEqualTo("too few riders");
  }

  @Test
  void aNoiseRunThatNamesTheSeriesOpensNothingBeforeItsTime() throws Exception {
    ride(plan("R. Lind", 2, false), 95, 0.3);
    String noise =
        plan("R. Lind", 2, false)
            .replace("question:", "kind: noise run\nquestion:")
            .replace("[{name: Shock K}, {name: Shock L}]", "[{name: Shock K}]")
            .replace("protocol: eight-stints\n", "")
            .replace(", worthwhile: 0.5", "");
    assertThat(refused("commit", noise))
        .contains("kind: a noise run here, a comparison declared by session 1");
    Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
    CommandLineSession other = new CommandLineSession(elsewhere, 77);
    other.run("commit", other.file("noise.yaml", noise).toString());
    try (Desk here = session.desk();
        Desk there = other.desk()) {
      there.sessions().all().forEach(run -> here.notebook().addEntries(run.entries()));
    }
    StringBuilder laps = new StringBuilder("lap;lap time\n");
    for (int lap = 1; lap <= 8; lap++) {
      laps.append(lap).append(";9").append(lap % 3).append('\n');
    }
    ok("record", "latest", session.file("laps.csv", laps.toString()).toString());
    ok("close-day", "latest");
    ok("close-review", "latest");
    assertThat(unseal(0).err()).contains("1 of 2 declared sessions ready", "Nothing was opened");
    assertThat(ok("series", "k-or-l").out()).contains("has no key, not pooled");
  }

  @Test
  void aSeriesWithAnUnblindedSessionSaysSoBeforeItsNumbers() {
    String open = plan("R. Lind", 2, false) + "blinding: {blinded: no}\n";
    ride(open, 95, 0.3);
    ride(open, 95, 0.4);
    unseal(0);
    unseal(1);
    assertThat(ok("series", "k-or-l").out())
        .startsWith("Unblinded (open): ")
        .contains("in the pooled sessions the rider knew", "on these days, unblinded");
  }

  @Test
  void theReportIsRefusedBeforeTheEndAndWrittenWholeAfterIt() {
    Path reports = folder.resolve("reports");
    ride(plan("R. Lind", 2, false), 95, 0.3);
    CommandLineSession.Ran early = session.run("series", "k-or-l", "--report", reports.toString());
    assertThat(early.code()).isEqualTo(2);
    assertThat(early.err()).contains("0 of 2 sessions are opened", "Nothing was written");
    assertThat(reports).doesNotExist();
    ride(plan("R. Lind", 2, false), 95, 0.4);
    unseal(0);
    unseal(1);
    assertThat(ok("series", "k-or-l", "--report", reports.toString()).out())
        .contains("series-k-or-l.pdf", "series-k-or-l.html");
    assertThat(reports.resolve("series-k-or-l.pdf")).isNotEmptyFile();
    assertThat(session.run("series", "other", "--report", reports.toString()).err())
        .contains("No session belongs to a series \"other\"");
  }

  @Test
  void aRepeatOutsideAnySeriesIsLabelled() {
    String lone = plan("R. Lind", 0, false).replace("series: k-or-l", "");
    ride(lone, 95, 0.3);
    ride(lone, 95, 0.3);
    unseal(0);
    assertThat(ok("series").out()).doesNotContain("Repeat decided");
    session.later(3600);
    ride(lone, 95, 0.3);
    assertThat(ok("series").out())
        .contains("Repeat decided after seeing a result", ids.get(2).substring(0, 8))
        .doesNotContain(ids.get(1).substring(0, 8));
  }

  @Test
  void aRepeatOfASeriesIsLabelledOnceTheSeriesHasToldItsResult() {
    ride(plan("R. Lind", 2, false), 95, 0.3);
    ride(plan("R. Lind", 2, false), 95, 0.4);
    unseal(0);
    String lone = plan("R. Lind", 0, false).replace("series: k-or-l", "");
    session.later(3600);
    ride(lone, 95, 0.3);
    assertThat(ok("series").out()).as("nothing is told yet").doesNotContain("Repeat decided");
    unseal(1);
    session.later(3600);
    ride(lone, 95, 0.3);
    assertThat(ok("series").out())
        .contains("Repeat decided after seeing a result", ids.get(3).substring(0, 8));
    ride(lone.replace("Quarry loop", "Quarry loop, upper half"), 95, 0.3);
    assertThat(ok("series").out()).doesNotContain(ids.get(4).substring(0, 8));
  }

  @Test
  void aPlanOfASeriesSaysWhatTheSeriesCanShowAndIsNeverSentToOne() {
    String noise = "noise: {usual_difference: 1.0}\n";
    String own = plan("R. Lind", 0, false).replace("series: k-or-l", "") + noise;
    assertThat(ok("plan", session.file("own.yaml", own).toString()).out())
        .contains("in a series of")
        .doesNotContain("The series as declared");
    String first =
        ok("plan", session.file("in.yaml", plan("R. Lind", 4, false) + noise).toString()).out();
    assertThat(first)
        .contains("The series as declared, 4 sessions like this one, can show", "of 10 such series")
        .doesNotContain("plan a series of", "in a series of");
    ride(plan("R. Lind", 4, false), 95, 0.3);
    assertThat(
            ok("plan", session.file("in.yaml", plan("R. Lind", 4, false) + noise).toString()).out())
        .contains("4 sessions of which 1 stands and 3 are like this one, can show");
  }
}
