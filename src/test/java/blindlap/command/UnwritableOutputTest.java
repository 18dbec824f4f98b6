package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.QuarryTrack;
import blindlap.desk.SetClock;
import blindlap.exchange.QuarryTrail;
import blindlap.exchange.TrailFile;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** Whatever cannot be written out ends with exit code 3 and one sentence on what was done. */
class UnwritableOutputTest {
  @TempDir Path folder;
  private final Set<String> walked = new LinkedHashSet<>();

  /** What stands in notebook and folder: entries, drafts, and files beside the notebook. */
  private static String standing(CommandLineSession day) {
    List<String> all = new ArrayList<>();
    try (Desk desk = day.setting().opener().open(day.notebook)) {
      desk.sessions().all().forEach(s -> all.add(s.id() + " " + desk.notebook().heads(s.id())));
      all.add("drafts " + desk.notebook().drafts());
      all.add("trails " + desk.notebook().trails().titles());
      all.add("profiles " + desk.profiles().all());
    }
    try (Stream<Path> files = Files.walk(day.folder)) {
      files
          .filter(file -> Files.isRegularFile(file) && !file.equals(day.notebook))
          .map(Path::toString)
          .sorted()
          .forEach(all::add);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return String.join("\n", all);
  }

  /** Runs a command whose every word is lost, and holds what it says against what it did. */
  private void lost(CommandLineSession day, Done done, String... command) {
    walked.add(command[0]);
    String before = standing(day);
    StringWriter err = new StringWriter();

    int code = day.run(new FullOutput(0).writer(), new PrintWriter(err, true), command);

    String what = String.join(" ", command) + ": " + err;
    assertThat(code).as(what).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(err.toString().strip()).as(what).isEqualTo(done.untold());
    if (done != Done.SHOWN) {
      assertThat(standing(day).equals(before)).as(what).isEqualTo(done == Done.NOTHING);
    }
  }

  @Test
  void everyCommandWhoseOutputIsFullSaysWhatItHasDoneAndEndsWithExitCode3() throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    String plan = day.file("plan.yaml", Plans.SMALL).toString();
    lost(day, Done.NOTHING, "plan", "--days", "20", plan);
    lostPhrase(day, plan);
    String other = day.commit(Plans.SMALL);
    String id = day.commit(Plans.SMALL);
    String phrase = day.phrase();
    String laps = day.file("laps.csv", Plans.laps(6)).toString();
    looks(day);
    recording(day);
    alone(day);
    oneStint(day);
    day.types(phrase);
    lost(day, Done.NOTHING, "helper", id);
    lost(day, Done.NOTHING, "codes", id);
    lost(day, Done.NOTHING, "phones", id);
    lost(day, Done.WRITTEN, "sheets", id, "--out", folder.resolve("sheets").toString());
    lost(day, Done.WRITTEN, "key-in", id, "--form", folder.resolve("form.csv").toString());
    lost(day, Done.SAVED, "record", id, laps);
    lost(day, Done.SAVED, "void", id, "3", "--reason", "puncture");
    lost(day, Done.SAVED, "blind-broken", id, "--stint", "5", "--what", "The cover slipped.");
    lost(
        day,
        Done.SAVED,
        "cut-short",
        id,
        "--after-stint",
        "6",
        "--reason",
        "dark",
        "--decided-by",
        "R. Lind");
    helpers(day, id);
    lost(day, Done.SAVED, "close-day", id);
    lost(day, Done.SAVED, "close-review", id);
    lost(day, Done.OPENED, "unseal", id);
    lost(day, Done.NOTHING, "review", id);
    lost(day, Done.WRITTEN, "report", id, "--out", folder.resolve("report").toString());
    lost(day, Done.WRITTEN, "card", id, "--out", folder.resolve("card").toString());
    lost(day, Done.SAVED, "amend", id, "--text", "The gauge read low.", "--reason", "found later");
    lost(day, Done.WRITTEN, "export", id, "--out", folder.resolve("package").toString());
    lost(day, Done.WRITTEN, "export", id, "--session-file", folder.resolve("s.txt").toString());
    lost(day, Done.NOTHING, "fingerprint", id);
    lost(day, Done.SAVED, "fingerprint", id, "--given-to", "M. Oster");
    lost(day, Done.SAVED, "abandon", other, "--reason", "rain");
    lost(day, Done.DRAFTED, "plan", "--like", id);
    lost(day, Done.NOTHING, "plan", "--committed", id);
    String read = folder.resolve("read.yaml").toString();
    lost(day, Done.WRITTEN, "plan", "--committed", id, "--out", read);
    lost(day, Done.WRITTEN, "plan", "--like", id, "--out", folder.resolve("l.yaml").toString());
    lost(day, Done.NOTHING, "notebook");
    lost(day, Done.WRITTEN, "notebook", "--backup");
    lost(day, Done.NOTHING, "noise");
    lost(day, Done.NOTHING, "series");
    String track = "src/test/resources/blindlap/recordings/t06_bike_5laps_32s_gap.gpx";
    lost(day, Done.NOTHING, "passes", track, "--gate", "52.1,-43,52.101,-43.001");
    lost(day, Done.NOTHING, "profile");
    lost(day, Done.PROFILE, "profile", "Long days: climbing time, mass");
    lost(day, Done.PROFILE, "profile", "--remove", "Long days");
    lost(day, Done.NOTHING, "trail");
    String trail = day.file("trail.json", TrailFile.text(QuarryTrail.trail())).toString();
    lost(day, Done.TRAIL, "trail", "--read", trail);
    lost(day, Done.NOTHING, "trail", "Quarry loop");
    String written = folder.resolve("written.json").toString();
    lost(day, Done.WRITTEN, "trail", "Quarry loop", "--geojson", written);
    ofASeries(day, laps);
    lost(day, Done.NOTHING, "demo", "--help");
    elsewhere(id);

    assertThat(walked).isEqualTo(Blindlap.line(day.setting()).getSubcommands().keySet());
  }

