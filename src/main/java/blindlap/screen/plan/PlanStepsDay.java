package blindlap.screen.plan;

import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Protocol;
import blindlap.screen.part.TypedForm;
import blindlap.wording.HandlingWords;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.binding.StringBinding;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.collections.ObservableList;

/** A draft of a steps day: its one setup, and what its handlings come to. */
final class PlanStepsDay {
  private static final String KIND = PlanJson.word(Plan.Kind.STEPS_DAY);

  private final TypedForm form;
  private final Supplier<List<Protocol>> protocols;
  private final Consumer<Runnable> step;
  private final BooleanBinding chosen;
  private final BooleanBinding unlike;
  private final StringBinding handlings;

  /**
   * @param step makes what is changed in it one step that can be taken back
   */
  PlanStepsDay(
      TypedForm form,
      ReadOnlyObjectProperty<Optional<Plan>> plan,
      Supplier<List<Protocol>> protocols,
      Consumer<Runnable> step) {
    this.form = form;
    this.protocols = protocols;
    this.step = step;
    ObservableList<TypedForm> setups = form.list("setups");
    TypedForm.Entry kind = form.field("kind");
    this.chosen = Bindings.createBooleanBinding(() -> isStepsDay(kind.get()), kind.textProperty());
    this.unlike =
        Bindings.createBooleanBinding(
            () -> isStepsDay(kind.get()) && (setups.size() != 1 || otherRule()),
            kind.textProperty(),
            setups,
            plan);
    this.handlings =
        Bindings.createStringBinding(
            () -> plan.get().map(HandlingWords::planned).map(s -> String.join(" ", s)).orElse(""),
            plan);
  }

  private static boolean isStepsDay(String typed) {
    return typed.strip().toLowerCase(java.util.Locale.ROOT).replaceAll("[-_]", " ").equals(KIND);
  }

  /** True while the draft is one of a steps day. */
  BooleanBinding chosen() {
    return chosen;
  }

  /** True while a steps day still has the setups, or the rule, of a comparison. */
  BooleanBinding unlike() {
    return unlike;
  }

  /** Clicks and handlings of the day, which wear a part; empty while that is not known. */
  StringBinding handlings() {
    return handlings;
  }

  private boolean otherRule() {
    String named = form.field("protocol").get();
    return protocols.get().stream()
        .filter(each -> each.name().equals(named))
        .anyMatch(each -> !each.levels());
  }

  /** Keeps the first setup alone, and the rule that its number of levels asks for. */
  void oneSetup() {
    step.accept(
        () -> {
          ObservableList<TypedForm> setups = form.list("setups");
          if (setups.isEmpty()) {
            form.add("setups");
          }
          setups.remove(1, setups.size());
          form.part("protocol").fill(Map.of());
          form.part("rule").fill(Map.of());
          form.field("protocol").set("");
        });
  }
}
