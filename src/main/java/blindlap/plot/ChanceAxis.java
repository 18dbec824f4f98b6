package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import java.util.ArrayList;
import java.util.List;

/**
 * Right answers of a telling run against chance and against what would matter. Grey are the counts
 * at which guessers land, hatched is what lies between guessing and the declared number; the dot
 * has its 90 % interval thick and its 95 % interval thin. A dot right of the grey shows that the
 * rider can tell.
 */
public final class ChanceAxis implements Drawing {
  private static final int[] STEPS = {1, 2, 5, 10, 20, 25, 50, 100};

  /**
   * The numbers, all in right answers.
   *
   * @param trials number of trials, 1 or more
   * @param right right answers
   * @param guessed what guessing gives on average
   * @param guessersTo highest count at which guessers land; {@code trials} where no count shows
   *     anything
   * @param mattering what telling as often as would matter gives on average
   * @param ninety 90 % interval
   * @param ninetyFive 95 % interval
   */
  public record Numbers(
      int trials,
      int right,
      double guessed,
      int guessersTo,
      double mattering,
      Limits ninety,
      Limits ninetyFive) {
    /** Checks that all of it lies on the axis. */
    public Numbers {
      boolean on =
          trials > 0
              && right >= 0
              && right <= trials
              && guessersTo >= 0
              && guessersTo <= trials
              && guessed > 0
              && mattering >= guessed
              && mattering <= trials + 1e-9;
      if (!on) {
        throw new IllegalArgumentException("Not on an axis from 0 to " + trials);
      }
    }
  }

  /**
   * The words.
   *
   * @param title what is counted
   * @param under a second line of it, such as "of 15 trials"
   * @param guessed at the line of guessing
   * @param mattering at the line of what would matter
   * @param right at the dot
   * @param interval the 95 % interval in short lines
   * @param guessers in the grey band
   */
  public record Said(
      String title,
      String under,
      String guessed,
      String mattering,
      String right,
      List<String> interval,
      String guessers) {
    /** Copies the lines. */
    public Said {
      interval = List.copyOf(interval);
    }
  }

  private final Numbers numbers;
  private final Said said;
  private final Spoken spoken;

  private ChanceAxis(Numbers numbers, Said said, Spoken spoken) {
    this.numbers = numbers;
    this.said = said;
    this.spoken = spoken;
  }

  /** Makes the drawing. */
  public static ChanceAxis of(Numbers numbers, Said said, Spoken spoken) {
    return new ChanceAxis(numbers, said, spoken);
  }

  @Override
  public Spoken spoken() {
    return spoken;
  }

  /** Where things stand. */
  private record At(
      Faces faces, double width, double label, Scale scale, int heads, List<String> guessers) {
    double top() {
      return heads * faces.plain().line() + faces.px(18);
    }

    double bar() {
      return top() + faces.big().line() + 1.4 * faces.mark() + faces.px(4);
    }

    double interval() {
      return bar() + 1.4 * faces.mark() + faces.px(3);
    }

    double hatched(int lines) {
      return interval() + lines * faces.plain().line() + faces.px(4);
    }

    double axis(int lines) {
      return hatched(lines) + guessers.size() * faces.plain().line() + faces.px(6);
    }
  }

  private At at(double width, double textScale) {
    Faces faces = new Faces(textScale);
    double names = Math.max(faces.strong().room(said.title()), faces.number().room(said.under()));
    double label = Math.min(0.34 * width, names + faces.px(14));
    double end = width - faces.number().room(Integer.toString(numbers.trials())) / 2 - 2;
    Scale scale = new Scale(-0.5, numbers.trials() + 0.5, label, end);
    double band = scale.at(numbers.guessersTo() + 0.5) - label - faces.px(12);
    double room = Math.max(band, Math.min(faces.px(110), width - label - faces.px(12)));
    List<String> guessers = Lines.wrap(said.guessers(), faces.plain(), room, 3);
    At one = new At(faces, width, label, scale, 1, guessers);
    double gap = faces.px(12);
    return head(one, false).right() + gap <= head(one, true).x()
        ? one
        : new At(faces, width, label, scale, 2, guessers);
  }

  /** Where the words over a line stand: centred on it, kept in the picture. */
  private Box head(At at, boolean mattering) {
    Face face = at.faces().strong();
    String words = Lines.cut(mattering ? said.mattering() : said.guessed(), face, at.width());
    double room = face.room(words);
    double x = at.scale().at(mattering ? numbers.mattering() : numbers.guessed());
    double left = Math.max(0, Math.min(at.width() - room, x - room / 2));
    double line = mattering && at.heads() > 1 ? face.line() : 0;
    return new Box(left, line, room, face.ascent() + face.descent());
  }

  @Override
  public double heightFor(double width, double textScale) {
    At at = at(width, textScale);
    return at.axis(said.interval().size())
        + AxisPart.numberBaseline(at.faces())
        + at.faces().number().descent()
        + 2;
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    At at = at(width, textScale);
    double axis = at.axis(said.interval().size());
    bands(surface, at, axis);
    heads(surface, at);
    guessers(surface, at);
    dot(surface, at);
    names(surface, at);
    axis(surface, at, axis);
  }

  private void bands(Surface surface, At at, double axis) {
    double from = at.scale().at(-0.5);
    double to = at.scale().at(numbers.guessersTo() + 0.5);
    surface.rectangle(new Box(from, at.top(), to - from, axis - at.top()), Ink.NOISE);
    double guessed = at.scale().at(numbers.guessed());
    double mattering = at.scale().at(numbers.mattering());
    double height = at.hatched(said.interval().size()) - at.top();
    surface.hatch(new Box(guessed, at.top(), mattering - guessed, height));
    double low = at.top() + height;
    surface.line(mattering, at.top(), mattering, low, Pen.of(Ink.INK, 1.4));
    surface.line(
        guessed, at.top() - at.faces().px(6), guessed, low, new Pen(Ink.INK, 1.4, Dash.GUIDE));
  }

