package blindlap.docs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.docs.RuntimeLibraries.Library;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * docs/third-party.md names every library that the program runs on, with its licence and where the
 * text lies. With -Dblindlap.write=true its table is written anew.
 */
class ThirdPartyTest {
  private static final Path PAGE = Path.of("docs/third-party.md");
  private static final String FOLDER = "src/main/resources/META-INF/licences";
  private static final Path PROJECT = Path.of("pom.xml");
  private static final String BEGIN = "<!-- libraries: begin -->\n";
  private static final String END = "<!-- libraries: end -->";
  private static final Pattern TEXT =
      Pattern.compile("(?i)(?!.*\\.class$).*(licen[cs]e|notice|copying)[^/]*");

  /** What POMs call a licence, and its short name; a name of another form is not guessed. */
  private static final Map<Pattern, String> SHORT =
      Map.of(
          Pattern.compile("(The )?Apache( Software)?( License)?,?( [Vv]ersion)? ?2(\\.0)?"),
          "Apache-2.0",
          Pattern.compile("Apache-2\\.0"),
          "Apache-2.0",
          Pattern.compile("(The )?MIT( License)? ?(\\(MIT\\))?"),
          "MIT",
          Pattern.compile("GPLv2\\+CE"),
          "GPL-2.0-only WITH Classpath-exception-2.0",
          Pattern.compile("GNU Lesser General Public License \\(LGPL\\), version 2\\.1 or later"),
          "LGPL-2.1-or-later",
          Pattern.compile("Unicode/ICU License"),
          "Unicode-3.0",
          Pattern.compile("The SAX License"),
          "SAX-PD",
          Pattern.compile("The W3C License"),
          "W3C");

  /** Texts in this repository for jars that hold none. */
  private static final Map<String, String> HERE =
      Map.of(
          "Apache-2.0",
          "LICENSE",
          "GPL-2.0-only WITH Classpath-exception-2.0",
          FOLDER + "/GPL-2.0-with-classpath-exception.txt");

  private static Collection<Library> libraries() {
    return new RuntimeLibraries(System.getProperty("java.class.path")).broughtBy(PROJECT);
  }

