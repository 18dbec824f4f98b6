package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.QuarryTrack;
import blindlap.desk.SetClock;
import blindlap.exchange.QuarryTrail;
import blindlap.exchange.TrailFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Nothing that can be typed without the phrase tells the order. Two notebooks are made that differ
 * in the order alone (clock, ids, codes, nonce, warm-up, phrase, salt and IVs are fixed), and in
 * every sealed state every command gives the same words and writes the same files. Only
 * fingerprints and hashes, 64 hexadecimal digits each, and what is encrypted differ; they are
 * masked, and the length of what is encrypted is not.
 */
class SealedCommandsTest {
  private static final String PLAN =
      Plans.SMALL
          + """
          covariates:
            - {name: wind, kind: wind, unit: m/s, by: starter, reason: read at the start}
            - {name: legs, kind: fatigue, unit: 0 to 10, by: rider, reason: asked before}
          series: k-or-l
          series_sessions: 2
          """
          + QuarryTrack.ofPlan();
  private static final int ORDERS = 2;

  /** So many of the commands, the first ones, need the key. */
  private static final int NEED_THE_KEY = 18;

  private static final Pattern HASH = Pattern.compile("(?:[0-9a-f]{8}[ \n]?){8}");

  /** What is encrypted stands in the session file; its length may not vary. */
  private static final Pattern SEALED = Pattern.compile("\"ciphertext\":\"([^\"]+)\"");

  private static final List<String> STATES =
      List.of("committed", "riding", "day closed", "review closed");

  @TempDir private static Path folder;

  /** What was printed and written in each state, by order. */
  private static final Map<String, Map<String, List<String>>> SEEN = new TreeMap<>();

  private static final List<CommandLineSession.Ran> REFUSED = new ArrayList<>();
  private static final List<Map<String, String>> EXPORTS = new ArrayList<>();

  @BeforeAll
  static void typeEverythingInEveryState() throws IOException {
    for (long seed = 1; SEEN.size() < ORDERS; seed++) {
      assertThat(seed).as("seeds tried").isLessThan(20);
      day(seed);
    }
  }

  private static void day(long seed) throws IOException {
    Path home = Files.createDirectories(folder.resolve("order-" + seed));
    CommandLineSession day = CommandLineSession.ofOrder(home, seed);
    String id = day.commit(PLAN);
    String order = day.run("helper", id).out().replaceAll("(?s).*stint  code  fit", "");
    if (SEEN.containsKey(order)) {
      return;
    }
    // From here on nobody knows the phrase.
    day.types("");
    Map<String, List<String>> seen = new LinkedHashMap<>();
    ok(
        day.run(
            "trail",
            "--read",
            day.file("trail.json", TrailFile.text(QuarryTrail.trail())).toString()));
    Files.write(day.folder.resolve("quarry.gpx"), recording(order));
    seen.put("committed", everything(day, id, "committed"));
    StringBuilder laps = new StringBuilder("lap;lap time;grip;wind;legs;guess\n");
    for (int lap = 1; lap <= 8; lap++) {
      laps.append(lap).append(";9").append(lap * lap % 7).append(".5;").append(40 + lap * 5 % 9);
      laps.append(";").append(lap * 3 % 8).append(";").append(lap * 5 % 7);
      laps.append(lap % 3 == 0 ? ";-\n" : lap % 2 == 0 ? ";A\n" : ";B\n");
    }
    ok(
        day.run(
            "record", id, day.file("laps.csv", laps.toString()).toString(), "--knows-key", "grip"));
    ok(day.run("void", id, "3", "--reason", "puncture"));
    ok(day.run("blind-broken", id, "--stint", "5", "--what", "The cover slipped."));
    seen.put("riding", everything(day, id, "riding"));
    ok(day.run("close-day", id));
    seen.put("day closed", everything(day, id, "day-closed"));
    ok(day.run("close-review", id));
    seen.put("review closed", everything(day, id, "review-closed"));
    SEEN.put(order, seen);
  }

