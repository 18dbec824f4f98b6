package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Backups, the full check and recovery as they are typed. */
class SafeKeepingTest {
  @TempDir Path folder;
  private CommandLineSession day;
  private String session = "";

  @BeforeEach
  void oneSession() {
    day = new CommandLineSession(folder);
    session = day.commit(Plans.SMALL);
    ok("record", session, day.file("laps.csv", Plans.laps(3)).toString());
  }

  private CommandLineSession.Ran ok(String... arguments) {
    CommandLineSession.Ran ran = day.run(arguments);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.code()).isZero();
    return ran;
  }

  private byte[] damage() throws Exception {
    byte[] bytes = Files.readAllBytes(day.notebook);
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    int last = text.lastIndexOf("\"kind\":\"LapRidden\"");
    Arrays.fill(bytes, last, last + 12, (byte) 'x');
    Files.write(day.notebook, bytes);
    return bytes;
  }

  @Test
  void backupsAreMadeListedAndOpenAsNotebooks() {
    assertThat(ok("notebook", "--backups").out()).contains("no backup of this notebook yet");
    assertThat(ok("notebook", "--backup").out()).contains("test-2026-11-14T080000Z.blindlap");
    day.later(60);
    ok("notebook", "--backup");
    String list = ok("notebook", "--backups").out();
    assertThat(list).contains("14 Nov 2026 08:00:00 UTC", "14 Nov 2026 08:01:00 UTC", " MB ");
    Path backup = folder.resolve("test.blindlap-backups/test-2026-11-14T080000Z.blindlap");
    assertThat(ok("notebook", "--verify", "--notebook", backup.toString()).out())
        .startsWith("1 session, 10 entries");
  }

  @Test
  void aLostNotebookIsBroughtBackFromItsBackup() throws Exception {
    ok("notebook", "--backup");
    Files.write(day.notebook, new byte[0]);
    CommandLineSession.Ran empty = day.run("notebook");
    assertThat(empty.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(empty.err()).contains("holds nothing, but there are backups of it");
    Path backup = folder.resolve("test.blindlap-backups/test-2026-11-14T080000Z.blindlap");
    Path fresh = folder.resolve("fresh.blindlap");
    assertThat(ok("bring-in", backup.toString(), "--new", "--notebook", fresh.toString()).out())
        .contains("is new here: 10 entries");
  }

  @Test
  void aDamagedNotebookIsNamedCheckedAndRecoveredAndNeverWrittenTo() throws Exception {
    assertThat(ok("notebook", "--verify").out()).contains("1 session, 10 entries: every hash");
    ok("notebook", "--backup");
    byte[] damaged = damage();
    CommandLineSession.Ran opened = day.run("codes", session);
    assertThat(opened.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(opened.err())
        .contains("is damaged", "--verify --notebook " + day.notebook, "--recover " + day.notebook);
    CommandLineSession.Ran verified = day.run("notebook", "--verify");
    assertThat(verified.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(verified.err()).contains("Recover what still verifies", "--recover");
    Path fresh = folder.resolve("fresh.blindlap");
    CommandLineSession.Ran recovered =
        day.run("notebook", "--recover", day.notebook.toString(), "--out", fresh.toString());
    assertThat(recovered.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(recovered.out())
        .contains("1 session, 7 entries saved", "session " + session.substring(0, 8))
        .contains("7 of at least 10 entries");
    assertThat(Files.readAllBytes(day.notebook)).isEqualTo(damaged);
    assertThat(ok("notebook", "--verify", "--notebook", fresh.toString()).out())
        .startsWith("1 session, 7 entries");
    Path backup = folder.resolve("test.blindlap-backups/test-2026-11-14T080000Z.blindlap");
    assertThat(ok("bring-in", backup.toString(), "--new", "--notebook", fresh.toString()).out())
        .as("the backup gives what the damage took")
        .contains("3 entries new, 7 here already");
    CommandLineSession.Ran again =
        day.run("notebook", "--recover", day.notebook.toString(), "--out", fresh.toString());
    assertThat(again.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(again.err()).contains("already");
  }

  @Test
  void aNotebookThatDoesNotEvenOpenIsCheckedThroughACopy() throws Exception {
    byte[] bytes = Files.readAllBytes(day.notebook);
    byte[] half = Arrays.copyOf(bytes, bytes.length / 2 / 4096 * 4096);
    Files.write(day.notebook, half);
    CommandLineSession.Ran verified = day.run("notebook", "--verify");
    assertThat(verified.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(verified.err()).contains("The file ", "--recover");
    assertThat(Files.readAllBytes(day.notebook)).isEqualTo(half);
  }

  @Test
  void nothingIsMadeOfWhatHoldsNothing() throws Exception {
    Path picture = day.file("picture.blindlap", "no notebook at all".repeat(500));
    Path fresh = folder.resolve("fresh.blindlap");
    CommandLineSession.Ran ran =
        day.run("notebook", "--recover", picture.toString(), "--out", fresh.toString());
    assertThat(ran.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(ran.err()).contains("no new notebook was made");
    assertThat(fresh).doesNotExist();
    Path missing = folder.resolve("missing.blindlap");
    assertThat(day.run("notebook", "--verify", "--notebook", missing.toString()).code())
        .isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(missing).doesNotExist();
  }

  @Test
  void oneThingAtATime() {
    assertThat(day.run("notebook", "--verify", "--backup").code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(day.run("notebook", "--recover", "x").code()).isEqualTo(ExitCode.BAD_INPUT);
  }

  @Test
  void theListSaysWhyASessionWasAbandonedAndFindsItByThat() {
    ok("abandon", session, "--reason", "a bolt was found loose");
    assertThat(ok("notebook").out()).contains("abandoned", "a bolt was found loose");
    assertThat(ok("notebook", "--search", "bolt loose").out()).contains("Shock K against Shock L");
    assertThat(ok("notebook", "--verify").out()).contains("every hash and every chain holds");
  }
}
