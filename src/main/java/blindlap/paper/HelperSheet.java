package blindlap.paper;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.plot.Qr;
import blindlap.plot.surface.Spoken;
import blindlap.seal.HelperSchedule;
import blindlap.seal.KeySheet;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.wording.HandlingWords;
import java.math.BigDecimal;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The helper's sheet: what to fit before every stint, ticks, settings, steps, the key as text and
 * as a code to scan. Framed in black on every page, so that a passing rider looks away.
 */
public final class HelperSheet extends SheetFlow {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final double EDGE = 9;
  private static final double EDGE_RIGHT = 4;
  private static final double BAND = 17;
  private static final double ROW = 8.2;
  private static final double TICK = 4.6;
  private static final int TICKS = 6;
  private static final double PITCH = 10.8;
  private static final double SWAP = 16;
  private static final double LATE = 19;
  private static final double FIELD = 45;
  private static final double TITLE = 13;

  private final SessionState state;
  private final Plan plan;
  private final Optional<Schedule> day;
  private final HelperSchedule schedule;
  private final KeySheet sheet;
  private final String phrase;

  /** What a friend packs beforehand has words of its own. */
  private final String kind;

  private HelperSheet(
      SheetPen pen, SessionState state, HelperSchedule schedule, KeySheet sheet, String phrase) {
    super(pen, WORDS.say("helper.head"), CAUTIONS.say("short") + " " + CAUTIONS.say("ride"));
    this.state = state;
    this.plan = state.plan();
    // What is packed beforehand has no clock times.
    this.day =
        plan.blinding().level() == BlindLevel.PREPARED ? Optional.empty() : Schedule.of(plan);
    this.schedule = schedule;
    this.sheet = sheet;
    this.phrase = phrase;
    this.kind = plan.blinding().level() == BlindLevel.PREPARED ? "packing." : "";
  }

  private boolean packing() {
    return !kind.isEmpty();
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
    String day = WORDS.say("page.of", plan.day(), pen.pages());
    pen.text(right() - pen.width(Face.SANS, BODY, day), 11, Face.SANS, BODY, day, 1);
    return BAND + 5;
  }

  private String who() {
    return WORDS.say(packing() ? "packing.who" : "helper.who");
  }