  private void heads(Surface surface, At at) {
    Face face = at.faces().strong();
    for (boolean mattering : new boolean[] {false, true}) {
      Box box = head(at, mattering);
      String words = Lines.cut(mattering ? said.mattering() : said.guessed(), face, at.width());
      double baseline = box.y() + face.ascent();
      surface.text(words, box.x(), baseline, Anchor.START, face, Ink.INK);
      double x = at.scale().at(mattering ? numbers.mattering() : numbers.guessed());
      boolean covered = !mattering && at.heads() > 1 && head(at, true).x() < x;
      double from = covered ? head(at, true).bottom() + 2 : box.bottom() + 2;
      surface.line(x, from, x, at.top(), Pen.of(Ink.INK, 1));
    }
  }

  private void guessers(Surface surface, At at) {
    Face face = at.faces().plain();
    double first = at.hatched(said.interval().size()) + at.faces().px(2) + face.ascent();
    for (int i = 0; i < at.guessers().size(); i++) {
      double baseline = first + i * face.line();
      double x = at.label() + at.faces().px(6);
      surface.text(at.guessers().get(i), x, baseline, Anchor.START, face, Ink.INK);
    }
  }

  private void dot(Surface surface, At at) {
    double y = at.bar();
    Limits wide = numbers.ninetyFive();
    double from = at.scale().at(wide.low());
    double to = at.scale().at(wide.high());
    surface.line(from, y, to, y, Pen.of(Ink.PAPER, 9));
    Arrows.interval(surface, at.scale(), wide, y, 2);
    Arrows.interval(surface, at.scale(), numbers.ninety(), y, 5);
    double x = at.scale().at(numbers.right());
    double radius = 1.4 * at.faces().mark();
    surface.disc(x, y, radius + 1.5, Ink.PAPER);
    surface.disc(x, y, radius, Ink.INK);
    Face big = at.faces().big();
    double above = y - radius - at.faces().px(4) - big.descent();
    backed(surface, at, said.right(), x - big.room(said.right()) / 2, above, big);
    Face plain = at.faces().plain();
    double room = Lines.widest(said.interval(), plain);
    boolean after = x + at.faces().px(16) + room <= at.width();
    double left = after ? x + at.faces().px(16) : x - at.faces().px(16) - room;
    for (int i = 0; i < said.interval().size(); i++) {
      double baseline = at.interval() + plain.ascent() + i * plain.line();
      backed(surface, at, said.interval().get(i), left, baseline, plain);
    }
  }

  private static void backed(
      Surface surface, At at, String words, double left, double baseline, Face face) {
    double room = face.room(words);
    double x = Math.max(2, Math.min(at.width() - room - 2, left));
    surface.backedText(words, x, baseline, Anchor.START, face, Ink.INK);
  }

  private void names(Surface surface, At at) {
    double room = at.label() - 4;
    Face strong = at.faces().strong();
    Face number = at.faces().number();
    double first = at.bar();
    List<String> title = Lines.wrap(said.title(), strong, room, 2);
    for (int i = 0; i < title.size(); i++) {
      double baseline = first + i * strong.line();
      surface.text(title.get(i), 0, baseline, Anchor.START, strong, Ink.INK);
    }
    double under = first + title.size() * strong.line();
    List<String> lines = Lines.wrap(said.under(), number, room, 2);
    for (int i = 0; i < lines.size(); i++) {
      double baseline = under + i * number.line();
      surface.text(lines.get(i), 0, baseline, Anchor.START, number, Ink.SECOND);
    }
  }

  private void axis(Surface surface, At at, double axis) {
    double y = AxisPart.crisp(axis);
    surface.line(at.scale().at(0), y, at.scale().at(numbers.trials()), y, Pen.of(Ink.INK, 1.2));
    Face face = at.faces().number();
    double widest = face.room(Integer.toString(numbers.trials())) + at.faces().px(8);
    int step = STEPS[STEPS.length - 1];
    for (int i = STEPS.length - 1; i >= 0; i--) {
      step = STEPS[i] * at.scale().pixelsPerUnit() >= widest ? STEPS[i] : step;
    }
    List<Box> taken = new ArrayList<>();
    tick(surface, at, y, numbers.right(), true, taken);
    tick(surface, at, y, numbers.trials(), false, taken);
    for (int count = 0; count < numbers.trials(); count += step) {
      tick(surface, at, y, count, false, taken);
    }
  }

  /** A tick with its number, unless it would run into one that stands already. */
  private static void tick(
      Surface surface, At at, double y, int count, boolean strong, List<Box> taken) {
    double x = AxisPart.crisp(at.scale().at(count));
    surface.line(x, y, x, y + 5, Pen.of(Ink.INK, 1.2));
    Face face = at.faces().number();
    String words = Integer.toString(count);
    double baseline = y + AxisPart.numberBaseline(at.faces());
    Box box = Box.around(words, x, baseline, Anchor.MIDDLE, face);
    Box wide = box.grown(at.faces().px(3));
    if (taken.stream().noneMatch(other -> other.overlap(wide) > 0)) {
      surface.text(words, x, baseline, Anchor.MIDDLE, face, strong ? Ink.INK : Ink.SECOND);
      taken.add(box);
    }
  }
}
