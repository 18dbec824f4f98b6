package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Fold;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.List;
import javafx.beans.value.ObservableBooleanValue;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Fields of a plan file by their names in it, which say their labels, too. */
final class PlanFieldsView {
  private PlanFieldsView() {}

  /** A line to type in, about so many characters wide, with its line of help. */
  static VBox text(TypedForm form, String name, int columns) {
    return text(form, "", name, columns);
  }

  /** The same where a name means something else within a part, such as "name" within a setup. */
  static VBox text(TypedForm form, String part, String name, int columns) {
    String own = part.isEmpty() ? name : part + "." + name;
    String title = PlanWords.has("field." + own) ? PlanWords.field(own) : PlanWords.field(name);
    return Fields.helped(
        Fields.text(form.field(name), title, PlanWords.example(name), columns), help(own, name));
  }

  private static String help(String own, String name) {
    String help = PlanWords.help(own);
    return help.isEmpty() ? PlanWords.help(name) : help;
  }

  /** Several lines to type in, with their line of help. */
  static VBox area(TypedForm.Entry entry, String name) {
    return Fields.helped(
        Fields.area(entry, PlanWords.field(name), PlanWords.example(name)), PlanWords.help(name));
  }

  /** One of several words; the first stands for "not chosen yet". */
  static VBox choice(TypedForm form, String name, List<String> words) {
    return Fields.helped(bare(form, name, words), PlanWords.help(name));
  }

  private static VBox bare(TypedForm form, String name, List<String> words) {
    String usual = PlanWords.has("default." + name) ? PlanWords.say("default." + name) : "";
    return Fields.choice(form.field(name), PlanWords.field(name), words, usual);
  }

  /** A line of one of many rows that are alike: only the first row has labels above it. */
  static VBox compact(TypedForm form, String name, int columns, ObservableBooleanValue first) {
    VBox box = Fields.text(form.field(name), PlanWords.field(name), PlanWords.field(name), columns);
    return headed(box, first);
  }

  /** A choice of one of many rows that are alike. */
  static VBox compactChoice(
      TypedForm form, String name, List<String> words, ObservableBooleanValue first) {
    return headed(bare(form, name, words), first);
  }

  private static VBox headed(VBox box, ObservableBooleanValue first) {
    Node label = box.getChildren().get(0);
    label.visibleProperty().bind(first);
    label.managedProperty().bind(first);
    return box;
  }

  /** A button beside a field, in the line of what is typed: its label stands above nothing. */
  static VBox beside(Node field, Node button) {
    Label above = new Label(" ");
    above.getStyleClass().add("note");
    VBox box = new SteadyBox(5, above, button);
    box.visibleProperty().bind(button.visibleProperty());
    box.managedProperty().bind(button.visibleProperty());
    if (field instanceof VBox labelled && labelled.getChildren().get(0) instanceof Label label) {
      // Where it has folded below the field, there is no label whose height it makes up for.
      above
          .managedProperty()
          .bind(
              label
                  .managedProperty()
                  .and(box.layoutYProperty().lessThan(field.layoutYProperty().add(1))));
      above.setVisible(false);
    } else {
      box.getChildren().remove(above);
    }
    return box;
  }

  /** A line without a label above it, for rows of many; its name stands in it while it is empty. */
  static VBox compact(TypedForm form, String name, int columns) {
    VBox box = Fields.text(form.field(name), PlanWords.field(name), PlanWords.field(name), columns);
    box.getChildren().remove(0);
    return box;
  }

  /** What adds something, side by side. */
  static FlowPane buttons(Node... buttons) {
    FlowPane row = Fields.row(buttons);
    row.setRowValignment(VPos.CENTER);
    return row;
  }

  /** Yes or no. */
  static VBox yesNo(TypedForm form, String name) {
    return choice(form, name, List.of(PlanWords.say("option.yes"), PlanWords.say("option.no")));
  }

  /** What is not needed every day, behind its title. */
  static TitledPane fold(String key, Node inside) {
    return new Fold(PlanWords.say(key), inside);
  }

  /** A heading of a section. */
  static Label heading(String key) {
    return titled(PlanWords.say(key));
  }

  /** A heading of finished words. */
  static Label titled(String words) {
    Label label = new Label(words);
    label.getStyleClass().add("h2");
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    return label;
  }
}
