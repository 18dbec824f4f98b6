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

/** Whoever follows a citation or a link arrives. */
class CitationsTest {
  private static final Path TOP = Path.of("");
  private static final Pattern READ =
      Pattern.compile(".*\\.(java|properties|py|R|sh|md|json|ya?ml|sql|css)|.*/\\.ci/run");

  @Test
  void everyCitationOfADocumentPointsAtAPlaceInIt() throws IOException {
    Citations citations = new Citations(TOP);
    List<String> faults = new ArrayList<>();
    int withPlace = 0;
    for (Path file : files()) {
      String text = Citations.read(file);
      faults.addAll(citations.cited(name(file), text));
      withPlace += text.split("docs/method\\.md#", -1).length - 1;
    }
    assertThat(withPlace).as("citations of the method found").isGreaterThan(60);
    assertThat(faults).isEmpty();
  }

  @Test
  void everyLinkOfADocumentLeadsSomewhere() throws IOException {
    Citations citations = new Citations(TOP);
    List<String> faults = new ArrayList<>();
    int documents = 0;
    for (Path file : files()) {
      if (name(file).endsWith(".md")) {
        documents++;
        faults.addAll(citations.linked(name(file), Citations.read(file)));
      }
    }
    assertThat(documents).isGreaterThan(15);
    assertThat(faults).isEmpty();
  }

  @Test
  void everyClassThatADocumentOrScriptNamesIsWhereItSays() throws IOException {
    Citations citations = new Citations(TOP);
    List<String> faults = new ArrayList<>();
    for (Path file : files()) {
      if (name(file).matches(".*\\.(md|sh)|\\.ci/run")) {
        faults.addAll(citations.classes(name(file), Citations.read(file)));
      }
    }
    assertThat(faults).isEmpty();
  }

  @Test
  void aClassThatMovedAwayIsNamed(@TempDir Path top) throws IOException {
    Path room = Files.createDirectories(top.resolve("src/test/java/blindlap/plan"));
    Files.writeString(room.resolve("RuleTest.java"), "class RuleTest {}");
    Citations citations = new Citations(top);
    String root = "blind" + "lap";

    assertThat(
            citations.classes(
                "docs/a.md",
                "java -cp x " + root + ".plan.RuleTest; -Dtest=RuleTest `plan.RuleTest` `java.A`"))
        .isEmpty();
    assertThat(
            citations.classes(
                "docs/a.md",
                "java " + root + ".RuleTest\n`plan.Rule.of`\n-Dtest=RulesTest\nx " + root + ".cmd"))
        .containsExactly(
            "docs/a.md:1: no such class there: RuleTest",
            "docs/a.md:2: no such class there: plan.Rule",
            "docs/a.md:3: no such class there: RulesTest");
  }

  @Test
  void aCitationOfAPlaceThatIsNotThereIsNamedWithItsLine(@TempDir Path top) throws IOException {
    document(top, "method.md", "# Method\n\n<a id=\"walk\"></a>\n\n## 2.1 The walk\n");
    Citations citations = new Citations(top);
    String doc = "docs" + "/method.md";

    assertThat(citations.cited("src/A.java", "// " + doc + "#walk, " + doc + " and so on"))
        .isEmpty();
    assertThat(citations.cited("src/A.java", "class A {\n  // see " + doc + "#stroll.\n}"))
        .containsExactly("src/A.java:2: no such place: " + doc + "#stroll");
    assertThat(citations.cited("src/A.java", "# " + doc + "#21-the-walk"))
        .containsExactly("src/A.java:1: cites a number that may change: " + doc + "#21-the-walk");
    assertThat(citations.cited("src/A.java", "/** " + doc + ",\n * section 2.1 */"))
        .containsExactly(
            "src/A.java:1: cite by document and #name instead of: " + doc + ", section 2.1");
  }

  @Test
  void aCitationOfADocumentThatIsNotThereIsNamed(@TempDir Path top) throws IOException {
    document(top, "method.md", "# Method\n");
    Citations citations = new Citations(top);
    String doc = "docs" + "/knots.md";

    assertThat(citations.cited("src/main/java/A.java", "// " + doc))
        .containsExactly("src/main/java/A.java:1: no such document: " + doc);
    assertThat(citations.cited("src/test/java/ATest.java", "write(\"" + doc + "\")")).isEmpty();
    assertThat(citations.cited("src/test/java/ATest.java", "// " + doc + "#loop")).hasSize(1);
  }

  @Test
  void aTextThatIsNotShippedIsNoSource() {
    String method = "MET" + "HOD";
    Citations citations = new Citations(TOP);

    assertThat(citations.cited("a.json", "{\"source\": \"" + method + ".md section 5\"}"))
        .containsExactly("a.json:1: cite by document and #name instead of: " + method + ".md");
    assertThat(citations.cited("A.java", "/** By it (" + method + "\n * 13). */")).hasSize(1);
    assertThat(citations.cited("A.java", "// " + method + "-2 14.1")).hasSize(1);
    assertThat(citations.cited("A.java", "@Target(ElementType." + method + ") int MOST_" + method))
        .isEmpty();
  }

  @Test
  void aLinkThatLeadsNowhereIsNamed(@TempDir Path top) throws IOException {
    document(top, "a.md", "# One thing\n\n## What `x` is, and why?\n\n## Again\n\n## Again\n");
    document(top, "b.md", "text");
    Citations citations = new Citations(top);

    assertThat(
            citations.linked(
                "docs/b.md",
                "[1](a.md) [2](a.md#what-x-is-and-why) [3](a.md#again-1) [4](https://x.example/y)"
                    + " `[5](no.md)`\n```\n[6](no.md)\n```\n![7](a.md \"title\") <a href=\"#8\">"))
        .containsExactly("docs/b.md:5: link leads nowhere: #8");
    assertThat(citations.linked("docs/b.md", "[1](c.md)\n[2](a.md#two-things)\n[3](a.md#again-2)"))
        .containsExactly(
            "docs/b.md:1: link leads nowhere: c.md",
            "docs/b.md:2: link leads nowhere: a.md#two-things",
            "docs/b.md:3: link leads nowhere: a.md#again-2");
  }

  private static void document(Path top, String name, String text) throws IOException {
    Files.createDirectories(top.resolve("docs"));
    Files.writeString(top.resolve("docs").resolve(name), text);
  }

  private static String name(Path file) {
    return file.toString().replace('\\', '/');
  }

  /** Sources, documents and scripts, without what is built. */
  private static List<Path> files() throws IOException {
    List<Path> found = new ArrayList<>();
    for (String home : List.of("src", "docs", "protocols", ".ci")) {
      try (Stream<Path> files = Files.walk(TOP.resolve(home))) {
        files.filter(Files::isRegularFile).forEach(found::add);
      }
    }
    try (Stream<Path> files = Files.list(TOP)) {
      files.filter(Files::isRegularFile).forEach(found::add);
    }
    return found.stream()
        .filter(file -> READ.matcher("/" + name(file)).matches())
        .sorted()
        .toList();
  }
}
