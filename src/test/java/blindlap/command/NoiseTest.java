package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.compute.ReviewJsonPage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NoiseTest {
  private static final String NOISE_RUN =
      """
      kind: noise run
      question: How much do my laps differ?
      rider: R. Lind
      trail: Quarry loop
      day: 2026-11-07
      setups: [{name: Shock K}]
      measures: [{name: lap time, kind: lap time, unit: s, role: primary}]
      stints: 6
      """;

  private static final String LAPS =
      "lap;lap time;void\n1;95.0;\n2;94.2;\n3;95.4;\n4;99.0;traffic\n5;94.8;\n6;94.0;\n";

  @TempDir Path folder;
  private CommandLineSession session;

  @BeforeEach
  void start() {
    session = new CommandLineSession(folder);
  }

  private CommandLineSession.Ran ok(String... arguments) {
    CommandLineSession.Ran ran = session.run(arguments);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.code()).isZero();
    return ran;
  }

  private void noiseRun() {
    ok("commit", session.file("noise.yaml", NOISE_RUN).toString());
    ok("record", "latest", session.file("noise.csv", LAPS).toString());
    ok("close-day", "latest");
  }

  private static String[] bringIn(Path old) {
    String options =
        "--rider|R. Lind|--trail|Quarry loop|--day|2024-05-18"
            + "|--map|lap time=Zeit|--setup|Fahrwerk|--void|kaputt";
    return ("import-day|" + old + "|" + options).split("\\|");
  }

  @Test
  void theReviewOfAnOpenNoiseRunShowsWhatItTellsWithoutAKeyAtEveryStep() {
    ok("commit", session.file("noise.yaml", NOISE_RUN).toString());
    String begun = ok("review", "latest").out();
    assertThat(begun)
        .contains("R. Lind on Quarry loop, 2026-11-07: an open noise run.")
        .contains("0 of 6 laps recorded so far, 0 void; the day is not closed")
        .contains("lap time: no day has enough stints to tell its noise.");
    ok("record", "latest", session.file("noise.csv", LAPS).toString());
    assertThat(ok("review", "latest").out())
        .contains("6 of 6 laps recorded so far, 1 void; the day is not closed")
        .contains("from stint to stint, same setup");
    ok("close-day", "latest");
    String closed = ok("review", "latest").out();
    assertThat(closed).contains("6 of 6 laps recorded, 1 void.").doesNotContain("so far");
    String noise = ok("noise").out().lines().skip(1).findFirst().orElseThrow().strip();
    assertThat(closed).contains(noise);
    ok("close-review", "latest");
    assertThat(ok("review", "latest").out()).isEqualTo(closed);
    assertThat(ok("review", "latest", "--json").out())
        .contains("\"measure\" : \"lap time\"", "\"stint_means\"", "\"source\" : \"noise run\"");
    ok("abandon", "latest", "--reason", "wrong trail");
    assertThat(ok("review", "latest").out())
        .contains("It was abandoned: wrong trail")
        .doesNotContain("same setup");
  }

  /** The id of an old day that was brought in. */
  private static String brought(CommandLineSession.Ran ran) {
    return ran.after("session").replace(",", "");
  }

  @Test
  void theReviewOfAnOldDayShowsItsNoiseToo() {
    Path old =
        session.file("old.csv", "Zeit;Fahrwerk;kaputt\n95;K;\n94;K;\n95.5;K;\n94.4;K;\n96;K;ja\n");
    String brought = brought(ok(bringIn(old)));
    assertThat(ok("review", brought).out())
        .contains("an old day, not blinded", "from stint to stint, same setup")
        .doesNotContain("laps recorded");
  }

  @Test
  void anOpenNoiseRunHasNoPhraseNoKeyAndNoVerdict() {
    CommandLineSession.Ran committed =
        ok("commit", session.file("noise.yaml", NOISE_RUN).toString());
    assertThat(committed.out()).contains("open").doesNotContain("phrase").doesNotContain("sealed:");
    ok("record", "latest", session.file("noise.csv", LAPS).toString());
    ok("close-day", "latest");
    ok("close-review", "latest");
    for (String command : new String[] {"unseal", "helper"}) {
      CommandLineSession.Ran ran = session.run(command, "latest");
      assertThat(ran.code()).as(command).isEqualTo(2);
      assertThat(ran.err()).as(command).contains("has no key");
    }
  }

  @Test
  void aNoiseRunTellsItsNoiseOnceTheDayIsClosed() {
    ok("commit", session.file("noise.yaml", NOISE_RUN).toString());
    ok("record", "latest", session.file("noise.csv", LAPS).toString());
    assertThat(ok("noise").out()).contains("Nothing is known yet of R. Lind on Quarry loop");
    ok("close-day", "latest");
    // Line through 95.0, 94.2, 95.4, 94.8, 94.0 at 1, 2, 3, 5, 6 by hand: sigma .6068 on 3 df,
    // slope -.11395.
    String noise = ok("noise").out();
    assertThat(noise)
        .contains("0.61 s from stint to stint", "3 independent values", "drift of −0.6 s");
    assertThat(noise).contains("if laps behave normally", "noise run", "1 of 6 laps void");
  }

  @Test
  void oldDaysAddToTheNoiseAndNeverGetAVerdict() {
    noiseRun();
    Path old =
        session.file(
            "old.csv",
            "Runde;Zeit;Fahrwerk;kaputt\n"
                + "1;95,1;K;\n"
                + "2;94,0;L;\n"
                + "3;95,3;K;\n"
                + "4;94,6;L;\n"
                + "5;1:35,2;K;ja\n"
                + "6;93,9;L;\n"
                + "7;94,7;K;\n");
    CommandLineSession.Ran ran = ok(bringIn(old));
    assertThat(ran.out()).contains("never gives a verdict", "from 2 days");
    String noise = ok("noise", "--rider", "r. lind").out();
    assertThat(noise).contains("18 May 2024, old day, not blinded", "1 of 7 laps void");
    // Seven laps less one void, two setups and a line leave three; with the noise run six.
    assertThat(noise).contains("6 independent values from 2 days");
    assertThat(session.run("review", brought(ran)).out())
        .contains("old day, not blinded", "no key");
    CommandLineSession.Ran card = session.run("card", brought(ran), "--out", folder.toString());
    assertThat(card.code()).isEqualTo(2);
    assertThat(card.err().strip().lines()).hasSize(1);
    assertThat(card.err()).contains("open noise run or an old day");
    CommandLineSession.Ran again = session.run(bringIn(old));
    assertThat(again.err()).contains("in the notebook already");
  }

  @Test
  void whatIsWrongWithAnOldDayIsNamedAndNothingIsBroughtIn() {
    String[] tail = {
      "--rider", "R. Lind", "--trail", "Quarry loop", "--day", "2024-05-18", "--map"
    };
    assertThat(bring("t\n95\n96\n97\n", tail, "lap time=Zeit").err())
        .contains("Line 1", "\"Zeit\" is not known", "t");
    assertThat(bring("t\n95.1\nfast\n97\n", tail, "lap time=t").err())
        .contains("Line 3, column 1", "\"fast\" is not a time");
    assertThat(bring("t;x\n95.1;1\n96,2;1\n97;1\n", tail, "lap time=t").err())
        .contains("another decimal sign than line 2");
    assertThat(bring("t\n95\n96\n", tail, "lap time=t").err()).contains("2 laps");
    assertThat(ok("notebook").out()).contains("empty");
  }

  private CommandLineSession.Ran bring(String csv, String[] tail, String map) {
    String[] all = new String[tail.length + 3];
    all[0] = "import-day";
    all[1] = session.file("old.csv", csv).toString();
    System.arraycopy(tail, 0, all, 2, tail.length);
    all[all.length - 1] = map;
    CommandLineSession.Ran ran = session.run(all);
    assertThat(ran.code()).isEqualTo(2);
    return ran;
  }

  @Test
  void aFileOfSeveralDaysIsBroughtInByDateWithACommaInQuotes() {
    String csv =
        "d,n,t\n2024-05-18,2,\"94,1\"\n2024-05-18,1,\"95,2\"\n2024-05-18,3,\"96,0\"\n"
            + "19.5.2024,1,\"93,1\"\n19.5.2024,2,\"94,2\"\n19.5.2024,3,\"92,0\"\n";
    String[] all = {
      "import-day",
      session.file("days.csv", csv).toString(),
      "--rider",
      "R. Lind",
      "--trail",
      "Quarry loop",
      "--date",
      "d",
      "--lap",
      "n",
      "--map",
      "lap time=t",
      "--decimals",
      "comma"
    };
    assertThat(ok(all).out()).contains("3 laps of Quarry loop, 2024-05-18", "2024-05-19");
    assertThat(ok("noise").out()).contains("from 2 days", "18 May 2024", "19 May 2024");
    all[all.length - 1] = "dash";
    assertThat(session.run(all).err()).contains("\"dash\" is no sign of decimals");
  }

  @Test
  void timesInMillisecondsBecomeSeconds() {
    Path old = session.file("ms.csv", "t\n95100\n94000\n95300\n94600\n95000\n");
    ok(
        "import-day",
        old.toString(),
        "--rider",
        "R. Lind",
        "--trail",
        "Quarry loop",
        "--day",
        "2024-05-18",
        "--map",
        "lap time=t",
        "--unit",
        "lap time=ms");
    assertThat(ok("noise").out()).contains("s from stint to stint").doesNotContain("ms");
    assertThat(ok("noise").out()).containsPattern("lap time: 0\\.\\d+ s from");
  }

  @Test
  void aPlanIsAnsweredWithTheNoiseThatTheNotebookKnowsOfItsOtherMeasures() {
    String plan =
        blindlap.desk.TestDay.SIXTEEN
            .replace("role: primary, worthwhile: 0.5}", "role: watch for harm, worthwhile: 0.5}")
            .replace(
                "name: trust, kind: category scale,",
                "name: trust, kind: category scale, role: primary, worthwhile: 1,");
    String file = session.file("next.yaml", plan).toString();
    String before = ok("plan", file, "--days", "1").out();
    assertThat(before).contains("lap time, watched for harm: a harm that exceeds 0.5 s by 1.");
    assertThat(before).contains("times its own noise or more");
    assertThat(session.notebook).doesNotExist();

    noiseRun();
    assertThat(ok("plan", file, "--days", "1").out())
        .containsPattern(
            "lap time, watched for harm: a harm that exceeds 0.5 s by [0-9.]+ s or more")
        .contains("The noise of lap time is 0.61 s (from 1 day, 7 Nov 2026).");
  }

  @Test
  void aPlanIsAnsweredThoughTheNotebookCannotBeAsked() throws java.io.IOException {
    java.nio.file.Files.writeString(session.notebook, "no notebook at all");
    CommandLineSession.Ran ran =
        session.run("plan", session.file("next.yaml", blindlap.desk.TestDay.SIXTEEN).toString());
    assertThat(ran.code()).isZero();
    assertThat(ran.out()).contains("times its own noise or more", "Nothing is committed yet.");
    assertThat(ran.err())
        .startsWith("The notebook was not asked for your noise, nor for the series of the plan: ")
        .hasLineCount(1);
    assertThat(session.notebook).hasContent("no notebook at all");
  }

  /** Medians of three normal laps scatter √(3 · .4487) times as much as their means. */
  @Test
  void aPlanOfMediansTakesTheNoiseOfMeansAsMuchLargerAsMediansMayScatter() {
    String three = NOISE_RUN + "laps: {warm_up: 0, settling: 0, scored: 3}\n";
    ok("commit", session.file("three.yaml", three).toString());
    StringBuilder laps = new StringBuilder("lap;lap time\n");
    for (int lap = 1; lap <= 18; lap++) {
      laps.append(lap).append(';').append(95 + lap * lap * lap % 11 * 3).append(".0\n");
    }
    ok("record", "latest", session.file("three.csv", laps.toString()).toString());
    ok("close-day", "latest");
    double mean = noiseOf("mean");
    assertThat(noiseOf("median") / mean).isCloseTo(Math.sqrt(3 * .4487), within(0.02));
  }

  private double noiseOf(String summary) {
    String plan =
        NOISE_RUN
                .replace("kind: noise run\n", "")
                .replace("{name: Shock K}", "{name: Shock K}, {name: Shock L}")
                .replace("primary}", "primary, worthwhile: 0.5, summary: " + summary + "}")
                .replace("stints: 6", "stints: 12")
            + "differences_reason: whole parts are compared\n"
            + "laps: {warm_up: 0, settling: 0, scored: 3}\n";
    String said = ok("plan", session.file("three.yaml", plan).toString(), "--days", "1").out();
    // Of medians the most that it can be is said beside the noise of means.
    Matcher noise =
        Pattern.compile("Your noise is ([0-9.]+) s[^\n]*?(?:as planned it is .*?([0-9.]+) s)?\\.\n")
            .matcher(said);
    assertThat(noise.find()).as(said).isTrue();
    return Double.parseDouble(noise.group(noise.group(2) == null ? 1 : 2));
  }

  /** A noise run of three laps a stint whose laps scatter and whose stints hardly do, or not. */
  private void threeLaps(double shared, double own) {
    String three = NOISE_RUN.replace("stints: 6", "stints: 20");
    ok("commit", session.file("apart.yaml", three + laps(3)).toString());
    java.util.Random random = new java.util.Random(4);
    StringBuilder laps = new StringBuilder("lap;lap time\n");
    for (int stint = 0; stint < 20; stint++) {
      double level = 95 + shared * random.nextGaussian();
      for (int lap = 1; lap <= 3; lap++) {
        laps.append(3 * stint + lap)
            .append(';')
            .append("%.2f%n".formatted(level + own * random.nextGaussian()));
      }
    }
    ok("record", "latest", session.file("apart.csv", laps.toString()).toString());
    ok("close-day", "latest");
  }

  private static String laps(int scored) {
    return "laps: {warm_up: 0, settling: 0, scored: " + scored + "}\n";
  }

  @Test
  void aDayOfSeveralLapsTellsLapNoiseAndStintNoiseApart() {
    threeLaps(0.02, 1);
    assertThat(ok("noise").out())
        .contains("Most of the noise sits in the lap: riding more laps a stint helps.")
        .contains("from 1 day with two and more scored laps a stint");
    String json = ok("noise", "--json").out();
    assertThat(json).contains("\"apart\"", "\"stint_share_interval_95\"", "\"scored_laps\" : 3");
  }

  @Test
  void whereStintsScatterMoreLapsHelpLittleAndTheNoiseSaysSo() {
    threeLaps(2, 0.1);
    assertThat(ok("noise").out())
        .contains("Most of the noise sits in the stint: more laps a stint help little.");
  }

  @Test
  void oneScoredLapAStintTellsNothingOfLapAndStintApart() {
    noiseRun();
    assertThat(ok("noise").out())
        .contains("How much of the noise sits in the lap and how much in the stint is not known");
    assertThat(ok("noise", "--json").out()).doesNotContain("\"apart\"");
  }

  private String planned(int scored) {
    String plan =
        NOISE_RUN
                .replace("kind: noise run\n", "")
                .replace("{name: Shock K}", "{name: Shock K}, {name: Shock L}")
                .replace("primary}", "primary, worthwhile: 0.5}")
                .replace("stints: 6", "stints: 16")
            + laps(scored);
    String file = session.file("planned.yaml", plan).toString();
    return ok("plan", file, "--days", "1").out().lines().skip(1).findFirst().orElseThrow();
  }

  @Test
  void theNumberOfScoredLapsChangesWhatADayCanShow() {
    noiseRun();
    assertThat(planned(1)).containsPattern("can show [0-9.]+.s or more");
    assertThat(planned(3)).containsPattern("can show [0-9.]+ to [0-9.]+.s or more");
    assertThat(planned(1)).isNotEqualTo(planned(3));
  }

  @Test
  void aDayOfSeveralLapsMakesTheRangeOfOtherNumbersNarrower() {
    noiseRun();
    double unknown = width(planned(3));
    threeLaps(0.1, 0.3);
    assertThat(width(planned(1))).as("one lap a stint was ridden itself").isZero();
    assertThat(width(planned(6))).isBetween(1.0, unknown);
  }

  @Test
  void theSampleNoiseRunTellsWhereItsNoiseSits() throws IOException {
    Path sample = Path.of("sample-sessions/noise-run-on-quarry-loop");
    ok("commit", sample.resolve("plan.yaml").toString());
    ok("record", "latest", sample.resolve("laps.csv").toString());
    ok("close-day", "latest");
    assertThat(ok("noise").out()).contains("Most of the noise sits in the lap");
    ReviewJsonPage.section("An open noise run")
        .agreesWith(List.of(ok("review", "latest", "--json").out()));
  }

  /** The upper end over the lower; 0 if it is no range. */
  private static double width(String answer) {
    Matcher range = Pattern.compile("([0-9.]+) to ([0-9.]+).s or more").matcher(answer);
    return range.find()
        ? Double.parseDouble(range.group(2)) / Double.parseDouble(range.group(1))
        : 0;
  }
}
