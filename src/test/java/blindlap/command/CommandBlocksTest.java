package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whoever types what the pages print gets what they promise. Every block of commands is marked: it
 * is run here, or by {@code .ci/run}, or it is not run for a reason, which is printed.
 */
class CommandBlocksTest {
  private static final Pattern SCRIPT = Pattern.compile("(?:bash|sh) ([\\w./-]+\\.sh)");
  private static final Pattern INTERPRETED =
      Pattern.compile("(python3|Rscript) (?:-\\S+ )*(?:\\S*/)?([\\w-]+\\.(?:py|R)).*");

  @TempDir private Path folder;

  private static Map<String, List<CommandBlock>> pages() throws IOException {
    Map<String, List<CommandBlock>> pages = new LinkedHashMap<>();
    List<Path> files = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
    for (String folder : List.of("docs", "sample-sessions")) {
      try (Stream<Path> found = Files.walk(Path.of(folder))) {
        found.filter(file -> file.toString().endsWith(".md")).sorted().forEach(files::add);
      }
    }
    for (Path file : files) {
      String name = file.toString().replace('\\', '/');
      pages.put(name, CommandBlock.of(name, Files.readString(file)));
    }
    return pages;
  }

  private static List<CommandBlock> marked(String mark) throws IOException {
    return pages().values().stream()
        .flatMap(List::stream)
        .filter(block -> block.mark().equals(mark))
        .toList();
  }

  @Test
  void everyBlockOfCommandsIsMarked() throws IOException {
    assertThat(marked("").stream().map(b -> b.place() + ": " + b.lines().get(0)))
        .as(
            "blocks of commands without <!-- run -->, <!-- ci-only: reason --> or <!-- not-run:"
                + " reason -->")
        .isEmpty();
  }

  @Test
  void theDayOfTheReadmeAndTheFirstDayAreRun() throws IOException {
    assertThat(marked("run").stream().map(CommandBlock::page))
        .contains("README.md", "docs/manual/first-day.md");
  }

  @TestFactory
  Stream<DynamicTest> everyPageRunsAsPrinted() throws IOException {
    return pages().entrySet().stream()
        .filter(page -> page.getValue().stream().anyMatch(b -> b.mark().equals("run")))
        .map(
            page ->
                DynamicTest.dynamicTest(
                    page.getKey(),
                    () -> {
                      Path home = folder.resolve(page.getKey().replace('/', '-'));
                      PrintedPage typed = new PrintedPage(Files.createDirectory(home));
                      for (CommandBlock block : page.getValue()) {
                        if (block.mark().matches("run|prints")) {
                          typed.type(block);
                        }
                      }
                    }));
  }

  @Test
  void whatIsLeftToTheCheckOfAChangeIsRunThere() throws IOException {
    List<String> run = checkOfAChange();
    for (CommandBlock block : marked("ci-only")) {
      assertThat(block.said()).as(block.place() + ": the reason").isNotBlank();
      for (String command : block.commands()) {
        assertThat(run).as(block.place()).anyMatch(line -> isRun(line, command));
      }
    }
  }

  /** A script counts by its name, whatever it is given; anything else from its beginning. */
  private static boolean isRun(String line, String command) {
    Matcher interpreted = INTERPRETED.matcher(command);
    if (interpreted.matches()) {
      return line.contains(interpreted.group(1)) && line.contains(interpreted.group(2));
    }
    String typed = command.startsWith("blindlap ") ? "./" + command : command;
    return (line + " ").startsWith(typed + " ");
  }

  /** The lines of {@code .ci/run} and of the scripts that it runs. */
  private static List<String> checkOfAChange() throws IOException {
    List<String> lines = new ArrayList<>(Files.readAllLines(Path.of(".ci/run")));
    for (String line : List.copyOf(lines)) {
      Matcher script = SCRIPT.matcher(line);
      if (script.find()) {
        lines.addAll(Files.readAllLines(Path.of(script.group(1))));
      }
    }
    return lines.stream().map(String::strip).filter(line -> !line.startsWith("#")).toList();
  }

  @Test
  void whatIsNotRunHasAReasonAndIsPrinted() throws IOException {
    List<CommandBlock> blocks = marked("not-run");
    System.out.println("Blocks of commands that are not run, " + blocks.size() + ":");
    for (CommandBlock block : blocks) {
      System.out.println("  " + block.place() + ": " + block.said());
      assertThat(block.said()).as(block.place() + ": the reason").hasSizeGreaterThan(10);
    }
    assertThat(blocks).isNotEmpty();
  }

  private static List<CommandBlock> blocks(String... lines) {
    return CommandBlock.of("page.md", String.join("\n", lines));
  }

  @Test
  void aBlockIsFoundFencedOrIndentedAndItsMarkBeforeIt() {
    List<CommandBlock> found =
        blocks(
            "Text:",
            "",
            "    ./blindlap demo   # a remark",
            "",
            "    mvn -B \\",
            "        verify",
            "",
            "<!-- run: exit 2 -->",
            "",
            "```sh",
            "blindlap review latest",
            "```",
            "- a point",
            "    blindlap is a word of it",
            "```python",
            "java = 1",
            "```",
            "<!-- not-run: nobody can -->",
            "    python3 verify.py DIR");
    assertThat(found).extracting(CommandBlock::line).containsExactly(3, 10, 19);
    assertThat(found).extracting(CommandBlock::mark).containsExactly("", "run", "not-run");
    assertThat(found).extracting(CommandBlock::said).containsExactly("", "exit 2", "nobody can");
    assertThat(found.get(0).commands()).containsExactly("./blindlap demo", "mvn -B verify");
  }

  @Test
  void aLineThatEndsOtherwiseThanSaidFails() throws IOException {
    for (String[] page :
        new String[][] {
          {"<!-- run -->", "    blindlap review latest"},
          {"<!-- run: exit 2 -->", "    blindlap notebook"},
          {"<!-- run -->", "    blindlap no-such-command"},
          {"<!-- run -->", "    blindlap notebook | more"},
          {"<!-- run -->", "    mvn verify"},
          {"<!-- run: exit two -->", "    blindlap notebook"},
          {"<!-- run -->", "    blindlap notebook", "<!-- prints -->", "", "    Shock K"},
        }) {
      PrintedPage typed = new PrintedPage(folder);
      assertThatThrownBy(
              () -> {
                for (CommandBlock block : blocks(page)) {
                  typed.type(block);
                }
              })
          .as(Arrays.toString(page))
          .isInstanceOf(AssertionError.class);
    }
    PrintedPage typed = new PrintedPage(folder);
    typed.type(blocks("<!-- run: exit 2 -->", "    blindlap review latest").get(0));
    typed.type(blocks("<!-- prints -->", "    There is … latest session: …").get(0));
  }

  @Test
  void anotherLineThanThatOfTheCheckIsNotRunThere() {
    assertThat(isRun("mvn -B verify", "mvn -B verify")).isTrue();
    assertThat(isRun("./blindlap demo --no-window", "blindlap demo")).isTrue();
    assertThat(isRun("./blindlap demo --no-window", "blindlap dem")).isFalse();
    assertThat(isRun("python3 \"$here/recompute.py\" x", "python3 recompute.py DIR")).isTrue();
    assertThat(isRun("python3 \"$here/recompute.py\" x", "python3 verify.py DIR")).isFalse();
  }
}
