package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A steps day on the command line, from the plan to the report. */
class StepsDayCommandsTest {
  private static final String PLAN =
      """
      question: Which rebound is quickest?
      kind: steps day
      rider: M. Oss
      trail: Quarry loop
      day: 2026-11-28
      setups: [{name: Shock K}]
      steps_day: {setting: rebound, unit: clicks, levels: %s, least: 2, most: 16, source: p. 12}
      measures:
        - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.8}
        - {name: grip, kind: line scale, unit: points, low_words: none, high_words: full}
      blinding: {helper: T. Berg}
      """;

  private static final Pattern HASH = Pattern.compile("(?:[0-9a-f]{8}[ \n]?){8}");
  private static final Pattern SEALED = Pattern.compile("\"ciphertext\":\"([^\"]+)\"");

  @TempDir private Path folder;

  private static String plan(String levels, int stints) {
    return PLAN.formatted(levels) + "stints: " + stints + "\n";
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[4, 7, 10] | 9",
        "[4, 7, 10, 13] | 12",
        "[3, 5, 7, 9, 12] | 15",
        "[2, 4, 6, 8, 9, 11] | 18"
      })
  void aDayOfThreeToSixLevelsGoesFromThePlanToTheReport(String levels, int stints)
      throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    String text = plan(levels, stints);
    int largest = Integer.parseInt(levels.replaceAll(".*, (\\d+)\\]", "$1"));
    CommandLineSession.Ran planned = day.run("plan", day.file("plan.yaml", text).toString());
    assertThat(planned.code()).as(planned.err()).isZero();
    assertThat(planned.out())
        .contains(stints + " stints can show", "from the lowest to the highest level")
        .contains(
            "%d clicks at each of %d handlings, %d on the day, which wear the dial."
                .formatted(2 * largest, stints + 1, 2 * largest * (stints + 1)))
        .contains("Follow the maker's manual");
    String id = day.commit(text);
    assertThat(day.run("plan", "--committed", id).out())
        .contains("One setup, Shock K: rebound at " + levels.substring(1, levels.length() - 1))
        .contains("rebound: 2 to 16 clicks, the maker's limits as you typed them (p. 12).")
        .contains("which wear the dial");

    CommandLineSession.Ran helper = day.run("helper", id);
    Matcher ways = Pattern.compile("(?:real|dummy) swap: (\\d+) in").matcher(helper.out());
    assertThat(ways.results().count()).isEqualTo(stints);
    assertThat(helper.out())
        .contains("rebound: 2 to 16 clicks, the maker's limits as you typed them (p. 12)")
        .contains(2 * largest + " clicks at every handling");

    String wrong = "lap;lap time;guess\n1;1:31.2;B\n";
    CommandLineSession.Ran refused = day.run("record", id, day.file("wrong.csv", wrong).toString());
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains("\"B\" does not say which end").contains("low or high");
    CommandLineSession.Ran recorded =
        day.run("record", id, day.file("laps.csv", guessed(stints)).toString());
    assertThat(recorded.code()).as(recorded.err()).isZero();
    assertThat(day.run("close-day", id).code()).isZero();
    assertThat(day.run("close-review", id).code()).isZero();
    assertThat(day.run("unseal", id).out()).contains("Both fingerprints match");
    CommandLineSession.Ran review = day.run("review", id);
    assertThat(review.code()).as(review.err()).isZero();
    assertThat(review.out())
        .contains(stints + " of " + stints + " stints used")
        .containsPattern("\\d+ named the end that the level was nearer to, \\d+ the other");
    for (String[] command :
        new String[][] {
          {"review", id, "--json"},
          {"report", id, "--out", folder.resolve("report").toString()},
          {"export", id, "--out", folder.resolve("package").toString()},
          {"review", "--from", folder.resolve("package").toString()},
          {"plan", "--like", id, "--out", folder.resolve("again.yaml").toString()},
        }) {
      CommandLineSession.Ran ran = day.run(command);
      assertThat(ran.code()).as(String.join(" ", command) + ran.err()).isZero();
    }
    assertThat(Files.readString(folder.resolve("again.yaml")))
        .contains("name: Shock K", "kind: steps day", "setting: rebound")
        .contains("levels: " + levels.substring(1, levels.length() - 1));
    assertThat(Files.readString(folder.resolve("package").resolve("stints.csv")))
        .contains(",low,", ",high,", ",-,");
    Path report = folder.resolve("report");
    try (Stream<Path> files = Files.list(report)) {
      Path html = files.filter(file -> file.toString().endsWith(".html")).findFirst().orElseThrow();
      assertThat(Files.readString(html).replaceAll("<[^>]*>", "|"))
          .contains("|nearer the low end|", "|nearer the high end|", "Estimate: x'Wy/x'Wx")
          .doesNotContain("Estimate: z'Wy");
    }
    assertThat(Files.readString(folder.resolve("package").resolve("levels.csv")).lines())
        .hasSize(1 + levels.split(",", -1).length);
    assertThat(Files.readString(folder.resolve("package").resolve("README.md")))
        .contains("levels of one setting, whose numbers stand in `levels.csv`");
    assertThat(day.run("notebook").out())
        .contains("Steps day: Shock K, rebound at " + levels.substring(1, 2) + ", ");
    for (String words : List.of("rebound", "Shock K clicks", "steps day " + largest + " clicks")) {
      assertThat(day.run("notebook", "--search", words).out()).contains(id.substring(0, 8));
    }
    assertThat(day.run("notebook", "--search", "compression").out())
        .doesNotContain(id.substring(0, 8));
    assertThat(day.run("notebook", "--verify").code()).isZero();
  }

  /** Laps with guesses of the end, as they can be typed. */
  private static String guessed(int count) {
    String[] said = {"low", "HIGH", "-", "l", "nearer the high end"};
    StringBuilder csv = new StringBuilder();
    for (String row : Plans.laps(count).lines().toList()) {
      int lap = row.startsWith("lap") ? -1 : Integer.parseInt(row.split(";", -1)[0]);
      csv.append(row).append(';').append(lap < 0 ? "guess" : said[lap % 5]).append('\n');
    }
    return csv.toString();
  }

  @ParameterizedTest
  @ValueSource(strings = {"[4]", "[4, 7, 7.0]", "[low, middle, high]", "[1, 4, 7]", "[4, 7, 17]"})
  void whatIsWrongWithLevelsIsOneSentenceAndNothingIsCommitted(String levels) throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    Path file = day.file("plan.yaml", plan(levels, 9).replace("stints: 9\n", ""));

    for (String command : List.of("plan", "commit")) {
      CommandLineSession.Ran ran = day.run(command, file.toString());

      assertThat(ran.code()).as(ran.out()).isEqualTo(2);
      assertThat((ran.out() + ran.err()).lines().filter(line -> line.contains("steps_day.levels")))
          .hasSize(1);
    }
    assertThat(day.run("notebook").out()).doesNotContain("Steps day");
  }

  @Test
  void aPrimaryMeasureWithoutAWorthwhileDifferenceIsOneSentence() throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    Path file = day.file("plan.yaml", plan("[4, 7, 10]", 9).replace(", worthwhile: 0.8", ""));

    for (String command : List.of("plan", "commit")) {
      CommandLineSession.Ran ran = day.run(command, file.toString());

      assertThat(ran.code()).isEqualTo(2);
      assertThat((ran.out() + ran.err()).lines().filter(line -> line.startsWith("measures[1]")))
          .singleElement()
          .asString()
          .contains("the smallest from the lowest to the highest level");
    }
  }

  @Test
  void aConcealedNullRunIsRefusedInOneSentence() throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    Path file = day.file("plan.yaml", plan("[4, 7, 10]", 9));

    CommandLineSession.Ran ran = day.run("commit", file.toString(), "--null-run");

    assertThat(ran.code()).isEqualTo(2);
    assertThat(ran.err()).contains("A steps day cannot be a concealed null run").hasLineCount(1);
  }

  /** Everything that can be typed without the phrase says the same for orders that differ. */
  @Test
  void commandsAndFilesAreTheSameForTwoOrders() throws IOException {
    Map<String, List<String>> seen = new TreeMap<>();
    for (long seed = 1; seen.size() < 3; seed++) {
      assertThat(seed).isLessThan(20);
      Path home = Files.createDirectories(folder.resolve("order-" + seed));
      CommandLineSession day = CommandLineSession.ofOrder(home, seed);
      String id = day.commit(plan("[4, 7, 10]", 9));
      String order = day.run("helper", id).out().replaceAll("(?s).*stint  code  fit", "");
      if (!seen.containsKey(order)) {
        day.types("");
        seen.put(order, everything(day, id));
      }
    }
    List<String> first = seen.values().iterator().next();
    assertThat(first).hasSizeGreaterThan(20);
    assertThat(seen.values()).allSatisfy(each -> assertThat(each).isEqualTo(first));
    assertThat(seen.keySet()).allMatch(order -> order.contains("out and back"));
  }

  private static List<String> everything(CommandLineSession day, String id) throws IOException {
    Path out = day.folder.resolve("out");
    day.run("record", id, day.file("laps.csv", Plans.laps(7)).toString());
    List<String> seen = new ArrayList<>();
    for (String[] command :
        new String[][] {
          {"sheets", id, "--helper", "--out", out.resolve("secret").toString()},
          {"helper", id},
          {"review", id},
          {"sheets", id, "--out", out.resolve("sheets").toString()},
          {"export", id, "--out", out.resolve("package").toString()},
          {"codes", id},
          {"plan", "--committed", id},
          {"plan", "--like", id, "--out", out.resolve("again.yaml").toString()},
          {"one-stint", id},
          {"fingerprint", id},
          {"notebook"},
          {"notebook", "--search", "clicks"},
          {"close-day", id},
          {"close-review", id},
        }) {
      CommandLineSession.Ran ran = day.run(command);
      seen.add(command[0] + " " + ran.code() + masked(day, ran.out() + ran.err()));
    }
    try (Stream<Path> files = Files.walk(out)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        String text = Files.readString(file, StandardCharsets.ISO_8859_1);
        seen.add(out.relativize(file) + masked(day, text));
      }
    }
    return seen;
  }

  private static String masked(CommandLineSession day, String text) {
    String sealed =
        SEALED
            .matcher(text.replace(day.folder.toString(), "HOME"))
            .replaceAll(found -> "\"ciphertext\":" + found.group(1).length());
    return HASH.matcher(sealed).replaceAll("*");
  }
}
