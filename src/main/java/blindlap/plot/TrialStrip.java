package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import blindlap.plot.surface.Weight;
import java.util.List;

/**
 * Every trial of a telling run: a column per trial, a row per lap. Filled is the lap that was to be
 * named, ringed the lap that was named; below stands in words whether they are one. Trials that do
 * not fit beside one another go on in a strip below.
 */
public final class TrialStrip implements Drawing {
  /**
   * One trial.
   *
   * @param number its number
   * @param differed row of the lap that was to be named
   * @param named row of the lap that the rider named
   */
  public record Trial(int number, int differed, int named) {
    /** True if the right lap was named. */
    public boolean right() {
      return differed == named;
    }
  }

  /**
   * The words of a strip.
   *
   * @param differed what a filled lap is, such as "this lap differed"
   * @param named what a ringed lap is, such as "M. Oss named this one"
   * @param right the word under a trial whose lap was named
   * @param wrong the word under any other
   * @param trial the word before the numbers
   */
  public record Said(String differed, String named, String right, String wrong, String trial) {}

  /**
   * Everything that is drawn.
   *
   * @param trials 1 or more, in ridden order
   * @param rows names of the laps, 2 or 3
   * @param reference true if the first row is a reference, of which nothing is asked
   * @param said the words
   * @param spoken the picture in words
   */
  public record Content(
      List<Trial> trials, List<String> rows, boolean reference, Said said, Spoken spoken) {
    /** Checks that every lap has a row. */
    public Content {
      trials = List.copyOf(trials);
      rows = List.copyOf(rows);
      int first = reference ? 1 : 0;
      int last = rows.size() - 1;
      if (trials.isEmpty() || rows.size() - first < 2) {
        throw new IllegalArgumentException("A strip needs a trial and two laps to choose from");
      }
      for (Trial trial : trials) {
        if (Math.min(trial.differed(), trial.named()) < first
            || Math.max(trial.differed(), trial.named()) > last) {
          throw new IllegalArgumentException(
              "A lap of trial " + trial.number() + " has no row to choose from");
        }
      }
    }
  }

  private final Content content;

  private TrialStrip(Content content) {
    this.content = content;
  }

