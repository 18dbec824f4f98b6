package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFilesTest {
  @TempDir Path folder;

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static Map<String, byte[]> files(String... namesAndTexts) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (int i = 0; i < namesAndTexts.length; i += 2) {
      files.put(namesAndTexts[i], bytes(namesAndTexts[i + 1]));
    }
    return files;
  }

  private Map<String, String> there() throws IOException {
    Map<String, String> found = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(each -> !each.equals(folder)).toList()) {
        found.put(
            folder.relativize(file).toString(),
            Files.isDirectory(file) ? "folder" : Files.readString(file));
      }
    }
    return found;
  }

  @Test
  void severalFilesTakeTheirPlacesTogetherAndReplaceWhatLiesThere() throws IOException {
    Files.writeString(folder.resolve("one"), "old");

    WholeFiles.write(folder, files("one", "1", "two", "2"));

    assertThat(there()).isEqualTo(Map.of("one", "1", "two", "2"));
  }

  @Test
  void ifTheLastOfThemCannotBeWrittenNoneIsAndWhatLayThereIsKept() throws IOException {
    Files.writeString(folder.resolve("one"), "old");
    Map<String, String> before = there();

    assertThatThrownBy(() -> WholeFiles.write(folder, files("one", "1", "one/is/no/folder", "2")))
        .isInstanceOf(IOException.class);

    assertThat(there()).isEqualTo(before);
  }

  @Test
  void aPlaceThatIsAFolderStopsAllOfThem() throws IOException {
    Files.createDirectory(folder.resolve("two"));
    Map<String, String> before = there();

    assertThatThrownBy(() -> WholeFiles.write(folder, files("one", "1", "two", "2")))
        .isInstanceOf(IOException.class);

    assertThat(there()).isEqualTo(before);
  }

  @Test
  void aFolderThatWasMadeForNothingIsGoneAgainAndOneThatWasThereStays() throws IOException {
    Files.createDirectory(folder.resolve("kept"));
    Path wanted = folder.resolve("kept").resolve("a").resolve("b");

    assertThatThrownBy(() -> WholeFiles.write(wanted, files("one", "1", "x".repeat(300), "2")))
        .isInstanceOf(IOException.class);

    assertThat(there()).isEqualTo(Map.of("kept", "folder"));
    WholeFiles.write(wanted, files("one", "1"));
    assertThat(there()).containsEntry("kept/a/b/one", "1");
  }

  @Test
  void aFileThatCameMeanwhileIsNotWrittenOverWhereNoneMayBe() throws IOException {
    try (WholeFiles whole = WholeFiles.beside(folder, files("one", "1", "two", "2"))) {
      Files.writeString(folder.resolve("two"), "someone's");

      assertThatThrownBy(whole::settleFresh).isInstanceOf(FileAlreadyExistsException.class);
    }
    assertThat(there()).isEqualTo(Map.of("two", "someone's"));
  }

  @Test
  void filesAreTheOwnersAlone() throws IOException {
    assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"));

    WholeFiles.write(folder.resolve("one"), bytes("1"));

    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("one"))))
        .isEqualTo("rw-------");
  }

  @Test
  void aDiskThatIsTrulyFullIsLeftAsItWas() throws Exception {
    Path small = Files.createDirectory(folder.resolve("small"));
    assumeTrue(run("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", small.toString()));
    try {
      FileStore store = Files.getFileStore(small);
      long free = store.getUsableSpace();

      assertThatThrownBy(
              () ->
                  WholeFiles.write(
                      small.resolve("made"),
                      Map.of("short", bytes("1"), "long", new byte[200_000], "other", bytes("2"))))
          .isInstanceOf(IOException.class);

      assertThat(small).isEmptyDirectory();
      assertThat(store.getUsableSpace()).isEqualTo(free);
    } finally {
      run("umount", "-l", small.toString());
    }
  }

  private static boolean run(String... command) throws Exception {
    return new ProcessBuilder(command).redirectErrorStream(true).start().waitFor() == 0;
  }
}
