package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** docs/exit-codes.md is the one page of what commands answer, and it is all of it. */
class ExitCodesTest {
  private static final Path MAIN = Path.of("src", "main", "java");

  @TempDir private Path folder;

  private static String page() throws IOException {
    return Files.readString(Path.of("docs", "exit-codes.md"));
  }

  private static Set<String> found(String text, String pattern) {
    return Pattern.compile(pattern, Pattern.MULTILINE)
        .matcher(text)
        .results()
        .map(each -> each.group(1))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> codes() throws IllegalAccessException {
    Set<String> codes = new TreeSet<>();
    for (Field field : ExitCode.class.getFields()) {
      if (Modifier.isStatic(field.getModifiers())) {
        codes.add(String.valueOf(field.getInt(null)));
      }
    }
    return codes;
  }

  @Test
  void everyCodeHasItsRowAndNoOtherHas() throws Exception {
    assertThat(found(page(), "^\\| (\\d+) \\|")).isEqualTo(codes());
  }

  /** Whoever answers with a number of his own would answer with one that no page knows. */
  @Test
  void commandsAnswerWithTheseAlone() throws Exception {
    for (Path source : sources(MAIN)) {
      String text = Files.readString(source);
      assertThat(found(text, "(Complaint\\(\\d)")).as(source.toString()).isEmpty();
      if (!source.endsWith("Main.java")) {
        assertThat(text).as(source.toString()).doesNotContain("System.exit", ".halt(");
      }
      if (text.contains("Integer call()")) {
        assertThat(found(text, "(return \\d+;)")).as(source.toString()).isEmpty();
      }
    }
    assertThat(Files.readString(MAIN.resolve("blindlap/Main.java")))
        .contains("int code = Blindlap.run(", "System.exit(code);");
  }

  @Test
  void launchersAnswerWithThem() throws Exception {
    Set<String> launched = found(Files.readString(Path.of("blindlap")), "\\bexit (\\d+)[; })]");
    launched.addAll(found(Files.readString(Path.of("blindlap.cmd")), "exit /b (\\d+)"));
    launched.addAll(found(Files.readString(Path.of("blindlap")), "^ +exit (\\d+)$"));
    assertThat(launched).contains("3");
    assertThat(codes()).containsAll(launched);
  }

  @Test
  void thePageNamesEveryCommandWhoseCheckCanFailAndNoOther() throws Exception {
    Set<String> failing = new TreeSet<>();
    for (Path source : sources(MAIN.resolve("blindlap/command"))) {
      String text = Files.readString(source);
      if (text.contains("ExitCode.CHECK_FAILED")) {
        failing.addAll(found(text, "^    name = \"([a-z-]+)\""));
      }
    }
    assertThat(failing).hasSizeGreaterThan(3);
    assertThat(found(page(), "^\\| `blindlap ([a-z-]+)")).isEqualTo(failing);
  }

  @Test
  void everyHelpEndsWithThemInOneSharedLine() {
    CommandLineSession day = new CommandLineSession(folder);
    String shared = ExitCode.all();
    assertThat(shared).contains("0 done", "1 ", "2 ", "3 ", "docs/exit-codes.md");
    for (String name : Commands.NAMES) {
      CommandLineSession.Ran help = day.run(name, "--help");
      assertThat(help.code()).as(name).isZero();
      assertThat(help.out().strip().replaceAll("\\s+", " ")).as(name).endsWith(shared);
    }
    assertThat(day.run("--help").out().strip().replaceAll("\\s+", " ")).endsWith(shared);
  }

  /** One place: another page that speaks of a code leads to it. */
  @Test
  void pagesThatSpeakOfExitCodesLinkToThePage() throws IOException {
    List<Path> pages;
    try (Stream<Path> all =
        Stream.concat(Files.walk(Path.of("docs")), Stream.of(Path.of("README.md")))) {
      pages = all.filter(page -> page.toString().endsWith(".md")).toList();
    }
    for (Path page : pages) {
      String text = Files.readString(page).replaceAll("(?s)```.*?```", "");
      if (!page.endsWith("exit-codes.md") && text.matches("(?is).*exit codes?\\b.*")) {
        assertThat(text).as(page.toString()).contains("exit-codes.md");
      }
    }
  }

  private static List<Path> sources(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(file -> file.toString().endsWith(".java")).sorted().toList();
    }
  }
}
