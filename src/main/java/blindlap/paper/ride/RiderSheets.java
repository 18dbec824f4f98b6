package blindlap.paper.ride;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.BlindLevel;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.session.day.VoidEvent;
import blindlap.wording.day.RideWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Score sheets for the rider, one for every scored lap, with line scales of exactly 100 mm. They
 * hold the codes and nothing that depends on the order.
 */
public final class RiderSheets extends SheetFlow {
  /** Length of a printed line scale in millimetres; keyed in by ruler. */
  public static final double SCALE = 100;

  private static final double LEFT = 60;
  private static final double TITLE = 11;
  private static final double BOX = 5;

  private final Plan plan;
  private final Day day;

  private RiderSheets(SheetPen pen, Day day) {
    super(pen, head("rider.head", day.plan()), WORDS.say("rider.how") + " " + CAUTIONS.say("ride"));
    this.day = day;
    this.plan = day.plan();
  }

  /** The sheets as PDF. */
  public static byte[] pdf(Day day, SheetFormat format) {
    try (SheetPen pen = new SheetPen(format)) {
      new RiderSheets(pen, day).write();
      return pen.bytes();
    }
  }

  /** Something asked: its height, and how it is drawn at a place. */
  private record Asked(double height, java.util.function.DoubleConsumer drawing) {}

  private double column() {
    return right() - SCALE;
  }

  private void write() {
    page();
    boolean first = true;
    for (int stint = 1; stint <= plan.stints(); stint++) {
      for (int lap = plan.laps().settling() + 1; lap <= plan.laps().perStint(); lap++) {
        LapId id = new LapId(stint, lap);
        List<Asked> asked = new ArrayList<>();
        if (lap == plan.laps().settling() + 1) {
          asked.addAll(beforeHandOver());
        }
        asked.addAll(asked(lap == plan.laps().perStint()));
        double height = Math.max(96, asked.stream().mapToDouble(Asked::height).sum());
        if (!first && !need(height + 6)) {
          pen.dashed(left(), y, right());
          y += 6;
        }
        first = false;
        block(id, asked);
      }
    }
  }

  private void block(LapId id, List<Asked> asked) {
    double begun = y;
    int page = pen.pages();
    double below = margin(id);
    for (Asked each : asked) {
      if (need(each.height())) {
        pen.text(left(), y + 4, Face.STRONG, TITLE, heading(id));
        pen.text(left(), y + 10, Face.SANS, BODY, WORDS.say("continued"));
      }
      each.drawing().accept(y);
      y += each.height();
    }
    if (page == pen.pages()) {
      y = Math.max(y, Math.max(below, begun));
    }
  }

  private String heading(LapId id) {
    int per = plan.laps().perStint();
    String stint = WORDS.say("stint", id.stint(), plan.stints());
    String code = WORDS.say("code", day.code(id.stint()));
    return (per == 1 ? stint : stint + ", " + WORDS.say("lap", id.lap(), per)) + ", " + code;
  }

  /** Code, hand-over tick and void reasons at the left; answers where they end. */
  private double margin(LapId id) {
    int per = plan.laps().perStint();
    String stint = WORDS.say("stint", id.stint(), plan.stints());
    pen.text(left(), y + 4, Face.STRONG, 13, stint);
    if (per > 1) {
      pen.text(left(), y + 10, Face.SANS, BODY, WORDS.say("lap", id.lap(), per));
    }
    pen.text(left() - 0.5, y + 33, Face.BOLD, 78, String.valueOf(day.code(id.stint())));
    double at = y + 37;
    at += pen.paragraph(left(), at, LEFT, Face.SANS, SMALL, RideWords.plate(plan.level())) + 2;
    boolean helped = plan.blinding().level() == BlindLevel.HELPER;
    at = tick(at, WORDS.say(helped ? "handed.over" : "mounted.safe"));
    at += 2;
    at = tick(at, WORDS.say("void"));
    StringBuilder events = new StringBuilder();
    for (VoidEvent event : VoidEvent.values()) {
      events.append(events.isEmpty() ? "" : " · ").append(event.text());
    }
    at += pen.paragraph(left(), at, LEFT, Face.SANS, SMALL, events.toString());
    at += pen.paragraph(left(), at, LEFT, Face.SANS, SMALL, WORDS.say("void.never")) + 3;
    at += pen.paragraph(left(), at, LEFT, Face.SANS, SMALL, WORDS.say("conditions")) + 6;
    pen.line(left(), at, left() + LEFT, at, 0.25);
    return at + 3;
  }

