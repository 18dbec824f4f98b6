package blindlap.screen.plan;

import blindlap.desk.RiderHistory;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.screen.part.Background;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Trouble;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** The rider's noise from earlier days of the notebook, taken into the draft. */
public final class PlanNoise {
  private final TypedForm form;
  private final RiderHistory history;
  private final Background background;
  private final ReadOnlyObjectProperty<Optional<Plan>> plan;
  private final Consumer<Runnable> step;
  private final ReadOnlyStringWrapper message = new ReadOnlyStringWrapper("");

  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");

  private EarlierNoise earlier = EarlierNoise.NONE;
  private String asked = "";
  private Runnable told = () -> {};

  PlanNoise(
      TypedForm form,
      RiderHistory history,
      Background background,
      ReadOnlyObjectProperty<Optional<Plan>> plan,
      Consumer<Runnable> step) {
    this.step = step;
    this.form = form;
    this.history = history;
    this.background = background;
    this.plan = plan;
    plan.addListener((o, before, now) -> now.ifPresent(this::look));
    plan.addListener((o, before, now) -> said(now));
  }

  /** Where the noise was taken from, or why none was; may be empty. */
  public ReadOnlyStringProperty messageProperty() {
    return message.getReadOnlyProperty();
  }

  private void said(Optional<Plan> now) {
    said.set(
        now.filter(p -> p.kind().drawn())
            .flatMap(
                p ->
                    p.primary()
                        .flatMap(primary -> earlier(p).of(primary, p.laps().scored()))
                        .flatMap(told -> PlanWords.noise(p, told)))
            .orElse(""));
  }

  /** The noise that is used, from which days, or that it was typed by hand; may be empty. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** What earlier days tell of the other measures, as far as is known yet. */
  EarlierNoise earlier() {
    return earlier;
  }

  /** The same for a plan: nothing while another rider's or trail's days were asked. */
  EarlierNoise earlier(Plan of) {
    return who(of).equals(asked) ? earlier : EarlierNoise.NONE;
  }

  /** What is to be done once more is known of the other measures. */
  void whenKnown(Runnable then) {
    told = then;
  }

  /** Asks once more: days may have been unsealed meanwhile. */
  void lookAgain() {
    plan.get().ifPresent(this::ask);
  }

  private void look(Plan now) {
    if (!who(now).equals(asked)) {
      earlier = EarlierNoise.NONE;
      ask(now);
    }
  }

  private void ask(Plan now) {
    asked = who(now);
    background.run(
        () -> history.earlier(now.rider(), now.trail()),
        found -> {
          if (who(now).equals(asked)) {
            earlier = found;
            told.run();
          }
        },
        problem -> asked = "");
  }

  private static String who(Plan plan) {
    return plan.rider().strip() + "\n" + plan.trail().strip();
  }

  /** Puts what earlier days of this rider on this trail tell in place of what was typed. */
  public void takeFromEarlierDays() {
    Plan now = plan.get().orElse(null);
    Measure primary = plan.get().flatMap(Plan::primary).orElse(null);
    if (now == null || primary == null) {
      message.set(PlanWords.say("noise.primary"));
      return;
    }
    background.run(
        () -> history.suggestNoise(now.rider(), now.trail(), primary, now.laps().scored()),
        this::take,
        problem -> message.set(Trouble.sentence(problem)));
  }

  private void take(Optional<DeclaredNoise> found) {
    if (found.isEmpty()) {
      message.set(PlanWords.say("noise.none"));
      return;
    }
    DeclaredNoise noise = found.get();
    step.accept(() -> form.part("noise").fill(PlanJson.typed(noise)));
    message.set(PlanWords.say("noise.taken", noise.source()));
  }
}
