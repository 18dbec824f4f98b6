package blindlap.screen.plan;

import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** A list of parts of the plan that grows and shrinks; what is typed into one stays with it. */
final class PlanRowsView extends VBox {
  private final ObservableList<TypedForm> list;
  private final Function<TypedForm, Node> row;
  private final String one;
  private final Map<TypedForm, Node> made = new IdentityHashMap<>();

  /**
   * @param list the parts
   * @param one the word for one of them, for the button that removes it
   * @param row makes the fields of one part
   */
  PlanRowsView(ObservableList<TypedForm> list, String one, Function<TypedForm, Node> row) {
    super(14);
    this.list = list;
    this.row = row;
    this.one = one;
    list.addListener((ListChangeListener<TypedForm>) change -> build());
    build();
  }

  private void build() {
    made.keySet().removeIf(form -> list.stream().noneMatch(each -> each == form));
    List<Node> nodes = new ArrayList<>();
    for (TypedForm form : list) {
      nodes.add(made.computeIfAbsent(form, this::make));
    }
    getChildren().setAll(nodes);
  }

  private Node make(TypedForm form) {
    Button remove = new Button(PlanWords.say("remove"));
    remove.setAccessibleText(PlanWords.say("remove") + " " + one);
    remove.setOnAction(e -> list.removeIf(each -> each == form));
    remove.getStyleClass().add("quiet");
    Node fields = row.apply(form);
    if (fields instanceof FlowPane flow) {
      flow.getChildren().add(remove);
      return flow;
    }
    VBox box = new VBox(8, fields, remove);
    box.getStyleClass().add("plan-row");
    return box;
  }
}
