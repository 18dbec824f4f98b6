package blindlap.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A machine is described by what it has, not by who made its processor. */
class MakersTest {
  private static final Pattern MAKER =
      Pattern.compile(
          "\\b(?:Intel|AMD|[Xx]eon|E[Pp][Yy][Cc]|[Rr]yzen|[Tt]hreadripper|[Oo]pteron|[Pp]entium|"
              + "[Cc]eleron|[Gg]raviton|[Nn]eoverse|[Ss]napdragon|Apple M\\d|Core i\\d)\\b");
  private static final Pattern READ =
      Pattern.compile(".*\\.(?:md|java|properties|ya?ml|xml|py|R|sh|cmd|js|html|json)|.*/blindlap");

  private static List<String> named(List<Path> where) throws IOException {
    List<String> found = new ArrayList<>();
    for (Path each : where) {
      try (Stream<Path> files = Files.walk(each)) {
        for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
          String name = file.toString().replace('\\', '/');
          if (READ.matcher(name).matches() && !file.endsWith("MakersTest.java")) {
            MAKER
                .matcher(Files.readString(file))
                .results()
                .forEach(m -> found.add(name + ": " + m.group()));
          }
        }
      }
    }
    return found;
  }

  @Test
  void noPageAndNoSourceNamesAMakerOfProcessors() throws IOException {
    List<Path> where =
        Stream.of(
                "README.md",
                "DEVELOPERS.md",
                "docs",
                "src",
                "protocols",
                "sample-sessions",
                "pom.xml",
                "blindlap",
                "blindlap.cmd")
            .map(Path::of)
            .toList();
    assertThat(where).allMatch(Files::exists);
    assertThat(named(where)).isEmpty();
  }

  @Test
  void aMakerIsFoundAsAWordOfItsOwn(@TempDir Path folder) throws IOException {
    Files.writeString(
        folder.resolve("a.md"), "Two cores of an EPYC; amd64 and intelligent are none");
    Files.writeString(folder.resolve("b.png"), "AMD");
    assertThat(named(List.of(folder))).singleElement().asString().endsWith("a.md: EPYC");
  }
}
