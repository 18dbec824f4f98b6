package blindlap.paper;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.seal.HelperSchedule;
import blindlap.seal.KeySheet;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.wording.HandlingWords;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * The helper's sheet: what to fit before every stint, ticks, settings, steps, the key as text and
 * as a code to scan. Framed in black on every page, so that a passing rider looks away.
 */
public final class HelperSheet extends SheetFlow {
  private static final double EDGE = 9;
  private static final double EDGE_RIGHT = 4;
  private static final double BAND = 17;
  private static final double FIELD = 45;
  private static final double TITLE = 13;

  private final SessionState state;
  private final Plan plan;
  private final HelperSchedule schedule;
  private final KeySheet sheet;
  private final String phrase;

  /** What a friend packs beforehand has words of its own. */
  private final String kind;

  private HelperSheet(
      SheetPen pen, SessionState state, HelperSchedule schedule, KeySheet sheet, String phrase) {
    super(pen, WORDS.say("helper.head"), foot(state.plan()), state.plan().telling());
    this.state = state;
    this.plan = state.plan();
    this.schedule = schedule;
    this.sheet = sheet;
    this.phrase = phrase;
    this.kind = plan.blinding().level() == BlindLevel.PREPARED ? "packing." : "";
  }

  private boolean packing() {
    return !kind.isEmpty();
  }

  /** On every page, since a helper looks at the one in hand: what a void trial asks, cautions. */
  private static String foot(Plan plan) {
    String cautions = CAUTIONS.say("short") + " " + CAUTIONS.say("ride");
    return plan.telling() == null ? cautions : WORDS.say("trial.helper") + " " + cautions;
  }

  /**
   * The sheet as PDF.
   *
   * @param phrase the helper phrase; empty to leave it out
   */
  public static byte[] pdf(
      SessionState state,
      HelperSchedule schedule,
      KeySheet sheet,
      String phrase,
      SheetFormat format) {
    try (SheetPen pen = new SheetPen(format)) {
      new HelperSheet(pen, state, schedule, sheet, phrase).write();
      return pen.bytes();
    }
  }

  @Override
  public double left() {
    return EDGE + 6;
  }

  @Override
  public double right() {
    return pen.width() - EDGE_RIGHT - 6;
  }

  @Override
  public double top() {
    pen.fill(0, 0, pen.width(), BAND, 0);
    pen.fill(0, 0, EDGE, pen.height(), 0);
    pen.fill(pen.width() - EDGE_RIGHT, 0, EDGE_RIGHT, pen.height(), 0);
    pen.fill(0, pen.height() - EDGE_RIGHT, pen.width(), EDGE_RIGHT, 0);
    pen.text(left(), 11, Face.BOLD, 18, who(), 1);
    double used = pen.width(Face.BOLD, 18, who()) + 4;
    pen.text(left() + used, 11, Face.SANS, 13, WORDS.say("helper.away"), 1);
    if (ofTrials()) {
      String place = WORDS.say("helper.session", plan.day(), plan.trail());
      white(7, pen.lines(right() - left() - used - 40, Face.SANS, BODY, place).get(0));
    } else {
      white(11, WORDS.say("page.of", plan.day(), pen.pages()));
    }
    return BAND + 5;
  }

  @Override
  public void pageWords(String words) {
    white(13, words);
  }

  /** White words on the band, at its right. */
  private void white(double base, String words) {
    pen.text(right() - pen.width(Face.SANS, BODY, words), base, Face.SANS, BODY, words, 1);
  }

  private String who() {
    return WORDS.say(packing() ? "packing.who" : "helper.who");
  }

  private void write() {
    page();
    secrets();
    new HelperRows(this, plan, schedule).write();
    steps();
    StepsDay levels = plan.oneSetting();
    if (levels == null) {
      plan.setups().forEach(this::setup);
    } else {
      setup(levels.one(plan.setups().get(0))); // levels differ by what their rows say
    }
    bike();
    HelperKey.write(this, sheet, plan.stints(), emptyPage());
    finish();
  }

  private double emptyPage() {
    return bottom() - BAND - 12;
  }

