package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A whole day of one person by commands, at each level, and what is refused on it. */
class AloneCommandsTest {
  @TempDir Path folder;

  private static String plan(String level) {
    return Plans.SMALL + "blinding: {level: " + level + ", guesses: false" + more(level) + "}\n";
  }

  private static String more(String level) {
    return switch (level) {
      case "prepared" -> ", prepared_by: M. Oster, prepared_on: 2026-11-13";
      case "masked" -> ", prepared_by: M. Oster";
      default -> "";
    };
  }

  private static CommandLineSession.Ran ok(CommandLineSession.Ran ran) {
    assertThat(ran.code()).as(ran.err()).isZero();
    return ran;
  }

  private static void refused(CommandLineSession.Ran ran, String words) {
    assertThat(ran.code()).isEqualTo(2);
    assertThat(ran.err().strip().lines()).hasSize(1);
    assertThat(ran.err()).contains(words);
  }

  private static String covered(CommandLineSession day, String level) {
    CommandLineSession.Ran ran =
        ok(day.run("commit", day.file("plan.yaml", plan(level)).toString()));
    assertThat(ran.out()).doesNotContain("phrase").doesNotContain("sealed");
    return ran.after("covered: session");
  }

  private static void ride(CommandLineSession day, String id, int stint) {
    String lap = "lap;lap time;grip\n" + stint + ";1:3" + stint % 5 + ".2;" + (40 + stint) + "\n";
    ok(day.run("record", id, day.file("lap.csv", lap).toString()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"open", "drawn", "masked"})
  void aDayAloneIsShownMountedRiddenAndOpened(String level) {
    CommandLineSession day = new CommandLineSession(folder);
    String id = covered(day, level);
    if (level.equals("masked")) {
      day.answers.add("Shock L, Shock K");
      CommandLineSession.Ran sealed = ok(day.run("masks", id, "--seal"));
      assertThat(sealed.out()).contains("X is on Shock L.", "Y is on Shock K.");
      day.types(CommandLineSession.shownPhrase(sealed.out()));
    }
    assertThat(ok(day.run("mount", id)).out()).contains("Warm-up: mount ", "is recorded");
    for (int stint = 1; stint <= 8; stint++) {
      CommandLineSession.Ran ran = ok(day.run("mount", id));
      assertThat(ran.out())
          .contains("Stint " + stint + ": ", "recorded as mounted", "maker's manual")
          .containsPattern(level.equals("masked") ? "[XY](\\.| stays)" : "Shock [KL]");
      if (level.equals("masked")) {
        assertThat(ran.out()).doesNotContain("Shock");
      }
      assertThat(ok(day.run("mount", id)).out()).contains("not all of its laps are recorded");
      ride(day, id, stint);
    }
    assertThat(ok(day.run("mount", id)).out()).contains("close the day");
    refused(day.run("unseal", id), "review");
    ok(day.run("close-day", id));
    if (level.equals("masked")) {
      day.answers.add("Shock L, Shock K");
      ok(day.run("masks", id, "--guess"));
      refused(day.run("masks", id, "--guess"), "already");
    }
    ok(day.run("close-review", id));
    // People read what was ridden by the names that the rider had before him.
    assertThat(ok(day.run("unseal", id)).out())
        .containsPattern("Order ridden: [" + (level.equals("masked") ? "XY" : "AB") + "]{8}");
    if (level.equals("masked")) {
      assertThat(ok(day.run("masks", id, "--read")).out()).contains("X was Shock L.");
    }
    ok(day.run("review", id));
    assertThat(ok(day.run("notebook", "--verify")).code()).isZero();
  }

  @Test
  void aPreparedDayIsMountedByCodeWithoutThePhraseAndOpenedWithIt() {
    CommandLineSession day = new CommandLineSession(folder);
    CommandLineSession.Ran commit =
        ok(day.run("commit", day.file("plan.yaml", plan("prepared")).toString()));
    assertThat(commit.out())
        .contains("Hand the machine to the friend, ", "Friend's phrase, for the friend alone")
        .doesNotContainIgnoringCase("helper");
    String id = commit.after("sealed: session");
    day.types(CommandLineSession.shownPhrase(commit.out()));
    day.handsOver.add("no");
    assertThat(ok(day.run("prepare", id)).out()).contains("Nothing was written");
    CommandLineSession.Ran friend = ok(day.run("prepare", id));
    assertThat(friend.out()).contains("Recorded: 9 units", "maker's manual");
    assertThat(friend.out().lines().filter(line -> line.startsWith("Code "))).hasSize(8);
    refused(day.run("prepare", id), "already");
    String phrase = day.phrase();
    day.types("");
    assertThat(ok(day.run("mount", id)).out()).contains("unit for the warm-up laps");
    for (int stint = 1; stint <= 8; stint++) {
      CommandLineSession.Ran ran = ok(day.run("mount", id));
      assertThat(ran.out()).contains("mount the unit with code").doesNotContain("Shock");
      ride(day, id, stint);
    }
    ok(day.run("close-day", id));
    ok(day.run("close-review", id));
    refused(day.run("unseal", id), "words");
    day.types(phrase);
    assertThat(ok(day.run("unseal", id)).out()).contains("Order ridden: ");
  }

  @Test
  void whatDoesNotBelongToADayAloneIsRefusedInOneSentence() {
    CommandLineSession day = new CommandLineSession(folder);
    String id = covered(day, "drawn");
    refused(day.run("blind-broken", id, "--stint", "1", "--what", "Seen."), "no blind can break");
    String guessed = "lap;lap time;grip;guess\n1;91.2;50;A\n";
    refused(
        day.run("record", id, day.file("guessed.csv", guessed).toString()), "nothing is guessed");
    refused(day.run("helper", id), "covered, not sealed");
    refused(day.run("sheets", id, "--helper", "--out", folder.toString()), "covered, not sealed");
    Path form = folder.resolve("form.csv");
    refused(day.run("catch-up", id, "--form", form.toString()), "\"mount --paper\" keys in");
    assertThat(form).doesNotExist();
    String paper = day.file("paper.csv", "stint;fitted\n1;A\n").toString();
    refused(day.run("catch-up", id, paper), "\"mount --correct\" says where");
    assertThat(day.run("helper", id).out()).as("nobody is asked for a phrase").isEmpty();
    assertThat(day.run("masks", id, "--guess").out()).as("nobody is asked to guess").isEmpty();
    refused(day.run("masks", id, "--guess"), "No labels are masked");
    refused(day.run("masks", id, "--seal"), "No labels are masked");
    String helped = day.commit(Plans.SMALL);
    refused(day.run("mount", helped), "the order is sealed, so nothing is shown to the rider");
    day.present = false;
    day.handsOver.add(CommandLineSession.NOBODY);
    assertThat(ok(day.run("mount", id)).out()).contains("not recorded as mounted");
    refused(day.run("mount", id, "--correct"), "");
    CommandLineSession.Ran verified = day.run("notebook", "--verify");
    assertThat(verified.code()).isZero();
    assertThat(List.of(id, helped)).doesNotHaveDuplicates();
  }

  @Test
  void aGuessThatNobodyAnsweredIsNotKeptAsNoGuess() {
    CommandLineSession day = new CommandLineSession(folder);
    String id = covered(day, "masked");
    day.answers.add("Shock L, Shock K");
    String phrase = CommandLineSession.shownPhrase(ok(day.run("masks", id, "--seal")).out());
    refused(day.run("masks", id, "--guess"), "asked once the day is closed");
    refused(day.run("masks", id, "--read"), "read once the review is closed");
    rideAll(day, id, 8);
    ok(day.run("close-day", id));
    day.answers.add(CommandLineSession.NOBODY);
    refused(day.run("masks", id, "--guess"), "Nobody answered");
    day.answers.add("shock, Shock K");
    refused(day.run("masks", id, "--guess"), "begins several of them");
    day.answers.add("shock l, A");
    assertThat(ok(day.run("masks", id, "--guess")).out()).contains("Kept.");
    ok(day.run("close-review", id));
    ok(day.run("unseal", id));
    day.types("amber amber amber amber amber amber");
    CommandLineSession.Ran wrong = day.run("masks", id, "--read");
    assertThat(wrong.err()).doesNotContainIgnoringCase("helper");
    day.types(phrase);
    assertThat(ok(day.run("masks", id, "--read")).out()).contains("X was Shock L.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"injury: a cut hand", "it got dark"})
  void whatWasFoundAtTheOpeningOfADayCutShortIsWhatTheReviewSays(String reason) {
    CommandLineSession day = new CommandLineSession(folder);
    String id = covered(day, "drawn");
    rideAll(day, id, 6);
    CommandLineSession.Ran cut =
        ok(
            day.run(
                "cut-short",
                id,
                "--after-stint",
                "6",
                "--decided-by",
                "R. Lind",
                "--reason",
                reason));
    assertThat(cut.out()).contains("begins with dark, injury or damage");
    ok(day.run("close-day", id));
    ok(day.run("close-review", id));
    ok(day.run("unseal", id));
    String review = ok(day.run("review", id)).out();
    assertThat(review).doesNotContain("Under method");
    assertThat(review.contains("no reason was given that begins with dark"))
        .isEqualTo(!reason.startsWith("injury"));
  }

  private static void rideAll(CommandLineSession day, String id, int stints) {
    ok(day.run("mount", id));
    for (int stint = 1; stint <= stints; stint++) {
      ok(day.run("mount", id));
      ride(day, id, stint);
    }
  }

  @Test
  void whatIsScoredByCodeIsNotGivenWithTheLap() {
    CommandLineSession day = new CommandLineSession(folder);
    String plan = plan("drawn");
    int grip = plan.indexOf("{name: grip,") + "{name: grip,".length();
    String byCode = plan.substring(0, grip) + " assessor: N. Falk," + plan.substring(grip);
    CommandLineSession.Ran ran = ok(day.run("commit", day.file("plan.yaml", byCode).toString()));
    String id = ran.after("covered: session");
    ok(day.run("mount", id));
    ok(day.run("mount", id));
    String both = "lap;lap time;grip\n1;91.2;50\n";
    refused(day.run("record", id, day.file("lap.csv", both).toString()), "is scored by code");
    String time = "lap;lap time\n1;91.2\n";
    ok(day.run("record", id, day.file("time.csv", time).toString()));
  }

  @Test
  void aPlanThatItsLevelCannotHaveIsRefusedInOneSentence() {
    CommandLineSession day = new CommandLineSession(folder);
    String setups = "setups:\n  - name: Shock K\n  - name: Shock L\n";
    String dials =
        "setups:\n  - {name: Shock K, component: shock, settings: [{name: rebound, value: 3, unit:"
            + " clicks}]}\n  - {name: Shock L, component: shock, settings: [{name: rebound, value:"
            + " 6, unit: clicks}]}\n";
    String limits =
        "differences_reason: whole parts\nsetups:\n  - {name: Shock K, limits: [{what: bolts,"
            + " value: 12 N.m}]}\n  - {name: Shock L, limits: [{what: bolts, value: 9 N.m}]}\n";
    Map<String, String> wrong = new LinkedHashMap<>();
    wrong.put(
        Plans.SMALL.replace(setups, dials) + "blinding: {level: masked, masks: marks}\n",
        "no two parts that could bear labels");
    wrong.put(Plans.SMALL + "blinding: {level: prepared}\n", "nobody is named");
    wrong.put(
        Plans.SMALL.replace(setups, limits) + "blinding: {level: masked, prepared_by: Mo}\n",
        "The limits of the setups differ (bolts)");
    wrong.put(Plans.SMALL + "blinding: {level: blind}\n", "level");
    wrong.forEach(
        (plan, says) -> refused(day.run("commit", day.file("no.yaml", plan).toString()), says));
    assertThat(day.run("notebook").out()).contains("empty");
  }

  @Test
  void aSeriesHoldsDaysOfOneLevel() {
    CommandLineSession day = new CommandLineSession(folder);
    String series = "series: k-or-l\nseries_sessions: 2\n";
    ok(day.run("commit", day.file("one.yaml", plan("drawn") + series).toString()));
    refused(day.run("commit", day.file("two.yaml", plan("masked") + series).toString()), "level");
    refused(day.run("commit", day.file("two.yaml", Plans.SMALL + series).toString()), "level");
    ok(day.run("commit", day.file("two.yaml", plan("drawn") + series).toString()));
  }

  @Test
  void aWrongFitIsCorrectedAndPaperIsKeyedIn() {
    CommandLineSession day = new CommandLineSession(folder);
    String id = covered(day, "drawn");
    ok(day.run("mount", id));
    String first = ok(day.run("mount", id)).out();
    ride(day, id, 1);
    day.answers.addAll(
        List.of("1", first.contains("Shock K") ? "Shock L" : "Shock K", "The spare was on."));
    assertThat(ok(day.run("mount", id, "--correct")).out()).contains("Corrected");
    assertThat(ok(day.run("mount", id, "--paper")).out()).contains("Stint 2, as it stands");
    assertThat(ok(day.run("mount", id, "--paper")).out()).contains("Stint 3, as it stands");
  }
}
