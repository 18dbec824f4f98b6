package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A command checks session, step, phrase and place first and writes then: whatever it refuses, not
 * a byte of the notebook has changed and no file has come or gone. A command that is not walked
 * here fails the test.
 */
class RefusedCommandsTest {
  private static final String NO_SESSION = "ffffffff";
  private static final String SERIES = "series: k-or-l\nseries_sessions: 2\n";

  @TempDir Path folder;
  private CommandLineSession day;
  private String committed;
  private String closed;
  private String ofSeries;
  private String unsealed;
  private String looks;
  private String prepared;
  private String laps;
  private String paper;
  private String plan;
  private String broken;
  private Path taken;

  @BeforeEach
  void sessionsAtSeveralSteps() {
    day = new CommandLineSession(folder);
    plan = day.file("good-plan.yaml", Plans.SMALL).toString();
    broken = day.file("broken.txt", "no plan, no laps, no session").toString();
    laps = day.file("laps.csv", Plans.laps(8)).toString();
    paper = day.file("paper.csv", "stint;fitted\n0;as scheduled\n").toString();
    taken = day.file("taken", "a file where a folder should be");
    committed = day.commit(Plans.SMALL);
    unsealed = ridden(Plans.SMALL);
    ok("unseal", unsealed);
    ofSeries = ridden(Plans.SMALL + SERIES);
    closed = ridden(Plans.SMALL.replace("quicker", "faster"));
    looks = day.commit(Plans.LOOKS);
    prepared = day.commit(Plans.SMALL + "blinding: {level: prepared, prepared_by: M. Oster}\n");
    ok("record", looks, day.file("sixteen.csv", Plans.laps(16)).toString());
    day.types("wrong words of a phrase here");
  }

  private String ridden(String text) {
    String id = day.commit(text);
    ok("record", id, laps);
    ok("close-day", id);
    ok("close-review", id);
    return id;
  }

  private void ok(String... typed) {
    CommandLineSession.Ran ran = day.run(typed);
    assertThat(ran.code()).as(ran.err()).isZero();
  }

  private static List<String> line(String... words) {
    return Arrays.asList(words);
  }

  /** For every command what it must refuse: a wrong session, step, phrase, file, place. */
  private Map<String, List<List<String>>> refused() {
    Map<String, List<List<String>>> all = new TreeMap<>(ofADay());
    all.putAll(afterwards());
    all.putAll(withoutASession());
    return all;
  }

