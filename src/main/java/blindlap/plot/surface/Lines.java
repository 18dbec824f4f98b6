package blindlap.plot.surface;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Breaks words into lines that fit a width. */
public final class Lines {
  private static final String CUT = "…";

  // "p = .03" stays on one line.
  private static final Pattern BETWEEN = Pattern.compile(" +(?!= [.0-9])(?!(?<== )[.0-9])");

  private Lines() {}

  /**
   * At most {@code most} lines; what does not fit ends in an ellipsis (the spoken text of a drawing
   * carries the whole).
   */
  public static List<String> wrap(String words, Face face, double width, int most) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : BETWEEN.split(words.trim())) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (line.isEmpty() || face.room(longer) <= width) {
        line = longer;
      } else {
        lines.add(line);
        line = word;
      }
    }
    lines.add(line);
    if (lines.size() > most) {
      String rest = String.join(" ", lines.subList(most - 1, lines.size()));
      lines = new ArrayList<>(lines.subList(0, most - 1));
      lines.add(rest);
    }
    lines.replaceAll(each -> cut(each, face, width));
    return List.copyOf(lines);
  }

  /** The words, or as many of their letters as fit with an ellipsis. */
  public static String cut(String words, Face face, double width) {
    if (face.room(words) <= width) {
      return words;
    }
    for (int end = words.length() - 1; end > 1; end--) {
      String shorter = words.substring(0, end).stripTrailing() + CUT;
      if (face.room(shorter) <= width) {
        return shorter;
      }
    }
    return CUT;
  }

  /** Width of the widest line. */
  public static double widest(List<String> lines, Face face) {
    return lines.stream().mapToDouble(face::room).max().orElse(0);
  }
}
