package blindlap.paper.ride;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.Plan;
import blindlap.session.day.Day;

/**
 * Labels to cut out and stick on covered parts: the code of every stint, twice, in the order of the
 * stints, which everybody knows. Nothing here depends on which setup goes under which code.
 */
public final class LabelSheet extends SheetFlow {
  private static final int ACROSS = 2;
  private static final double HIGH = 36;
  private static final double BIG = 54;

  private final Plan plan;
  private final Day day;

  private LabelSheet(SheetPen pen, Day day) {
    super(pen, head("labels.head", day.plan()), CAUTIONS.say("short"));
    this.plan = day.plan();
    this.day = day;
  }

  /** The sheet as PDF. */
  public static byte[] pdf(Day day, SheetFormat format) {
    try (SheetPen pen = new SheetPen(format)) {
      new LabelSheet(pen, day).write();
      return pen.bytes();
    }
  }

  private void write() {
    page();
    y += pen.paragraph(left(), y, width(), Face.SANS, BODY, WORDS.say("labels.how")) + 4;
    if (plan.laps().warmUp() > 0) {
      row(WORDS.say("warm.up"), WORDS.say("labels.warm.up"), 30);
    }
    for (int stint = 1; stint <= plan.stints(); stint++) {
      row(
          String.valueOf(day.code(stint)),
          WORDS.say("labels.stint", stint, plan.stints(), plan.day()),
          BIG);
    }
  }

  /** The unit's label and its bag's, side by side. */
  private void row(String code, String words, double size) {
    need(HIGH);
    double wide = width() / ACROSS;
    for (int i = 0; i < ACROSS; i++) {
      double x = left() + i * wide;
      pen.box(x, y, wide, HIGH);
      pen.text(x + 6, y + 24, Face.BOLD, size, code);
      pen.text(x + 6, y + 32, Face.SANS, SMALL, words);
      String seal = WORDS.say(i == 0 ? "labels.part" : "labels.bag");
      pen.paragraph(x + wide - 38, y + 4, 34, Face.SANS, SMALL, seal);
      pen.line(x + wide - 38, y + 30, x + wide - 4, y + 30, 0.2);
    }
    y += HIGH;
  }
}
