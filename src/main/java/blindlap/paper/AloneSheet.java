package blindlap.paper;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.BlindLevel;
import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import java.util.ArrayList;
import java.util.List;

/**
 * The sheet of a rider who swaps alone, stint after stint, with the safety list. What was not shown
 * yet is not on it: there is a line to write down what the program shows.
 */
public final class AloneSheet extends SheetFlow {
  private static final double TITLE = 13;
  private static final double TICK = 4.6;
  private static final double TICKS_AT = 92;
  private static final double PITCH = 12.6;
  private static final double ROW = 13;
  private static final double FIELD = 45;

  private final SessionState state;
  private final Plan plan;
  private final BlindLevel level;

  private AloneSheet(SheetPen pen, SessionState state) {
    super(
        pen, head("alone.head", state.plan()), CAUTIONS.say("short") + " " + CAUTIONS.say("ride"));
    this.state = state;
    this.plan = state.plan();
    this.level = plan.blinding().level();
  }

  /** The sheet as PDF. */
  public static byte[] pdf(SessionState state, SheetFormat format) {
    try (SheetPen pen = new SheetPen(format)) {
      new AloneSheet(pen, state).write();
      return pen.bytes();
    }
  }

  private void write() {
    page();
    y += pen.paragraph(left(), y, width(), Face.SANS, BODY, WORDS.say("alone.how." + level)) + 3;
    heads();
    if (plan.laps().warmUp() > 0) {
      row(0, WORDS.say("warm.up"), "");
    }
    for (int stint = 1; stint <= plan.stints(); stint++) {
      row(stint, String.valueOf(stint), String.valueOf(state.code(stint)));
    }
    list();
    if (level == BlindLevel.OPEN || level == BlindLevel.DRAWN) {
      plan.setups().forEach(this::setup);
    }
    if (!plan.bike().isEmpty()) {
      heading(WORDS.say("bike"));
      settings(plan.bike());
    }
  }

  private void heads() {
    double base = y + 6.5;
    pen.text(left(), base, Face.SANS, SMALL, WORDS.say("col.stint"));
    pen.text(left() + 20, base, Face.SANS, SMALL, WORDS.say("col.code"));
    pen.text(left() + 34, base, Face.SANS, SMALL, WORDS.say("alone.col." + (prepared() ? 1 : 0)));
    SafetyCheck[] checks = SafetyCheck.values();
    for (int i = 0; i < checks.length; i++) {
      pen.text(left() + TICKS_AT + i * PITCH, base, Face.SANS, SMALL, WORDS.say("alone." + i));
    }
    y += 8.5;
    pen.line(left(), y, right(), y, 0.5);
  }

  private boolean prepared() {
    return level == BlindLevel.PREPARED;
  }

  private void row(int stint, String name, String code) {
    if (need(ROW)) {
      heads();
    }
    double base = y + 6;
    pen.text(left(), base, Face.STRONG, BODY, name);
    pen.text(left() + 20, base, Face.SANS, BODY, code);
    Integer shown = state.shown().get(stint);
    if (prepared()) {
      pen.box(left() + 35, base - TICK + 1, TICK, TICK);
      pen.text(left() + 42, base, Face.SANS, BODY, WORDS.say("alone.whole"));
    } else if (shown != null) {
      pen.text(left() + 34, base, Face.STRONG, BODY, fitted(Labels.name(plan, shown)));
    } else {
      pen.line(left() + 34, base, left() + TICKS_AT - 4, base, 0.2);
    }
    for (int i = 0; i < SafetyCheck.values().length; i++) {
      pen.box(left() + TICKS_AT + i * PITCH, base - TICK + 1, TICK, TICK);
    }
    pen.text(left() + 34, base + 5, Face.SANS, SMALL, WORDS.say("alone.measured"));
    double from = left() + 36 + pen.width(Face.SANS, SMALL, WORDS.say("alone.measured"));
    pen.line(from, base + 5, right(), base + 5, 0.2);
    y += ROW;
    pen.line(left(), y, right(), y, 0.1);
  }

  /** As much of a name as has room beside the ticks. */
  private String fitted(String name) {
    return pen.lines(TICKS_AT - 38, Face.STRONG, BODY, name).get(0);
  }

  private void heading(String words) {
    need(22);
    y += 3;
    y += pen.paragraph(left(), y, width(), Face.SERIF, TITLE, words) + 1;
  }

  private void item(String words) {
    need(pen.height(width() - 5, Face.SANS, BODY, words) + 1);
    pen.text(left(), y + 3.7, Face.SANS, BODY, "–");
    y += pen.paragraph(left() + 5, y, width() - 5, Face.SANS, BODY, words) + 0.6;
  }

  private void list() {
    heading(WORDS.say("alone.every"));
    SafetyCheck[] checks = SafetyCheck.values();
    for (int i = 0; i < checks.length; i++) {
      item(WORDS.say("alone.check", WORDS.say("alone." + i), WORDS.say("check." + checks[i])));
    }
    item(WORDS.say("alone.fit"));
    item(WORDS.say("alone.void"));
  }

  private void setup(Setup setup) {
    heading(WORDS.say("setup", setup.name()));
    List<String> items = new ArrayList<>();
    for (int i = 0; i < setup.steps().size(); i++) {
      items.add(WORDS.say("step", i + 1, setup.steps().get(i)));
    }
    setup.limits().forEach(l -> items.add(WORDS.say("limit", l.what(), l.value(), l.source())));
    setup.cautions().forEach(c -> items.add(WORDS.say("caution", c)));
    items.forEach(this::item);
    settings(setup.settings());
  }

  private void settings(List<Setting> settings) {
    for (Setting setting : settings) {
      String aim =
          setting.tolerance() == null
              ? setting.shown()
              : WORDS.say("within", setting.shown(), setting.tolerance().toPlainString());
      String words = WORDS.say("setting", setting.name(), aim);
      double tall = pen.height(width() - FIELD, Face.SANS, BODY, words) + 2;
      need(tall);
      pen.paragraph(left(), y, width() - FIELD, Face.SANS, BODY, words);
      y += tall;
    }
  }
}
