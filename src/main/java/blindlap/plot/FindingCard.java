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
import java.util.ArrayList;
import java.util.List;

/**
 * One finding as a picture that stands alone: the answer, every stint, the difference, what must be
 * known of the day, the caution and the start of the fingerprints. Its size is that of the format
 * whatever the words are: they and the picture get smaller down to a floor, then paragraphs leave
 * in the order they declare; what is too long even then gets smaller still, or is cut at its end.
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
    Layout layout = layout(bottom);
    head(whole, layout.answer());
    layout.body().draw(whole);
  }

  private record Layout(RunningWords answer, CardBody body) {}

  /** The first layout in which nothing is too small, else the one with the largest letters. */
  private Layout layout(double bottom) {
    List<RunningWords> answers = new ArrayList<>();
    for (double room : ROOMS) {
      RunningWords answer = answer(room);
      if (answers.isEmpty() || answer.height() < answers.get(answers.size() - 1).height()) {
        answers.add(answer);
      }
    }
    Layout best = layout(answers.get(0), 0, bottom);
    for (int gone = 0; gone <= content.left().size(); gone++) {
      for (RunningWords answer : answers) {
        if (best.body().best()) {
          return best;
        }
        Layout other = layout(answer, gone, bottom);
        best = other.body().worth() > best.body().worth() + 1e-6 ? other : best;
      }
    }
    return best;
  }

  private Layout layout(RunningWords answer, int gone, double bottom) {
    return new Layout(answer, new CardBody(content, gone, format, below(answer), bottom));
  }

  /** Where question, answer and mark end. */
  private double below(RunningWords answer) {
    double mark = content.mark().isEmpty() ? 0 : 12 + mark().height();
    return format.margin() + 24.0 + answer.height() + mark + GAP;
  }

  private void head(Surface surface, RunningWords answer) {
    double left = format.margin();
    double top = format.margin() - 22.0;
    Face italic = fitting(content.question(), content.mark().isEmpty() ? 29 : 27);
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

  private Face fitting(String words, double size) {
    double each = size;
    while (each > 22 && new Face(Weight.ITALIC, each).room(words) > format.inner()) {
      each--;
    }
    return new Face(Weight.ITALIC, each);
  }

  /** As large as its room allows; never smaller than is read at a glance, but cut at a third. */
  private RunningWords answer(double room) {
    double size = format == CardFormat.WIDE ? 67 : 60;
    RunningWords words = answerAt(size);
    while (words.height() > room * format.height() && size > 32) {
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
    while (words.lines().size() > 2 && size > 28) {
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
    double right = left + format.inner();
    Face small = new Face(Weight.REGULAR, format.leastLetters());
    List<String> prints = prints(small, wide);
    double longest = prints.stream().mapToDouble(small::room).max().orElse(0);
    double room = format.inner() - 20 - (wide ? longest + 56 : 0);
    RunningWords caution =
        RunningWords.of(
            List.of(
                new RunningWords.Run(
                    content.caution().strong() + " ", new Face(Weight.BOLD, 20), false),
                new RunningWords.Run(
                    content.caution().plain(), new Face(Weight.REGULAR, 20), false)),
            room);
    double lines = (prints.size() + (wide ? 1 : 0)) * small.line();
    double height = wide ? Math.max(caution.height(), lines) : caution.height() + 8 + lines;
    double top = format.height() - 26.0 - height;
    surface.line(left, top - 14, right, top - 14, Pen.of(Ink.INK, 2));
    surface.rectangle(new Box(left, top + 2, 6, caution.height() - 2), Ink.INK);
    caution.draw(surface, left + 20, top, Ink.INK);
    double baseline = (wide ? top : top + caution.height() + 8) + small.ascent();
    for (String print : prints) {
      surface.text(print, wide ? right - longest : left, baseline, Anchor.START, small, Ink.INK);
      baseline += small.line();
    }
    double last = wide ? baseline : baseline - small.line();
    surface.text(content.brand(), right, last, Anchor.END, small, Ink.SECOND);
    return top - 14 - GAP;
  }

  /** A line each, or one beside the other where both and the brand fit in a line. */
  private List<String> prints(Face face, boolean wide) {
    String all = String.join(" · ", content.fingerprints());
    boolean fits = face.room(all + " · " + content.brand()) <= format.inner();
    return wide || !fits ? content.fingerprints() : List.of(all);
  }
}
