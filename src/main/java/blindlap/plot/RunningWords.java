package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Highlight;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Surface;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Words in several faces, broken into lines of a width. A word wider than a line is broken within,
 * so that nothing stands beyond it.
 *
 * @param lines what stands on each
 * @param face the face whose height the lines have
 */
record RunningWords(List<List<RunningWords.Piece>> lines, Face face) {
  private static final String CUT = "…";

  // "2.0 s" stays on one line, and so does "p = .03".
  private static final Pattern NUMBER = Pattern.compile("[0-9] $");
  private static final Pattern UNIT = Pattern.compile("(?:s|%|m|mm|bar|psi|kg|g)[.,;:)]* ?");

  /**
   * Words of one look.
   *
   * @param words without a line break
   * @param face how they are set
   * @param marked true for the stroke that means "look here"
   */
  record Run(String words, Face face, boolean marked) {}

  /** A run's part on one line, and where it begins. */
  record Piece(String words, Face face, boolean marked, double x) {}

  static RunningWords of(List<Run> runs, double width) {
    Breaking breaking = new Breaking(width);
    runs.forEach(breaking::take);
    return new RunningWords(breaking.lines(), runs.get(0).face());
  }

  double lineHeight() {
    return 1.28 * face.size();
  }

  double height() {
    return lines.size() * lineHeight();
  }

  /** The first lines, the last of them ending in an ellipsis if there are more. */
  RunningWords first(int most, double width) {
    if (lines.size() <= most) {
      return this;
    }
    List<List<Piece>> kept = new ArrayList<>(lines.subList(0, most));
    List<Piece> last = new ArrayList<>(kept.get(most - 1));
    Piece end = last.remove(last.size() - 1);
    String words = end.words();
    while (!words.isEmpty() && end.x() + end.face().room(words + CUT) > width) {
      words = words.substring(0, words.length() - 1).stripTrailing();
    }
    last.add(new Piece(words + CUT, end.face(), end.marked(), end.x()));
    kept.set(most - 1, last);
    return new RunningWords(kept, face);
  }

  void draw(Surface surface, double left, double top, Ink ink) {
    for (int i = 0; i < lines.size(); i++) {
      double baseline = top + i * lineHeight() + face.ascent() + 0.14 * face.size();
      for (Piece piece : lines.get(i)) {
        double x = left + piece.x();
        if (piece.marked()) {
          double room = piece.face().room(piece.words().strip());
          double up = 0.46 * piece.face().size();
          Highlight.under(
              surface, new Box(x - 6, baseline - up, room + 10, up + 0.2 * piece.face().size()));
        }
      }
      for (Piece piece : lines.get(i)) {
        surface.text(piece.words(), left + piece.x(), baseline, Anchor.START, piece.face(), ink);
      }
    }
  }

  /** Fills lines word by word. */
  private static final class Breaking {
    private final double width;
    private final List<List<Piece>> lines = new ArrayList<>();
    private List<Piece> line = new ArrayList<>();
    private double x;

    Breaking(double width) {
      this.width = width;
    }

    List<List<Piece>> lines() {
      lines.add(line);
      return List.copyOf(lines);
    }

    void take(Run run) {
      StringBuilder held = new StringBuilder();
      for (String token : run.words().split("(?<= )(?<!= )(?!=)")) {
        if (held.length() > 0 && !(NUMBER.matcher(held).find() && UNIT.matcher(token).matches())) {
          word(held.toString(), run);
          held.setLength(0);
        }
        held.append(token);
      }
      if (held.length() > 0) {
        word(held.toString(), run);
      }
    }

    private void word(String token, Run run) {
      String held = token.stripTrailing() + (run.marked() ? "." : "");
      if (x > 0 && !clings(token) && x + run.face().room(held) > width) {
        turn();
      }
      String rest = x == 0 ? token.stripLeading() : token;
      while (x == 0 && run.face().room(rest.stripTrailing()) > width) {
        int fits = fits(rest, run.face());
        add(rest.substring(0, fits), run);
        turn();
        rest = rest.substring(fits);
      }
      if (!rest.isEmpty()) {
        add(rest, run);
      }
    }

    /** A stop or comma behind marked words, for which their line has kept room. */
    private boolean clings(String token) {
      return token.strip().length() == 1
          && !line.isEmpty()
          && line.get(line.size() - 1).marked()
          && !line.get(line.size() - 1).words().endsWith(" ");
    }

    /** How many characters of a word fill a line: at least one, and no half of a pair. */
    private int fits(String word, Face face) {
      int end = word.offsetByCodePoints(0, 1);
      while (end < word.length()) {
        int next = word.offsetByCodePoints(end, 1);
        if (face.room(word.substring(0, next)) > width) {
          return end;
        }
        end = next;
      }
      return end;
    }

    private void turn() {
      lines.add(line);
      line = new ArrayList<>();
      x = 0;
    }

    private void add(String words, Run run) {
      int last = line.size() - 1;
      if (last >= 0
          && line.get(last).face().equals(run.face())
          && line.get(last).marked() == run.marked()) {
        Piece before = line.get(last);
        line.set(last, new Piece(before.words() + words, run.face(), run.marked(), before.x()));
        x = before.x() + run.face().room(before.words() + words);
      } else {
        line.add(new Piece(words, run.face(), run.marked(), x));
        x += run.face().room(words);
      }
    }
  }
}
