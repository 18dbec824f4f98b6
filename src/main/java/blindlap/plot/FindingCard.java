package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import blindlap.plot.surface.Weight;
import java.util.List;

/**
 * One finding as a picture that stands alone: the answer, every stint, the difference, what must be
 * known of the day, the caution and the start of the fingerprints. Its size is that of the format
 * whatever the words are: they get smaller down to a floor, then the picture does, and what is
 * still too long is cut at its end, the least important first.
 */
public final class FindingCard implements Drawing {
  private static final double GAP = 18;

  /** Shares of the height that the answer may take; it takes less where the rest gains by it. */
  private static final double[] ROOMS = {0.2, 0.16, 0.13, 0.1, 0.08};

  private final CardContent content;
  private final CardFormat format;

  private FindingCard(CardContent content, CardFormat format) {
    this.content = content;
    this.format = format;
  }

  /** Makes the drawing. */
  public static FindingCard of(CardContent content, CardFormat format) {
    return new FindingCard(content, format);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  @Override
  public double heightFor(double width, double textScale) {
    return format.height() * width / format.width();
  }

  /** The text scale changes nothing: a card's words have the size that its format gives them. */
  @Override
  public void draw(Surface surface, double width, double textScale) {
    Surface whole = new blindlap.plot.surface.Placed(surface, 0, 0, width / format.width());
    whole.rectangle(new Box(0, 0, format.width(), format.height()), Ink.PAPER);
    double bottom = foot(whole);
    RunningWords answer = answer(ROOMS[0]);
    CardBody body = body(answer, bottom);
    for (double room : ROOMS) {
      RunningWords smaller = answer(room);
      if (body.worth() < CardBody.BEST && smaller.height() < answer.height()) {
        CardBody other = body(smaller, bottom);
        answer = other.worth() > body.worth() ? smaller : answer;
        body = other.worth() > body.worth() ? other : body;
      }
    }
    head(whole, answer);
    body.draw(whole);
  }

  private CardBody body(RunningWords answer, double bottom) {
    return new CardBody(content, format, below(answer), bottom);
  }

  /** Where question, answer and mark end. */
  private double below(RunningWords answer) {
    double mark = content.mark().isEmpty() ? 0 : 12 + mark().height();
    return format.margin() + 24.0 + answer.height() + mark + GAP;
  }

  private void head(Surface surface, RunningWords answer) {
    double left = format.margin();
    double top = format.margin() - 22.0;
    Face italic = fitting(content.question(), Weight.ITALIC, 29, 22);
    String question = Lines.cut(content.question(), italic, format.inner());
    surface.text(question, left, top + 26, Anchor.START, italic, Ink.SECOND);
    top += 46;
    answer.draw(surface, left, top, Ink.INK);
    top += answer.height();
    if (!content.mark().isEmpty()) {
      RunningWords mark = mark();
      surface.rectangle(new Box(left, top + 12, 7, mark.height()), Ink.INK);
      mark.draw(surface, left + 22, top + 12, Ink.INK);
    }
  }

  private Face fitting(String words, Weight weight, double size, double least) {
    double each = size;
    while (each > least && new Face(weight, each).room(words) > format.inner()) {
      each--;
    }
    return new Face(weight, each);
  }

  /** As large as its room allows; never smaller than is read at a glance, but cut at a third. */
  private RunningWords answer(double room) {
    double size = format == CardFormat.WIDE ? 67 : 60;
    RunningWords words = answerAt(size);
    while (words.height() > room * format.height() && size > 30) {
      size -= 1;
      words = answerAt(size);
    }
    int lines = (int) (format.height() / 3.2 / words.lineHeight());
    return words.first(lines, format.inner());
  }

  private RunningWords answerAt(double size) {
    Face face = new Face(Weight.SERIF, size);
    return RunningWords.of(
        List.of(
            new RunningWords.Run(content.before(), face, false),
            new RunningWords.Run(content.phrase(), face, true),
            new RunningWords.Run(content.after(), face, false)),
        format.inner());
  }

  private RunningWords mark() {
    double size = 30;
    RunningWords words = mark(size);
    while (words.lines().size() > 2 && size > 24) {
      size -= 1;
      words = mark(size);
    }
    return words;
  }

  private RunningWords mark(double size) {
    Face face = new Face(Weight.BOLD, size);
    return RunningWords.of(
        List.of(new RunningWords.Run(content.mark(), face, false)), format.inner() - 22);
  }

  /** Caution, fingerprints, brand; answers where they begin. */
  private double foot(Surface surface) {
    boolean wide = format == CardFormat.WIDE;
    double left = format.margin();
    Face small = new Face(Weight.REGULAR, 18);
    double prints = content.fingerprints().stream().mapToDouble(small::room).max().orElse(0);
    double room = format.inner() - 20 - (wide ? prints + 56 : 0);
    Face face = new Face(Weight.REGULAR, 20);
    RunningWords caution =
        RunningWords.of(
            List.of(
                new RunningWords.Run(
                    content.caution().strong() + " ", new Face(Weight.BOLD, 20), false),
                new RunningWords.Run(content.caution().plain(), face, false)),
            room);
    double lines = (content.fingerprints().size() + (wide ? 1 : 0)) * small.line();
    double height = wide ? Math.max(caution.height(), lines) : caution.height() + 8 + lines;
    double top = format.height() - 26.0 - height;
    surface.line(left, top - 14, left + format.inner(), top - 14, Pen.of(Ink.INK, 2));
    surface.rectangle(new Box(left, top + 2, 6, caution.height() - 2), Ink.INK);
    caution.draw(surface, left + 20, top, Ink.INK);
    double first = (wide ? top : top + caution.height() + 8) + small.ascent();
    double right = left + format.inner();
    for (int i = 0; i < content.fingerprints().size(); i++) {
      double baseline = first + i * small.line();
      double x = wide ? right - prints : left;
      surface.text(content.fingerprints().get(i), x, baseline, Anchor.START, small, Ink.INK);
    }
    double last = first + (content.fingerprints().size() - (wide ? 0 : 1)) * small.line();
    surface.text(content.brand(), right, last, Anchor.END, small, Ink.SECOND);
    return top - 14 - GAP;
  }
}
