package blindlap.screen.trail;

import blindlap.desk.TrailDraft;
import blindlap.desk.TrailShape;
import blindlap.fault.TypedNumber;
import blindlap.screen.part.TypedForm;
import blindlap.wording.TrailWords;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * The line and gates in hand, and the one gate that is being typed; every change can be taken back.
 */
public final class TrailInHand {
  /** A press so near to a gate, in metres, means the gate. */
  private static final double AT_A_GATE = 4;

  private static final double WIDEST = 200;
  private static final int LONGEST_NAME = 60;

  private final TypedForm form;
  private final Runnable changed;
  private final ReadOnlyObjectWrapper<TrailSight> sight =
      new ReadOnlyObjectWrapper<>(TrailSight.NOTHING);
  private final ReadOnlyStringWrapper undo = new ReadOnlyStringWrapper("");
  private final Deque<Step> steps = new ArrayDeque<>();

  private record Step(String words, TrailDraft before, int chosen) {}

  /**
   * @param form with the fields gate, along, width and new
   * @param changed run after every change of a gate
   */
  TrailInHand(TypedForm form, Runnable changed) {
    this.form = form;
    this.changed = changed;
  }

  /** What is shown. */
  public ReadOnlyObjectProperty<TrailSight> sightProperty() {
    return sight.getReadOnlyProperty();
  }

  /** What would be taken back; empty if nothing. */
  public ReadOnlyStringProperty undoProperty() {
    return undo.getReadOnlyProperty();
  }

  /** Another line is in hand, or a version: nothing of the one before can be taken back. */
  void open(TrailSight now) {
    steps.clear();
    undo.set("");
    show(now);
  }

  /** Which plans use it is known now. */
  void uses(List<String> lines) {
    sight.set(sight.get().with(lines));
  }

  private void show(TrailSight now) {
    sight.set(now);
    fields(now);
  }

  private void fields(TrailSight now) {
    now.draft().ifPresent(draft -> form.field("name").set(draft.name()));
    form.field("gate").set(now.gate().map(TrailDraft.Across::name).orElse(""));
    form.field("along").set(now.gate().map(g -> TrailWords.metres(g.along())).orElse(""));
    form.field("width").set(now.gate().map(g -> TrailWords.metres(g.width())).orElse(""));
    form.tell("", new HashMap<>());
  }

  /** A press on the line: the gate there, or a new one. */
  public void press(double along) {
    sight
        .get()
        .draft()
        .ifPresent(
            draft -> {
              for (int i = 0; i < draft.gates().size(); i++) {
                if (Math.abs(draft.gates().get(i).along() - along) <= AT_A_GATE) {
                  choose(i);
                  return;
                }
              }
              add(draft, Math.round(along));
            });
  }

  /** Sets a gate at the typed distance. */
  public void addTyped() {
    sight
        .get()
        .draft()
        .ifPresent(
            draft -> {
              Optional<Double> along = number("new");
              Map<String, String> wrong = new HashMap<>();
              along.ifPresentOrElse(
                  metres -> onLine(draft, metres, "new", wrong),
                  () ->
                      wrong.put("new", TrailWords.say("page.no.number", form.field("new").get())));
              boolean sound = wrong.isEmpty();
              form.tell("", wrong);
              if (sound) {
                add(draft, along.orElseThrow());
                form.field("new").set("");
              }
            });
  }

  private void add(TrailDraft draft, double along) {
    TrailDraft.Across gate =
        new TrailDraft.Across(newName(draft, along), draft.held(along), TrailDraft.USUAL_WIDTH);
    List<TrailDraft.Across> gates = new ArrayList<>(draft.gates());
    gates.add(gate);
    change(TrailWords.say("page.undo.set", gate.name()), draft.with(gates), gate);
  }

  /** The second of two is named for the end that it makes, whatever the first is called by now. */
  private static String newName(TrailDraft draft, double along) {
    List<String> taken = draft.gates().stream().map(TrailDraft.Across::name).toList();
    List<String> names = new ArrayList<>();
    if (taken.size() < 2) {
      boolean behind = draft.gates().stream().anyMatch(gate -> gate.along() < along);
      names.add(TrailWords.say(behind ? "gate.finish" : "gate.start"));
    }
    for (int i = 1; i <= taken.size() + 1; i++) {
      names.add(TrailWords.say("gate.split", String.valueOf(i)));
    }
    return names.stream().filter(name -> !taken.contains(name)).findFirst().orElseThrow();
  }

