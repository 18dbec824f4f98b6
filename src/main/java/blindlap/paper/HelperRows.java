package blindlap.paper;

import static blindlap.paper.sheet.SheetFlow.BODY;
import static blindlap.paper.sheet.SheetFlow.SMALL;
import static blindlap.paper.sheet.SheetFlow.WORDS;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.TellingRun;
import blindlap.seal.HelperSchedule;
import blindlap.wording.HandlingWords;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The rows of the helper's sheet: what to fit before every stint, with ticks. Those of a telling
 * run stand by trial and are all of one height, so that the sheet has the same pages whatever was
 * drawn.
 */
final class HelperRows {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final double ROW = 8.2;
  private static final double TICK = 4.6;
  private static final int TICKS = 6;
  private static final double PITCH = 10.8;
  private static final double SWAP = 16;
  private static final double LATE = 19;
  private static final double TRIAL = 11;

  private final SheetFlow sheet;
  private final SheetPen pen;
  private final Plan plan;
  private final HelperSchedule schedule;
  private final @Nullable TellingRun run;
  private final Optional<Schedule> day;
  private final String kind;
  private final double even;

  HelperRows(SheetFlow sheet, Plan plan, HelperSchedule schedule) {
    this.sheet = sheet;
    this.pen = sheet.pen;
    this.plan = plan;
    this.schedule = schedule;
    this.run = plan.telling();
    // What is packed beforehand has no clock times, and words of its own.
    boolean packing = plan.blinding().level() == BlindLevel.PREPARED;
    this.kind = packing ? "packing." : "";
    this.day = packing ? Optional.empty() : Schedule.of(plan);
    this.even = run == null ? 0 : tallest();
  }

  /** The height of the tallest row that any order could have. */
  private double tallest() {
    double tall = 0;
    for (int to = 0; to < plan.setups().size(); to++) {
      tall = Math.max(tall, tall(name(to), way(null, to)));
      for (int from = 0; from < plan.setups().size(); from++) {
        tall = Math.max(tall, tall(name(to), way(from, to)));
      }
    }
    return tall;
  }

  private double nameWidth() {
    return sheet.width() - nameAt() - SWAP - TICKS * PITCH - LATE;
  }

  /** Where the stint's number begins, beside that of its trial. */
  private double stintAt() {
    return run == null ? 0 : TRIAL;
  }

  /** Where the name begins; without a timetable there is no column of clock times. */
  private double nameAt() {
    return stintAt() + (day.isPresent() ? 38 : 23);
  }

  private double ticksAt() {
    return sheet.left() + nameAt() + nameWidth() + SWAP;
  }

  private void heads() {
    double y = sheet.y;
    double base = y + 6.5;
    double left = sheet.left();
    if (run != null) {
      pen.text(left, base, Face.SANS, SMALL, WORDS.say("col.trial"));
    }
    pen.text(left + stintAt(), base, Face.SANS, SMALL, WORDS.say("col.stint"));
    pen.text(left + stintAt() + 12, base, Face.SANS, SMALL, WORDS.say("col.code"));
    if (day.isPresent()) {
      pen.text(left + stintAt() + 23, base, Face.SANS, SMALL, WORDS.say("col.swap.at"));
    }
    pen.text(left + nameAt(), base, Face.SANS, SMALL, WORDS.say(kind + "col.fit"));
    pen.text(ticksAt() - SWAP, base, Face.SANS, SMALL, WORDS.say(kind + "col.swap"));
    for (int i = 0; i < TICKS; i++) {
      pen.paragraph(
          ticksAt() + i * PITCH, y, PITCH - 0.2, Face.SANS, 8.5, WORDS.say(kind + "tick." + i));
    }
    pen.text(sheet.right() - LATE + 2, base, Face.SANS, SMALL, WORDS.say(kind + "col.late"));
    sheet.y += 8.5;
    pen.line(left, sheet.y, sheet.right(), sheet.y, 0.5);
  }

