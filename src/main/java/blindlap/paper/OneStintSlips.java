package blindlap.paper;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.Plan;
import blindlap.seal.StintCode;
import java.util.List;

/**
 * Slips of paper to cut apart, one a stint: the words that show somebody once what to set for it.
 * No setup is on them.
 */
public final class OneStintSlips extends SheetFlow {
  private static final double CODE = 20;
  private static final double GAP = 3;
  private static final double LINE = 9;

  private final Plan plan;

  /**
   * What is on a slip.
   *
   * @param stint from 1
   * @param code of the stint
   * @param words that open the view
   */
  public record Slip(int stint, int code, StintCode words) {}

  private OneStintSlips(SheetPen pen, Plan plan) {
    super(pen, head("onestint.head", plan), WORDS.say("onestint.cut"));
    this.plan = plan;
  }

  /** The slips as PDF. */
  public static byte[] pdf(Plan plan, List<Slip> slips, SheetFormat format) {
    try (SheetPen pen = new SheetPen(format)) {
      new OneStintSlips(pen, plan).write(slips);
      return pen.bytes();
    }
  }

  private void write(List<Slip> slips) {
    page();
    slips.forEach(this::slip);
  }

  private void slip(Slip slip) {
    String how = WORDS.say("onestint.how", slip.stint());
    String cautions = CAUTIONS.say("short") + " " + CAUTIONS.say("ride");
    double tall =
        17
            + pen.height(width(), Face.SANS, BODY, how)
            + 2 * LINE
            + pen.height(width(), Face.STRONG, SMALL, cautions)
            + 2 * GAP;
    need(tall);
    String stint = WORDS.say("onestint.stint", slip.stint(), plan.stints(), slip.code());
    pen.text(left(), y + 6, Face.BOLD, 13, stint);
    pen.text(left(), y + 15, Face.BOLD, CODE, slip.words().text());
    y += 17 + GAP;
    y += pen.paragraph(left(), y, width(), Face.SANS, BODY, how);
    line("onestint.measured");
    line("onestint.who");
    y += pen.paragraph(left(), y + 1, width(), Face.STRONG, SMALL, cautions) + GAP;
    pen.dashed(left(), y, right());
    y += GAP;
  }

  /** A line to write on. */
  private void line(String key) {
    y += LINE;
    pen.text(left(), y - 2, Face.SANS, SMALL, WORDS.say(key));
    double from = left() + 2 + pen.width(Face.SANS, SMALL, WORDS.say(key));
    pen.line(from, y - 2, right(), y - 2, 0.2);
  }
}