  /** A recorder on the bike: a real swap takes longer, in the hut, with gaps; a dummy does not. */
  private static byte[] recording(String order) {
    QuarryTrack track =
        new QuarryTrack(new SetClock(Instant.parse("2026-11-14T08:00:00Z")), Duration.ZERO);
    List<String> swaps = order.lines().filter(line -> line.contains(" swap")).toList();
    for (int stint = 1; stint <= 8; stint++) {
      boolean real = swaps.get(stint - 1).contains("real swap");
      track.aside(real ? 0.003 : 0.001, real ? 700 : 400, real ? 1 : 9).silent(real ? 40 : 0);
      track.ride(stint == 6 ? 100 : 0, 700, 6 + stint * 3 % 5 / 10.0);
    }
    return track.gpx();
  }

  private static void ok(CommandLineSession.Ran ran) {
    assertThat(ran.code()).as(ran.err()).isZero();
  }

  private static List<String> everything(CommandLineSession day, String id, String state) {
    Path out = day.folder.resolve("out-" + state);
    List<List<String>> commands =
        List.of(
            List.of("review", id),
            List.of("review", id, "--json"),
            List.of("report", id, "--out", out.resolve("report").toString()),
            List.of("card", id, "--out", out.resolve("card").toString()),
            List.of("amend", id, "--text", "The gauge read low.", "--reason", "found later"),
            List.of("unseal", id),
            List.of("mount", id),
            List.of("prepare", id),
            List.of("masks", id, "--seal"),
            List.of("masks", id, "--guess"),
            List.of("masks", id, "--read"),
            List.of("one-stint", id),
            List.of("one-stint", id, "--make"),
            List.of("look", id),
            List.of("helper", id),
            List.of("helper", id, "--day-over"),
            List.of("catch-up", id, day.file("paper.csv", "stint;fitted\n1;A\n").toString()),
            List.of("sheets", id, "--helper", "--out", out.resolve("sheets").toString()),
            List.of("export", id, "--out", out.resolve("package").toString()),
            List.of("catch-up", id, "--form", out.resolve("form.csv").toString()),
            List.of("recording", id, day.folder.resolve("quarry.gpx").toString()),
            List.of(
                "recording", id, "--settle=6=keep", day.folder.resolve("quarry.gpx").toString()),
            List.of("void", id, "4", "--from=Bridge", "--to=Ford", "--reason=traffic"),
            List.of("codes", id),
            List.of("phones", id),
            List.of("noise"),
            List.of("series"),
            List.of("series", "k-or-l"),
            List.of("series", "k-or-l", "--json"),
            List.of("series", "k-or-l", "--package", out.resolve("series").toString()),
            List.of("series", "k-or-l", "--next", "--out", out.resolve("next.yaml").toString()),
            List.of("field"),
            List.of("field", "--rider", "R. Lind", "--json"),
            List.of("profile"),
            List.of("profile", "Fast and steep: lap time, harshness"),
            List.of("profile", "Fast and steep"),
            List.of("profile", "--remove", "Fast and steep"),
            List.of("trail"),
            List.of("trail", "Quarry loop"),
            List.of("trail", "Quarry loop", "--geojson", out.resolve("trail.json").toString()),
            List.of("fingerprint", id),
            List.of("fingerprint", id, "--compare", "0123456789abcdef"),
            List.of("review", "--from", out.resolve("package").toString()),
            List.of("plan", "--like", id, "--series-of", "2"),
            List.of("plan", "--like", id, "--out", out.resolve("again.yaml").toString()),
            List.of("plan", "--committed", id),
            List.of("plan", "--committed", id, "--out", out.resolve("it.yaml").toString()),
            List.of("notebook"),
            List.of("notebook", "--verify"),
            List.of("notebook", "--search", "Shock L"));
    List<String> seen = new ArrayList<>();
    for (List<String> command : commands) {
      CommandLineSession.Ran ran = day.run(command.toArray(String[]::new));
      if (commands.indexOf(command) < NEED_THE_KEY) {
        REFUSED.add(ran);
      }
      seen.add(command.get(0) + " " + ran.code() + "\n" + masked(day, ran.out() + "|" + ran.err()));
    }
    EXPORTS.add(files(out.resolve("package")));
    files(out).forEach((name, text) -> seen.add(name + "\n" + masked(day, text)));
    return seen;
  }

