package blindlap.paper.ride;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.session.day.Day;
import blindlap.session.day.VoidEvent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The rider's score sheets of a telling run: a box for every trial with the codes of its laps, the
 * task's question with a box to tick under each lap that it can name, sureness beside it, a void
 * and a note. A trial stands on one page. Nothing here depends on the order.
 */
final class TrialSheets extends SheetFlow {
  private static final double NAME = 44;
  private static final double LAPS = 15;
  private static final double NAMED = 8;
  private static final double ANSWER = 7;
  private static final double SURE = 6.8;
  private static final double WRITTEN = 7.6;
  private static final double GAP = 3;
  private static final double LAP_HEAD = 7;
  private static final double CODE = 24;
  private static final double BOX = ScoreParts.BOX;

  private final Day day;
  private final Plan plan;
  private final TellingRun run;
  private final ScoreParts parts;

  private TrialSheets(SheetPen pen, Day day, TellingRun run) {
    super(
        pen,
        head("rider.head", day.plan()),
        WORDS.say("trial.how", events()) + " " + CAUTIONS.say("ride"),
        run);
    this.day = day;
    this.plan = day.plan();
    this.run = run;
    this.parts = new ScoreParts(this);
  }

  static byte[] pdf(Day day, TellingRun run, SheetFormat format) {
    try (SheetPen pen = new SheetPen(format)) {
      new TrialSheets(pen, day, run).write();
      return pen.bytes();
    }
  }

  private static String events() {
    return Arrays.stream(VoidEvent.values()).map(VoidEvent::text).collect(Collectors.joining(", "));
  }

  private void write() {
    page();
    for (int trial = 1; trial <= run.trials(); trial++) {
      trial(trial);
    }
    finish();
  }

  /** What is asked of every trial. */
  private String question() {
    return WORDS.say("trial.question." + run.task(), run.attribute());
  }

  private double column() {
    return left() + NAME;
  }

  private double lapWidth() {
    return (right() - column()) / run.task().laps();
  }

  private void trial(int trial) {
    List<ScoreParts.Asked> scored = scored(trial);
    double asked = pen.height(NAME - 4, Face.STRONG, BODY, question());
    // The question stands beside its boxes: below what is scored, else from the trial's name on.
    double above = scored.isEmpty() ? NAMED - LAPS : 0;
    double answers = Math.max(above + asked, ANSWER + SURE);
    need(
        LAPS
            + scored.stream().mapToDouble(ScoreParts.Asked::height).sum()
            + answers
            + WRITTEN
            + GAP);
    stands(trial);
    pen.text(left(), y + 4.5, Face.STRONG, 13, WORDS.say("trials.row", trial, run.trials()));
    laps(trial);
    y += LAPS;
    for (ScoreParts.Asked each : scored) {
      need(each.height()); // only what no page could hold whole is parted
      stands(trial);
      each.drawing().accept(y);
      y += each.height();
    }
    need(answers + WRITTEN + GAP);
    pen.paragraph(left(), y + above, NAME - 4, Face.STRONG, BODY, question());
    answer(y);
    sure(y + ANSWER);
    y += answers;
    written();
    y += GAP;
    pen.line(left(), y - GAP / 2, right(), y - GAP / 2, 0.5);
  }

  private void laps(int trial) {
    for (int place = 1; place <= run.task().laps(); place++) {
      int stint = run.firstStint(trial) + place - 1;
      double x = column() + (place - 1) * lapWidth();
      String key = place < run.task().firstNamed() ? "trial.lap.reference" : "trial.lap";
      pen.text(x, y + 3.6, Face.SANS, SMALL, WORDS.say(key, place, stint));
      pen.text(x, y + 12.6, Face.BOLD, CODE, String.valueOf(day.code(stint)));
      pen.box(x + 19, y + 7.4, BOX, BOX);
      pen.paragraph(x + 26, y + 6.6, lapWidth() - 27, Face.SANS, SMALL, WORDS.say("trial.safe"));
    }
  }

  /** What is scored of every lap, under the lap's name. */
  private List<ScoreParts.Asked> scored(int trial) {
    List<ScoreParts.Asked> all = new ArrayList<>();
    List<ScoreParts.Asked> measures = parts.measures(plan);
    for (int place = 1; place <= run.task().laps() && !measures.isEmpty(); place++) {
      int code = day.code(run.firstStint(trial) + place - 1);
      String head = WORDS.say("trial.lap.code", place, code);
      all.add(
          new ScoreParts.Asked(LAP_HEAD, at -> pen.text(left(), at + 5, Face.STRONG, BODY, head)));
      all.addAll(measures);
    }
    return all;
  }

  /** A box under every lap that can be named. */
  private void answer(double top) {
    for (int place = run.task().firstNamed(); place <= run.task().laps(); place++) {
      double x = column() + (place - 1) * lapWidth();
      tick(x, top, WORDS.say("trial.pick." + run.task(), place));
    }
  }

  private void sure(double top) {
    pen.text(column(), top + 3.9, Face.SANS, BODY, WORDS.say("sure"));
    double pitch = (right() - column() - 24) / 3;
    List<String> all = List.of("hunch", "fairly.sure", "certain");
    for (int i = 0; i < all.size(); i++) {
      tick(column() + 24 + i * pitch, top, WORDS.say(all.get(i)));
    }
  }

  private void tick(double x, double top, String words) {
    pen.box(x, top, BOX, BOX);
    pen.text(x + BOX + 2, top + 3.9, Face.SANS, BODY, words);
  }

  private void written() {
    pen.box(left(), y + 1, BOX, BOX);
    double at = left() + BOX + 2;
    String words = WORDS.say("trial.void");
    pen.text(at, y + 4.9, Face.SANS, SMALL, words);
    at += pen.width(Face.SANS, SMALL, words) + 2;
    double note = column() + 62;
    pen.line(at, y + 5.5, note - 4, y + 5.5, 0.25);
    pen.text(note, y + 4.9, Face.SANS, SMALL, WORDS.say("note"));
    double after = note + pen.width(Face.SANS, SMALL, WORDS.say("note")) + 2;
    pen.line(after, y + 5.5, right(), y + 5.5, 0.25);
    y += WRITTEN;
  }
}
