package blindlap.screen.plan;

import blindlap.plan.Measure;
import blindlap.plan.PlanJson;
import blindlap.plan.Setting;
import blindlap.plan.Starter;
import blindlap.screen.part.TypedForm;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Starting sets in trade words, put into the draft to be changed at will. */
public final class PlanStarters {
  private final TypedForm form;
  private final Starter starter;
  private final Consumer<Runnable> step;

  /**
   * @param step makes what is changed in it one step that can be taken back
   */
  PlanStarters(TypedForm form, Starter starter, Consumer<Runnable> step) {
    this.step = step;
    this.form = form;
    this.starter = starter;
  }

  /** Kinds of components with a starting set. */
  public List<String> componentNames() {
    return starter.components().stream().map(Starter.Component::name).toList();
  }

  /** Measures of the starter list. */
  public List<String> measureNames() {
    return starter.measures().stream().map(Measure::name).toList();
  }

  /**
   * Adds the usual settings of a component to a setup; settings that are there stay as they are.
   */
  public void addStartingSet(TypedForm setup, String component) {
    step.accept(() -> startingSet(setup, component));
  }

  private void startingSet(TypedForm setup, String component) {
    for (Starter.Component each : starter.components()) {
      if (each.name().equals(component)) {
        setup.field("component").set(each.name());
        addSettings(setup, each.settings());
        if (setup.lines("cautions").get().isBlank()) {
          setup.lines("cautions").set(String.join("\n", each.cautions()));
        }
      }
    }
  }

  /** Adds the first setup's settings to another; settings that are there stay as they are. */
  public void takeSettings(TypedForm setup) {
    step.accept(() -> settings(setup));
  }

  private void settings(TypedForm setup) {
    List<TypedForm> setups = form.list("setups");
    if (setups.isEmpty() || setups.get(0) == setup) {
      return;
    }
    TypedForm first = setups.get(0);
    if (setup.field("component").get().isBlank()) {
      setup.field("component").set(first.field("component").get());
    }
    List<String> there =
        setup.list("settings").stream().map(s -> s.field("name").get().strip()).toList();
    for (TypedForm setting : List.copyOf(first.list("settings"))) {
      if (!there.contains(setting.field("name").get().strip())) {
        setup.add("settings", setting.tree());
      }
    }
  }

  private static void addSettings(TypedForm setup, List<Setting> settings) {
    List<String> there =
        setup.list("settings").stream().map(s -> s.field("name").get().strip()).toList();
    for (Setting setting : settings) {
      if (!there.contains(setting.name())) {
        setup.add("settings", fields(setting));
      }
    }
  }

  private static Map<String, String> fields(Setting setting) {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("name", setting.name());
    fields.put("unit", setting.unit());
    put(fields, "tolerance", setting.tolerance());
    put(fields, "step", setting.step());
    fields.put("check", PlanJson.word(setting.check()));
    fields.put("equal", setting.equal() ? "yes" : "no");
    fields.put("readings", String.valueOf(setting.readings()));
    return fields;
  }

  private static void put(Map<String, String> fields, String name, @Nullable BigDecimal value) {
    if (value != null) {
      fields.put(name, value.toPlainString());
    }
  }

  /**
   * Adds a measure of the starter list; the first one of a plan is primary, but for telling runs.
   */
  public void addMeasure(String measure) {
    for (Measure each : starter.measures()) {
      if (each.name().equals(measure)) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("name", each.name());
        fields.put("kind", PlanJson.word(each.kind()));
        fields.put("unit", each.unit());
        fields.put("low_words", each.lowWords());
        fields.put("high_words", each.highWords());
        boolean decides = form.list("measures").isEmpty() && !PlanTelling.isOf(form);
        fields.put("role", decides ? "primary" : "secondary");
        fields.put("better", PlanJson.word(each.better()));
        form.add("measures", fields);
      }
    }
  }
}
