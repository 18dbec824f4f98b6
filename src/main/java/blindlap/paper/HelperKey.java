package blindlap.paper;

import static blindlap.paper.sheet.SheetFlow.SMALL;
import static blindlap.paper.sheet.SheetFlow.WORDS;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plot.Qr;
import blindlap.plot.surface.Spoken;
import blindlap.seal.KeySheet;
import java.util.List;

/** The key on the helper's sheet: rows to type, and beside them a code to scan. */
final class HelperKey {
  /**
   * Stints up to which the key is a code to scan as well: of three hundred its squares would be a
   * quarter of a millimetre wide, which no telephone reads off paper.
   */
  static final int MOST_SCANNED = 64;

  private static final double SIDE = 44;
  private static final double TITLE = 13;
  private static final int COLUMNS = 2;

  private HelperKey() {}

  /**
   * Writes the key.
   *
   * @param room height of an empty page, in millimetres
   */
  static void write(SheetFlow sheet, KeySheet key, int stints, double room) {
    List<String> rows = key.text().lines().toList();
    if (stints > MOST_SCANNED) {
      typed(sheet, rows, room);
    } else {
      scanned(sheet, rows, key.payload(), room);
    }
  }

  private static void heading(SheetFlow sheet) {
    sheet.y += 3;
    sheet.y +=
        sheet.pen.paragraph(
                sheet.left(), sheet.y, sheet.width(), Face.SERIF, TITLE, WORDS.say("key"))
            + 1;
  }

  private static void scanned(SheetFlow sheet, List<String> rows, String payload, double room) {
    SheetPen pen = sheet.pen;
    double tall = Math.max(SIDE, rows.size() * SheetPen.leading(SMALL)) + 16;
    sheet.need(Math.min(tall, room));
    heading(sheet);
    sheet.y +=
        pen.paragraph(sheet.left(), sheet.y, sheet.width(), Face.SANS, SMALL, WORDS.say("key.use"))
            + 1;
    pen.qr(Qr.of(payload, new Spoken(WORDS.say("key"), "")), sheet.right() - SIDE, sheet.y, SIDE);
    double under = sheet.y + SIDE;
    for (String row : rows) {
      if (sheet.need(SheetPen.leading(SMALL))) {
        under = sheet.y;
      }
      sheet.y +=
          pen.paragraph(sheet.left(), sheet.y, sheet.width() - SIDE - 6, Face.STRONG, SMALL, row);
    }
    sheet.y = Math.max(sheet.y, under);
  }

  /** Rows alone, read down the left column and then down the right, on one page if they fit. */
  private static void typed(SheetFlow sheet, List<String> rows, double room) {
    SheetPen pen = sheet.pen;
    double line = SheetPen.leading(SMALL);
    int each = (rows.size() + COLUMNS - 1) / COLUMNS;
    sheet.need(Math.min(each * line + 30, room));
    heading(sheet);
    for (String words : List.of(WORDS.say("key.use"), WORDS.say("key.no.code", MOST_SCANNED))) {
      sheet.y += pen.paragraph(sheet.left(), sheet.y, sheet.width(), Face.SANS, SMALL, words) + 1;
    }
    double top = sheet.y;
    double half = sheet.width() / COLUMNS;
    for (int i = 0; i < rows.size(); i++) {
      double x = sheet.left() + i / each * half;
      double y = top + i % each * line;
      pen.paragraph(x, y, half - 3, Face.STRONG, SMALL, rows.get(i));
    }
    sheet.y = top + each * line;
  }
}
