package blindlap.screen.plan;

import blindlap.desk.PlanPreview;
import blindlap.fault.Problem;
import blindlap.plan.DayAnswers;
import blindlap.plan.DayDivided;
import blindlap.plan.DayDivider;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.Division;
import blindlap.plan.Plan;
import blindlap.plan.Protocol;
import blindlap.screen.part.Background;
import blindlap.screen.part.TypedForm;
import blindlap.wording.DivideWords;
import blindlap.wording.day.Trouble;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import org.jspecify.annotations.Nullable;

/**
 * How the day on the page can be divided: worked out off the interface thread while it is open, by
 * formula first, then with simulated days for the rules that need them. One press takes a division.
 */
public final class PlanDivideModel {
  private final TypedForm form;
  private final DayAnswers answers;
  private final Background background;
  private final Consumer<Runnable> step;
  private final boolean simulates;
  private final AtomicLong turn = new AtomicLong();
  private final BooleanProperty open = new SimpleBooleanProperty();
  private final ReadOnlyObjectWrapper<PlanDivisions> shown =
      new ReadOnlyObjectWrapper<>(PlanDivisions.NONE);
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private Optional<PlanPreview> latest = Optional.empty();
  private String taken = "";

  /**
   * @param step makes what is changed in it one step that can be taken back
   * @param simulates false for the formula only
   */
  PlanDivideModel(
      TypedForm form,
      DayAnswers answers,
      Background background,
      Consumer<Runnable> step,
      boolean simulates) {
    this.form = form;
    this.answers = answers;
    this.background = background;
    this.step = step;
    this.simulates = simulates;
    open.addListener((o, before, now) -> work());
  }

  /** True while divisions are wanted; nothing is worked out else. */
  public BooleanProperty openProperty() {
    return open;
  }

  /** The divisions as far as they are worked out. */
  public ReadOnlyObjectProperty<PlanDivisions> shownProperty() {
    return shown.getReadOnlyProperty();
  }

  /** How far it is, what was taken, or why nothing can be divided; empty when it is done. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** Another plan is on the page. */
  void show(PlanPreview preview) {
    latest = Optional.of(preview);
    work();
  }

  private void work() {
    long mine = turn.incrementAndGet();
    PlanPreview preview = latest.orElse(null);
    Plan plan = preview == null ? null : preview.plan().orElse(null);
    if (preview == null || plan == null || !open.get()) {
      return;
    }
    Optional<Problem> refused = DayDivider.refused(plan);
    if (refused.isPresent()) {
      none(PlanJudgement.bare(refused.get()));
    } else if (PlanPictures.schedule(plan).isEmpty() || plan.setups().size() < 2) {
      none("");
    } else {
      divide(mine, plan, preview.noiseOfLaps());
    }
  }

  private void none(String why) {
    shown.set(PlanDivisions.NONE);
    words.set(why);
  }

  private void divide(long mine, Plan plan, IntFunction<@Nullable DeclaredNoise> noise) {
    background.run(
        () -> answers.divider().divide(plan, noise, (done, of) -> tell(mine, done, of)),
        divided -> {
          if (turn.get() == mine) {
            tell(plan, divided);
            simulate(mine, plan, noise, divided.rough());
          }
        },
        reason -> failed(mine, reason));
  }

  private void tell(Plan plan, DayDivided divided) {
    if (divided.divisions().isEmpty()) {
      none(PlanJudgement.bare(DayDivider.nothingFits(plan)));
      return;
    }
    PlanDivisions now = PlanDivisions.of(plan, divided);
    if (!now.equals(shown.get())) {
      shown.set(now);
    }
    words.set(taken);
    taken = "";
  }

  private void simulate(
      long mine, Plan plan, IntFunction<@Nullable DeclaredNoise> noise, List<Plan> rough) {
    if (rough.isEmpty() || !simulates) {
      return;
    }
    Plan first = rough.get(0);
    String before = words.get();
    words.set(
        DivideWords.say("simulating", first.stints(), first.protocol().title()) + " " + before);
    background.run(
        () -> {
          answers.divider().simulate(first, () -> turn.get() != mine);
          return answers.divider().divide(plan, noise, (done, of) -> turn.get() == mine);
        },
        divided -> {
          if (turn.get() == mine) {
            taken = before;
            tell(plan, divided);
            simulate(mine, plan, noise, divided.rough());
          }
        },
        reason -> failed(mine, reason));
  }

  private boolean tell(long mine, int done, int of) {
    if (done % 20 == 0) {
      background.onScreen(
          () -> {
            if (turn.get() == mine && shown.get().rows().isEmpty()) {
              words.set(DivideWords.say("working", done, of));
            }
          });
    }
    return turn.get() == mine;
  }

  private void failed(long mine, Exception reason) {
    if (turn.get() == mine && !(reason instanceof CancellationException)) {
      none(Trouble.sentence(reason));
    }
  }

  /** Takes a division into the plan: rule, stints and scored laps, in one step. */
  public void take(Division division) {
    Plan before = latest.flatMap(PlanPreview::plan).orElse(null);
    if (before == null || division.is(before)) {
      return;
    }
    Protocol protocol = division.plan().protocol();
    taken = DivideWords.taken(division);
    step.accept(
        () -> {
          keepNoise(before);
          if (!protocol.equals(before.protocol())) {
            form.part("protocol").fill(Map.of());
            form.part("rule").fill(Map.of());
            form.field("protocol").set(protocol.name());
          }
          form.field("stints").set(String.valueOf(division.stints()));
          form.part("laps").field("scored").set(String.valueOf(division.scored()));
        });
  }

  /** Noise that was typed for stints as planned stays that of as many laps. */
  private void keepNoise(Plan before) {
    TypedForm noise = form.part("noise");
    boolean typed = !noise.field("sd").get().isBlank();
    if (typed
        && noise.field("usual_difference").get().isBlank()
        && noise.field("laps").get().isBlank()) {
      noise.field("laps").set(String.valueOf(before.laps().scored()));
    }
  }
}
