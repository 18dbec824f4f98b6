package blindlap.paper.ride;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.Day;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What somebody scores later from video or traces, by code. Codes are numbers drawn at random, and
 * they stand by size: neither the order of riding nor a setup is on this sheet.
 */
public final class ByCodeSheet extends SheetFlow {
  private static final double ROW = 9;
  private static final double CODE = 34;

  private final Plan plan;
  private final Day day;
  private final String assessor;
  private final List<Measure> measures;

  private ByCodeSheet(SheetPen pen, Day day, String assessor) {
    super(
        pen,
        WORDS.say("code.head", day.plan().trail(), day.plan().day()),
        WORDS.say("code.how") + " " + CAUTIONS.say("trust"));
    this.plan = day.plan();
    this.day = day;
    this.assessor = assessor;
    this.measures = plan.scoredBy(assessor);
  }

  /** The sheet of one assessor as PDF. */
  public static byte[] pdf(Day day, String assessor, SheetFormat format) {
    try (SheetPen pen = new SheetPen(format)) {
      new ByCodeSheet(pen, day, assessor).write();
      return pen.bytes();
    }
  }

  private void write() {
    page();
    y += pen.paragraph(left(), y, width(), Face.SANS, BODY, WORDS.say("code.who", assessor)) + 7;
    pen.line(left(), y, left() + 70, y, 0.25);
    pen.text(left() + 80, y - 1, Face.SANS, BODY, WORDS.say("code.knows"));
    double after = left() + 82 + pen.width(Face.SANS, BODY, WORDS.say("code.knows"));
    for (String answer : List.of("code.no", "code.yes")) {
      pen.box(after, y - 5, 5, 5);
      pen.text(after + 7, y - 1, Face.SANS, BODY, WORDS.say(answer));
      after += 20;
    }
    y += 6;
    scales();
    columns();
    List<Integer> stints = new ArrayList<>();
    IntStream.rangeClosed(1, plan.stints()).forEach(stints::add);
    stints.sort(Comparator.comparingInt(day::code));
    for (int stint : stints) {
      for (int lap = plan.laps().settling() + 1; lap <= plan.laps().perStint(); lap++) {
        if (need(ROW)) {
          columns();
        }
        row(day.code(stint), lap - plan.laps().settling());
      }
    }
  }

  /** What the ends of a scale mean, and what counts. */
  private void scales() {
    for (Measure measure : measures) {
      List<String> words = new ArrayList<>();
      if (!measure.lowWords().isBlank() || !measure.highWords().isBlank()) {
        words.add(
            WORDS.say("code.scale." + measure.kind(), measure.lowWords(), measure.highWords()));
      }
      if (!measure.definition().isBlank()) {
        words.add(measure.definition());
      }
      if (!words.isEmpty()) {
        String line = WORDS.say("setting", measure.name(), String.join(". ", words));
        y += pen.paragraph(left(), y, width(), Face.SANS, BODY, line) + 1;
      }
    }
    y += 2;
  }

  private double column() {
    return (width() - CODE) / (measures.size() + 1);
  }

  private void columns() {
    double tall = SheetPen.leading(SMALL);
    for (Measure measure : measures) {
      tall = Math.max(tall, pen.height(column() - 3, Face.SANS, SMALL, title(measure)));
    }
    pen.text(left(), y + tall - 1, Face.SANS, SMALL, WORDS.say("col.code"));
    double x = left() + CODE;
    for (Measure measure : measures) {
      pen.paragraph(x, y, column() - 3, Face.SANS, SMALL, title(measure));
      x += column();
    }
    pen.text(x, y + tall - 1, Face.SANS, SMALL, WORDS.say("note"));
    y += tall + 1.5;
    pen.line(left(), y, right(), y, 0.5);
  }

  private static String title(Measure measure) {
    return measure.unit().isBlank()
        ? measure.name()
        : WORDS.say("covariate", measure.name(), measure.unit());
  }

  private void row(int code, int lap) {
    double base = y + ROW - 2.5;
    String words =
        plan.laps().scored() == 1
            ? String.valueOf(code)
            : WORDS.say("code.lap", code, lap, plan.laps().scored());
    pen.text(left(), base, Face.STRONG, BODY, words);
    double x = left() + CODE;
    for (int i = 0; i <= measures.size(); i++) {
      pen.line(x, base, x + column() - 4, base, 0.2);
      x += column();
    }
    y += ROW;
    pen.line(left(), y, right(), y, 0.1);
  }
}