  void write() {
    heads();
    if (plan.laps().warmUp() > 0) {
      row(0, WORDS.say("warm.up"), "", null, schedule.warmUp(), WORDS.say("first.fit"));
    }
    Integer on = plan.laps().warmUp() > 0 ? schedule.warmUp() : null;
    for (HelperSchedule.Fit fit : schedule.fits()) {
      boolean first = fit.stint() == 1 && plan.laps().warmUp() == 0;
      String swap =
          first
              ? WORDS.say("first.fit")
              : WORDS.say(fit.swap() == HelperSchedule.Swap.REAL ? "real" : "dummy");
      row(
          fit.stint(),
          String.valueOf(fit.stint()),
          String.valueOf(fit.code()),
          on,
          fit.fitted(),
          swap);
      on = fit.fitted();
    }
    sheet.y += 3;
  }

  private String at(int stint) {
    return day.map(
            s -> CLOCK.format((stint == 0 ? s.blocks().get(0) : s.stints().get(stint - 1)).from()))
        .orElse("");
  }

  private List<String> name(int setup) {
    return pen.lines(nameWidth() - 9, Face.STRONG, BODY, plan.setups().get(setup).name());
  }

  private static double tall(List<String> name, List<String> way) {
    return Math.max(ROW, name.size() * SheetPen.leading(BODY) + 2.5)
        + way.size() * SheetPen.leading(SMALL);
  }

  /** Rows from this one on that stand on one page: of a trial all. */
  private int together(int stint) {
    return run == null || stint == 0 || run.place(stint) > 1 ? 1 : run.task().laps();
  }

  private void row(
      int stint, String number, String code, @Nullable Integer on, int fitted, String work) {
    List<String> name = name(fitted);
    List<String> way = way(on, fitted);
    double tall = run == null ? tall(name, way) : even;
    if (sheet.need(tall * together(stint))) {
      heads();
    }
    double base = sheet.y + ROW - 2.8;
    double left = sheet.left();
    trial(stint, base);
    pen.text(left + (stint == 0 ? 0 : stintAt()), base, Face.STRONG, BODY, number);
    pen.text(left + stintAt() + 12, base, Face.SANS, BODY, code);
    pen.text(left + stintAt() + 23, base, Face.SANS, BODY, at(stint));
    if (plan.oneSetting() == null) { // a level is a place along its setting and has no mark
      pen.mark(fitted, left + nameAt() + 2, base - 1.3, 1.7);
    }
    double line = base;
    for (String words : name) {
      pen.text(left + nameAt() + 7, line, Face.STRONG, BODY, words);
      line += SheetPen.leading(BODY);
    }
    for (String words : way) {
      pen.text(left + nameAt() + 7, line, Face.SANS, SMALL, words);
      line += SheetPen.leading(SMALL);
    }
    pen.text(ticksAt() - SWAP, base, Face.SANS, BODY, kind.isEmpty() ? work : "");
    for (int i = 0; i < TICKS; i++) {
      pen.box(ticksAt() + i * PITCH + 1, base - TICK + 1, TICK, TICK);
    }
    pen.line(sheet.right() - LATE + 2, base, sheet.right(), base, 0.2);
    sheet.y += tall;
    pen.line(left, sheet.y, sheet.right(), sheet.y, ends(stint) ? 0.5 : 0.1);
  }

  private boolean ends(int stint) {
    return run != null && (stint == 0 || run.place(stint) == run.task().laps());
  }

  /** The number of the trial, beside its first lap. */
  private void trial(int stint, double base) {
    if (run == null || stint == 0) {
      return;
    }
    sheet.stands(run.trial(stint));
    if (run.place(stint) == 1) {
      pen.text(sheet.left(), base, Face.STRONG, BODY, String.valueOf(run.trial(stint)));
    }
  }

  /**
   * How a level is set from the one that is on, in as many lines as there is room for; of a telling
   * run across the row, below its ticks.
   */
  private List<String> way(@Nullable Integer on, int fitted) {
    String words = HandlingWords.row(plan, on, fitted);
    double room = run == null ? nameWidth() - 9 : sheet.width() - nameAt() - 7;
    return words.isEmpty() ? List.of() : pen.lines(room, Face.SANS, SMALL, words);
  }
}
