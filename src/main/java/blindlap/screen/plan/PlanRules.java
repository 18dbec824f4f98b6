package blindlap.screen.plan;

import blindlap.plan.Plan;
import blindlap.plan.Protocol;
import blindlap.plan.Rule;
import blindlap.screen.part.TypedForm;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;

/** The rule for the order, and the stints that go by its blocks. */
public final class PlanRules {
  private final TypedForm form;
  private final List<Protocol> protocols;
  private final ReadOnlyObjectProperty<Optional<Plan>> plan;
  private final Consumer<Runnable> step;
  private final PlanStepsDay stepsDay;
  private final PlanTelling telling;

  /**
   * @param step makes what is changed in it one step that can be taken back
   */
  PlanRules(
      TypedForm form,
      List<Protocol> protocols,
      ReadOnlyObjectProperty<Optional<Plan>> plan,
      Consumer<Runnable> step) {
    this.step = step;
    this.form = form;
    this.protocols = protocols;
    this.plan = plan;
    this.stepsDay = new PlanStepsDay(form, plan, () -> protocols, step);
    this.telling = new PlanTelling(form, plan, step);
  }

  /** The trials of a telling run. */
  PlanTelling telling() {
    return telling;
  }

  /** The setting of a steps day and its levels. */
  PlanStepsDay stepsDay() {
    return stepsDay;
  }

  /** The rule that the draft has, named or usual for as many setups or levels. */
  String protocolNow() {
    String named = form.field("protocol").get();
    return named.isBlank() ? plan.get().map(now -> now.protocol().name()).orElse("") : named;
  }

  /** Protocols by name, with title and advice when to choose them. */
  public Map<String, String> protocols() {
    Map<String, String> words = new LinkedHashMap<>();
    protocols.forEach(p -> words.put(p.name(), p.title() + ". " + p.when()));
    return words;
  }

  /** Names of protocols made for the number of setups on the page. */
  public List<String> protocolsThatFit() {
    if (telling.chosen().get()) {
      return List.of(); // its rule follows from its task
    }
    boolean stepsDay = this.stepsDay.chosen().get();
    int setups =
        stepsDay
            ? plan.get().map(now -> now.setups().size()).orElse(0)
            : form.list("setups").size();
    return protocols.stream().filter(p -> p.suits(stepsDay, setups)).map(Protocol::name).toList();
  }

  /** The measure whose difference decides; the first one while none is primary. */
  Optional<TypedForm> primary() {
    List<TypedForm> measures = form.list("measures");
    return measures.stream()
        .filter(m -> m.field("role").get().equals("primary"))
        .findFirst()
        .or(() -> measures.stream().findFirst());
  }

  /** Takes a named rule in place of whatever rule the draft has. */
  public void chooseProtocol(String protocol) {
    step.accept(
        () -> {
          form.part("protocol").fill(Map.of());
          form.part("rule").fill(Map.of());
          form.field("protocol").set(protocol);
        });
  }

  /**
   * More or fewer stints, in whole blocks of the rule.
   *
   * @param steps how many blocks, negative for fewer
   */
  public void turnStints(int steps) {
    int block = plan.get().map(Plan::protocol).map(PlanRules::step).orElse(1);
    int now = plan.get().map(Plan::stints).orElse(16);
    int next = Math.floorDiv(now, block) * block + steps * block;
    String turned = String.valueOf(Math.max(block, Math.min(Rule.MOST_STINTS, next)));
    step.accept(() -> form.field("stints").set(turned));
  }

  private static int step(Protocol protocol) {
    Integer block = protocol.block();
    return block == null || block < 1 ? 2 : block;
  }
}