  private void secrets() {
    y += pen.paragraph(left(), y, width(), Face.SANS, BODY, place()) + 1;
    if (!phrase.isEmpty()) {
      y += pen.paragraph(left(), y, width(), Face.SANS, SMALL, WORDS.say(kind + "phrase")) + 1;
      y += pen.paragraph(left(), y, width(), Face.SERIF, 17, phrase) + 1;
      y += pen.paragraph(left(), y, width(), Face.SANS, SMALL, WORDS.say("phrase.use")) + 1;
    }
    String fingerprint = WORDS.say("fingerprint", state.planFingerprint().grouped());
    y += pen.paragraph(left(), y, width(), Face.SANS, SMALL, fingerprint) + 1.5;
    pen.dashed(left(), y, right());
    y += 3;
  }

  private String place() {
    return WORDS.say("helper.place", plan.trail(), plan.rider(), plan.title());
  }

  private void heading(String words) {
    need(22);
    y += 3;
    y += pen.paragraph(left(), y, width(), Face.SERIF, TITLE, words) + 1;
  }

  private void item(String words) {
    need(itemHeight(words));
    pen.text(left(), y + 3.7, Face.SANS, BODY, "–");
    y += pen.paragraph(left() + 5, y, width() - 5, Face.SANS, BODY, words) + 0.6;
  }

  private double itemHeight(String words) {
    return pen.height(width() - 5, Face.SANS, BODY, words) + 1;
  }

  private void steps() {
    if (packing()) {
      heading(WORDS.say("packing.every.stint"));
      for (int i = 1; WORDS.has("packing.every." + i); i++) {
        item(WORDS.say("packing.every." + i));
      }
      return;
    }
    heading(WORDS.say("every.stint"));
    List<String> level = HandlingWords.every(plan);
    (level.isEmpty() ? List.of(WORDS.say("every.first")) : level).forEach(this::item);
    HandlingWords.limits(plan).ifPresent(this::item);
    for (SafetyCheck check : SafetyCheck.values()) {
      item(WORDS.say("check." + check));
    }
    item(WORDS.say("every.fit"));
    item(WORDS.say("every.last"));
    if (ofTrials()) {
      item(WORDS.say("trial.helper"));
    }
    item(CAUTIONS.say("emergency"));
  }

  private void setup(Setup setup) {
    String head = WORDS.say("setup", setup.name());
    List<String> items = items(setup);
    double tall = 4 + pen.height(width(), Face.SERIF, TITLE, head);
    for (String words : items) {
      tall += itemHeight(words);
    }
    for (Setting setting : setup.settings()) {
      tall += settingHeight(setting);
    }
    if (tall < emptyPage()) {
      need(tall); // a setup is read on one page
    }
    heading(head);
    items.forEach(this::item);
    settings(setup.settings());
  }

  private static List<String> items(Setup setup) {
    List<String> items = new ArrayList<>();
    for (int i = 0; i < setup.steps().size(); i++) {
      items.add(WORDS.say("step", i + 1, setup.steps().get(i)));
    }
    setup.limits().forEach(l -> items.add(WORDS.say("limit", l.what(), l.value(), l.source())));
    setup.cautions().forEach(c -> items.add(WORDS.say("caution", c)));
    return items;
  }

  private void bike() {
    if (!plan.bike().isEmpty()) {
      heading(WORDS.say("bike"));
      settings(plan.bike());
    }
  }

  private void settings(List<Setting> settings) {
    for (Setting setting : settings) {
      double tall = settingHeight(setting);
      need(tall);
      pen.paragraph(left(), y, width() - FIELD, Face.SANS, BODY, words(setting));
      pen.line(right() - 40, y + 4.5, right(), y + 4.5, 0.2);
      y += tall;
    }
  }

  private static String words(Setting setting) {
    BigDecimal tolerance = setting.tolerance();
    String aim =
        tolerance == null
            ? setting.shown()
            : WORDS.say("within", setting.shown(), tolerance.toPlainString());
    return WORDS.say("setting", setting.name(), aim);
  }

  private double settingHeight(Setting setting) {
    return pen.height(width() - FIELD, Face.SANS, BODY, words(setting)) + 2;
  }
}
