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
import java.util.Optional;

/**
 * Did the blind hold? For each stint what was fitted and, below it, what the rider guessed; right
 * guesses are joined.
 */
public final class GuessedOrder implements Drawing {
  /**
   * One stint.
   *
   * @param number its number
   * @param fitted the setup that was ridden
   * @param guessed the setup that was guessed; empty for "don't know"
   */
  public record Stint(int number, SetupMark fitted, Optional<SetupMark> guessed) {}

  /**
   * Everything that is drawn.
   *
   * @param stints in ridden order, 1 or more
   * @param fitted name of the upper row
   * @param guessed name of the lower row
   * @param unknown sign for "don't know", such as "?"
   * @param spoken the picture in words
   */
  public record Content(
      List<Stint> stints, String fitted, String guessed, String unknown, Spoken spoken) {
    /** Copies the list. */
    public Content {
      stints = List.copyOf(stints);
    }
  }

  private final Content content;

  private GuessedOrder(Content content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there is no stint
   */
  public static GuessedOrder of(Content content) {
    if (content.stints().isEmpty()) {
      throw new IllegalArgumentException("No stint has a guess to draw");
    }
    return new GuessedOrder(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  private static double label(Content content, Faces faces, double width) {
    double widest =
        Math.max(faces.plain().room(content.fitted()), faces.plain().room(content.guessed()));
    return Math.min(0.25 * width, widest + faces.px(12));
  }

  private int staggers(Faces faces, double width) {
    double each = (width - label(content, faces, width)) / content.stints().size();
    int last = content.stints().get(content.stints().size() - 1).number();
    double needed = faces.number().room(Integer.toString(last)) + faces.px(4);
    return (int) Math.max(1, Math.ceil(needed / each));
  }

  private static double row(Faces faces) {
    return Math.max(faces.px(30), 4.4 * faces.mark());
  }

  @Override
  public double heightFor(double width, double textScale) {
    Faces faces = new Faces(textScale);
    return 2 * row(faces) + staggers(faces, width) * faces.number().line() + faces.px(6);
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    Faces faces = new Faces(textScale);
    double label = label(content, faces, width);
    double each = (width - label) / content.stints().size();
    double upper = row(faces) / 2;
    double lower = upper + row(faces);
    rowName(surface, content.fitted(), label, upper, faces);
    rowName(surface, content.guessed(), label, lower, faces);
    for (int i = 0; i < content.stints().size(); i++) {
      double x = label + (i + 0.5) * each;
      Stint stint = content.stints().get(i);
      drawStint(surface, stint, x, upper, lower, faces);
      double turn = i % staggers(faces, width) * faces.number().line();
      surface.text(
          Integer.toString(stint.number()),
          x,
          2 * row(faces) + faces.number().ascent() + turn,
          Anchor.MIDDLE,
          faces.number(),
          Ink.SECOND);
    }
  }

  private static void rowName(Surface surface, String words, double room, double y, Faces faces) {
    Face face = faces.plain();
    String cut = Lines.cut(words, face, room);
    surface.text(cut, 0, y + 0.35 * face.size(), Anchor.START, face, Ink.SECOND);
  }

  private void drawStint(
      Surface surface, Stint stint, double x, double upper, double lower, Faces faces) {
    if (stint.guessed().equals(Optional.of(stint.fitted()))) {
      double reach = 1.5 * faces.mark();
      surface.line(x, upper + reach, x, lower - reach, Pen.of(Ink.INK, 2));
    }
    stint.fitted().draw(surface, x, upper, faces.mark());
    if (stint.guessed().isPresent()) {
      stint.guessed().get().draw(surface, x, lower, faces.mark());
    } else {
      Face face = faces.number();
      double baseline = lower + 0.35 * face.size();
      surface.text(content.unknown(), x, baseline, Anchor.MIDDLE, face, Ink.INK);
    }
  }
}