  private void change(String words, TrailDraft now, TrailDraft.@Nullable Across gate) {
    TrailSight before = sight.get();
    before.draft().ifPresent(was -> steps.push(new Step(words, was, before.chosen())));
    undo.set(words);
    changed.run();
    int chosen =
        gate == null
            ? Math.min(before.chosen(), now.gates().size() - 1)
            : now.gates().indexOf(gate);
    show(
        new TrailSight(
            Optional.of(now),
            Optional.of(TrailShape.of(now)),
            chosen,
            before.kept(),
            true,
            List.of()));
  }

  /** Takes a gate in hand. */
  public void choose(int gate) {
    TrailSight now = sight.get();
    if (gate != now.chosen()) {
      show(new TrailSight(now.draft(), now.shape(), gate, now.kept(), now.changed(), now.uses()));
    }
  }

  /** Moves the gate in hand along the line. */
  public void move(double metres) {
    TrailSight now = sight.get();
    now.gate()
        .ifPresent(
            gate -> {
              TrailDraft draft = now.draft().orElseThrow();
              double along = draft.held(gate.along() + metres);
              if (along != gate.along()) {
                replace(
                    TrailWords.say("page.undo.moved", gate.name()),
                    new TrailDraft.Across(gate.name(), along, gate.width()));
              }
            });
  }

  /** Takes the gate in hand away. */
  public void remove() {
    TrailSight now = sight.get();
    now.gate()
        .ifPresent(
            gate -> {
              List<TrailDraft.Across> gates = new ArrayList<>(now.draft().orElseThrow().gates());
              gates.remove(now.chosen());
              change(
                  TrailWords.say("page.undo.removed", gate.name()),
                  now.draft().orElseThrow().with(gates),
                  null);
            });
  }

  private void replace(String words, TrailDraft.Across with) {
    TrailSight now = sight.get();
    List<TrailDraft.Across> gates = new ArrayList<>(now.draft().orElseThrow().gates());
    gates.set(now.chosen(), with);
    change(words, now.draft().orElseThrow().with(gates), with);
  }

  /** Takes over what is typed for the gate in hand, if it can be. */
  public void apply() {
    TrailSight now = sight.get();
    Optional<TrailDraft.Across> gate = now.gate();
    if (gate.isEmpty()) {
      return;
    }
    Map<String, String> wrong = new HashMap<>();
    String name = form.field("gate").get().strip();
    if (name.isEmpty() || name.codePointCount(0, name.length()) > LONGEST_NAME) {
      wrong.put("gate", TrailWords.say("page.no.gate.name"));
    }
    double along = typed("along", gate.get().along(), wrong);
    onLine(now.draft().orElseThrow(), along, "along", wrong);
    double width = typed("width", gate.get().width(), wrong);
    if (!(width >= 1 && width <= WIDEST)) {
      wrong.putIfAbsent("width", TrailWords.say("page.no.width"));
    }
    boolean sound = wrong.isEmpty();
    form.tell("", wrong);
    if (!sound) {
      return;
    }
    TrailDraft.Across before = gate.get();
    if (along != before.along() || width != before.width()) {
      String words = along != before.along() ? "page.undo.moved" : "page.undo.wide";
      replace(TrailWords.say(words, before.name()), new TrailDraft.Across(name, along, width));
    } else if (!name.equals(before.name())) {
      replace(
          TrailWords.say("page.undo.named"),
          new TrailDraft.Across(name, along, width, before.ends()));
    }
  }

  private double typed(String field, double shown, Map<String, String> wrong) {
    String text = form.field(field).get().strip();
    if (text.equals(TrailWords.metres(shown))) {
      return shown;
    }
    Optional<Double> number = number(field);
    if (number.isEmpty()) {
      wrong.put(field, TrailWords.say("page.no.number", text));
    }
    return number.orElse(shown);
  }

  private static void onLine(
      TrailDraft draft, double along, String field, Map<String, String> wrong) {
    if (Math.abs(along - draft.held(along)) > 0.05) {
      wrong.putIfAbsent(
          field,
          TrailWords.say(
              "page.off",
              TrailWords.metres(Math.floor(draft.length())),
              TrailWords.metres(TrailDraft.FROM_THE_ENDS)));
    }
  }

  private Optional<Double> number(String field) {
    return TypedNumber.number(form.field(field).get().strip()).map(Number::doubleValue);
  }

  /** Takes the last change back. */
  public void takeBack() {
    Step step = steps.poll();
    if (step == null) {
      return;
    }
    TrailSight now = sight.get();
    undo.set(steps.isEmpty() ? "" : steps.peek().words());
    boolean changed = !steps.isEmpty() || now.kept().isEmpty();
    show(TrailSight.of(step.before(), step.chosen(), now.kept(), changed));
  }
}
