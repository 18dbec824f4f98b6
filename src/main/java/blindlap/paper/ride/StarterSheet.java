package blindlap.paper.ride;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.session.day.Day;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The starter's sheet: one row a lap for times and void events. It depends on no order. */
public final class StarterSheet extends SheetFlow {
  private static final double ROW = 9;
  private static final double LEAST_ROW = 7.6;
  private static final double COVARIATE = 24;
  private static final double TRIAL = 12;

  private final Day day;
  private final Plan plan;
  private final List<String> times;
  private final List<Covariate> covariates;
  private final @Nullable TellingRun run;
  private double row = ROW;

  private StarterSheet(SheetPen pen, Day day) {
    super(
        pen,
        head("starter.head", day.plan()),
        WORDS.say(day.plan().telling() == null ? "starter.how" : "starter.how.trials")
            + " "
            + CAUTIONS.say("ride"),
        day.plan().telling());
    this.run = day.plan().telling();
    this.day = day;
    this.plan = day.plan();
    this.times =
        plan.askedOnTheDay().stream()
            .filter(measure -> measure.kind().timed())
            .map(Measure::name)
            .toList();
    this.covariates = plan.covariates().stream().filter(c -> c.by() != Covariate.By.RIDER).toList();
  }

  /** The sheet as PDF. */
  public static byte[] pdf(Day day, SheetFormat format) {
    try (SheetPen pen = new SheetPen(format)) {
      new StarterSheet(pen, day).write();
      return pen.bytes();
    }
  }

  private void write() {
    page();
    y += pen.paragraph(left(), y, width(), Face.SANS, BODY, WORDS.say("starter.who")) + 7;
    pen.line(left(), y, left() + 70, y, 0.25);
    pen.box(left() + 80, y - 5, 5, 5);
    pen.text(left() + 87, y - 1, Face.SANS, BODY, WORDS.say("starter.knows"));
    y += 6;
    recorded();
    columns();
    double even = (bottom() - y) / plan.lapsOfDay();
    if (even >= LEAST_ROW) {
      row = Math.min(ROW, even - 0.01); // lower rows rather than a second page with two of them
    }
    for (int lap = 1; lap <= plan.lapsOfDay(); lap++) {
      if (need(row * together(lap))) {
        columns();
      }
      row(lap);
    }
    finish();
  }

  /** Laps from this one on that stand on one page: of a trial all. */
  private int together(int lap) {
    TellingRun trials = run;
    return trials == null || trials.place(lap) > 1 ? 1 : trials.task().laps();
  }

  /** Where the number of the lap begins: of a telling run that of its trial stands before it. */
  private double lapAt() {
    return left() + (run == null ? 0 : TRIAL);
  }

  /** Nothing to write for what a recording gives, which is said so that nobody misses a column. */
  private void recorded() {
    List<String> names =
        plan.measures().stream()
            .filter(m -> m.kind().timed() && m.recorded() && !m.asked())
            .map(Measure::name)
            .toList();
    if (!names.isEmpty()) {
      String words = WORDS.say("starter.recorded", String.join(", ", names));
      y += pen.paragraph(left(), y, width(), Face.SANS, BODY, words) + 3;
    }
  }

  private static String title(Covariate covariate) {
    return WORDS.say("covariate", covariate.name(), covariate.unit());
  }

  private double timeWidth() {
    return Math.min(34, (72.0 - 12 * covariates.size()) / Math.max(1, times.size()));
  }

  private void columns() {
    double x = lapAt() + 52;
    double tall = SheetPen.leading(SMALL);
    for (String time : times) {
      tall = Math.max(tall, pen.height(timeWidth() - 2, Face.SANS, SMALL, time));
    }
    for (Covariate covariate : covariates) {
      tall = Math.max(tall, pen.height(COVARIATE - 2, Face.SANS, SMALL, title(covariate)));
    }
    double base = y + tall - 1;
    if (run != null) {
      pen.text(left(), base, Face.SANS, SMALL, WORDS.say("col.trial"));
    }
    pen.text(lapAt(), base, Face.SANS, SMALL, WORDS.say("col.lap"));
    pen.text(lapAt() + 12, base, Face.SANS, SMALL, WORDS.say("col.code"));
    pen.text(lapAt() + 27, base, Face.SANS, SMALL, WORDS.say("col.clock"));
    for (String time : times) {
      pen.paragraph(x, y, timeWidth() - 2, Face.SANS, SMALL, time);
      x += timeWidth();
    }
    for (Covariate covariate : covariates) {
      pen.paragraph(x, y, COVARIATE - 2, Face.SANS, SMALL, title(covariate));
      x += COVARIATE;
    }
    pen.text(x, base, Face.SANS, SMALL, WORDS.say("col.void"));
    y += tall + 1.5;
    pen.line(left(), y, right(), y, 0.5);
  }

  private void row(int lap) {
    int per = plan.laps().perStint();
    int stint = (lap - 1) / per + 1;
    boolean settling = (lap - 1) % per < plan.laps().settling();
    double base = y + row - 2.5;
    trial(lap, base);
    pen.text(lapAt(), base, Face.STRONG, BODY, String.valueOf(lap));
    pen.text(lapAt() + 12, base, Face.SANS, BODY, String.valueOf(day.code(stint)));
    pen.line(lapAt() + 27, base, lapAt() + 48, base, 0.2);
    double x = lapAt() + 52;
    for (int i = 0; i < times.size(); i++) {
      if (!settling) {
        pen.text(x + timeWidth() * 0.3, base, Face.SANS, BODY, ":");
        pen.text(x + timeWidth() * 0.66, base, Face.SANS, BODY, ".");
        pen.line(x, base, x + timeWidth() - 4, base, 0.2);
      }
      x += timeWidth();
    }
    boolean first = (lap - 1) % per == plan.laps().settling();
    for (Covariate covariate : covariates) {
      if (!settling && (covariate.perLap() || first)) {
        pen.line(x, base, x + COVARIATE - 4, base, 0.2);
      }
      x += COVARIATE;
    }
    if (settling) {
      pen.text(lapAt() + 52, base, Face.SANS, SMALL, WORDS.say("settling"));
    }
    pen.box(x, base - 4, 4.5, 4.5);
    pen.line(x + 7, base, right(), base, 0.2);
    y += row;
    boolean ends = run != null && together(lap + 1) > 1;
    pen.line(left(), y, right(), y, ends ? 0.4 : 0.1);
  }

  /** The number of the trial, beside its first lap. */
  private void trial(int lap, double base) {
    TellingRun trials = run;
    if (trials == null) {
      return;
    }
    stands(trials.trial(lap));
    if (trials.place(lap) == 1) {
      pen.text(left(), base, Face.STRONG, BODY, String.valueOf(trials.trial(lap)));
    }
  }
}
