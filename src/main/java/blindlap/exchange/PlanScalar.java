package blindlap.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Texts of a plan file: bare where they read back letter by letter so, in quotes where not. */
final class PlanScalar {
  /** Begins with a letter, a digit, or a sign before a digit. */
  private static final Pattern BARE = Pattern.compile("(?:[\\p{L}\\d]|[+\\-][.,]?\\d|[.,]\\d).*");

  private static final Pattern ENDS_IT = Pattern.compile(":(?: |$)| #");

  private PlanScalar() {}

  /** On one line. */
  static String of(String text) {
    return bare(text) ? text : quoted(text);
  }

  /** Several lines as a person writes them, the first one the sign that they follow. */
  static List<String> lines(String text) {
    List<String> lines = text.lines().toList();
    boolean block =
        lines.size() > 1
            && text.equals(String.join("\n", lines))
            && !text.startsWith(" ")
            && lines.stream().noneMatch(line -> line.endsWith(" ") || !clean(line))
            && !lines.get(0).isEmpty()
            && !lines.get(lines.size() - 1).isEmpty();
    if (!block) {
      return List.of(of(text));
    }
    List<String> all = new ArrayList<>(List.of("|-"));
    all.addAll(lines);
    return all;
  }

  private static boolean bare(String text) {
    return BARE.matcher(text).matches()
        && clean(text)
        && !text.endsWith(" ")
        && !ENDS_IT.matcher(text).find()
        && !text.toLowerCase(Locale.ROOT).equals("null");
  }

  private static boolean clean(String text) {
    return text.codePoints().noneMatch(PlanScalar::unseen);
  }

  private static boolean unseen(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED ->
          true;
      case Character.SPACE_SEPARATOR -> c != ' ';
      default -> false;
    };
  }

  private static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    text.codePoints()
        .forEach(
            c -> {
              if (c == '"' || c == '\\') {
                out.append('\\').appendCodePoint(c);
              } else if (c == '\n') {
                out.append("\\n");
              } else if (c == '\t') {
                out.append("\\t");
              } else if (unseen(c)) {
                out.append(String.format(Locale.ROOT, c > 0xFFFF ? "\\U%08X" : "\\u%04X", c));
              } else {
                out.appendCodePoint(c);
              }
            });
    return out.append('"').toString();
  }
}