  private double tick(double at, String words) {
    pen.box(left(), at, BOX, BOX);
    double height =
        pen.paragraph(left() + BOX + 2, at + 0.4, LEFT - BOX - 2, Face.STRONG, SMALL, words);
    return at + Math.max(BOX, height) + 1.5;
  }

  private List<Asked> asked(boolean guess) {
    List<Asked> all = new ArrayList<>();
    for (Measure measure : plan.askedOnTheDay()) {
      all.addAll(
          switch (measure.kind()) {
            case LINE_SCALE -> List.of(line(measure));
            case CATEGORY_SCALE -> List.of(category(measure));
            case COUNT -> List.of(written(measure.name(), 28));
            case LAP_TIME, SECTOR_TIME -> List.of(); // times go on the starter's sheet
          });
    }
    if (guess && plan.blinding().guesses()) {
      List<String> setups = new ArrayList<>(answers());
      setups.add(WORDS.say("dont.know"));
      all.add(boxes(WORDS.say("guess"), setups));
      all.add(
          boxes(
              WORDS.say("sure"),
              List.of(WORDS.say("hunch"), WORDS.say("fairly.sure"), WORDS.say("certain"))));
      all.add(written(WORDS.say("cue"), SCALE));
    }
    all.add(written(WORDS.say("note"), SCALE));
    return all;
  }

  /** What a guess can be: a setup, or on a steps day the end that the level is nearer to. */
  private List<String> answers() {
    return plan.steps() == null
        ? plan.setups().stream().map(Setup::name).toList()
        : Arrays.stream(StepsDay.End.values()).map(end -> WORDS.say("guess.end." + end)).toList();
  }

  /** What the rider says of covariates; the starter's stand on the starter's sheet. */
  private List<Asked> beforeHandOver() {
    return plan.covariates().stream()
        .filter(c -> c.by() == Covariate.By.RIDER)
        .map(c -> written(WORDS.say("covariate.before", c.name(), c.unit()), 28))
        .toList();
  }

  private double title(double at, String words) {
    return pen.paragraph(column(), at, SCALE, Face.STRONG, TITLE, words);
  }

  private double titleHeight(String words) {
    return pen.height(SCALE, Face.STRONG, TITLE, words);
  }

  private Asked line(Measure measure) {
    double head = titleHeight(measure.name());
    double half = SCALE / 2 - 2;
    double ends =
        Math.max(
            pen.height(half, Face.SANS, SMALL, measure.lowWords()),
            pen.height(half, Face.SANS, SMALL, measure.highWords()));
    return new Asked(
        head + 7.5 + ends + 2.5,
        at -> {
          title(at, measure.name());
          double line = at + head + 5;
          pen.line(column(), line, right(), line, 0.6);
          pen.paragraph(column(), line + 2, half, Face.SANS, SMALL, measure.lowWords());
          double below = line + 2;
          for (String words : pen.lines(half, Face.SANS, SMALL, measure.highWords())) {
            pen.textTo(right(), below + SMALL * 25.4 / 72, Face.SANS, SMALL, words);
            below += SheetPen.leading(SMALL);
          }
        });
  }

  private Asked category(Measure measure) {
    String words =
        measure.name() + ": " + WORDS.say("category", measure.lowWords(), measure.highWords());
    double head = titleHeight(words);
    return new Asked(
        head + 11,
        at -> {
          title(at, words);
          for (int i = 1; i <= 9; i++) {
            double x = column() + (i - 1) * SCALE / 9;
            pen.box(x, at + head + 1, BOX + 2, BOX + 2);
            pen.text(x + 2.4, at + head + 6, Face.SANS, BODY, String.valueOf(i), 0.45);
          }
        });
  }

  private Asked written(String words, double room) {
    double head = titleHeight(words);
    return new Asked(
        head + 8.5,
        at -> {
          title(at, words);
          pen.line(column(), at + head + 6, column() + room, at + head + 6, 0.25);
        });
  }

  private Asked boxes(String words, List<String> options) {
    double head = titleHeight(words);
    int columns = 3;
    double cell = SCALE / columns;
    double room = cell - BOX - 4;
    double row =
        options.stream().mapToDouble(o -> pen.height(room, Face.SANS, BODY, o)).max().orElse(BOX);
    double pitch = Math.max(BOX, row) + 2;
    int rows = (options.size() + columns - 1) / columns;
    return new Asked(
        head + rows * pitch + 2,
        at -> {
          title(at, words);
          for (int i = 0; i < options.size(); i++) {
            double x = column() + i % columns * cell;
            double top = at + head + 1 + i / columns * pitch;
            pen.box(x, top, BOX, BOX);
            pen.paragraph(x + BOX + 2, top + 0.2, room, Face.SANS, BODY, options.get(i));
          }
        });
  }
}