  private static String shortName(String licence) {
    return SHORT.entrySet().stream()
        .filter(form -> form.getKey().matcher(licence).matches())
        .map(Map.Entry::getValue)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("a licence without a short name: " + licence));
  }

  private static String row(Library library) throws IOException {
    List<String> licences = library.licences().stream().map(ThirdPartyTest::shortName).toList();
    assertThat(licences).as("licences of " + library.name()).isNotEmpty();
    return "| `%s` | %s | %s | %s |"
        .formatted(library.name(), library.version(), String.join(", ", licences), texts(library));
  }

  private static String texts(Library library) throws IOException {
    List<String> own = new ArrayList<>();
    try (ZipFile jar = new ZipFile(library.jar().toFile())) {
      jar.stream()
          .filter(entry -> !entry.isDirectory())
          .map(ZipEntry::getName)
          .filter(name -> TEXT.matcher(name).matches())
          .sorted()
          .map(name -> "`" + name + "`")
          .forEach(own::add);
    }
    if (!own.isEmpty()) {
      return "in its jar: " + String.join(", ", own);
    }
    String licence = shortName(library.licences().get(0));
    String file = HERE.getOrDefault(licence, FOLDER + "/" + library.artifact() + ".txt");
    assertThat(Path.of(file)).as("text for " + library.name()).isRegularFile();
    return "`" + file + "`";
  }

  private static String table(Collection<Library> libraries) throws IOException {
    StringBuilder table = new StringBuilder("| library | version | licence | text |\n");
    table.append("| --- | --- | --- | --- |\n");
    for (Library library : libraries) {
      table.append(row(library)).append('\n');
    }
    return table.toString();
  }

  /** Names in the table of a page. */
  private static List<String> listed(String page) {
    return Pattern.compile("(?m)^\\| `([^`:]+:[^`]+)` \\|")
        .matcher(page)
        .results()
        .map(found -> found.group(1))
        .toList();
  }

  @Test
  void thePageHoldsEveryLibraryWithItsLicenceAndItsText() throws IOException {
    String page = Citations.read(PAGE);
    int begin = page.indexOf(BEGIN) + BEGIN.length();
    int end = page.indexOf(END);
    String table = table(libraries());
    if (Boolean.getBoolean("blindlap.write")) {
      Files.writeString(PAGE, page.substring(0, begin) + table + page.substring(end));
      return;
    }
    assertThat(page.substring(begin, end))
        .as("docs/third-party.md is stale: run this test with -Dblindlap.write=true")
        .isEqualTo(table);
  }

  @Test
  void whatTheProjectAsksForAndWhatThatBringsAreThereAndTestsAreNot() {
    List<String> names = libraries().stream().map(Library::name).toList();
    assertThat(names)
        .hasSizeGreaterThan(60)
        .contains(
            "org.openjfx:javafx-graphics",
            "org.xerial:sqlite-jdbc",
            "org.yaml:snakeyaml",
            "xml-apis:xml-apis-ext",
            "org.apache.xmlgraphics:batik-css")
        .noneMatch(name -> name.startsWith("org.junit") || name.contains("selenium"))
        .doesNotContain("com.networknt:json-schema-validator", "org.assertj:assertj-core");
  }

  @Test
  void aLibraryThatIsNotOnThePageIsNoticed(@TempDir Path repository) throws IOException {
    Path folder = Files.createDirectories(repository.resolve("invented/bell/1.2"));
    Path jar = Files.writeString(folder.resolve("bell-1.2.jar"), "");
    Files.writeString(
        folder.resolve("bell-1.2.pom"),
        "<project><groupId>invented</groupId><artifactId>bell</artifactId><licenses><license>"
            + "<name>Ring\n  freely</name></license></licenses></project>");
    Path project = repository.resolve("pom.xml");
    Files.writeString(
        project,
        "<project><dependencies><dependency><groupId>invented</groupId><artifactId>bell</artifactId>"
            + "</dependency></dependencies></project>");
    Collection<Library> found = new RuntimeLibraries(jar.toString()).broughtBy(project);

    assertThat(found)
        .containsExactly(new Library("invented", "bell", "1.2", List.of("Ring freely"), jar));
    assertThat(listed(Citations.read(PAGE))).doesNotContain("invented:bell").isNotEmpty();
    assertThatThrownBy(() -> table(found)).hasMessageContaining("Ring freely");
  }

  @Test
  void licenceAndNoticeStandAtTheTopAndGoIntoTheJar() throws IOException {
    assertThat(Files.readString(Path.of("LICENSE")))
        .contains("Apache License", "Version 2.0, January 2004", "END OF TERMS AND CONDITIONS");
    assertThat(Files.readString(Path.of("NOTICE"))).startsWith("Blindlap\n");
    assertThat(Files.readString(PROJECT))
        .contains("<name>Apache-2.0</name>")
        .contains("<include>LICENSE</include>", "<include>NOTICE</include>")
        .contains("<include>third-party.md</include>");
  }

  @Test
  void everyFontAndEveryTextIsNamedOnThePage() throws IOException {
    String page = Citations.read(PAGE);
    for (String folder : List.of(FOLDER, "src/main/resources/blindlap/fonts")) {
      try (Stream<Path> files = Files.list(Path.of(folder))) {
        List<String> texts =
            files
                .map(file -> file.getFileName().toString())
                .filter(name -> name.endsWith(".txt"))
                .collect(Collectors.toList());
        assertThat(texts)
            .as(folder)
            .isNotEmpty()
            .allSatisfy(text -> assertThat(page).contains(text));
      }
    }
  }
}
