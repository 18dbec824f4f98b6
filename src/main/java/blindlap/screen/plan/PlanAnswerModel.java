package blindlap.screen.plan;

import blindlap.desk.PlanPreview;
import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.DayDetail;
import blindlap.plan.DayLeft;
import blindlap.plan.DaySimulation;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plot.surface.Drawing;
import blindlap.screen.part.Background;
import blindlap.wording.AnswerWords;
import blindlap.wording.CovariateWords;
import blindlap.wording.MeasureAnswers;
import blindlap.wording.PayWords;
import blindlap.wording.PlainAnswer;
import blindlap.wording.StintTakes;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Trouble;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * What the day can show, live: by formula at once, then better and better by simulated days off the
 * interface thread. Turning a knob again drops what is still under way.
 */
public final class PlanAnswerModel {
  private static final long SEED = 20_251_101L;
  private static final int CHUNK = 100;

  /** Simulate as many days as docs/performance.md promises to be quick. */
  public static final int USUAL = -1;

  private final DayAnswers answers;
  private final Supplier<EarlierNoise> earlier;
  private final Background background;
  private final PlanWaiting waiting;
  private final AtomicLong turn = new AtomicLong();
  private final ReadOnlyObjectWrapper<Shown> shown = new ReadOnlyObjectWrapper<>(Shown.NOTHING);
  private final ReadOnlyStringWrapper progress = new ReadOnlyStringWrapper("");
  private int daysWanted = USUAL;
  private Optional<DayAnswer> latest = Optional.empty();
  private Runnable again = () -> {};

  /**
   * Everything the page says about the day.
   *
   * @param sentence the answer
   * @param lead what it means
   * @param swaps swaps and handlings
   * @param statistician orders, p and what else needs statistics
   * @param simulated the answer by simulation; empty while there is none
   * @param heads heads of the columns of the odds
   * @param odds a row per true difference: its words, then days in 100
   * @param oddsLines the same in sentences, where there is no room for a table
   * @param oddsSource how the odds were found
   * @param oddsPlain the same without statistics
   * @param trials what other numbers of trials can show; nothing of other plans
   * @param measures a row a measure: its name, role, and what is shown; empty with one measure
   * @param measureLines the same in sentences
   * @param measureNotes what is to be said beside them
   * @param left what is left if the day is cut short; empty while it is being worked out
   * @param curveTitle the words of its upright axis
   * @param curve what other numbers of stints can show; empty where nothing can be drawn
   * @param strip the day against the clock; empty without a timetable
   * @param day the day against the clock in words
   * @param stint how long a stint takes, and of what; empty without a timetable
   * @param times clock times of every stint
   * @param pay what the setups cost in money and mass, to choose the worthwhile difference by
   * @param differences settings across the setups
   * @param setups names of the setups
   */
  public record Shown(
      AnswerWords.Sentence sentence,
      List<String> lead,
      List<String> swaps,
      List<String> statistician,
      String simulated,
      List<String> heads,
      List<List<String>> odds,
      List<String> oddsLines,
      String oddsSource,
      String oddsPlain,
      PlanTrials trials,
      List<List<String>> measures,
      List<String> measureLines,
      List<String> measureNotes,
      List<String> left,
      String curveTitle,
      Optional<Drawing> curve,
      Optional<Drawing> strip,
      List<String> day,
      String stint,
      List<String> times,
      List<String> pay,
      List<PlanDiffers.Row> differences,
      List<String> setups) {
    static final Shown NOTHING =
        new Shown(
            new AnswerWords.Sentence(
                AnswerWords.say("unplanned.before"),
                AnswerWords.say("unplanned.marked"),
                AnswerWords.say("unplanned.after")),
            List.of(),
            List.of(),
            List.of(),
            "",
            List.of(),
            List.of(),
            List.of(),
            "",
            "",
            PlanTrials.NONE,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            "",
            Optional.empty(),
            Optional.empty(),
            List.of(),
            "",
            List.of(),
            List.of(),
            List.of(),
            List.of());
  }

  /**
   * @param earlier what earlier days tell of the noise of measures beside the primary
   */
  PlanAnswerModel(DayAnswers answers, Supplier<EarlierNoise> earlier, Background background) {
    this.answers = answers;
    this.earlier = earlier;
    this.background = background;
    this.waiting = new PlanWaiting(answers, background);
    waiting.stoppedProperty().addListener((o, before, now) -> again());
  }

  /** The work on rules that take long. */
  PlanWaiting waiting() {
    return waiting;
  }

  /** What the page says. */
  public ReadOnlyObjectProperty<Shown> shownProperty() {
    return shown.getReadOnlyProperty();
  }

  /** How far the simulation is, in words; empty when it is done. */
  public ReadOnlyStringProperty progressProperty() {
    return progress.getReadOnlyProperty();
  }

  /** The best answer so far for the plan on the page; empty where there is none. */
  Optional<DayAnswer> latest() {
    return latest;
  }

  /** Days to simulate for each answer; 0 for the formula only. */
  public void simulate(int days) {
    daysWanted = days;
  }

