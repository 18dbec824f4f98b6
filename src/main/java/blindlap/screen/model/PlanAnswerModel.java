package blindlap.screen.model;

import blindlap.desk.PlanPreview;
import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.DayDetail;
import blindlap.plan.DayLeft;
import blindlap.plan.Differences;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plot.Drawing;
import blindlap.stats.SimulatedDays;
import blindlap.wording.AnswerWords;
import blindlap.wording.DayWords;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicLong;
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
  private static final int DAYS = 2000;

  private final DayAnswers answers;
  private final Background background;
  private final AtomicLong turn = new AtomicLong();
  private final ReadOnlyObjectWrapper<Shown> shown = new ReadOnlyObjectWrapper<>(Shown.NOTHING);
  private final ReadOnlyStringWrapper progress = new ReadOnlyStringWrapper("");
  private int daysWanted = DAYS;

  /**
   * Everything the page says about the day.
   *
   * @param sentence the answer
   * @param lead what it means
   * @param orders orders, swaps, handlings
   * @param simulated the answer by simulation; empty while there is none
   * @param odds a row per true difference: its words, then days in 100
   * @param oddsSource how the odds were found
   * @param left what is left if the day is cut short; empty while it is being worked out
   * @param curve what other numbers of stints can show; empty where nothing can be drawn
   * @param strip the day against the clock; empty without a timetable
   * @param day the day against the clock in words
   * @param differences settings across the setups
   * @param setups names of the setups
   */
  public record Shown(
      AnswerWords.Sentence sentence,
      List<String> lead,
      List<String> orders,
      String simulated,
      List<List<String>> odds,
      String oddsSource,
      List<String> left,
      Optional<Drawing> curve,
      Optional<Drawing> strip,
      List<String> day,
      List<Row> differences,
      List<String> setups) {
    static final Shown NOTHING =
        new Shown(
            new AnswerWords.Sentence("", "", ""),
            List.of(),
            List.of(),
            "",
            List.of(),
            "",
            List.of(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            List.of(),
            List.of());
  }

  /**
   * One setting across the setups.
   *
   * @param name the setting
   * @param values a value per setup
   * @param note what is to be said of it
   * @param differs true if it differs
   */
  public record Row(String name, List<String> values, String note, boolean differs) {}

  PlanAnswerModel(DayAnswers answers, Background background) {
    this.answers = answers;
    this.background = background;
  }

  /** What the page says. */
  public ReadOnlyObjectProperty<Shown> shownProperty() {
    return shown.getReadOnlyProperty();
  }

  /** How far the simulation is, in words; empty when it is done. */
  public ReadOnlyStringProperty progressProperty() {
    return progress.getReadOnlyProperty();
  }

  /** Days to simulate for each answer; 0 for the formula only. */
  public void simulate(int days) {
    daysWanted = days;
  }

  /** Answers for a plan by formula now, and starts the simulation. */
  void show(PlanPreview preview) {
    long mine = turn.incrementAndGet();
    progress.set("");
    Plan plan = preview.plan().orElse(null);
    if (plan == null) {
      shown.set(Shown.NOTHING);
      return;
    }
    shown.set(shown(plan, preview.answer(), Optional.empty(), Optional.empty()));
    if (preview.answer().isPresent() && daysWanted > 0) {
      background.run(
          () -> answers.left(plan, () -> turn.get() != mine),
          left -> {
            if (turn.get() == mine) {
              shown.set(shown(plan, preview.answer(), left, Optional.empty()));
              more(mine, plan, preview.answer(), left, Optional.empty());
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
      Optional<SimulatedDays> soFar) {
    int done = soFar.map(SimulatedDays::days).orElse(0);
    if (done >= daysWanted) {
      progress.set("");
      return;
    }
    progress.set(AnswerWords.say("progress", done, daysWanted));
    background.run(
        () -> answers.simulate(plan, CHUNK, SEED + done, () -> turn.get() != mine),
        chunk -> {
          if (turn.get() == mine && chunk.isPresent()) {
            SimulatedDays all = soFar.map(days -> days.and(chunk.get())).orElse(chunk.get());
            shown.set(shown(plan, answer, left, Optional.of(answers.detail(plan, all))));
            more(mine, plan, answer, left, Optional.of(all));
          } else if (turn.get() == mine) {
            progress.set("");
          }
        },
        this::stopped);
  }

  /** A cancelled simulation is no trouble: the knob was turned again. */
  private void stopped(Exception reason) {
    if (!(reason instanceof CancellationException)) {
      progress.set(AnswerWords.say("simulation.failed", String.valueOf(reason.getMessage())));
    }
  }

  private static Shown shown(
      Plan plan, Optional<DayAnswer> answer, Optional<DayLeft> left, Optional<DayDetail> detail) {
    AnswerWords words = new AnswerWords(plan, answer);
    List<DayAnswer.Ending> odds =
        detail.map(DayDetail::odds).orElse(answer.map(DayAnswer::odds).orElse(List.of()));
    Optional<Schedule> schedule = PlanPictures.schedule(plan);
    return new Shown(
        words.sentence(),
        words.lead(),
        words.orders(),
        detail.flatMap(words::simulated).orElse(""),
        odds.stream().map(words::cells).toList(),
        odds.isEmpty() ? "" : words.oddsSource(odds, detail.map(DayDetail::days).orElse(0)),
        left.map(words::cuts).orElse(List.of()),
        answer.flatMap(a -> PlanPictures.curve(plan, a, words)),
        schedule.map(s -> PlanPictures.strip(plan, s)),
        schedule.map(s -> List.of(DayWords.summary(s))).orElse(List.of()),
        differences(plan),
        plan.setups().stream().map(s -> s.name()).toList());
  }

  private static List<Row> differences(Plan plan) {
    Differences differences = Differences.of(plan);
    return differences.rows().stream()
        .map(
            row ->
                new Row(
                    row.name(),
                    row.shown(),
                    AnswerWords.difference(row),
                    row.status() != Differences.Status.SAME))
        .toList();
  }
}
