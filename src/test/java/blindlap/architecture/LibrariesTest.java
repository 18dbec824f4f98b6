package blindlap.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** No library in two versions, families of one release in one (docs/adr/0008-libraries.md). */
class LibrariesTest {
  private static final Pattern JAR = Pattern.compile("(.+?)-(\\d[\\w.]*(?:-jre)?)(-\\w+)?\\.jar");

  /** Versions by library, as they stand on a class path. */
  private static Map<String, Set<String>> versions(String classPath) {
    Map<String, Set<String>> versions = new TreeMap<>();
    for (String entry : classPath.split(File.pathSeparator)) {
      Matcher jar = JAR.matcher(String.valueOf(Path.of(entry).getFileName()));
      if (jar.matches()) {
        versions.computeIfAbsent(jar.group(1), k -> new TreeSet<>()).add(jar.group(2));
      }
    }
    return versions;
  }

  private static Map<String, Set<String>> ours() {
    return versions(System.getProperty("java.class.path"));
  }

  @Test
  void noLibraryStandsOnTheClassPathInTwoVersions() {
    assertThat(ours()).hasSizeGreaterThan(60);
    assertThat(ours()).allSatisfy((name, found) -> assertThat(found).as(name).hasSize(1));
  }

  @Test
  void librariesOfOneReleaseAreOfOneVersion() {
    Map<String, List<String>> families =
        Map.of(
            "batik-", List.of("batik-transcoder", "batik-bridge", "batik-util"),
            "commons-numbers-", List.of("commons-numbers-core", "commons-numbers-fraction"),
            "commons-rng-", List.of("commons-rng-simple", "commons-rng-core"),
            "javafx-", List.of("javafx-base", "javafx-graphics", "javafx-controls"));
    families.forEach(
        (beginning, members) -> {
          Set<String> found = new TreeSet<>();
          ours().forEach((name, v) -> found.addAll(name.startsWith(beginning) ? v : Set.of()));
          assertThat(found).as(beginning).hasSize(1);
          assertThat(ours()).containsKeys(members.toArray(String[]::new));
        });
    assertThat(ours().get("pdfbox"))
        .isEqualTo(ours().get("xmpbox"))
        .isEqualTo(ours().get("fontbox"))
        .isEqualTo(ours().get("pdfbox-io"));
  }

  @Test
  void aLibraryInTwoVersionsWouldBeNoticed() {
    String two =
        String.join(
            File.pathSeparator, "a/batik-util-1.17.jar", "b/batik-util-1.19.jar", "c/x-1.jar");
    assertThat(versions(two)).containsEntry("batik-util", Set.of("1.17", "1.19"));
  }
}