  /** A series of one session, so that it is at its end at once. */
  private void ofASeries(CommandLineSession day, String laps) {
    String id = day.commit(Plans.SMALL + "series: lone\n");
    lost(day, Done.DRAFTED, "series", "lone", "--next");
    String next = folder.resolve("next.yaml").toString();
    lost(day, Done.WRITTEN, "series", "lone", "--next", "--out", next);
    for (String command : new String[] {"record", "close-day", "close-review", "unseal"}) {
      String[] typed =
          command.equals("record") ? new String[] {command, id, laps} : new String[] {command, id};
      assertThat(day.run(typed).code()).as(command).isZero();
    }
    lost(day, Done.NOTHING, "series", "lone", "--json");
    lost(day, Done.WRITTEN, "series", "lone", "--report", folder.resolve("all").toString());
    lost(day, Done.WRITTEN, "series", "lone", "--package", folder.resolve("whole").toString());
    lost(day, Done.NOTHING, "field");
    lost(day, Done.WRITTEN, "field", "--report", folder.resolve("field").toString());
    assertThat(folder.resolve("whole").resolve("session-1").resolve("units.csv")).exists();
  }

  private void recording(CommandLineSession day) throws IOException {
    String id = day.commit(Plans.SMALL + QuarryTrack.ofPlan());
    assertThat(day.run("record", id, day.file("two.csv", Plans.laps(2)).toString()).code())
        .isZero();
    assertThat(day.run("close-day", id).code()).isZero();
    QuarryTrack track =
        new QuarryTrack(new SetClock(Instant.parse("2026-11-14T08:00:00Z")), Duration.ZERO);
    track.ride(0, 700, 6).aside(0.01, 600, 1).ride(0, 700, 6);
    Path file = Files.write(folder.resolve("two.gpx"), track.gpx());
    lost(day, Done.SAVED, "recording", id, file.toString());
  }

  private void looks(CommandLineSession day) {
    String id = day.commit(Plans.LOOKS);
    day.run("record", id, day.file("many.csv", Plans.laps(16)).toString());
    lost(day, Done.SAVED, "look", id);
    lost(day, Done.NOTHING, "look", id);
  }

  private void alone(CommandLineSession day) {
    String plan = Plans.SMALL + "blinding: {level: masked, guesses: false, masks: marks}\n";
    String file = day.file("alone.yaml", plan).toString();
    lost(day, Done.COVERED, "commit", file);
    String id = day.run("commit", file).after("covered: session");
    lost(day, Done.SAVED, "mount", id);
    assertThat(day.run("record", id, day.file("one.csv", Plans.laps(1)).toString()).code())
        .isZero();
    assertThat(day.run("close-day", id).code()).isZero();
    lost(day, Done.SAVED, "masks", id, "--guess");
    String prepared =
        day.commit(Plans.SMALL + "blinding: {level: prepared, prepared_by: M. Oster}\n");
    lost(day, Done.SAVED, "prepare", prepared);
  }

  private void oneStint(CommandLineSession day) {
    String id = day.commit(Plans.SMALL);
    lost(day, Done.CODES, "one-stint", id, "--make");
    String slips = folder.resolve("slips").toString();
    lost(day, Done.WRITTEN, "one-stint", id, "--make", "--out", slips);
    String words = OneStintCommandTest.words(day.run("one-stint", id, "--make"), 1);
    day.types(words);
    day.answers.addAll(List.of("P. Wier", "1"));
    lost(day, Done.SAVED, "one-stint", id);
  }

  private void helpers(CommandLineSession day, String id) {
    String form = folder.resolve("paper.csv").toString();
    lost(day, Done.WRITTEN, "catch-up", id, "--form", form);
    StringBuilder typed = new StringBuilder("stint;fitted\n");
    for (int stint = 0; stint <= 6; stint++) {
      typed.append(stint).append(";A\n");
    }
    String paper = day.file("typed.csv", typed.toString()).toString();
    lost(day, Done.SAVED, "catch-up", id, paper);
    CommandLineSession.Ran looked = day.run("helper", id);
    boolean second = looked.out().lines().anyMatch(line -> line.matches(" +2 .*Shock K.*"));
    day.answers.addAll(List.of("2", second ? "Shock L" : "Shock K", ""));
    lost(day, Done.KEPT, "helper", id);
    lost(day, Done.SAVED, "helper", id, "--day-over");
  }

