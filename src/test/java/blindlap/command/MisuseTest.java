package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** A command line that cannot be read gets one sentence and no usage. */
class MisuseTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "moun | blindlap has no command \"moun\"; mount is near it.",
        "nosuch | blindlap has no command \"nosuch\".",
        "--nope | blindlap has no option --nope.",
        "mount --nope x | blindlap mount has no option --nope.",
        "mount --noteb x | blindlap mount has no option --noteb; --notebook is near it.",
        "mount x y | blindlap mount takes no more than it has got, and \"y\" is left over.",
        "mount | blindlap mount needs SESSION.",
        "void x | blindlap void needs --reason EVENT and LAP.",
        "blind-broken x --stint | blindlap blind-broken needs STINT behind --stint.",
        "blind-broken x --stint a --what y | --stint: 'a' is not a whole number.",
        "blind-broken x --stint 1 --stint 2 --what y | blindlap blind-broken got --stint more than"
            + " once.",
        "masks x | blindlap masks needs one of --seal, --guess, --read, --marks, and one alone.",
        "masks x --seal --guess | needs one of --seal, --guess, --read, --marks, and one alone.",
        "sheets x --out d --paper A9 | --paper takes one of A4, LETTER, and \"A9\" is none",
        "--notebook f mount x | --notebook stands after the command: blindlap mount --notebook",
      })
  void whatIsWrongIsSaidInOneLineWithoutUsage(String typed, String says) {
    CommandLineSession day = new CommandLineSession(folder);
    CommandLineSession.Ran ran = day.run(typed.split(" "));
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err().strip().lines()).hasSize(1);
    assertThat(ran.err()).contains(says, "Nothing was done").doesNotContain("Usage");
    assertThat(ran.out()).isEmpty();
  }

  /**
   * Every kind of line that cannot be read, of every command, made from what the command takes; so
   * that no sentence of the parser's own is left for a command or an option that is new.
   */
  @Test
  void everyKindOfEveryCommandIsSaidInOurWords() {
    Map<String, List<List<String>>> wrong = new TreeMap<>();
    CommandLine.Model.CommandSpec all =
        Blindlap.line(new CommandLineSession(folder).setting()).getCommandSpec();
    all.subcommands().forEach((name, command) -> wrong(name, command.getCommandSpec(), wrong));
    wrong(wrong, "no command", "nosuch");
    wrong(wrong, "no command", "");
    wrong(wrong, "no command", "@file");
    wrong(wrong, "no option", "--nosuch");
    assertThat(wrong.keySet())
        .containsExactly(
            "bad choice",
            "bad flag",
            "bad number",
            "exclusive",
            "missing",
            "no command",
            "no option",
            "no value",
            "too many",
            "twice");
    CommandLineSession day = new CommandLineSession(folder);
    wrong.forEach(
        (kind, lines) -> {
          assertThat(lines).as(kind).isNotEmpty();
          for (List<String> line : lines) {
            StringWriter out = new StringWriter();
            StringWriter err = new StringWriter();
            int code =
                Blindlap.run(
                    day.setting(),
                    new PrintWriter(out, true),
                    new PrintWriter(err, true),
                    line.toArray(String[]::new));
            String said = err.toString().strip();
            assertThat(code).as("%s: %s: %s", kind, line, said).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(out.toString()).as("%s: %s", kind, line).isEmpty();
            assertThat(said.lines()).as("%s: %s", kind, line).hasSize(1);
            assertThat(said)
                .as("%s: %s", kind, line)
                .matches(".*\\. ?Nothing was done; .*\\.")
                .contains("blindlap", line.get(0))
                .doesNotContainPattern(
                    "Usage|Unmatched|Unknown|Missing|Invalid|Expected|Error|specified|possible"
                        + "|Possible|should be|exclusive|positional|java|null\\b(?!-)|<|>");
          }
        });
    assertThat(wrong.values().stream().mapToInt(List::size).sum()).isGreaterThan(400);
  }

  private static void wrong(
      String name, CommandLine.Model.CommandSpec command, Map<String, List<List<String>>> wrong) {
    wrong(wrong, "no option", name, "--nosuch");
    wrong(wrong, "no option", name, "-x");
    List<String> needed = needed(name, command);
    int most =
        command.positionalParameters().stream().mapToInt(p -> p.index().max()).max().orElse(-1);
    if (most < Integer.MAX_VALUE) {
      List<String> tooMany = new ArrayList<>(needed);
      int has =
          (int) command.positionalParameters().stream().filter(p -> p.arity().min() > 0).count();
      for (int i = has; i < most + 2; i++) {
        tooMany.add("more");
      }
      wrong(wrong, "too many", tooMany.toArray(String[]::new));
    }
    if (command.positionalParameters().stream().anyMatch(p -> p.arity().min() > 0)) {
      wrong(wrong, "missing", name);
    }
    for (CommandLine.Model.OptionSpec option : command.options()) {
      if (option.usageHelp() || option.versionHelp()) {
        continue;
      }
      String typed = option.longestName();
      boolean flag = option.arity().max() == 0;
      if (flag) {
        wrong(wrong, "bad flag", with(needed, typed + "=maybe"));
      } else {
        wrong(wrong, "no value", with(needed, typed));
      }
      if (option.type() == int.class || option.type() == Integer.class) {
        wrong(wrong, "bad number", with(needed, typed + "=many"));
        wrong(wrong, "bad number", with(needed, typed + "=99999999999"));
      }
      if (option.type().isEnum()) {
        wrong(wrong, "bad choice", with(needed, typed + "=nosuch"));
      }
      if (!option.isMultiValue() && option.group() == null && !needed.contains(typed)) {
        String once = flag ? typed : typed + "=" + value(option);
        wrong(wrong, "twice", with(needed, once, once));
      }
    }
    for (CommandLine.Model.ArgGroupSpec group : command.argGroups()) {
      List<String> both =
          group.args().stream()
              .filter(CommandLine.Model.OptionSpec.class::isInstance)
              .map(arg -> (CommandLine.Model.OptionSpec) arg)
              .map(o -> o.arity().max() == 0 ? o.longestName() : o.longestName() + "=" + value(o))
              .limit(2)
              .toList();
      if (group.exclusive() && both.size() == 2) {
        List<String> line = new ArrayList<>(needed);
        line.removeIf(both::contains);
        line.addAll(both);
        wrong(wrong, "exclusive", line.toArray(String[]::new));
      }
    }
  }

  /** A line with all that the command cannot do without. */
  private static List<String> needed(String name, CommandLine.Model.CommandSpec command) {
    List<String> line = new ArrayList<>(List.of(name));
    command.positionalParameters().stream()
        .filter(p -> p.arity().min() > 0)
        .forEach(p -> line.add("1"));
    command.options().stream()
        .filter(CommandLine.Model.OptionSpec::required)
        .forEach(o -> line.add(o.longestName() + "=" + value(o)));
    return line;
  }

  private static String value(CommandLine.Model.OptionSpec option) {
    return option.type().isEnum() ? option.type().getEnumConstants()[0].toString() : "1";
  }

  private static String[] with(List<String> needed, String... more) {
    List<String> line = new ArrayList<>(needed);
    for (String each : more) {
      line.removeIf(there -> there.startsWith(each.replaceAll("=.*", "") + "="));
    }
    line.addAll(List.of(more));
    return line.toArray(String[]::new);
  }

  private static void wrong(Map<String, List<List<String>>> wrong, String kind, String... line) {
    wrong.computeIfAbsent(kind, k -> new ArrayList<>()).add(List.of(line));
  }

  /** What lies in a file is never read as part of the line. */
  @Test
  void aNameThatBeginsWithAnAtIsAName() throws IOException {
    Path words = Files.writeString(folder.resolve("words"), "--help");
    CommandLineSession.Ran ran = new CommandLineSession(folder).run("mount", "@" + words);
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("@" + words);
    assertThat(ran.out()).isEmpty();
  }

  @Test
  void theHelpThatASentenceNamesIsThere() {
    CommandLineSession.Ran ran = new CommandLineSession(folder).run("mount", "--help");
    assertThat(ran.code()).isZero();
    assertThat(ran.out()).contains("Usage: blindlap mount");
  }
}