  private static String masked(CommandLineSession day, String text) {
    String sealed =
        SEALED
            .matcher(text.replace(day.folder.toString(), "HOME"))
            .replaceAll(found -> "\"ciphertext\":" + found.group(1).length());
    return HASH.matcher(sealed).replaceAll("*");
  }

  private static Map<String, String> files(Path out) {
    Map<String, String> texts = new TreeMap<>();
    if (!Files.exists(out)) {
      return texts;
    }
    try (Stream<Path> all = Files.walk(out)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        texts.put(out.relativize(file).toString(), Files.readString(file, StandardCharsets.UTF_8));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return texts;
  }

  @Test
  void everyCommandSaysAndWritesTheSameWhateverTheOrder() {
    assertThat(SEEN).as("orders that differ, or this shows nothing").hasSize(ORDERS);
    Map<String, List<String>> first = SEEN.values().iterator().next();
    SEEN.forEach(
        (order, seen) -> {
          assertThat(seen).containsOnlyKeys(STATES);
          assertThat(seen.get("riding"))
              .anyMatch(text -> text.contains("Taken in from quarry.gpx: the times of 8 laps."));
          seen.forEach(
              (state, texts) ->
                  assertThat(texts).as(state).isEqualTo(first.get(state)).hasSizeGreaterThan(20));
        });
  }

  @Test
  void whatNeedsTheKeyIsRefusedInOneSentenceAndWritesNothing() {
    assertThat(REFUSED).hasSize(ORDERS * STATES.size() * NEED_THE_KEY);
    for (CommandLineSession.Ran ran : REFUSED) {
      assertThat(ran.code()).isEqualTo(2);
      assertThat(ran.out()).isEmpty();
      assertThat(ran.err().strip().lines()).hasSize(1);
      assertThat(ran.err()).doesNotContain("Shock").doesNotContain("Exception");
    }
    assertThat(EXPORTS).hasSize(ORDERS * STATES.size());
    for (Map<String, List<String>> seen : SEEN.values()) {
      seen.values()
          .forEach(
              texts ->
                  assertThat(texts)
                      .noneMatch(t -> t.startsWith("report/"))
                      .noneMatch(t -> t.startsWith("card/"))
                      .noneMatch(t -> t.startsWith("sheets/")));
    }
  }

  @Test
  void theBlindExportHoldsCodesAndNoSetupLetterOrGuess() {
    for (Map<String, String> export : EXPORTS) {
      Set<String> tables =
          new TreeSet<>(
              Set.of(
                  "covariates.csv",
                  "datapackage.json",
                  "laps.csv",
                  "measures.csv",
                  "README.md",
                  "session.txt"));
      if (export.get("session.txt").contains("RecordingBroughtIn")) {
        tables.addAll(Set.of("passes.csv", "recordings.csv"));
      }
      assertThat(export.keySet()).isEqualTo(tables);
      assertThat(export.get("session.txt")).doesNotContain("SealOpened").doesNotContain("order=");
      export.forEach(
          (name, text) -> {
            if (!name.equals("session.txt")) {
              assertThat(text)
                  .as(name)
                  .doesNotContain("Shock")
                  .doesNotContainIgnoringCase("guess")
                  .doesNotContain("blind_broken");
            }
          });
      assertThat(export.get("laps.csv")).doesNotContainPattern("(?m)(^|,)[AB](,|$)");
    }
    assertThat(EXPORTS).anyMatch(export -> export.containsKey("passes.csv"));
    assertThat(EXPORTS.get(1).get("laps.csv").lines()).hasSize(9).anyMatch(l -> l.contains("punc"));
  }

  @Test
  void theKeyItselfTellsTheNotebooksApart() {
    assertThat(SEEN.keySet()).allMatch(order -> order.contains("real swap"));
  }
}