  private Map<String, List<List<String>>> ofADay() {
    String in = taken.resolve("in").toString();
    Map<String, List<List<String>>> all = new LinkedHashMap<>();
    all.put(
        "helper",
        List.of(line(NO_SESSION), line(committed), line(committed, "--day-over"), line(closed)));
    all.put(
        "catch-up",
        List.of(
            line(NO_SESSION, paper),
            line(committed),
            line(committed, broken),
            line(committed, laps),
            line(committed, paper),
            line(closed, paper),
            line(committed, "--form", in)));
    all.put(
        "mount",
        List.of(
            line(NO_SESSION),
            line(committed),
            line(committed, "--correct"),
            line(committed, "--paper"),
            line(closed)));
    all.put("prepare", List.of(line(NO_SESSION), line(committed), line(closed), line(prepared)));
    all.put(
        "masks",
        List.of(
            line(NO_SESSION, "--guess"),
            line(committed, "--seal"),
            line(committed, "--guess"),
            line(closed, "--read"),
            line(closed, "--marks")));
    all.put(
        "one-stint",
        List.of(
            line(NO_SESSION),
            line(committed),
            line(committed, "--make"),
            line(committed, "--make", "--paper", "A4", "--out", folder.toString()),
            line(closed),
            line(closed, "--make")));
    all.put("codes", List.of(line(NO_SESSION)));
    all.put(
        "phones",
        List.of(
            line(NO_SESSION),
            line(closed),
            line(committed, "--address", "203.0.113.7", "--black-on-white"),
            line(committed, "--port", "99999")));
    all.put(
        "sheets",
        List.of(
            line(NO_SESSION, "--out", folder.toString()),
            line(NO_SESSION, "--quick-start", "--out", folder.toString()),
            line("--quick-start", "--out", in),
            line(committed, "--paper", "A4", "--helper", "--out", folder.toString()),
            line(NO_SESSION, "--quick-start", "--out", folder.toString()),
            line(committed, "--out", in)));
    all.put(
        "key-in",
        List.of(
            line(NO_SESSION, laps, laps),
            line(closed, laps, laps),
            line(committed, laps, broken),
            line(committed, laps, laps, "--knows-key", "no measure"),
            line(committed, "--form", in)));
    all.put(
        "record",
        List.of(
            line(NO_SESSION, laps),
            line(closed, laps),
            line(committed, broken),
            line(committed, laps, "--knows-key", "no measure"),
            line(committed, laps, "--correct", "--reason", "typed wrongly"),
            line(
                closed,
                laps,
                "--correct",
                "--reason",
                "typing error",
                "--decided-by",
                "E. Moor",
                "--knows-neither")));
    all.put(
        "void",
        List.of(
            line(NO_SESSION, "1", "--reason", "crash"),
            line(closed, "1", "--reason", "crash", "--words", "A root."),
            line(committed, "1", "--reason", "crash", "--withdraw"),
            line(committed, "1", "--from", "A", "--to", "B", "--reason", "crash")));
    all.put(
        "recording",
        List.of(
            line(NO_SESSION, broken),
            line(committed, broken),
            line(closed, broken, "--no-positions"),
            line(committed, broken, "--trail", "Nowhere", "--trail-version", "2"),
            line(committed, broken, "--settle", "1=keep")));
    all.put(
        "look",
        List.of(
            line(NO_SESSION),
            line(committed),
            line(closed),
            line(looks),
            line(looks, "--after-stint", "15"),
            line(unsealed, "--after-stint", "16")));
    all.put(
        "blind-broken",
        List.of(
            line(NO_SESSION, "--stint", "1", "--what", "Seen."),
            line(closed, "--stint", "1", "--what", "Seen.")));
    all.put(
        "cut-short",
        List.of(
            line(NO_SESSION, "--after-stint", "1", "--reason", "rain", "--decided-by", "rider"),
            line(
                closed,
                "--after-stint",
                "1",
                "--reason",
                "rain",
                "--decided-by",
                "rider",
                "--knows-key")));
    all.put(
        "close-day",
        List.of(line(NO_SESSION), line(committed), line(closed), line(closed, "--yes")));
    all.put(
        "close-review",
        List.of(
            line(NO_SESSION), line(committed), line(closed), line(closed, "--without-recording")));
    return all;
  }

  private Map<String, List<List<String>>> afterwards() {
    String in = taken.resolve("in").toString();
    Map<String, List<List<String>>> all = new LinkedHashMap<>();
    List<List<String>> unseal = new ArrayList<>();
    for (String session : List.of(NO_SESSION, committed, unsealed, closed, ofSeries)) {
      unseal.add(line(session));
      unseal.add(line(session, "--end-series", "broken wrist", "--decided-by", "A. Quill"));
      unseal.add(line(session, "--end-series", " ", "--decided-by", "A. Quill"));
      unseal.add(line(session, "--from-sheet", broken));
      unseal.add(
          line(
              session,
              "--from-sheet",
              broken,
              "--end-series",
              "broken wrist",
              "--decided-by",
              "A. Quill"));
    }
    all.put("unseal", unseal);
    all.put(
        "review",
        List.of(
            line(NO_SESSION),
            line(closed, "--json"),
            line("--from", folder.resolve("nothing").toString(), "--anyway")));
    all.put(
        "report",
        List.of(
            line(NO_SESSION, "--out", folder.toString()),
            line(closed, "--out", folder.toString()),
            line(unsealed, "--black", "--out", in)));
    all.put(
        "card",
        List.of(
            line(NO_SESSION, "--out", folder.toString()),
            line(closed, "--out", folder.toString()),
            line(unsealed, "--black", "--out", in)));
    all.put(
        "amend",
        List.of(
            line(NO_SESSION, "--text", "Low.", "--reason", "found"),
            line(closed, "--text", "Low.", "--reason", "found"),
            line(unsealed, "--text", "Low.", "--reason", " ")));
    all.put(
        "export",
        List.of(
            line(NO_SESSION, "--out", folder.toString()),
            line(closed, "--out", in),
            line(closed, "--session-file", in)));
    all.put("bring-in", List.of(line(broken), line(folder.resolve("nothing").toString())));
    all.put(
        "fingerprint",
        List.of(
            line(NO_SESSION, "--given-to", "J."),
            line(closed, "--given-to", " "),
            line(closed, "--compare", "12ab")));
    all.put(
        "abandon",
        List.of(
            line(NO_SESSION, "--reason", "rain", "--yes"),
            line(closed, "--reason", " "),
            line(NO_SESSION, "--reason", "rain", "--unaware", "R.")));
    return all;
  }