  private void write() {
    page();
    secrets();
    table();
    steps();
    StepsDay levels = plan.steps();
    if (levels == null) {
      plan.setups().forEach(this::setup);
    } else {
      setup(levels.one(plan.setups().get(0))); // levels differ by what their rows say
    }
    bike();
    key();
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

  private double nameWidth() {
    return width() - nameAt() - SWAP - TICKS * PITCH - LATE;
  }

  /** Where the name begins; without a timetable there is no column of clock times. */
  private double nameAt() {
    return day.isPresent() ? 38 : 23;
  }

  private double ticksAt() {
    return left() + nameAt() + nameWidth() + SWAP;
  }

  private void heads() {
    double base = y + 6.5;
    pen.text(left(), base, Face.SANS, SMALL, WORDS.say("col.stint"));
    pen.text(left() + 12, base, Face.SANS, SMALL, WORDS.say("col.code"));
    if (day.isPresent()) {
      pen.text(left() + 23, base, Face.SANS, SMALL, WORDS.say("col.swap.at"));
    }
    pen.text(left() + nameAt(), base, Face.SANS, SMALL, WORDS.say(kind + "col.fit"));
    pen.text(ticksAt() - SWAP, base, Face.SANS, SMALL, WORDS.say(kind + "col.swap"));
    for (int i = 0; i < TICKS; i++) {
      pen.paragraph(
          ticksAt() + i * PITCH, y, PITCH - 0.2, Face.SANS, 8.5, WORDS.say(kind + "tick." + i));
    }
    pen.text(right() - LATE + 2, base, Face.SANS, SMALL, WORDS.say(kind + "col.late"));
    y += 8.5;
    pen.line(left(), y, right(), y, 0.5);
  }

  private void table() {
    heads();
    if (plan.laps().warmUp() > 0) {
      row(WORDS.say("warm.up"), "", at(0), null, schedule.warmUp(), WORDS.say("first.fit"));
    }
    Integer on = plan.laps().warmUp() > 0 ? schedule.warmUp() : null;
    for (HelperSchedule.Fit fit : schedule.fits()) {
      boolean first = fit.stint() == 1 && plan.laps().warmUp() == 0;
      String swap =
          first
              ? WORDS.say("first.fit")
              : WORDS.say(fit.swap() == HelperSchedule.Swap.REAL ? "real" : "dummy");
      row(
          String.valueOf(fit.stint()),
          String.valueOf(fit.code()),
          at(fit.stint()),
          on,
          fit.fitted(),
          swap);
      on = fit.fitted();
    }
    y += 3;
  }

  private String at(int stint) {
    return day.map(
            s -> CLOCK.format((stint == 0 ? s.blocks().get(0) : s.stints().get(stint - 1)).from()))
        .orElse("");
  }

  private void row(
      String stint, String code, String at, @Nullable Integer on, int fitted, String work) {
    String swap = packing() ? "" : work;
    String name = plan.setups().get(fitted).name();
    List<String> lines = pen.lines(nameWidth() - 9, Face.STRONG, BODY, name);
    List<String> way = way(on, fitted);
    double tall =
        Math.max(ROW, lines.size() * SheetPen.leading(BODY) + 2.5)
            + way.size() * SheetPen.leading(SMALL);
    if (need(tall)) {
      heads();
    }
    double base = y + ROW - 2.8;
    pen.text(left(), base, Face.STRONG, BODY, stint);
    pen.text(left() + 12, base, Face.SANS, BODY, code);
    pen.text(left() + 23, base, Face.SANS, BODY, at);
    if (plan.steps() == null) { // a level is a place along its setting and has no mark
      pen.mark(fitted, left() + nameAt() + 2, base - 1.3, 1.7);
    }
    double line = base;
    for (String words : lines) {
      pen.text(left() + nameAt() + 7, line, Face.STRONG, BODY, words);
      line += SheetPen.leading(BODY);
    }
    for (String words : way) {
      pen.text(left() + nameAt() + 7, line, Face.SANS, SMALL, words);
      line += SheetPen.leading(SMALL);
    }
    pen.text(ticksAt() - SWAP, base, Face.SANS, BODY, swap);
    for (int i = 0; i < TICKS; i++) {
      pen.box(ticksAt() + i * PITCH + 1, base - TICK + 1, TICK, TICK);
    }
    pen.line(right() - LATE + 2, base, right(), base, 0.2);
    y += tall;
    pen.line(left(), y, right(), y, 0.1);
  }

  /** How a level is set from the one that is on, in as many lines as there is room for. */
  private List<String> way(@Nullable Integer on, int fitted) {
    String words = HandlingWords.row(plan, on, fitted);
    return words.isEmpty() ? List.of() : pen.lines(nameWidth() - 9, Face.SANS, SMALL, words);
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
    if (tall < bottom() - BAND - 12) {
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

  private void key() {
    List<String> rows = new ArrayList<>(sheet.text().lines().toList());
    double side = 44;
    double tall = Math.max(side, rows.size() * SheetPen.leading(SMALL)) + 16;
    need(Math.min(tall, bottom() - BAND - 12));
    heading(WORDS.say("key"));
    y += pen.paragraph(left(), y, width(), Face.SANS, SMALL, WORDS.say("key.use")) + 1;
    pen.qr(Qr.of(sheet.payload(), new Spoken(WORDS.say("key"), "")), right() - side, y, side);
    double under = y + side;
    for (String row : rows) {
      if (need(SheetPen.leading(SMALL))) {
        under = y;
      }
      y += pen.paragraph(left(), y, width() - side - 6, Face.STRONG, SMALL, row);
    }
    y = Math.max(y, under);
  }
}
