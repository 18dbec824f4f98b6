package blindlap.paper;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.TellingRun;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The day against the clock, for everybody: it depends on no order. */
public final class TimetableSheet extends SheetFlow {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final double ROW = 7.2;

  private final Plan plan;

  private TimetableSheet(SheetPen pen, Plan plan) {
    super(pen, head("timetable.head", plan), cautions(plan.level()), plan.telling());
    this.plan = plan;
  }

  /** Where the rider knows what is on, no blind can break. */
  private static String cautions(BlindLevel level) {
    String ride = CAUTIONS.say("ride");
    return switch (level) {
      case OPEN, DRAWN -> ride;
      case MASKED -> ride + " " + CAUTIONS.say("emergency.labels");
      case PREPARED, HELPER -> ride + " " + CAUTIONS.say("emergency");
    };
  }

  /** The sheet as PDF; says so where no timetable was made. */
  public static byte[] pdf(Plan plan, SheetFormat format) {
    try (SheetPen pen = new SheetPen(format)) {
      new TimetableSheet(pen, plan).write();
      return pen.bytes();
    }
  }

  private void write() {
    page();
    Optional<Schedule> found = Schedule.of(plan);
    if (found.isEmpty()) {
      pen.paragraph(
          left(),
          y,
          width(),
          Face.SANS,
          BODY,
          WORDS.say(plan.level().blind() ? "timetable.none" : "timetable.none.alone"));
      finish();
      return;
    }
    Schedule schedule = found.get();
    String end =
        WORDS.say("timetable.end", CLOCK.format(schedule.end()), CLOCK.format(schedule.limit()));
    y += pen.paragraph(left(), y, width(), Face.SANS, BODY, end) + 4;
    columns();
    for (Schedule.Block block : rows(schedule)) {
      if (need(ROW)) {
        columns();
      }
      row(block);
    }
    finish();
  }

  /** A row for every block of time; the laps of a trial are one, from its first to its answer. */
  private List<Schedule.Block> rows(Schedule schedule) {
    TellingRun run = plan.telling();
    if (run == null) {
      return schedule.blocks();
    }
    List<Schedule.Block> rows = new ArrayList<>();
    for (Schedule.Block block : schedule.blocks()) {
      boolean goesOn = block.kind() == Schedule.Kind.STINT && run.place(block.stint()) > 1;
      if (goesOn) {
        Schedule.Block begun = rows.remove(rows.size() - 1);
        rows.add(
            new Schedule.Block(
                begun.kind(), begun.stint(), begun.from(), begun.ride(), block.to()));
      } else {
        rows.add(block);
      }
    }
    return rows;
  }

  private String what(Schedule.Block block) {
    TellingRun run = plan.telling();
    if (block.kind() != Schedule.Kind.STINT) {
      return WORDS.say("block." + block.kind());
    }
    if (run == null) {
      return WORDS.say("stint", block.stint(), plan.stints());
    }
    stands(run.trial(block.stint()));
    return WORDS.say("trials.row", run.trial(block.stint()), run.trials());
  }

  private void columns() {
    String[] heads = {"col.what", "col.from", "col.ride", "col.to", "col.really"};
    for (int i = 0; i < heads.length; i++) {
      pen.text(x(i), y + 3, Face.SANS, SMALL, WORDS.say(heads[i]));
    }
    y += 5;
    pen.line(left(), y, right(), y, 0.5);
  }

  private double x(int column) {
    return left() + new double[] {0, 62, 87, 112, 137}[column];
  }

  private void row(Schedule.Block block) {
    double base = y + ROW - 2;
    String what = what(block);
    boolean rides = !block.ride().equals(block.from()) && !block.ride().equals(block.to());
    pen.text(x(0), base, Face.STRONG, BODY, what);
    pen.text(x(1), base, Face.SANS, BODY, clock(block.from()));
    pen.text(x(2), base, Face.SANS, BODY, rides ? clock(block.ride()) : "");
    pen.text(x(3), base, Face.SANS, BODY, clock(block.to()));
    pen.line(x(4), base, right(), base, 0.2);
    y += ROW;
    pen.line(left(), y, right(), y, 0.1);
  }

  private static String clock(ZonedDateTime at) {
    return CLOCK.format(at);
  }
}
