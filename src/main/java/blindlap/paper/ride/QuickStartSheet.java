package blindlap.paper.ride;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.wording.day.Words;

/**
 * One page for a helper who has never seen the program. It is of no session, so that anybody may
 * print it and read it, the rider too.
 */
public final class QuickStartSheet extends SheetFlow {
  private static final Words QUICK = Words.of("quick");
  private static final double TITLE = 13.5;
  private static final double TEXT = 11.3;
  private static final double INDENT = 6;
  private static final double GAP = 0.8;

  private QuickStartSheet(SheetPen pen) {
    super(pen, QUICK.say("head"), CAUTIONS.say("short") + " " + CAUTIONS.say("ride"));
  }

  /** The page as PDF. */
  public static byte[] pdf(SheetFormat format) {
    try (SheetPen pen = new SheetPen(format)) {
      new QuickStartSheet(pen).write();
      return pen.bytes();
    }
  }

  private void write() {
    page();
    y += pen.paragraph(left(), y, width(), Face.SANS, TEXT, QUICK.say("lead")) + 1;
    for (int part = 1; QUICK.has("part." + part); part++) {
      y += 2;
      y += pen.paragraph(left(), y, width(), Face.SERIF, TITLE, QUICK.say("part." + part)) + GAP;
      for (int item = 1; QUICK.has("part." + part + "." + item); item++) {
        item(item, QUICK.say("part." + part + "." + item));
      }
    }
  }

  private void item(int number, String words) {
    pen.text(left(), y + 3.7, Face.STRONG, TEXT, String.valueOf(number));
    double width = width() - INDENT;
    y += pen.paragraph(left() + INDENT, y, width, Face.SANS, TEXT, words) + GAP;
  }

  /** It is one page, which needs no number. */
  @Override
  public void pageWords(String words) {}
}
