package blindlap.screen.plan;

import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Setup;
import blindlap.plan.TellingRun;
import blindlap.plan.TellingTask;
import blindlap.screen.part.TypedForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.binding.StringBinding;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** A draft of a telling run: its trials, and what it is told apart. */
final class PlanTelling {
  private static final String KIND = PlanJson.word(Plan.Kind.TELLING_RUN);
  private static final Set<String> DECIDING = Set.of("primary", "watch for harm");

  private final TypedForm form;
  private final TypedForm run;
  private final TypedForm setting;
  private final ReadOnlyObjectProperty<Optional<Plan>> plan;
  private final Consumer<Runnable> step;
  private final BooleanBinding chosen;
  private final BooleanBinding typed;
  private final BooleanBinding levels;
  private final BooleanBinding unlike;
  private final BooleanBinding alone;
  private final BooleanBinding words;
  private final StringBinding usual;
  private final ObservableList<String> names = FXCollections.observableArrayList();

  /**
   * @param step makes what is changed in it one step that can be taken back
   */
  PlanTelling(
      TypedForm form, ReadOnlyObjectProperty<Optional<Plan>> plan, Consumer<Runnable> step) {
    this.form = form;
    this.run = form.part("telling_run");
    this.setting = run.part("one_setting");
    this.plan = plan;
    this.step = step;
    TypedForm.Entry kind = form.field("kind");
    TypedForm.Entry task = run.field("task");
    this.chosen = Bindings.createBooleanBinding(this::isTellingRun, kind.textProperty());
    this.typed = Bindings.createBooleanBinding(() -> !run.tree().isEmpty(), plan);
    this.levels = Bindings.createBooleanBinding(() -> !setting.tree().isEmpty(), plan);
    this.unlike =
        Bindings.createBooleanBinding(
            () -> isTellingRun() && otherwise(), kind.textProperty(), plan);
    this.alone =
        Bindings.createBooleanBinding(
            () -> isTellingRun() && !otherwise(), kind.textProperty(), plan);
    this.words =
        Bindings.createBooleanBinding(
            () ->
                task() == TellingTask.TWO_CHOICE
                    || !run.field("attribute").get().isBlank()
                    || !run.field("more").get().isBlank(),
            task.textProperty(),
            plan);
    this.usual =
        Bindings.createStringBinding(
            () -> String.valueOf(task().usualTrials()), task.textProperty());
    plan.addListener((o, before, now) -> names(now));
    names(plan.get());
  }

  private boolean isTellingRun() {
    return isOf(form);
  }

  /** True for the fields of a telling run. */
  static boolean isOf(TypedForm form) {
    return same(form.field("kind").get(), KIND);
  }

  private static boolean same(String typed, String word) {
    return typed.strip().toLowerCase(Locale.ROOT).replaceAll("[-_]", " ").equals(word);
  }

  /** What is typed, or what is usual. */
  private TellingTask task() {
    for (TellingTask each : TellingTask.values()) {
      if (same(run.field("task").get(), PlanJson.word(each))) {
        return each;
      }
    }
    return TellingTask.TRIANGLE;
  }

  private void names(Optional<Plan> now) {
    List<String> all = new ArrayList<>(List.of(""));
    now.ifPresent(
        read ->
            read.setups().stream()
                .map(Setup::name)
                .filter(name -> !name.isBlank())
                .distinct()
                .forEach(all::add));
    if (!names.equals(all)) {
      names.setAll(all);
    }
  }

  /** True while the draft is one of a telling run. */
  BooleanBinding chosen() {
    return chosen;
  }

  /** True while anything is said of trials, whatever the kind of the draft. */
  BooleanBinding typed() {
    return typed;
  }

  /** True while two levels of one setting are told apart. */
  BooleanBinding levels() {
    return levels;
  }

  /** True while a telling run still has what belongs to a comparison. */
  BooleanBinding unlike() {
    return unlike;
  }

  /** True while it has nothing of a comparison, whose fields need no room then. */
  BooleanBinding alone() {
    return alone;
  }

  /** True while it is asked which of two laps had more of something, or words for it stand. */
  BooleanBinding words() {
    return words;
  }

  /** Trials that a run of this task has where no number is typed. */
  StringBinding usual() {
    return usual;
  }

  /** What may be declared to have more of what is asked; nothing first. */
  ObservableList<String> names() {
    return names;
  }

  /** More or fewer trials. */
  void turnTrials(int by) {
    int now =
        plan.get().map(Plan::telling).map(TellingRun::trials).orElseGet(() -> task().usualTrials());
    String turned = String.valueOf(Math.max(1, Math.min(TellingRun.MOST_TRIALS, now + by)));
    step.accept(() -> run.field("trials").set(turned));
  }

  /** Between two levels of one setting of the first setup. */
  void betweenLevels() {
    step.accept(
        () -> {
          if (setting.field("way").get().isBlank()) {
            setting.field("way").set("clicks");
          }
          setups(1);
        });
  }

  /** Between two setups. */
  void betweenSetups() {
    step.accept(
        () -> {
          setting.fill(Map.of());
          setups(2);
        });
  }

  private void setups(int wanted) {
    ObservableList<TypedForm> setups = form.list("setups");
    if (setups.size() > wanted) {
      setups.remove(wanted, setups.size());
    }
    while (setups.size() < wanted) {
      form.add("setups");
    }
  }

  private int setups() {
    return setting.tree().isEmpty() ? 2 : 1;
  }

  private boolean otherwise() {
    return form.list("setups").size() != setups()
        || !List.of("protocol", "stints", "looks", "series", "series_sessions").stream()
            .allMatch(name -> form.field(name).get().isBlank())
        || !form.part("protocol").tree().isEmpty()
        || !form.part("rule").tree().isEmpty()
        || !form.list("covariates").isEmpty()
        || !form.part("bikes").tree().isEmpty()
        || form.list("measures").stream().anyMatch(PlanTelling::deciding)
        || !Set.of("", "0").contains(form.part("laps").field("settling").get().strip())
        || !Set.of("", "1").contains(form.part("laps").field("scored").get().strip());
  }

  private static boolean deciding(TypedForm measure) {
    return DECIDING.contains(measure.field("role").get());
  }

  /** Takes out of the draft what belongs to a comparison alone; triangles unless more is said. */
  void settle() {
    step.accept(
        () -> {
          if (run.tree().isEmpty()) {
            run.field("task").set(PlanJson.word(TellingTask.TRIANGLE));
          }
          setups(setups());
          List.of("protocol", "stints", "looks", "series", "series_sessions")
              .forEach(name -> form.field(name).set(""));
          List.of("protocol", "rule", "bikes").forEach(part -> form.part(part).fill(Map.of()));
          form.list("covariates").clear();
          form.list("measures").removeIf(PlanTelling::deciding);
          form.part("laps").field("settling").set("");
          form.part("laps").field("scored").set("");
        });
  }

  /** Takes the trials out of a draft of another kind. */
  void leave() {
    step.accept(() -> run.fill(Map.of()));
  }
}
