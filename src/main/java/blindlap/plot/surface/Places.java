package blindlap.plot.surface;

import java.util.ArrayList;
import java.util.List;

/** Finds room for words beside the thing they name: what is taken, and what lies inside. */
public final class Places {
  private final Box inside;
  private final List<Box> taken = new ArrayList<>();
  private final List<Box> marks = new ArrayList<>();

  public Places(Box inside) {
    this.inside = inside;
  }

  public void take(Box box) {
    taken.add(box);
  }

  /** Takes the place of a mark that says something by where it stands. */
  public void takeMark(Box box) {
    marks.add(box);
  }

  /**
   * The first candidate that lies inside and touches nothing; else the one that touches least. The
   * place is taken.
   */
  public Spot choose(List<Spot> candidates) {
    return choose(candidates, 0, 0);
  }

  /**
   * As {@link #choose(List)} for words with a ground of their own that should stay near.
   *
   * @param candidates from near to far
   * @param edge how far the ground reaches beyond the words
   * @param later how much covered area each later candidate must save
   */
  public Spot choose(List<Spot> candidates, double edge, double later) {
    Spot best = candidates.get(0);
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < candidates.size(); i++) {
      Spot spot = candidates.get(i);
      double cost = cost(spot.box().grown(edge)) + i * later;
      if (cost < least) {
        best = spot;
        least = cost;
      }
    }
    take(best.box().grown(edge));
    return best;
  }

  /** A line from the mark to words that stand far from it. */
  public static void lead(Surface surface, Spot spot, double x, double y, double near) {
    Box box = spot.box();
    double toX = Math.max(box.x(), Math.min(box.right(), x));
    double toY = Math.max(box.y(), Math.min(box.bottom(), y));
    double distance = Math.hypot(toX - x, toY - y);
    if (distance > near + spot.face().line() / 2) {
      double start = (near - 3) / distance;
      surface.line(x + start * (toX - x), y + start * (toY - y), toX, toY, Pen.of(Ink.SECOND, 1));
    }
  }

  private double cost(Box box) {
    double outside = box.width() * box.height() - box.overlap(inside);
    double covered = taken.stream().mapToDouble(box::overlap).sum();
    double hidden = marks.stream().mapToDouble(box::overlap).sum();
    // Words that leave the picture are lost, and so is a mark under them; on a line they are only
    // ugly.
    return 100 * Math.max(0, outside - 1e-6) + 20 * hidden + covered;
  }

  /**
   * Words at a place.
   *
   * @param lines the lines of words
   * @param x anchor point
   * @param baseline baseline of the first line
   * @param anchor which end stands at x
   * @param face their face
   */
  public record Spot(List<String> lines, double x, double baseline, Anchor anchor, Face face) {
    public Spot {
      lines = List.copyOf(lines);
    }

    public Box box() {
      double width = Lines.widest(lines, face);
      double height = (lines.size() - 1) * face.line() + face.ascent() + face.descent();
      return new Box(anchor.left(x, width), baseline - face.ascent(), width, height);
    }

    public void draw(Surface surface, Ink ink) {
      for (int i = 0; i < lines.size(); i++) {
        surface.backedText(lines.get(i), x, baseline + i * face.line(), anchor, face, ink);
      }
    }

    /** All round a mark, near first, then farther away. */
    public static List<Spot> nearThenFar(
        List<String> lines, double x, double y, double away, Face face) {
      List<Spot> spots = new ArrayList<>();
      for (int ring = 0; ring < 4; ring++) {
        spots.addAll(round(lines, x, y, away + ring * face.line(), face));
      }
      return spots;
    }

    /** Right, left, above, below of a mark, then the four corners. */
    public static List<Spot> round(List<String> lines, double x, double y, double away, Face face) {
      double height = (lines.size() - 1) * face.line();
      double level = y + 0.35 * face.size() - height / 2;
      double above = y - away - face.descent() - height;
      double below = y + away + face.ascent();
      double aside = 0.7 * away;
      List<Spot> spots = new ArrayList<>();
      spots.add(new Spot(lines, x + away, level, Anchor.START, face));
      spots.add(new Spot(lines, x - away, level, Anchor.END, face));
      spots.add(new Spot(lines, x, above, Anchor.MIDDLE, face));
      spots.add(new Spot(lines, x, below, Anchor.MIDDLE, face));
      spots.add(new Spot(lines, x + aside, above + 0.3 * away, Anchor.START, face));
      spots.add(new Spot(lines, x - aside, above + 0.3 * away, Anchor.END, face));
      spots.add(new Spot(lines, x + aside, below - 0.3 * away, Anchor.START, face));
      spots.add(new Spot(lines, x - aside, below - 0.3 * away, Anchor.END, face));
      return spots;
    }

    /** Above, below, then the others. */
    public static List<Spot> above(List<String> lines, double x, double y, double away, Face face) {
      List<Spot> spots = new ArrayList<>(round(lines, x, y, away, face));
      spots.add(0, spots.remove(3));
      spots.add(0, spots.remove(3));
      return spots;
    }
  }
}
