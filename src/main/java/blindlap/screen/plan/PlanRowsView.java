package blindlap.screen.plan;

import blindlap.screen.part.PlanForm;
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
  private final ObservableList<PlanForm> list;
  private final Function<PlanForm, Node> row;
  private final String one;
  private final Map<PlanForm, Node> made = new IdentityHashMap<>();

  /**
   * @param list the parts
   * @param one the word for one of them, for the button that removes it
   * @param row makes the fields of one part
   */
  PlanRowsView(ObservableList<PlanForm> list, String one, Function<PlanForm, Node> row) {
    super(14);
    this.list = list;
    this.row = row;
    this.one = one;
    list.addListener((ListChangeListener<PlanForm>) change -> build());
    build();
  }

  private void build() {
    made.keySet().removeIf(form -> list.stream().noneMatch(each -> each == form));
    List<Node> nodes = new ArrayList<>();
    for (PlanForm form : list) {
      nodes.add(made.computeIfAbsent(form, this::make));
    }
    getChildren().setAll(nodes);
  }

  private Node make(PlanForm form) {
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
