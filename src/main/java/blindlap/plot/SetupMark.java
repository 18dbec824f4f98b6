package blindlap.plot;

import blindlap.plot.surface.Box;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Surface;

/** How a setup is marked: by letter, shape, filled or open, ink, and the pattern of its lines. */
public enum SetupMark {
  /** Filled disc, solid line. */
  A(Ink.A, Dash.SOLID) {
    @Override
    void shape(Surface surface, double x, double y, double r) {
      surface.disc(x, y, r, Ink.A);
    }
  },
  /** Open triangle, dashed line. */
  B(Ink.B, Dash.DASHED) {
    @Override
    void shape(Surface surface, double x, double y, double r) {
      double side = 1.06 * r;
      open(
          surface,
          new double[] {x, x + side, x - side, x, x + side},
          new double[] {y - r, y + 0.78 * r, y + 0.78 * r, y - r, y + 0.78 * r},
          Pen.of(Ink.B, r / 3.4));
    }
  },
  /** Filled square, dotted line. */
  C(Ink.C, Dash.DOTTED) {
    @Override
    void shape(Surface surface, double x, double y, double r) {
      double half = 0.88 * r;
      surface.rectangle(new Box(x - half, y - half, 2 * half, 2 * half), Ink.C);
    }
  },
  /** Open diamond, dash-dot line. */
  D(Ink.D, Dash.DASH_DOT) {
    @Override
    void shape(Surface surface, double x, double y, double r) {
      double reach = 1.1 * r;
      open(
          surface,
          new double[] {x, x + reach, x, x - reach, x, x + reach},
          new double[] {y - reach, y, y + reach, y, y - reach, y},
          Pen.of(Ink.D, r / 3.4));
    }
  };

  private final Ink ink;
  private final Dash dash;

  SetupMark(Ink ink, Dash dash) {
    this.ink = ink;
    this.dash = dash;
  }

  /**
   * The mark of a setup.
   *
   * @param setup its index in the plan, from 0
   */
  public static SetupMark of(int setup) {
    return values()[setup];
  }

  /** The setup's ink. */
  public Ink ink() {
    return ink;
  }

  /** The pattern of the setup's lines. */
  public Dash dash() {
    return dash;
  }

  /** Draws the mark with its centre at x, y and about this radius. */
  public void draw(Surface surface, double x, double y, double radius) {
    shape(surface, x, y, radius);
  }

  abstract void shape(Surface surface, double x, double y, double r);

  // The inside is paper, so that an open mark on a line stays open. The outline goes once more over
  // its first side, which gives the first corner a proper join on every surface.
  private static void open(Surface surface, double[] xs, double[] ys, Pen pen) {
    surface.polygon(xs, ys, Ink.PAPER);
    surface.polyline(xs, ys, pen);
  }
}