  private Map<String, List<List<String>>> withoutASession() {
    String in = taken.resolve("in").toString();
    Map<String, List<List<String>>> all = new LinkedHashMap<>();
    all.put("demo", List.of(line("--no-window")));
    all.put(
        "plan",
        List.of(
            line(broken, "--times"),
            line(plan, "--days", "0"),
            line(plan, "--divide", "--times"),
            line(plan, "--json"),
            line("--committed", NO_SESSION),
            line("--committed", closed, "--like", closed),
            line("--committed", closed, "--days", "5"),
            line("--committed", closed, "--out", in),
            line("--like", NO_SESSION),
            line("--like", closed, "--series-of", "1"),
            line("--like", closed, "--two-best"),
            line("--like", closed, "--level", "7"),
            line("--like", closed, "--out", in)));
    all.put(
        "commit",
        List.of(line(broken), line(plan, "--yes", "--null-run", "--signed-by", "J. Eb\u0007ner")));
    all.put(
        "notebook",
        List.of(
            line("--recover", broken, "--out", folder.resolve("new").toString()),
            line("--verify", "--backup", "--backups", "--search", "two tasks at once")));
    all.put("noise", List.of(line("--json", "--rider", "R. Lind", "--trail")));
    all.put(
        "field",
        List.of(
            line("--rider", "Nobody", "--trail", "Quarry loop", "--measure", "lap time"),
            line("--reference", "Shock Z", "--json"),
            line("--rider", "Nobody", "--black", "--report", folder.toString())));
    all.put("profile", List.of(line("--remove", "Nobody"), line("Fast: ")));
    all.put(
        "series",
        List.of(
            line("other", "--json"),
            line("k-or-l", "--black", "--report", folder.toString()),
            line("k-or-l", "--package", folder.resolve("whole").toString()),
            line("other", "--package", folder.resolve("whole").toString()),
            line("--package", folder.resolve("whole").toString()),
            line("--report", folder.toString()),
            line("--json"),
            line("k-or-l", "--next", "--package", folder.resolve("whole").toString()),
            line("--next"),
            line("other", "--next"),
            line("k-or-l", "--next", "--json"),
            line("k-or-l", "--next", "--out", laps),
            line("k-or-l", "--out", folder.resolve("next.yaml").toString())));
    all.put(
        "import-day",
        List.of(
            line(broken, "--rider", "R.", "--trail", "Q.", "--map", "lap time=Time"),
            line(
                broken,
                "--rider",
                "R.",
                "--trail",
                "Q.",
                "--map",
                "lap time=Time",
                "--day",
                "2024-05-18",
                "--kind",
                "lap time=no kind",
                "--unit",
                "lap time=s",
                "--setup",
                "On",
                "--void",
                "V",
                "--date",
                "D",
                "--stint",
                "S",
                "--lap",
                "L",
                "--decimals",
                "sign")));
    String gate = "47.1,11.3,47.1001,11.3";
    all.put(
        "trail",
        List.of(
            line("Nowhere"),
            line("Nowhere", "--trail-version", "2"),
            line("--read", broken),
            line("Quarry loop", "--from", broken, "--start", "A=1", "--finish", "B=2"),
            line("--start", "A=1", "--split", "B=2", "--width", "5", "--lap", "1,2"),
            line("--geojson", broken)));
    all.put(
        "passes",
        List.of(
            line(broken, "--gate", gate),
            line(broken, "--gate", "47.1,11.3"),
            line(folder.resolve("nothing").toString(), "--gate", gate, "--json")));
    all.put("compute", List.of(line(broken), line("--check", broken)));
    return all;
  }

