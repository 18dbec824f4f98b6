package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.StringBinding;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.StringProperty;
import javafx.beans.value.ObservableIntegerValue;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * A list of parts of the plan that grows and shrinks; what is typed into one stays with it. Every
 * part stands in a frame of its own, with the button that removes it, which says what it removes.
 */
final class PlanRowsView extends SteadyBox {
  private record Row(Node node, IntegerProperty number) {}

  private final ObservableList<TypedForm> list;
  private final BiFunction<TypedForm, ObservableIntegerValue, Node> row;
  private final String one;
  private final String named;
  private final Map<TypedForm, Row> made = new IdentityHashMap<>();

  /**
   * @param list the parts
   * @param one the word for one of them
   * @param row makes the fields of one part
   */
  PlanRowsView(ObservableList<TypedForm> list, String one, Function<TypedForm, Node> row) {
    this(list, one, "name", (form, number) -> row.apply(form));
  }

  /**
   * @param named the field that a part is called by
   * @param row makes the fields of one part, whose number in the list may change
   */
  PlanRowsView(
      ObservableList<TypedForm> list,
      String one,
      String named,
      BiFunction<TypedForm, ObservableIntegerValue, Node> row) {
    super(14);
    this.list = list;
    this.row = row;
    this.one = one;
    this.named = named;
    list.addListener((ListChangeListener<TypedForm>) change -> build());
    build();
  }

  private void build() {
    made.keySet().removeIf(form -> list.stream().noneMatch(each -> each == form));
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      Row each = made.computeIfAbsent(list.get(i), this::make);
      each.number().set(i + 1);
      nodes.add(each.node());
    }
    getChildren().setAll(nodes);
  }

  private Row make(TypedForm form) {
    IntegerProperty number = new SimpleIntegerProperty(1);
    StringProperty name = form.field(named).textProperty();
    Button remove = new Button();
    StringBinding removes = words("remove.named", "remove.numbered", name, number);
    remove.accessibleTextProperty().bind(removes);
    remove.setOnAction(e -> list.removeIf(each -> each == form));
    remove.getStyleClass().addAll("quiet", "remove");
    Node fields = row.apply(form, number);
    if (fields instanceof FlowPane flow) {
      // It stands in the same frame as the few fields that it removes.
      remove.setText(PlanWords.say("remove"));
      flow.getChildren().add(PlanFieldsView.beside(flow.getChildren().get(0), remove));
      flow.getStyleClass().add("plan-part");
      return new Row(flow, number);
    }
    remove.textProperty().bind(removes);
    Label head = Fields.words("", "field-title");
    head.textProperty().bind(words("row.named", "row.numbered", name, number));
    remove.setMinHeight(Region.USE_PREF_SIZE);
    FlowPane top = Fields.row(head, remove);
    top.setRowValignment(VPos.CENTER);
    VBox box = new SteadyBox(10, top, fields);
    box.getStyleClass().add("plan-row");
    return new Row(box, number);
  }

  private StringBinding words(
      String key, String unnamed, StringProperty name, ObservableIntegerValue number) {
    return Bindings.createStringBinding(
        () ->
            name.get().isBlank()
                ? PlanWords.say(unnamed, one, number.get())
                : PlanWords.say(key, one, number.get(), name.get().strip()),
        name,
        number);
  }
}