  /**
   * Answers for a plan by formula now, and starts the simulation.
   *
   * @param judge judges the plan on the page again, when its rule is known
   */
  void show(PlanPreview preview, Runnable judge) {
    long mine = turn.incrementAndGet();
    progress.set("");
    waiting.drop();
    latest = Optional.empty();
    Plan plan = preview.plan().orElse(null);
    if (plan == null) {
      again = () -> {};
      shown.set(Shown.NOTHING);
      return;
    }
    if (!preview.judged()) {
      waiting.rule(plan.rule(), () -> turn.get() == mine, judge);
      if (turn.get() == mine) {
        tell(plan, Optional.empty(), Optional.empty(), Optional.empty());
      }
      return;
    }
    if (preview.answer().isEmpty() && answers.takesLong(plan)) {
      waiting.on(
          plan,
          () -> turn.get() == mine,
          answer -> {
            // What is worked out is kept, so that the plan is judged whole, its series included.
            if (answers.takesLong(plan)) {
              answered(mine, plan, answer);
            } else {
              judge.run();
            }
          });
    }
    if (latest.isEmpty()) {
      answered(mine, plan, preview.answer());
    }
  }

  private void answered(long mine, Plan plan, Optional<DayAnswer> answer) {
    latest = answer;
    tell(plan, answer, Optional.empty(), Optional.empty());
    if (answer.isPresent() && daysWanted != 0) {
      background.run(
          () -> answers.left(plan, () -> turn.get() != mine),
          left -> {
            if (turn.get() == mine) {
              tell(plan, answer, left, Optional.empty());
              more(mine, plan, answer, left, Optional.empty());
            }
          },
          this::stopped);
    }
  }

  private void more(
      long mine,
      Plan plan,
      Optional<DayAnswer> answer,
      Optional<DayLeft> left,
      Optional<DaySimulation> soFar) {
    int done = soFar.map(DaySimulation::days).orElse(0);
    int wanted = daysWanted == USUAL ? DayAnswers.usualDays(plan) : daysWanted;
    if (done >= wanted) {
      progress.set("");
      soFar.ifPresent(all -> refine(plan, answer, left, answers.detail(plan, all)));
      return;
    }
    progress.set(AnswerWords.say("progress", done, wanted));
    background.run(
        () -> answers.simulate(plan, CHUNK, SEED + done, () -> turn.get() != mine),
        chunk -> {
          if (turn.get() == mine && chunk.isPresent()) {
            DaySimulation all = soFar.map(days -> days.and(chunk.get())).orElse(chunk.get());
            tell(plan, answer, left, Optional.of(answers.detail(plan, all)));
            more(mine, plan, answer, left, Optional.of(all));
          } else if (turn.get() == mine) {
            progress.set("");
          }
        },
        this::stopped);
  }

  /** All days are simulated: where the formula is only rough, their answer takes its place. */
  private void refine(
      Plan plan, Optional<DayAnswer> answer, Optional<DayLeft> left, DayDetail detail) {
    latest = answer.map(quick -> answers.refined(plan, quick, detail));
    if (!latest.equals(answer)) {
      tell(plan, latest, left, Optional.of(detail));
    }
  }

  /** A cancelled simulation is no trouble: the knob was turned again. */
  private void stopped(Exception reason) {
    if (!(reason instanceof CancellationException)) {
      progress.set(AnswerWords.say("simulation.failed", Trouble.sentence(reason)));
    }
  }

  /** Says the same once more, when more is known of the noise. */
  void again() {
    again.run();
  }

  private void tell(
      Plan plan, Optional<DayAnswer> answer, Optional<DayLeft> left, Optional<DayDetail> detail) {
    again = () -> shown.set(shown(plan, answer, left, detail));
    again.run();
  }

  private Shown shown(
      Plan plan, Optional<DayAnswer> answer, Optional<DayLeft> left, Optional<DayDetail> detail) {
    AnswerWords words = new AnswerWords(plan, answer);
    PlainAnswer plain = new PlainAnswer(plan, answer);
    PlanOdds odds = PlanOdds.of(plan, words, answer, detail);
    MeasureAnswers measures = new MeasureAnswers(plan, answer, earlier.get());
    Optional<Schedule> schedule = PlanPictures.schedule(plan);
    return new Shown(
        waiting.sentence().orElseGet(words::sentence),
        plain.lead(),
        plain.swaps(),
        plain.statistician(left, detail, odds.source()),
        detail.flatMap(words::simulated).orElse(""),
        odds.heads(),
        odds.rows(),
        odds.lines(),
        odds.source(),
        odds.rows().isEmpty() ? "" : PlainAnswer.source(detail.map(DayDetail::days).orElse(0)),
        PlanTrials.of(plan),
        measures.rows(),
        measures.lines(),
        CovariateWords.with(measures.notes(), plan, earlier.get()),
        left.map(plain::left).orElse(List.of()),
        AnswerWords.of(plan, "curve.title", words.unitOfCurve()),
        answer.flatMap(a -> PlanPictures.curve(plan, a, words)),
        schedule.map(s -> PlanPictures.strip(plan, s)),
        schedule.map(s -> day(plan, s)).orElse(List.of()),
        schedule.flatMap(s -> StintTakes.words(plan)).orElse(""),
        schedule.map(s -> DayWords.stints(plan, s)).orElse(List.of()),
        PayWords.lines(plan),
        PlanDiffers.rows(plan),
        plan.setups().stream().map(s -> s.name()).toList());
  }

  private static List<String> day(Plan plan, Schedule schedule) {
    List<String> lines = new ArrayList<>(List.of(DayWords.summary(schedule)));
    DayWords.dark(plan, schedule).ifPresent(lines::add);
    if (!schedule.fits()) {
      lines.add(DayWords.ways(Schedule.waysToFit(plan)));
    }
    return lines;
  }
}