  /** Makes the drawing. */
  public static TrialStrip of(Content content) {
    return new TrialStrip(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  /** Where things stand. */
  private record At(Faces faces, double label, double each, int across, int strips, Leads leads) {
    static final double DISC = 1.08;
    static final double RING = 2.08;

    Face strong() {
      return new Face(Weight.SEMIBOLD, faces.number().size());
    }

    double ring() {
      return RING * faces.mark();
    }

    double disc() {
      return DISC * faces.mark();
    }

    double pitch() {
      return 2 * ring() + 6;
    }

    /** Height of the words over the first strip. */
    double head() {
      return (leads.apart() ? 1 : 2) * faces.plain().line() + faces.px(10);
    }

    double strip(int rows) {
      return rows * pitch() + 2 * faces.number().line() + faces.px(20);
    }

    double x(int place) {
      return label + (place % across + 0.5) * each;
    }

    double y(int strip, int row, int rows) {
      return head() + strip * strip(rows) + (row + 0.5) * pitch();
    }
  }

  private At at(double width, double textScale) {
    Faces faces = new Faces(textScale);
    Face number = faces.number();
    double names =
        Math.max(Lines.widest(content.rows(), number), number.room(content.said().trial()));
    double label = Math.min(0.35 * width, names + faces.px(16));
    double words =
        Lines.widest(
            List.of(content.said().right(), content.said().wrong()),
            new Face(Weight.SEMIBOLD, number.size()));
    double least = Math.max(words + faces.px(5), 2 * At.RING * faces.mark() + 3);
    int trials = content.trials().size();
    int fit = (int) Math.max(1, Math.floor((width - label) / least));
    int strips = (trials + fit - 1) / fit;
    int across = (trials + strips - 1) / strips;
    return new At(
        faces, label, (width - label) / across, across, strips, leads(width, label, across, faces));
  }

  /**
   * The trials of the first strip where the two meanings are said.
   *
   * @param differed place of the trial whose filled lap is named
   * @param named place of the trial whose ringed lap is named
   * @param apart true if the words of both stand on one line
   */
  private record Leads(int differed, int named, boolean apart) {}

  /**
   * Trials where both laps are apart if there are any, and where the lap is as high up as can be,
   * so that the line to it crosses least; first of all such that the words do not run into each
   * other.
   */
  private Leads leads(double width, double label, int across, Faces faces) {
    double each = (width - label) / across;
    Face face = faces.plain();
    double differedRoom = face.room(content.said().differed());
    double namedRoom = face.room(content.said().named());
    int first = Math.min(content.trials().size(), across);
    Leads best = new Leads(0, 0, false);
    int bestPoor = Integer.MAX_VALUE;
    for (int one = 0; one < first; one++) {
      double x = left(label + (one + 0.5) * each, differedRoom, width);
      for (int other = 0; other < first; other++) {
        double y = left(label + (other + 0.5) * each, namedRoom, width);
        boolean apart = x + differedRoom + face.size() <= y || y + namedRoom + face.size() <= x;
        int poor = poor(one, false) + poor(other, true) + (apart ? 0 : 10) + (one == other ? 4 : 0);
        if (poor < bestPoor) {
          best = new Leads(one, other, apart);
          bestPoor = poor;
        }
      }
    }
    return best;
  }

  private int poor(int place, boolean named) {
    Trial trial = content.trials().get(place);
    return (named ? trial.named() : trial.differed()) + (trial.right() ? 3 : 0);
  }

  /** Left edge of words centred on a place, kept in the picture. */
  private static double left(double x, double room, double width) {
    return Math.max(0, Math.min(width - room, x - room / 2));
  }

  @Override
  public double heightFor(double width, double textScale) {
    At at = at(width, textScale);
    return at.head() + at.strips() * at.strip(content.rows().size()) - at.faces().px(8);
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    At at = at(width, textScale);
    rows(surface, at, width);
    lead(surface, at, false, width);
    lead(surface, at, true, width);
    for (int place = 0; place < content.trials().size(); place++) {
      trial(surface, at, place);
    }
  }

  private void rows(Surface surface, At at, double width) {
    int rows = content.rows().size();
    Face face = at.faces().number();
    for (int strip = 0; strip < at.strips(); strip++) {
      int last = Math.min(content.trials().size(), (strip + 1) * at.across()) - 1;
      double end = Math.min(width, at.x(last) + at.each() / 2);
      for (int row = 0; row < rows; row++) {
        double y = at.y(strip, row, rows);
        String name = Lines.cut(content.rows().get(row), face, at.label() - 4);
        surface.text(name, 0, y + 0.35 * face.size(), Anchor.START, face, Ink.SECOND);
        surface.line(at.label(), y, end, y, Pen.of(Ink.FAINT, 1));
      }
      String trial = Lines.cut(content.said().trial(), face, at.label() - 4);
      surface.text(trial, 0, numbers(at, strip), Anchor.START, face, Ink.SECOND);
    }
  }

  private double words(At at, int strip) {
    double rows = content.rows().size() * at.pitch();
    double top = at.head() + strip * at.strip(content.rows().size()) + rows;
    return top + at.faces().px(5) + at.faces().number().ascent();
  }

  private double numbers(At at, int strip) {
    return words(at, strip) + at.faces().number().line();
  }

  /** Says one of the two meanings, with a line down to a mark that has it. */
  private void lead(Surface surface, At at, boolean named, double width) {
    Face face = at.faces().plain();
    int place = named ? at.leads().named() : at.leads().differed();
    Trial trial = content.trials().get(place);
    String words = named ? content.said().named() : content.said().differed();
    int row = named ? trial.named() : trial.differed();
    double line = named && !at.leads().apart() ? face.line() : 0;
    double baseline = face.ascent() + line;
    String shown = Lines.cut(words, face, width);
    double x = left(at.x(place), face.room(shown), width);
    surface.backedText(shown, x, baseline, Anchor.START, face, Ink.INK);
    double mark = at.y(0, row, content.rows().size()) - (named ? at.ring() : at.disc());
    double from = baseline + face.descent() + 2;
    if (mark > from) {
      double down = AxisPart.crisp(at.x(place));
      surface.line(down, from, down, mark, Pen.of(Ink.INK, 1));
    }
  }

  private void trial(Surface surface, At at, int place) {
    Trial trial = content.trials().get(place);
    int strip = place / at.across();
    int rows = content.rows().size();
    double x = at.x(place);
    for (int row = 0; row < rows; row++) {
      double y = at.y(strip, row, rows);
      if (row == 0 && content.reference()) {
        surface.line(x - at.disc(), y, x + at.disc(), y, Pen.of(Ink.SECOND, 2));
      } else if (row == trial.differed()) {
        surface.disc(x, y, at.disc(), Ink.INK);
      } else {
        surface.disc(x, y, at.disc(), Ink.PAPER);
        surface.ring(x, y, at.disc(), Pen.of(Ink.SECOND, 1.5));
      }
      if (row == trial.named()) {
        surface.ring(x, y, at.ring(), Pen.of(Ink.INK, 2.4));
      }
    }
    Face word = trial.right() ? at.strong() : at.faces().number();
    surface.text(
        trial.right() ? content.said().right() : content.said().wrong(),
        x,
        words(at, strip),
        Anchor.MIDDLE,
        word,
        trial.right() ? Ink.INK : Ink.SECOND);
    surface.text(
        Integer.toString(trial.number()),
        x,
        numbers(at, strip),
        Anchor.MIDDLE,
        at.faces().number(),
        Ink.SECOND);
  }
}
