package blindlap.screen.plan;

import blindlap.screen.part.Shell;
import blindlap.screen.part.TypedForm;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;

/** States of the Plan page, from an empty draft to four setups with names that nobody shortens. */
final class PlanStates {
  static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");

  private static final String LONG =
      "the long-travel coil shock of last season with the softest spring, setup number ";

  private PlanStates() {}

  /** Every state by its name; each begins with a fresh draft. */
  static Map<String, Consumer<PlanModel>> all() {
    Map<String, Consumer<PlanModel>> states = new LinkedHashMap<>();
    states.put("empty", model -> {});
    states.put("full", PlanStates::full);
    states.put("three setups", model -> setups(model, 3, "three-setups", "18"));
    states.put("four setups", model -> setups(model, 4, "four-setups", "24"));
    states.put("series", PlanStates::series);
    states.put("noise run", PlanStates::noiseRun);
    states.put("steps day", PlanStates::stepsDay);
    states.put("refused", PlanStates::refused);
    return states;
  }

  private static void full(PlanModel model) {
    model.startFromFile(SAMPLE);
    TypedForm form = model.form();
    form.field("rider").set("Maximiliane-Theodora von Hohenstein-Waldburg-Rothenfels");
    form.field("trail").set("The long way round the upper quarry and down the old tramway");
    for (int i = 0; i < form.list("setups").size(); i++) {
      TypedForm setup = form.list("setups").get(i);
      setup.field("name").set(LONG + (i + 1));
      setup
          .add("settings")
          .field("name")
          .set("low-speed compression of the second stage, counted from fully closed");
    }
    TypedForm measure = form.list("measures").get(1);
    measure.field("name").set("grip in the fast left-handers after the second bridge");
    measure.field("low_words").set("none at all, as on wet leaves after a night of rain");
  }

  private static void setups(PlanModel model, int count, String rule, String stints) {
    full(model);
    while (model.form().list("setups").size() < count) {
      int next = model.form().list("setups").size() + 1;
      model.form().add("setups").field("name").set(LONG + next);
    }
    model.rules().chooseProtocol(rule);
    model.answer().simulate(50);
    model.form().field("stints").set(stints);
    model.answer().simulate(0);
  }

  private static void series(PlanModel model) {
    full(model);
    model.form().field("series").set("the autumn comparison of all shocks that we could borrow");
    model.form().field("series_sessions").set("4");
  }

  private static void noiseRun(PlanModel model) {
    model.start(Shell.Beginning.COMPARISON);
    model.form().field("kind").set("noise run");
    model.form().list("setups").remove(1);
  }

  private static void stepsDay(PlanModel model) {
    full(model);
    TypedForm form = model.form();
    form.field("kind").set("steps day");
    model.rules().stepsDay().oneSetup();
    TypedForm setup = form.list("setups").get(0);
    setup.list("settings").removeIf(setting -> setting.field("name").get().startsWith("rebound"));
    TypedForm steps = form.part("steps_day");
    steps.field("setting").set("rebound of the second stage");
    steps.field("unit").set("clicks from fully closed");
    steps.field("levels").set("3 4 9 13 15 17");
    steps.field("most").set("18");
    model.answer().simulate(40);
    form.field("stints").set("18");
    model.answer().simulate(0);
  }

  private static void refused(PlanModel model) {
    full(model);
    model.form().field("stints").set("8");
    model.form().field("day").set("some day next week, if the weather holds");
    model.form().part("timetable").field("lap").set("about two and a half");
    model.form().list("measures").get(0).field("worthwhile").set("-1");
  }
}
