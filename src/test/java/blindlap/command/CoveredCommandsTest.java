package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What can be typed on a day alone tells of a drawn order no more than what was shown, and of
 * masked labels nothing: days that differ in what is to come, or in which label is on which part
 * alone, give the same words and files. Fingerprints, hashes and what is encrypted are masked.
 */
class CoveredCommandsTest {
  private static final int ORDERS = 10;
  private static final Pattern HASH = Pattern.compile("(?:[0-9a-f]{8}[ \n]?){8}");
  private static final Pattern SEALED = Pattern.compile("\"ciphertext\":\"([^\"]+)\"");

  @TempDir Path folder;

  private static String plan(String level) {
    return Plans.SMALL.replace("protocol: eight-stints", "protocol: whole-day")
        + "laps: {warm_up: 1}\ndifferences_reason: whole parts\n"
        + "blinding: {level: "
        + level
        + ", prepared_by: Mo}\n";
  }

  private static CommandLineSession.Ran ok(CommandLineSession.Ran ran) {
    assertThat(ran.code()).as(ran.err()).isZero();
    return ran;
  }

  private static String committed(CommandLineSession day, String level) {
    String file = day.file("plan.yaml", plan(level)).toString();
    return ok(day.run("commit", file)).after("covered: session");
  }

  private static void ride(CommandLineSession day, String id, int stint) {
    String lap = "lap;lap time;grip\n" + stint + ";1:3" + stint % 5 + ".2;" + (40 + stint) + "\n";
    ok(day.run("record", id, day.file("lap.csv", lap).toString()));
  }

  /** Everything that can be typed now, and what it writes. */
  private static List<String> everything(CommandLineSession day, String id, String state)
      throws IOException {
    Path out = day.folder.resolve("out-" + state);
    List<String> seen = new ArrayList<>();
    for (List<String> command :
        List.of(
            List.of("review", id),
            List.of("card", id, "--out", day.folder.resolve("card").toString()),
            List.of("unseal", id),
            List.of("masks", id, "--read"),
            List.of("masks", id, "--guess"),
            List.of("one-stint", id),
            List.of("one-stint", id, "--make"),
            List.of("prepare", id),
            List.of("helper", id),
            List.of("look", id),
            List.of("codes", id),
            List.of("phones", id),
            List.of("fingerprint", id),
            List.of("export", id, "--out", out.toString()),
            List.of("review", "--from", out.toString()),
            List.of("plan", "--like", id),
            List.of("plan", "--committed", id),
            List.of("notebook"),
            List.of("notebook", "--verify"),
            List.of("notebook", "--search", "Shock L"))) {
      CommandLineSession.Ran ran = day.run(command.toArray(String[]::new));
      seen.add(command.get(0) + " " + ran.code() + "\n" + masked(day, ran.out() + "|" + ran.err()));
    }
    try (Stream<Path> all = Files.walk(out)) {
      for (Path file : all.filter(Files::isRegularFile).sorted().toList()) {
        String text = Files.readString(file, StandardCharsets.UTF_8);
        seen.add(out.relativize(file) + "\n" + masked(day, text));
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

  @Test
  void ofADrawnOrderEveryCommandTellsWhatWasShownAndNothingOfWhatComes() throws IOException {
    Map<String, List<String>> told = new HashMap<>();
    Map<String, Set<String>> orders = new HashMap<>();
    for (long seed = 1; seed <= ORDERS; seed++) {
      Path home = Files.createDirectories(folder.resolve("order-" + seed));
      CommandLineSession day = CommandLineSession.ofOrder(home, seed);
      String id = committed(day, "drawn");
      String shown = "";
      same(told, shown, everything(day, id, "committed"));
      for (int stint = 0; stint <= 1; stint++) {
        CommandLineSession.Ran mount = ok(day.run("mount", id));
        shown += "\n" + mount.out();
        same(told, shown, everything(day, id, "mounted-" + stint));
      }
      assertThat(day.run("mount", id).out())
          .as("the next waits for its lap")
          .doesNotContain("Shock");
      ride(day, id, 1);
      same(told, shown + " ridden", everything(day, id, "ridden"));
      ok(
          day.run(
              "cut-short",
              id,
              "--after-stint",
              "1",
              "--reason",
              "dark",
              "--decided-by",
              "R. Lind"));
      ok(day.run("close-day", id));
      ok(day.run("close-review", id));
      orders
          .computeIfAbsent(shown, key -> new HashSet<>())
          .add(ok(day.run("unseal", id)).after("Order ridden:"));
    }
    assertThat(orders.values())
        .as("days alike so far and not to the end")
        .anyMatch(all -> all.size() > 1);
    assertThat(orders.keySet()).as("and days that differ already").hasSizeGreaterThan(1);
  }

  private static void same(Map<String, List<String>> told, String shown, List<String> seen) {
    List<String> before = told.putIfAbsent(shown, seen);
    if (before != null) {
      assertThat(seen).hasSameSizeAs(before);
      for (int i = 0; i < seen.size(); i++) {
        assertThat(seen.get(i)).isEqualTo(before.get(i));
      }
    }
  }

  @Test
  void whichLabelIsOnWhichPartIsToldByNoCommandBeforeItIsRead() throws IOException {
    List<List<String>> days = new ArrayList<>();
    for (String mapping : List.of("Shock K, Shock L", "Shock L, Shock K")) {
      Path home = Files.createDirectories(folder.resolve("mapping-" + days.size()));
      CommandLineSession day = CommandLineSession.ofOrder(home, 3);
      String id = committed(day, "masked");
      List<String> seen = new ArrayList<>(everything(day, id, "committed"));
      day.answers.add(mapping);
      assertThat(ok(day.run("masks", id, "--seal")).out())
          .contains("X is on " + mapping.substring(0, 7));
      seen.addAll(everything(day, id, "masked"));
      for (int stint = 0; stint <= 8; stint++) {
        seen.add(ok(day.run("mount", id)).out());
        seen.add(day.run("masks", id, "--seal").err());
        if (stint > 0) {
          ride(day, id, stint);
        }
      }
      ok(day.run("blind-broken", id, "--stint", "8", "--what", "A mask tore."));
      seen.addAll(everything(day, id, "ridden"));
      ok(day.run("close-day", id));
      ok(day.run("close-review", id));
      seen.add(masked(day, ok(day.run("unseal", id)).out()));
      seen.add(masked(day, ok(day.run("review", id)).out()));
      days.add(seen);
    }
    assertThat(days.get(0)).hasSameSizeAs(days.get(1)).hasSizeGreaterThan(60);
    for (int i = 0; i < days.get(0).size(); i++) {
      assertThat(days.get(0).get(i)).isEqualTo(days.get(1).get(i));
    }
    assertThat(days.get(0).get(days.get(0).size() - 1)).contains("it came out which").contains("X");
  }
}
