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
import java.util.List;
import java.util.stream.Stream;

/**
 * Did the blind hold on a steps day? For each stint where its level lay between both ends and,
 * below it, the end that the rider guessed to be nearer; right guesses are joined.
 */
public final class GuessedEnds implements Drawing {
  /** What was guessed. */
  public enum Guess {
    LOW,
    HIGH,
    UNKNOWN
  }

  /**
   * One stint.
   *
   * @param number its number
   * @param place where its level lay, from 0 the lowest to 1 the highest
   */
  public record Stint(int number, double place, Guess guess) {
    /** Checks the place. */
    public Stint {
      if (!(place >= 0 && place <= 1)) {
        throw new IllegalArgumentException("A level lies between its ends, not at " + place);
      }
    }

    /** True if the end guessed is the nearer one, which a level in the very middle has not. */
    boolean right() {
      return guess == Guess.LOW && place < 0.5 || guess == Guess.HIGH && place > 0.5;
    }
  }

  /**
   * Everything that is drawn.
   *
   * @param stints in ridden order, 1 or more
   * @param levels name of the upper row
   * @param guesses name of the lower row
   * @param low name of the low end
   * @param high name of the high end
   * @param unknown sign for "don't know", such as "?"
   * @param spoken the picture in words
   */
  public record Content(
      List<Stint> stints,
      String levels,
      String guesses,
      String low,
      String high,
      String unknown,
      Spoken spoken) {
    /** Copies the list. */
    public Content {
      stints = List.copyOf(stints);
    }
  }

  private final Content content;

  private GuessedEnds(Content content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there is no stint
   */
  public static GuessedEnds of(Content content) {
    if (content.stints().isEmpty()) {
      throw new IllegalArgumentException("No stint has a guess to draw");
    }
    return new GuessedEnds(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  private static double track(Faces faces) {
    return faces.px(44);
  }

  private static double guessRow(Faces faces) {
    return faces.px(34);
  }

  private double ends(Faces faces) {
    return Lines.widest(List.of(content.low(), content.high()), faces.number());
  }

  private double label(Faces faces, double width) {
    double names = Lines.widest(List.of(content.levels(), content.guesses()), faces.plain());
    return Math.min(0.4 * width, names + ends(faces) + faces.px(24));
  }

  private int staggers(Faces faces, double width) {
    double each = (width - label(faces, width)) / content.stints().size();
    int last = content.stints().get(content.stints().size() - 1).number();
    double needed = faces.number().room(Integer.toString(last)) + faces.px(4);
    return (int) Math.max(1, Math.ceil(needed / each));
  }

  private static double top(Faces faces) {
    return faces.number().line() / 2 + 2;
  }

  private static double numbers(Faces faces) {
    return top(faces) + track(faces) + faces.px(10) + guessRow(faces);
  }

  @Override
  public double heightFor(double width, double textScale) {
    Faces faces = new Faces(textScale);
    return numbers(faces) + staggers(faces, width) * faces.number().line() + faces.px(6);
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    Faces faces = new Faces(textScale);
    double label = label(faces, width);
    double each = (width - label) / content.stints().size();
    double high = top(faces);
    double low = high + track(faces);
    double guess = low + faces.px(10) + guessRow(faces) / 2;
    names(surface, faces, label, high, low, guess);
    for (int i = 0; i < content.stints().size(); i++) {
      double x = label + (i + 0.5) * each;
      Stint stint = content.stints().get(i);
      surface.line(x, high, x, low, Pen.of(Ink.RULE, 1.2));
      double y = low - stint.place() * (low - high);
      if (stint.right()) {
        surface.line(x, y, x, guess - 1.5 * faces.mark(), Pen.of(Ink.INK, 2));
      }
      surface.disc(x, y, 0.8 * faces.mark(), Ink.INK);
      guess(surface, faces, stint.guess(), x, guess);
      double turn = i % staggers(faces, width) * faces.number().line();
      surface.text(
          Integer.toString(stint.number()),
          x,
          numbers(faces) + faces.number().ascent() + turn,
          Anchor.MIDDLE,
          faces.number(),
          Ink.SECOND);
    }
  }

  private void names(
      Surface surface, Faces faces, double label, double high, double low, double guess) {
    Face plain = faces.plain();
    Face number = faces.number();
    double room = label - ends(faces) - faces.px(24);
    row(surface, Lines.cut(content.levels(), plain, room), 0, (high + low) / 2, plain);
    row(surface, Lines.cut(content.guesses(), plain, label - faces.px(12)), 0, guess, plain);
    double x = label - faces.px(8);
    Stream.of(content.high(), content.low())
        .forEach(
            end ->
                surface.text(
                    end,
                    x,
                    (end.equals(content.high()) ? high : low) + 0.35 * number.size(),
                    Anchor.END,
                    number,
                    Ink.SECOND));
  }

  private static void row(Surface surface, String words, double x, double y, Face face) {
    surface.text(words, x, y + 0.35 * face.size(), Anchor.START, face, Ink.SECOND);
  }

  /** An arrow towards the end guessed. */
  private void guess(Surface surface, Faces faces, Guess guess, double x, double y) {
    if (guess == Guess.UNKNOWN) {
      Face face = faces.number();
      double baseline = y + 0.35 * face.size();
      surface.text(content.unknown(), x, baseline, Anchor.MIDDLE, face, Ink.INK);
      return;
    }
    double reach = 1.3 * faces.mark();
    double way = guess == Guess.HIGH ? -1 : 1;
    double head = 0.7 * faces.mark();
    double tip = y + way * reach;
    surface.line(x, y - way * reach, x, tip, Pen.of(Ink.INK, 2));
    surface.polyline(
        new double[] {x - head, x, x + head},
        new double[] {tip - way * head, tip, tip - way * head},
        Pen.of(Ink.INK, 2));
  }
}
