package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Placed;
import blindlap.plot.surface.Surface;
import blindlap.plot.surface.Weight;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * The middle of a {@link FindingCard}: the pictures, and the paragraphs at their right or below. Of
 * all ways to share the room the first is taken in which nothing is smaller than it should be.
 */
final class CardBody {
  /** The smallest letters of a picture at text scale 1, in pixels. */
  private static final double SMALLEST = 14;

  /** Text scales that are tried. */
  private static final double[] SCALES = {
    1.6, 1.5, 20 / SMALLEST, 1.35, 18 / SMALLEST, 1.2, 1.1, 1, 0.9, 0.8
  };

  /**
   * Under a mark words of a picture are not larger than this allows, for the mark is the largest.
   */
  private static final double UNDER_A_MARK = 20 / SMALLEST;

  /** Shares of the width that the first of two pictures side by side may have. */
  private static final double[] SHARES = {0.5, 0.36};

  private static final double GAP = 48;

  /** So many paragraphs, who rode and how blind, are never left out. */
  private static final int FIRST = 2;

  private static final int FIRST_LINES = 3;

  private final CardContent content;
  private final List<CardContent.Paragraph> paragraphs;
  private final CardFormat format;
  private final double top;
  private final double height;
  private final Share share;
  private final double worth;

  /**
   * @param gone how many paragraphs have left
   */
  CardBody(CardContent content, int gone, CardFormat format, double top, double bottom) {
    this.content = content;
    this.paragraphs = content.without(gone);
    this.format = format;
    this.top = top;
    this.height = bottom - top;
    this.share = share();
    this.worth = worthOf(share);
  }

  /** A way to share the room: width and size of the words. */
  private record Share(double width, double size) {}

  /** The smallest letters here, up to the least that there should be; 0 if not all words fit. */
  double worth() {
    return worth;
  }

  /** True if nothing is smaller than it should be. */
  boolean best() {
    return worth >= format.leastLetters() - 1e-6;
  }

  private double worthOf(Share share) {
    if (heightOf(blocks(share)) > wordRoom(share) + 1e-6) {
      return 0;
    }
    double letters =
        content.pictures().isEmpty()
            ? share.size()
            : Math.min(share.size(), SMALLEST * scale(share));
    return Math.min(format.leastLetters(), letters);
  }

  void draw(Surface surface) {
    double left = format.margin();
    if (beside()) {
      double width = pictureWidth(share);
      fit(width, height).draw(surface, left, top);
      words(surface, share, left + width + GAP, top, height);
      return;
    }
    double from = top;
    if (!content.pictures().isEmpty()) {
      Fit fit = fit(format.inner(), pictureRoom(share));
      fit.draw(surface, left, top);
      from += fit.height() + GAP / 2;
    }
    words(surface, share, left, from, top + height - from);
  }

  private boolean beside() {
    return format == CardFormat.WIDE && !content.pictures().isEmpty();
  }

  /** The first share in which all is large enough; else the one with the largest picture. */
  private Share share() {
    List<Share> shares = shares();
    Share taken = shares.get(shares.size() - 1);
    double best = 0;
    for (Share share : shares) {
      double each = worthOf(share);
      if (each > best + 1e-9) {
        taken = share;
        best = each;
      }
      if (best >= format.leastLetters() - 1e-6) {
        break;
      }
    }
    return taken;
  }

  private List<Share> shares() {
    if (!beside()) {
      return DoubleStream.of(24, 22, 20, 18)
          .mapToObj(size -> new Share(format.inner(), size))
          .toList();
    }
    return List.of(
        new Share(360, 22),
        new Share(360, 20),
        new Share(420, 20),
        new Share(480, 20),
        new Share(480, 18),
        new Share(560, 18),
        new Share(640, 18));
  }

  private double pictureWidth(Share share) {
    return beside() ? format.inner() - share.width() - GAP : format.inner();
  }

  /** Height left to the pictures: beside the words all of it, above them at least a good part. */
  private double pictureRoom(Share share) {
    return beside() ? height : Math.max(0.42 * height, height - heightOf(blocks(share)) - GAP / 2);
  }

  /** Height left to the words. */
  private double wordRoom(Share share) {
    return beside() || content.pictures().isEmpty()
        ? height
        : height - pictureRoom(share) - GAP / 2;
  }

  private double scale(Share share) {
    return fit(pictureWidth(share), pictureRoom(share)).sized();
  }

