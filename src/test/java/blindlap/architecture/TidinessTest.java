package blindlap.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TidinessTest {
  private static final Path TOP = Path.of("");

  @Test
  void everyFileOfTheRepositoryIsTidy() throws IOException {
    List<String> faults = new ArrayList<>();
    int files = 0;
    for (Path file : files()) {
      String path = file.toString().replace('\\', '/');
      faults.addAll(Tidiness.faults(path, Files.readAllBytes(file)));
      files++;
    }
    assertThat(files).isGreaterThan(10);
    assertThat(faults).isEmpty();
  }

  @Test
  void nothingStrangeLiesAtTheTopOfTheRepository() throws IOException {
    assertThat(Tidiness.strangers(topNames())).isEmpty();
  }

  @Test
  void aStrangerAtTheTopIsNamed() {
    assertThat(
            Tidiness.strangers(
                List.of("notes.txt", "src", ".git", "target", "x.iml", "README.md", "lib")))
        .containsExactly("lib", "notes.txt");
  }

  @Test
  void aTabIsNamedWithItsLine() {
    assertThat(faults("docs/manual.md", "one\n\ttwo\n"))
        .containsExactly("docs/manual.md:2: has a tab");
  }

  @ParameterizedTest
  @ValueSource(strings = {"one \ntwo\n", "one\r\ntwo\n", "one\u00a0\u2003\n"})
  void aSpaceOrCarriageReturnAtTheEndOfALineIsNamed(String text) {
    assertThat(faults("src/main/java/blindlap/A.java", text))
        .containsExactly("src/main/java/blindlap/A.java:1: ends with a space or carriage return");
  }

  @Test
  void aScriptForWindowsMayEndItsLinesWithCarriageReturns() {
    assertThat(faults("blindlap.cmd", "echo\r\n")).isEmpty();
    assertThat(faults("blindlap.cmd", "echo \r\n")).hasSize(1);
  }

  @Test
  void whiteSpaceOfFilesThatOthersMakeIsTheirs() {
    assertThat(faults("src/test/resources/times.csv", "a\tb \r\n")).isEmpty();
    assertThat(faults("docs/pictures/day.svg", "<g> \n")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"TO" + "DO", "FIX" + "ME", "XX" + "X"})
  void aWordThatSaysUnfinishedIsNamed(String word) {
    assertThat(faults("pom.xml", "<!-- " + word + ": later -->\n"))
        .containsExactly("pom.xml:1: says " + word);
    assertThat(faults("pom.xml", "<!-- A" + word + "ES -->\n")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"/ro" + "ot/.m2", "/wo" + "rk/a", "/ho" + "me/lind/x", "C:\\Us" + "ers\\lind"})
  void aPlaceOnOneMachineIsNamed(String place) {
    assertThat(faults("src/test/resources/a.txt", "see " + place + "\n"))
        .containsExactly("src/test/resources/a.txt:1: names a place on one machine: " + place);
  }

  @Test
  void aWebAddressIsNoPlaceOnAMachine() {
    assertThat(faults("docs/a.md", "https://example.org/ho" + "me/lind/\n")).isEmpty();
  }

  @Test
  void aFileThatIsNoTextIsLeftAlone() {
    assertThat(faults("docs/a.png", "\0 " + "TO" + "DO")).isEmpty();
  }

  private static List<String> faults(String path, String text) {
    return Tidiness.faults(path, text.getBytes(StandardCharsets.UTF_8));
  }

  private static List<String> topNames() throws IOException {
    try (Stream<Path> entries = Files.list(TOP)) {
      return entries.map(entry -> entry.getFileName().toString()).toList();
    }
  }

  /** All files, without what is built and without folders whose names begin with a dot. */
  private static List<Path> files() throws IOException {
    List<Path> found = new ArrayList<>();
    for (String name : topNames()) {
      Path top = TOP.resolve(name);
      boolean skipped = name.equals("target") || name.startsWith(".") && Files.isDirectory(top);
      if (!skipped && !top.toString().equals(".git")) {
        try (Stream<Path> below = Files.walk(top)) {
          below.filter(Files::isRegularFile).forEach(found::add);
        }
      }
    }
    return found;
  }
}
