package blindlap.command;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A fenced or indented block of a page that holds a command somebody may type, with the mark on the
 * line before it: {@code <!-- run -->}, {@code <!-- run: exit 2 -->}, {@code <!-- run: notebook
 * -->} (whose reader has a notebook already), {@code <!-- ci-only: reason -->} or {@code <!--
 * not-run: reason -->}; or what the commands before it print, marked {@code <!-- prints -->}.
 *
 * @param page where it stands
 * @param line of its first line
 * @param mark "run", "ci-only", "not-run", "prints", or empty if there is none
 * @param said what stands behind the mark's colon; empty if there is none
 * @param lines without their indent
 */
record CommandBlock(String page, int line, String mark, String said, List<String> lines) {
  private static final Pattern FENCE = Pattern.compile("( *)(```+|~~~+)([^`]*)");
  private static final Pattern MARK =
      Pattern.compile("<!-- (run|ci-only|not-run|prints)(?:: *(.*?))? *-->");

  /** Programs that a person types; a block is of commands if one of its lines begins with one. */
  private static final Pattern COMMAND =
      Pattern.compile(
          "(?:\\$"
              + " )?(?:\\./|[\\w./~$\"-]*/)?(?:blindlap|blindlap\\.cmd|mvn|java|python3?|Rscript|xvfb-run"
              + "|sh|bash|cp|mkdir|cd|ln|mv|rm|ls|cat|export|setx?|git|sudo|apt-get|sqlite3|curl"
              + "|npm|npx|unzip|sha256sum)(?:\\s.*|$)");

  /** In these a line is no command, whatever it begins with. */
  private static final List<String> NO_COMMANDS =
      List.of("python", "r", "json", "yaml", "sql", "csv", "java", "text");

  CommandBlock {
    lines = List.copyOf(lines);
  }

  /** Blocks of commands, and of what they print, in the order of the page. */
  static List<CommandBlock> of(String page, String text) {
    String[] all = text.split("\\R", -1);
    List<CommandBlock> blocks = new ArrayList<>();
    int at = 0;
    while (at < all.length) {
      Matcher fence = FENCE.matcher(all[at]);
      int begin = at;
      List<String> lines = new ArrayList<>();
      boolean language = false;
      if (fence.matches()) {
        String end = fence.group(2);
        int indent = fence.group(1).length();
        for (at++; at < all.length && !all[at].strip().startsWith(end); at++) {
          lines.add(all[at].substring(Math.min(indent, all[at].length())));
        }
        at++;
        language = NO_COMMANDS.contains(fence.group(3).strip().toLowerCase(java.util.Locale.ROOT));
      } else if (all[at].startsWith("    ") && begins(all, at)) {
        while (at < all.length && (all[at].startsWith("    ") || goesOn(all, at))) {
          lines.add(all[at].isBlank() ? "" : all[at].substring(4));
          at++;
        }
      } else {
        at++;
        continue;
      }
      Matcher mark = MARK.matcher(before(all, begin));
      boolean marked = mark.matches();
      boolean commands = !language && lines.stream().anyMatch(CommandBlock::isCommand);
      if (marked || commands) {
        String said = marked && mark.group(2) != null ? mark.group(2) : "";
        blocks.add(new CommandBlock(page, begin + 1, marked ? mark.group(1) : "", said, lines));
      }
    }
    return blocks;
  }

  /** An indented line begins a block unless it goes on with a paragraph or a point of a list. */
  private static boolean begins(String[] all, int at) {
    return at == 0
        || all[at - 1].isBlank()
        || all[at - 1].startsWith("#")
        || MARK.matcher(all[at - 1].strip()).matches();
  }

  /** A blank line is part of an indented block that goes on after it. */
  private static boolean goesOn(String[] all, int at) {
    int next = at;
    while (next < all.length && all[next].isBlank()) {
      next++;
    }
    return next > at && next < all.length && all[next].startsWith("    ");
  }

  private static String before(String[] all, int begin) {
    int at = begin - 1;
    while (at >= 0 && all[at].isBlank()) {
      at--;
    }
    return at < 0 ? "" : all[at].strip();
  }

  private static boolean isCommand(String line) {
    return COMMAND.matcher(line.strip()).matches();
  }

  /** Its commands: lines that go on joined, without remarks. */
  List<String> commands() {
    return Stream.of(String.join("\n", lines).replaceAll("\\s*\\\\\\n\\s*", " ").split("\n"))
        .map(line -> line.replaceAll("(^|\\s+)# .*", "").strip())
        .filter(line -> !line.isEmpty())
        .collect(Collectors.toList());
  }

  /** "docs/x.md:12". */
  String place() {
    return page + ":" + line;
  }
}
