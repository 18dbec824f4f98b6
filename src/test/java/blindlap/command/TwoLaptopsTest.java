package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same sessions on two machines, with nothing between them but files. */
class TwoLaptopsTest {
  @TempDir Path folder;
  private CommandLineSession hut;
  private CommandLineSession home;

  @BeforeEach
  void twoMachines() throws IOException {
    hut = new CommandLineSession(Files.createDirectory(folder.resolve("hut")), 1);
    home = new CommandLineSession(Files.createDirectory(folder.resolve("home")), 2);
  }

  private static CommandLineSession.Ran ok(CommandLineSession machine, String... arguments) {
    CommandLineSession.Ran ran = machine.run(arguments);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.code()).isZero();
    return ran;
  }

  private Path sessionFile(CommandLineSession machine, String session) {
    Path file = machine.folder.resolve("moved.session.txt");
    ok(machine, "export", session, "--session-file", file.toString());
    return file;
  }

  private void record(CommandLineSession machine, String session, int from, int to) {
    StringBuilder csv = new StringBuilder("lap;lap time;grip\n");
    for (int lap = from; lap <= to; lap++) {
      csv.append(lap).append(";9").append(lap % 5).append(".4;").append(40 + lap).append('\n');
    }
    ok(machine, "record", session, machine.file("laps.csv", csv.toString()).toString());
  }

  /** Everything that the record comes to: the entries themselves, the list, the finding. */
  private List<String> tellings(CommandLineSession machine, String session) throws IOException {
    return List.of(
        Files.readString(sessionFile(machine, session)),
        ok(machine, "notebook").out(),
        ok(machine, "notebook", "--verify").out(),
        ok(machine, "review", session).out(),
        ok(machine, "review", session, "--json").out());
  }

  @Test
  void aSealedSessionMovesSealedAndIsRiddenAndUnsealedOnTheOtherMachineWithTheSamePhrase()
      throws Exception {
    String session = hut.commit(Plans.SMALL);
    record(hut, session, 1, 3);
    Path file = sessionFile(hut, session);
    assertThat(Files.readString(file)).doesNotContain("order=", "seed=");
    CommandLineSession.Ran brought = ok(home, "bring-in", file.toString());
    assertThat(brought.out())
        .startsWith("moved.session.txt: Session " + session.substring(0, 8))
        .contains("is new here:", "the key still sealed");
    assertThat(brought.out().lines()).hasSize(1);

    record(home, session, 4, 8);
    ok(home, "close-day", session);
    ok(home, "close-review", session);
    home.types("wrong words here are not six");
    assertThat(home.run("unseal", session).code()).isEqualTo(ExitCode.BAD_INPUT);
    home.types(hut.phrase());
    assertThat(ok(home, "unseal", session).out()).contains("Both fingerprints match");

    ok(hut, "bring-in", sessionFile(home, session).toString());
    assertThat(tellings(hut, session)).isEqualTo(tellings(home, session));
  }

  @Test
  void whateverIsExchangedInWhateverOrderBothMachinesFindTheSame() throws Exception {
    for (int order = 0; order < 4; order++) {
      hut = new CommandLineSession(Files.createDirectory(folder.resolve("hut" + order)), 1);
      home = new CommandLineSession(Files.createDirectory(folder.resolve("home" + order)), 2);
      String session = hut.commit(Plans.SMALL);
      ok(home, "bring-in", sessionFile(hut, session).toString());
      record(hut, session, 1, 5);
      record(home, session, 6, 8);
      ok(hut, "void", session, "2", "--reason", "puncture");
      ok(home, "void", session, "7", "--reason", "traffic");
      boolean hutFirst = order % 2 == 0;
      boolean asNotebooks = order > 1;
      exchange(hutFirst ? hut : home, hutFirst ? home : hut, session, asNotebooks);
      ok(hut, "close-day", session);
      ok(hut, "close-review", session);
      assertThat(ok(home, "void", session, "3", "--reason", "crash").out()).isNotEmpty();
      home.types(hut.phrase());
      exchange(hutFirst ? hut : home, hutFirst ? home : hut, session, asNotebooks);
      ok(hutFirst ? home : hut, "unseal", session);
      exchange(hutFirst ? home : hut, hutFirst ? hut : home, session, asNotebooks);
      List<String> told = tellings(hut, session);
      assertThat(tellings(home, session)).as("order %d", order).isEqualTo(told);
      assertThat(told.get(3)).as("lap 3 was closed before its void arrived").contains("6 of 8");
    }
  }

  /** Both give each other what they have, the first one first. */
  private void exchange(
      CommandLineSession first, CommandLineSession second, String session, boolean asNotebooks) {
    give(first, second, session, asNotebooks);
    give(second, first, session, asNotebooks);
  }

  private void give(
      CommandLineSession from, CommandLineSession to, String session, boolean asNotebooks) {
    Path file = asNotebooks ? from.notebook : sessionFile(from, session);
    ok(to, "bring-in", file.toString());
  }

  @Test
  void whatCameTooLateIsSaid() {
    String session = hut.commit(Plans.SMALL);
    record(hut, session, 1, 8);
    ok(home, "bring-in", sessionFile(hut, session).toString());
    ok(home, "void", session, "7", "--reason", "traffic");
    ok(hut, "close-day", session);
    ok(hut, "close-review", session);
    assertThat(ok(hut, "bring-in", home.notebook.toString()).out())
        .contains("1 entry new", "Came too late to count, here or there: 1 entry; kept and shown");
  }

  @Test
  void aSecondTimeNothingIsNewAndNothingIsThereTwice() {
    String session = hut.commit(Plans.SMALL);
    String second = hut.commit(Plans.SMALL.replace("Quarry loop", "Beech run"));
    record(hut, second, 1, 2);
    Path file = sessionFile(hut, session);
    assertThat(ok(home, "bring-in", file.toString(), hut.notebook.toString()).out().lines())
        .hasSize(3)
        .anyMatch(line -> line.startsWith("test.blindlap") && line.contains("is new here: 7 entr"))
        .anyMatch(line -> line.equals("test.blindlap: 1 session here already, with nothing new."));
    String verified = ok(home, "notebook", "--verify").out();
    assertThat(verified).startsWith("2 sessions, 8 entries");
    assertThat(ok(home, "bring-in", file.toString()).out())
        .contains("nothing new, 1 entry here already");
    assertThat(ok(home, "bring-in", hut.notebook.toString()).out())
        .isEqualToIgnoringNewLines("test.blindlap: 2 sessions here already, with nothing new.");
    assertThat(ok(home, "notebook", "--verify").out()).isEqualTo(verified);
    CommandLineSession.Ran itself = home.run("bring-in", home.notebook.toString());
    assertThat(itself.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(itself.err()).contains("the notebook itself");
  }

  @Test
  void aChangedByteAndACutAreNamedWithTheirPlaceAndNothingIsAdded() throws Exception {
    String session = hut.commit(Plans.SMALL);
    record(hut, session, 1, 2);
    Path whole = sessionFile(hut, session);
    String text = Files.readString(whole);
    String place = "\"value\":\"41\"";
    assertThat(text).contains(place);
    Path changed = home.file("changed.txt", text.replace(place, "\"value\":\"46\""));
    CommandLineSession.Ran ran = home.run("bring-in", changed.toString());
    assertThat(ran.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(ran.err())
        .contains("changed.txt, session " + session.substring(0, 8))
        .contains("changed after it was written", "entry 5 of notebook", "Nothing was added");
    Path cut = folder.resolve("cut.txt");
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    Files.write(cut, Arrays.copyOf(bytes, text.indexOf(place)));
    CommandLineSession.Ran short_ = home.run("bring-in", cut.toString());
    assertThat(short_.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(short_.err()).contains("cut.txt", "Line 5", "cut off after 3 entries");
    assertThat(ok(home, "notebook").out()).contains("The notebook is empty");

    Path other = folder.resolve("cut.blindlap");
    byte[] notebook = Files.readAllBytes(hut.notebook);
    Files.write(other, Arrays.copyOf(notebook, notebook.length / 2));
    CommandLineSession.Ran half = home.run("bring-in", other.toString(), whole.toString());
    assertThat(half.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(half.err()).contains("cut.blindlap is damaged", "--recover");
    assertThat(half.out()).as("the sound file is brought in").contains("is new here: 7 entries");
    assertThat(Files.readAllBytes(other)).hasSize(notebook.length / 2);
  }

  @Test
  void aNotebookWithAChangedEntryIsNamedAndNothingOfItIsAdded() throws Exception {
    String session = hut.commit(Plans.SMALL);
    hut.commit(Plans.SMALL.replace("Quarry loop", "Beech run"));
    byte[] bytes = Files.readAllBytes(hut.notebook);
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    int at = text.indexOf("blindlap-sealed-key-1", text.indexOf(session));
    for (; at >= 0; at = text.indexOf("blindlap-sealed-key-1", at + 1)) {
      bytes[at] ^= 2;
    }
    Path other = folder.resolve("changed.blindlap");
    Files.write(other, bytes);
    CommandLineSession.Ran ran = home.run("bring-in", other.toString());
    assertThat(ran.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(ran.err()).contains("changed.blindlap").contains("Recover what still verifies");
    assertThat(ok(home, "notebook").out()).contains("The notebook is empty");
    assertThat(Files.readAllBytes(other)).isEqualTo(bytes);
  }

  @Test
  void aFileThatIsNoSessionAndOneThatIsMissingAreToldApart() {
    Path laps = home.file("laps.csv", Plans.laps(2));
    CommandLineSession.Ran no = home.run("bring-in", laps.toString());
    assertThat(no.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(no.err()).contains("laps.csv", "not the file of a session");
    CommandLineSession.Ran missing = home.run("bring-in", folder.resolve("no.txt").toString());
    assertThat(missing.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(missing.err()).contains("There is no file");
  }

  @Test
  void aSessionFileIsWrittenOverAnotherButOverNothingElse() throws Exception {
    String session = hut.commit(Plans.SMALL);
    Path file = sessionFile(hut, session);
    record(hut, session, 1, 1);
    ok(hut, "export", session, "--session-file", file.toString());
    assertThat(Files.readString(file)).contains("LapRidden");
    byte[] before = Files.readAllBytes(hut.notebook);
    CommandLineSession.Ran over =
        hut.run("export", session, "--session-file", hut.notebook.toString());
    assertThat(over.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(over.err()).contains("Something else lies at");
    assertThat(Files.readAllBytes(hut.notebook)).isEqualTo(before);
    assertThat(hut.run("export", session).code()).isEqualTo(ExitCode.BAD_INPUT);
  }
}
