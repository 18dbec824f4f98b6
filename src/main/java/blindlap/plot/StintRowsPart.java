package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Stack;
import blindlap.plot.surface.Surface;
import java.util.List;

/** The upper half of {@link StintsAndDifference}: raw stints by setup over their axis. */
final class StintRowsPart {
  private final Surface surface;
  private final StintsContent content;
  private final DifferenceLayout at;
  private final Faces faces;

  StintRowsPart(Surface surface, StintsContent content, DifferenceLayout layout) {
    this.surface = surface;
    this.content = content;
    this.at = layout;
    this.faces = layout.faces();
  }

  void draw() {
    for (int i = 0; i < content.rows().size(); i++) {
      drawGuide(i);
    }
    for (int i = 0; i < content.rows().size(); i++) {
      drawName(i);
      drawMarks(i);
      drawMean(i);
    }
    drawAxis();
  }

  private void drawAxis() {
    double y = at.valueAxis();
    AxisPart.across(surface, at.scale(), content.values(), y, faces);
    Face face = faces.plain();
    List<String> words = Lines.wrap(content.values().words(), face, at.labelWidth() - 4, 2);
    for (int i = 0; i < words.size(); i++) {
      double baseline = y + AxisPart.numberBaseline(faces) + i * face.line();
      surface.text(words.get(i), 0, baseline, Anchor.START, face, Ink.SECOND);
    }
  }

  private void drawGuide(int index) {
    double x = AxisPart.crisp(at.scale().at(content.rows().get(index).mean()));
    Pen guide = new Pen(Ink.INK, 1, Dash.GUIDE);
    surface.line(x, at.markLine(index) + faces.mark(), x, at.valueAxis(), guide);
  }

  private void drawName(int index) {
    StintsContent.Row row = content.rows().get(index);
    double y = at.markLine(index);
    row.mark().draw(surface, faces.mark() + 1, y, faces.mark());
    Face face = faces.strong();
    List<String> lines = at.names().get(index);
    double first = y + 0.35 * face.size() - (lines.size() - 1) * face.line() / 2;
    for (int i = 0; i < lines.size(); i++) {
      double baseline = first + i * face.line();
      double x = DifferenceLayout.nameIndent(faces);
      surface.text(lines.get(i), x, baseline, Anchor.START, face, row.mark().ink());
    }
  }

  private void drawMarks(int index) {
    StintsContent.Row row = content.rows().get(index);
    Stack stack = at.stacks().get(index);
    double pile = DifferenceLayout.pile(faces, stack);
    for (int i = 0; i < row.values().size(); i++) {
      double x = at.scale().at(row.values().get(i));
      double y = at.markLine(index) - stack.levels().get(i) * pile;
      row.mark().draw(surface, x, y, faces.mark());
    }
  }

  private void drawMean(int index) {
    StintsContent.Row row = content.rows().get(index);
    double x = at.scale().at(row.mean());
    double top = at.rowTops().get(index) + faces.px(2);
    double bottom = at.markLine(index) + faces.mark();
    surface.line(x, top, x, bottom, Pen.of(row.mark().ink(), 2.4));
    Face face = faces.strong();
    double room = face.room(row.meanWords()) + faces.px(6);
    boolean right = x + room <= at.width();
    surface.backedText(
        row.meanWords(),
        right ? x + faces.px(6) : x - faces.px(6),
        top + face.ascent(),
        right ? Anchor.START : Anchor.END,
        face,
        row.mark().ink());
  }
}