  private List<RunningWords> blocks(Share share) {
    Face strong = new Face(Weight.SEMIBOLD, share.size());
    Face plain = new Face(Weight.REGULAR, share.size());
    List<RunningWords> blocks = new ArrayList<>();
    for (CardContent.Paragraph each : paragraphs) {
      String gap = each.strong().isEmpty() || each.plain().isEmpty() ? "" : " ";
      List<RunningWords.Run> runs =
          List.of(
              new RunningWords.Run(each.strong() + gap, strong, false),
              new RunningWords.Run(each.plain(), plain, false));
      blocks.add(RunningWords.of(runs, share.width()));
    }
    return blocks;
  }

  private static double between(List<RunningWords> blocks) {
    return 0.55 * blocks.get(0).lineHeight();
  }

  private static double heightOf(List<RunningWords> blocks) {
    return blocks.isEmpty()
        ? 0
        : blocks.stream().mapToDouble(RunningWords::height).sum()
            + (blocks.size() - 1) * between(blocks);
  }

  /** Draws all, or as many lines of each as fit: of what must be known always the beginning. */
  private void words(Surface surface, Share share, double left, double from, double room) {
    List<RunningWords> shown = blocks(share);
    for (int most = 12; heightOf(shown) > room + 1e-6 && most >= 0; most--) {
      shown = cut(blocks(share), most, share.width());
    }
    double y = from;
    for (RunningWords block : shown) {
      block.draw(surface, left, y, Ink.INK);
      y += block.height() + between(shown);
    }
  }

  private static List<RunningWords> cut(List<RunningWords> blocks, int most, double width) {
    List<RunningWords> kept = new ArrayList<>();
    for (int i = 0; i < blocks.size(); i++) {
      int lines = i < FIRST ? Math.max(FIRST_LINES, most) : most;
      if (lines > 0) {
        kept.add(blocks.get(i).first(lines, width));
      }
    }
    return kept;
  }

  /**
   * How pictures fill a place.
   *
   * @param pictures what is drawn
   * @param scale text scale
   * @param factor how much smaller the whole is, where the least scale is still too large
   * @param width of the place
   * @param first share of the width that the first of two side by side has; 1 one below the other
   */
  private record Fit(
      List<Drawing> pictures, double scale, double factor, double width, double first) {
    double height() {
      return factor * drawn(pictures, width / factor, scale, first);
    }

    double sized() {
      return factor * scale;
    }

    static double drawn(List<Drawing> pictures, double width, double scale, double first) {
      double height = 0;
      for (int i = 0; i < pictures.size(); i++) {
        double each = pictures.get(i).heightFor(each(width, first, i), scale);
        boolean below = first == 1 && i > 0;
        height = first < 1 ? Math.max(height, each) : height + each + (below ? 14 : 0);
      }
      return height;
    }

    static double each(double width, double first, int which) {
      if (first == 1) {
        return width;
      }
      return (width - GAP) * (which == 0 ? first : 1 - first);
    }

    void draw(Surface surface, double left, double top) {
      double x = left;
      double y = top;
      for (int i = 0; i < pictures.size(); i++) {
        double each = each(width / factor, first, i);
        pictures.get(i).draw(new Placed(surface, x, y, factor), each, scale);
        if (first < 1) {
          x += factor * (each + GAP);
        } else {
          y += factor * (pictures.get(i).heightFor(each, scale) + 14);
        }
      }
    }
  }

  /** One below the other where all is large enough so, else as is largest. */
  private Fit fit(double width, double room) {
    Fit best = fit(width, room, 1);
    if (content.pictures().size() < 2) {
      return best;
    }
    for (double first : SHARES) {
      if (SMALLEST * best.sized() >= format.leastLetters() - 1e-6) {
        return best;
      }
      Fit across = fit(width, room, first);
      best = across.sized() > best.sized() + 1e-9 ? across : best;
    }
    return best;
  }

  private Fit fit(double width, double room, double first) {
    for (double scale : SCALES) {
      boolean allowed = content.mark().isEmpty() || scale <= UNDER_A_MARK;
      if (allowed && Fit.drawn(content.pictures(), width, scale, first) <= room) {
        return new Fit(content.pictures(), scale, 1, width, first);
      }
    }
    double factor = 0.95;
    while (factor > 0.1
        && factor * Fit.drawn(content.pictures(), width / factor, 0.8, first) > room) {
      factor *= 0.95;
    }
    return new Fit(content.pictures(), 0.8, factor, width, first);
  }
}
