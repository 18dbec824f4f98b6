package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;

/**
 * Somebody who types what stands on a page, from its first block to its last, in a home and a
 * working folder of their own. The folder is that of a clone: sample sessions and protocols are
 * read from the repository, everything else is read from and written to the folder.
 *
 * <p>Questions are answered as {@link CommandLineSession} does: the helper phrase with the one that
 * the last commit has shown, its words by their numbers, yes or no with yes, anything else with
 * Enter.
 */
final class PrintedPage {
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|'([^']*)'|([^\\s\"']+)");
  private static final Pattern OF_THE_CLONE = Pattern.compile("(?:sample-sessions|protocols)/.*");

  /** What only a shell understands; a page that needs it cannot be typed everywhere. */
  private static final Pattern SHELL = Pattern.compile(".*[$`|<>;&*].*");

  private static final Pattern EXIT = Pattern.compile("exit (\\d)");
  private static final Pattern FILE =
      Pattern.compile(".*(FILE|DIR|FOLDER|RECORDING|\\.csv|\\.yaml).*");

  private final CommandLineSession session;
  private Path folder;
  private String printed = "";

  PrintedPage(Path home) throws IOException {
    this.folder = home;
    this.session = new CommandLineSession(home);
    session.display = true;
  }

  /** Types every line of a block. */
  void type(CommandBlock block) throws IOException {
    if (block.mark().equals("prints")) {
      assertPrinted(block);
      return;
    }
    Matcher exit = EXIT.matcher(block.said());
    boolean refused = exit.matches();
    if (block.said().equals("notebook")) {
      session.desk().close();
    } else {
      assertThat(refused ? "" : block.said()).as(block.place() + ": what run is to mean").isEmpty();
    }
    assertThat(refused && block.commands().size() > 1)
        .as(block.place() + ": a block that is refused holds one command")
        .isFalse();
    StringBuilder all = new StringBuilder();
    for (String command : block.commands()) {
      CommandLineSession.Ran ran = type(block.place(), command);
      assertThat(ran.code())
          .as("%s: %s%n%s%s", block.place(), command, ran.out(), ran.err())
          .isEqualTo(refused ? Integer.parseInt(exit.group(1)) : 0);
      all.append(ran.out()).append(ran.err());
      session.later(60);
    }
    printed = all.toString();
  }

  private CommandLineSession.Ran type(String place, String command) throws IOException {
    assertThat(SHELL.matcher(command.replaceAll("\"[^\"]*\"|'[^']*'", "")).matches())
        .as(place + ": what a shell alone understands: " + command)
        .isFalse();
    List<String> words = new ArrayList<>();
    Matcher word = WORD.matcher(command);
    boolean joined = false;
    int end = -1;
    while (word.find()) {
      String text =
          word.group(1) != null
              ? word.group(1)
              : word.group(2) != null ? word.group(2) : word.group(3);
      joined = word.start() == end;
      words.add(joined ? words.remove(words.size() - 1) + text : text);
      end = word.end();
    }
    List<String> rest = words.subList(1, words.size());
    return switch (words.get(0).replaceFirst("^\\./", "")) {
      case "blindlap" -> blindlap(rest);
      case "cp" -> done(() -> copy(rest));
      case "mkdir" -> done(() -> make(rest));
      case "cd" -> done(() -> folder = folder.resolve(rest.get(0)).normalize());
      default -> throw new AssertionError(place + ": nothing here types " + words.get(0));
    };
  }

  /** A line of a shell. */
  private interface Step {
    void take() throws IOException;
  }

  private static CommandLineSession.Ran done(Step step) throws IOException {
    step.take();
    return new CommandLineSession.Ran(0, "", "");
  }

  private void copy(List<String> names) throws IOException {
    Path to = folder.resolve(names.get(names.size() - 1));
    for (String name : names.subList(0, names.size() - 1)) {
      Path from = Path.of(read(name));
      Path target = Files.isDirectory(to) ? to.resolve(from.getFileName()) : to;
      Files.copy(from, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private void make(List<String> names) throws IOException {
    for (String name : names) {
      if (!name.equals("-p")) {
        Files.createDirectories(folder.resolve(name));
      }
    }
  }

  private CommandLineSession.Ran blindlap(List<String> words) {
    CommandLineSession.Ran ran = session.runAsTyped(placed(words));
    if (ran.out().contains(CommandLineSession.SHOWN)) {
      session.types(CommandLineSession.shownPhrase(ran.out()));
    }
    return ran;
  }

  /** The words with every name of a file put where whoever types stands. */
  private List<String> placed(List<String> words) {
    List<String> placed = new ArrayList<>(words);
    CommandLine.ParseResult parsed;
    try {
      parsed = Blindlap.line(session.setting()).parseArgs(words.toArray(String[]::new));
    } catch (CommandLine.ParameterException misuse) {
      return placed;
    }
    while (parsed != null) {
      for (ArgSpec arg : parsed.matchedArgs()) {
        if (FILE.matcher(arg.paramLabel()).matches()) {
          arg.originalStringValues().forEach(name -> place(placed, name));
        }
      }
      parsed = parsed.subcommand();
    }
    return placed;
  }

  private void place(List<String> words, String name) {
    for (int i = 0; i < words.size(); i++) {
      if (words.get(i).equals(name)) {
        words.set(i, read(name));
      } else if (words.get(i).startsWith("--") && words.get(i).endsWith("=" + name)) {
        words.set(i, words.get(i).replace("=" + name, "=" + read(name)));
      }
    }
  }

  private String read(String name) {
    return OF_THE_CLONE.matcher(name).matches() ? name : folder.resolve(name).toString();
  }

  /**
   * Every line of the block was printed by the block before it, in this order; an ellipsis stands
   * for anything. Blanks that keep a number and its unit together are blanks to whoever reads.
   */
  private void assertPrinted(CommandBlock block) {
    List<String> lines =
        Arrays.stream(printed.replace(folder + "/", "").split("\\R"))
            .map(PrintedPage::plain)
            .toList();
    int at = 0;
    for (String line : block.lines()) {
      String wanted = plain(line);
      if (wanted.isEmpty() || wanted.equals("…")) {
        continue;
      }
      Pattern form =
          Pattern.compile(
              Arrays.stream(wanted.split("…", -1))
                  .map(Pattern::quote)
                  .reduce((a, b) -> a + ".*" + b)
                  .orElse(""));
      int found = at;
      while (found < lines.size() && !form.matcher(lines.get(found)).matches()) {
        found++;
      }
      assertThat(found)
          .as("%s: not printed from line %d on: %s%n%s", block.place(), at + 1, wanted, printed)
          .isLessThan(lines.size());
      at = found + 1;
    }
  }

  private static String plain(String line) {
    return line.replaceAll("[\\u00a0\\u202f\\u2009]", " ").strip();
  }
}
