package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.Main;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The program itself where the folders that it needs cannot be. */
@DisabledOnOs(
    value = {OS.WINDOWS, OS.MAC},
    disabledReason = "their data folders have other names")
class NoFoldersTest {
  @TempDir Path folder;

  private String refused(String data, String option, String... typed)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(CommitKills.command(Main.class, typed));
    command.add(1, option);
    Path err = folder.resolve("err");
    ProcessBuilder builder = new ProcessBuilder(command).redirectError(err.toFile());
    builder.redirectOutput(ProcessBuilder.Redirect.DISCARD).environment().remove("HOME");
    builder.environment().put("XDG_DATA_HOME", data);
    Process child = builder.start();
    assertThat(child.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(child.exitValue()).isEqualTo(ExitCode.FILE_TROUBLE);
    String said = Files.readString(err, StandardCharsets.UTF_8);
    assertThat(said.lines().toList()).as(said).hasSize(1);
    return said;
  }

  @Test
  void aDataFolderThatCannotBeMadeIsNamed() throws Exception {
    Path file = Files.writeString(folder.resolve("a file"), "");
    assertThat(refused(file.resolve("data").toString(), "-Dx=y", "notebook"))
        .contains(file.toString(), "cannot be made", "XDG_DATA_HOME", "--notebook FILE --new");
    assertThat(file).isEmptyFile();
  }

  @Test
  void withoutAHomeNothingIsMadeInTheFolderOneStandsIn() throws Exception {
    assertThat(refused("", "-Duser.home=?", "notebook"))
        .contains("cannot be made", "let HOME or XDG_DATA_HOME name a folder");
    assertThat(Path.of("?")).doesNotExist();
  }

  @Test
  void withoutAFolderForTemporaryFilesTheNotebookIsNotOpened() throws Exception {
    CommandLineSession day = new CommandLineSession(folder);
    day.run("notebook");
    byte[] before = Files.readAllBytes(day.notebook);
    Path gone = folder.resolve("gone");
    assertThat(
            refused(
                folder.toString(),
                "-Djava.io.tmpdir=" + gone,
                "notebook",
                "--notebook",
                day.notebook.toString()))
        .contains("The folder for temporary files, " + gone + ", is not there");
    assertThat(Files.readAllBytes(day.notebook)).isEqualTo(before);
  }
}
