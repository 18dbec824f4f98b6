package blindlap.paper.ride;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;

/**
 * What a score sheet asks, at its right: line scales of exactly 100 mm, boxes, lines to write on.
 */
final class ScoreParts {
  static final double SCALE = 100;
  static final double TITLE = 11;
  static final double BOX = 5;

  private final SheetFlow sheet;

  ScoreParts(SheetFlow sheet) {
    this.sheet = sheet;
  }

  /** Something asked: its height, and how it is drawn at a place. */
  record Asked(double height, DoubleConsumer drawing) {}

  /** Where what is asked begins. */
  double column() {
    return sheet.right() - SCALE;
  }

  /** What a plan asks of a lap; times go on the starter's sheet. */
  List<Asked> measures(Plan plan) {
    List<Asked> all = new ArrayList<>();
    for (Measure measure : plan.askedOnTheDay()) {
      all.addAll(
          switch (measure.kind()) {
            case LINE_SCALE -> List.of(line(measure));
            case CATEGORY_SCALE -> List.of(category(measure));
            case COUNT -> List.of(written(measure.name(), 28));
            case LAP_TIME, SECTOR_TIME -> List.of();
          });
    }
    return all;
  }

  double title(double at, String words) {
    return sheet.pen.paragraph(column(), at, SCALE, Face.STRONG, TITLE, words);
  }

  private double titleHeight(String words) {
    return sheet.pen.height(SCALE, Face.STRONG, TITLE, words);
  }

  Asked line(Measure measure) {
    double head = titleHeight(measure.name());
    double half = SCALE / 2 - 2;
    double ends =
        Math.max(
            sheet.pen.height(half, Face.SANS, SheetFlow.SMALL, measure.lowWords()),
            sheet.pen.height(half, Face.SANS, SheetFlow.SMALL, measure.highWords()));
    return new Asked(
        head + 7.5 + ends + 2.5,
        at -> {
          title(at, measure.name());
          double line = at + head + 5;
          sheet.pen.line(column(), line, sheet.right(), line, 0.6);
          sheet.pen.paragraph(
              column(), line + 2, half, Face.SANS, SheetFlow.SMALL, measure.lowWords());
          double below = line + 2;
          for (String words :
              sheet.pen.lines(half, Face.SANS, SheetFlow.SMALL, measure.highWords())) {
            sheet.pen.textTo(
                sheet.right(),
                below + SheetFlow.SMALL * 25.4 / 72,
                Face.SANS,
                SheetFlow.SMALL,
                words);
            below += SheetPen.leading(SheetFlow.SMALL);
          }
        });
  }

  Asked category(Measure measure) {
    String words =
        measure.name()
            + ": "
            + SheetFlow.WORDS.say("category", measure.lowWords(), measure.highWords());
    double head = titleHeight(words);
    return new Asked(
        head + 11,
        at -> {
          title(at, words);
          for (int i = 1; i <= 9; i++) {
            double x = column() + (i - 1) * SCALE / 9;
            sheet.pen.box(x, at + head + 1, BOX + 2, BOX + 2);
            sheet.pen.text(
                x + 2.4, at + head + 6, Face.SANS, SheetFlow.BODY, String.valueOf(i), 0.45);
          }
        });
  }

  Asked written(String words, double room) {
    double head = titleHeight(words);
    return new Asked(
        head + 8.5,
        at -> {
          title(at, words);
          sheet.pen.line(column(), at + head + 6, column() + room, at + head + 6, 0.25);
        });
  }

  Asked boxes(String words, List<String> options) {
    double head = titleHeight(words);
    int columns = 3;
    double cell = SCALE / columns;
    double room = cell - BOX - 4;
    double row =
        options.stream()
            .mapToDouble(o -> sheet.pen.height(room, Face.SANS, SheetFlow.BODY, o))
            .max()
            .orElse(BOX);
    double pitch = Math.max(BOX, row) + 2;
    int rows = (options.size() + columns - 1) / columns;
    return new Asked(
        head + rows * pitch + 2,
        at -> {
          title(at, words);
          for (int i = 0; i < options.size(); i++) {
            double x = column() + i % columns * cell;
            double top = at + head + 1 + i / columns * pitch;
            sheet.pen.box(x, top, BOX, BOX);
            sheet.pen.paragraph(
                x + BOX + 2, top + 0.2, room, Face.SANS, SheetFlow.BODY, options.get(i));
          }
        });
  }
}