  /** Every file of the folder, byte for byte. */
  private Map<String, String> files() throws IOException {
    Map<String, String> found = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.toList()) {
        found.put(
            folder.relativize(file).toString(),
            Files.isDirectory(file) ? "folder" : Arrays.hashCode(Files.readAllBytes(file)) + "");
      }
    }
    return found;
  }

  @Test
  void whateverACommandRefusesNothingOfTheNotebookHasChangedAndNoFileHasCome() throws IOException {
    Map<String, String> before = files();
    for (Map.Entry<String, List<List<String>>> each : refused().entrySet()) {
      for (List<String> arguments : each.getValue()) {
        List<String> typed = new ArrayList<>(List.of(each.getKey()));
        typed.addAll(arguments);
        if (each.getKey().equals("plan")) {
          typed.addAll(List.of("--notebook", day.notebook.toString()));
        }

        CommandLineSession.Ran ran = day.run(typed.toArray(String[]::new));

        assertThat(ran.code()).as("%s: %s", typed, ran.out()).isNotZero();
        assertThat(ran.err()).as(typed.toString()).isNotBlank().doesNotContain("\tat ");
        assertThat(files()).as(typed.toString()).isEqualTo(before);
      }
    }
  }

  @Test
  void everyCommandAndEveryOptionIsWalked() {
    Map<String, List<List<String>>> refused = refused();
    assertThat(refused.keySet()).isEqualTo(day.commands().keySet());
    day.commands()
        .forEach(
            (name, options) -> {
              List<String> words = refused.get(name).stream().flatMap(List::stream).toList();
              for (String option : options) {
                if (!List.of("--notebook", "--new", "--help", "--version").contains(option)) {
                  assertThat(words).as(name).contains(option);
                }
              }
            });
  }

  @Test
  void aSeriesIsEndedInTheSameWritingAsTheSealIsOpened() {
    String lone = ridden(Plans.SMALL + SERIES.replace("k-or-l", "lone"));
    assertThat(day.run("unseal", lone).err()).contains("1 of 2 declared sessions");
    assertThat(
            day.run("unseal", lone, "--end-series", "broken wrist", "--decided-by", "A. Quill")
                .out())
        .contains("The series is ended early", "Unsealed.");
    assertThat(day.run("series", "lone").out()).contains("ended");
  }

  @Test
  void whyASeriesIsNotEndedIsSaidInWords() {
    assertThat(
            day.run("unseal", committed, "--end-series", "rain", "--decided-by", "A. Quill").err())
        .contains("this session stands at \"committed\"", "Nothing was opened");
    assertThat(day.run("unseal", closed, "--end-series", "rain", "--decided-by", "A. Quill").err())
        .contains("belongs to no declared series", "Nothing was opened");
    ridden(Plans.SMALL + SERIES);
    assertThat(
            day.run("unseal", ofSeries, "--end-series", "rain", "--decided-by", "A. Quill").err())
        .contains("has all 2 declared sessions", "leave out --end-series");
  }

  @Test
  void aHelpersSheetThatCannotBeWrittenIsNotNotedAndAReportThatCannotIsNotEither()
      throws IOException {
    String id = day.commit(Plans.SMALL);
    Path occupied = Files.createDirectories(folder.resolve("sheets"));
    Files.createDirectory(occupied.resolve("helper-sheet.pdf"));
    Path report = Files.createDirectories(folder.resolve("reports"));
    ok("report", unsealed, "--out", report.toString());
    try (Stream<Path> written = Files.list(report)) {
      for (Path file : written.toList()) {
        Files.delete(file);
        if (file.toString().endsWith(".pdf")) {
          Files.createDirectory(file);
        }
      }
    }
    Map<String, String> before = files();

    CommandLineSession.Ran sheets = day.run("sheets", id, "--helper", "--out", occupied.toString());
    CommandLineSession.Ran reports = day.run("report", unsealed, "--out", report.toString());

    assertThat(sheets.code()).as(sheets.err()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(reports.code()).as(reports.err()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(files()).isEqualTo(before);
    ok("sheets", id, "--helper", "--out", folder.resolve("free").toString());
    assertThat(files()).containsKey("free/helper-sheet.pdf");
    assertThat(files().get("test.blindlap")).isNotEqualTo(before.get("test.blindlap"));
  }
}