  private void lostPhrase(CommandLineSession day, String plan) {
    walked.add("commit");
    for (String[] command : new String[][] {{"commit", plan}, {"commit", "--yes", plan}}) {
      StringWriter err = new StringWriter();
      int code = day.run(new FullOutput(0).writer(), new PrintWriter(err, true), command);
      assertThat(code).isEqualTo(ExitCode.FILE_TROUBLE);
      assertThat(err.toString().strip().lines()).hasSize(1);
      assertThat(err.toString()).contains("helper phrase could not be written", "nothing sealed");
      assertThat(day.run("notebook").out()).contains("empty");
    }
  }

  /** What goes into another notebook, or into none. */
  private void elsewhere(String id) throws IOException {
    CommandLineSession other =
        new CommandLineSession(Files.createDirectory(folder.resolve("other")), 7);
    lost(other, Done.BROUGHT_IN, "bring-in", folder.resolve("s.txt").toString());
    lost(other, Done.NOTHING, "bring-in", folder.resolve("s.txt").toString());
    String old = other.file("old.csv", "n;t\n1;94,1\n2;95,2\n3;96,0\n").toString();
    lost(
        other,
        Done.BROUGHT_IN,
        "import-day",
        old,
        "--rider",
        "R. Lind",
        "--trail",
        "Mill track",
        "--day",
        "2024-05-18",
        "--map",
        "lap time=t");
    lost(other, Done.NOTHING, "review", id);
    String check = "src/test/resources/blindlap/checks/outside/A01-student-sleep-1.json";
    walked.add("compute");
    StringWriter err = new StringWriter();
    int code =
        Blindlap.run(
            other.setting(),
            new FullOutput(0).writer(),
            new PrintWriter(err, true),
            "compute",
            "--check",
            check);
    assertThat(code).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(err.toString().strip()).isEqualTo(Done.NOTHING.untold());
    lost(
        other,
        Done.SHOWN,
        "demo",
        "--no-window",
        "--notebook",
        folder.resolve("demo.blindlap").toString());
  }

  @Test
  void helpAndVersionThatCannotBeWrittenEndWithExitCode3() {
    CommandLineSession day = new CommandLineSession(folder);
    for (String asked : List.of("--help", "--version")) {
      StringWriter err = new StringWriter();
      int code =
          Blindlap.run(
              day.setting(), new FullOutput(0).writer(), new PrintWriter(err, true), asked);
      assertThat(code).as(asked).isEqualTo(ExitCode.FILE_TROUBLE);
      assertThat(err.toString().strip()).isEqualTo(Done.NOTHING.untold());
    }
  }

  @Test
  void aCommitIsSealedOnlyIfItsPhraseWasWrittenWholeWhereverTheOutputEnds() throws IOException {
    String plan = Files.writeString(folder.resolve("plan.yaml"), Plans.SMALL).toString();
    String whole = new CommandLineSession(folder).run("commit", "--yes", plan).out();
    int begins = whole.indexOf("shown this once:");
    int ends = whole.indexOf("Committed and sealed");
    int sealed = 0;
    // Every byte of the phrase and about it, some of the rest.
    for (int room = 0; room < whole.length(); room += room > begins && room <= ends ? 1 : 16) {
      CommandLineSession day =
          new CommandLineSession(Files.createDirectory(folder.resolve("room-" + room)));
      FullOutput out = new FullOutput(room);
      StringWriter err = new StringWriter();
      int code = day.run(out.writer(), new PrintWriter(err, true), "commit", "--yes", plan);

      assertThat(code).as("%d bytes", room).isEqualTo(ExitCode.FILE_TROUBLE);
      assertThat(err.toString().strip().lines()).as("%d bytes", room).hasSize(1);
      boolean there = !day.run("notebook").out().contains("empty");
      assertThat(there).as("%d bytes: %s", room, out.text()).isEqualTo(room >= ends);
      if (there) {
        sealed++;
        day.types(CommandLineSession.shownPhrase(out.text()));
        assertThat(day.run("helper", "latest").code()).as("%d bytes", room).isZero();
      }
    }
    assertThat(sealed).isGreaterThan(10);
  }

  @Test
  void noOptionTakesAPhraseAPinOrWhatAHelperConceals() {
    CommandLine line = Blindlap.line(new CommandLineSession(folder).setting());
    List<String> secret = new ArrayList<>();
    for (CommandLine command : line.getSubcommands().values()) {
      for (OptionSpec option : command.getCommandSpec().options()) {
        String words = option.longestName() + " " + String.join(" ", option.description());
        if (words.toLowerCase(java.util.Locale.ROOT).matches(".*(phrase|\\bpin\\b|conceal|null).*")
            && option.arity().max() > 0) {
          secret.add(command.getCommandName() + " " + option.longestName());
        }
      }
    }
    assertThat(secret).isEmpty();
  }
}
