package blindlap.paper.ride;

import blindlap.paper.sheet.SheetFlow;
import blindlap.paper.sheet.SheetFormat;
import blindlap.paper.sheet.SheetPen;
import blindlap.paper.sheet.SheetPen.Face;
import blindlap.plan.BlindLevel;
import blindlap.plan.Covariate;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.plan.TellingRun;
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
  public static final double SCALE = ScoreParts.SCALE;

  private static final double LEFT = 60;
  private static final double TITLE = ScoreParts.TITLE;
  private static final double BOX = ScoreParts.BOX;

  private final Plan plan;
  private final Day day;
  private final ScoreParts parts;

  private RiderSheets(SheetPen pen, Day day) {
    super(pen, head("rider.head", day.plan()), WORDS.say("rider.how") + " " + CAUTIONS.say("ride"));
    this.day = day;
    this.plan = day.plan();
    this.parts = new ScoreParts(this);
  }

  /** The sheets as PDF. */
  public static byte[] pdf(Day day, SheetFormat format) {
    TellingRun run = day.plan().telling();
    if (run != null) {
      return TrialSheets.pdf(day, run, format);
    }
    try (SheetPen pen = new SheetPen(format)) {
      new RiderSheets(pen, day).write();
      return pen.bytes();
    }
  }

  private void write() {
    page();
    boolean first = true;
    for (int stint = 1; stint <= plan.stints(); stint++) {
      for (int lap = plan.laps().settling() + 1; lap <= plan.laps().perStint(); lap++) {
        LapId id = new LapId(stint, lap);
        List<ScoreParts.Asked> asked = new ArrayList<>();
        if (lap == plan.laps().settling() + 1) {
          asked.addAll(beforeHandOver());
        }
        asked.addAll(asked(lap == plan.laps().perStint()));
        double height = Math.max(96, asked.stream().mapToDouble(ScoreParts.Asked::height).sum());
        if (!first && !need(height + 6)) {
          pen.dashed(left(), y, right());
          y += 6;
        }
        first = false;
        block(id, asked);
      }
    }
  }

  private void block(LapId id, List<ScoreParts.Asked> asked) {
    double begun = y;
    int page = pen.pages();
    double below = margin(id);
    for (ScoreParts.Asked each : asked) {
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

  private List<ScoreParts.Asked> asked(boolean guess) {
    List<ScoreParts.Asked> all = new ArrayList<>(parts.measures(plan));
    if (guess && plan.blinding().guesses()) {
      List<String> setups = new ArrayList<>(answers());
      setups.add(WORDS.say("dont.know"));
      all.add(parts.boxes(WORDS.say("guess"), setups));
      all.add(
          parts.boxes(
              WORDS.say("sure"),
              List.of(WORDS.say("hunch"), WORDS.say("fairly.sure"), WORDS.say("certain"))));
      all.add(parts.written(WORDS.say("cue"), SCALE));
    }
    all.add(parts.written(WORDS.say("note"), SCALE));
    return all;
  }

  /** What a guess can be: a setup, or on a steps day the end that the level is nearer to. */
  private List<String> answers() {
    return plan.steps() == null
        ? plan.setups().stream().map(Setup::name).toList()
        : Arrays.stream(StepsDay.End.values()).map(end -> WORDS.say("guess.end." + end)).toList();
  }

  /** What the rider says of covariates; the starter's stand on the starter's sheet. */
  private List<ScoreParts.Asked> beforeHandOver() {
    return plan.covariates().stream()
        .filter(c -> c.by() == Covariate.By.RIDER)
        .map(c -> parts.written(WORDS.say("covariate.before", c.name(), c.unit()), 28))
        .toList();
  }
}
