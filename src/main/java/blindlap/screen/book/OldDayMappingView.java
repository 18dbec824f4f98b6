package blindlap.screen.book;

import blindlap.plan.PlanOptions;
import blindlap.screen.part.DateField;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.TypedForm;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.InvalidationListener;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** Whose laps a file has, and which column holds what, by boxes to choose from. */
final class OldDayMappingView extends VBox {
  private static final double COLUMN = 160;

  /** So wide that what is wrong with a unit takes two lines. */
  private static final double SENTENCE = 420;

  private static final Words WORDS = Words.of("oldday");

  private final Look look;
  private final OldDayModel model;
  private final VBox where = new VBox(10);
  private final VBox measures = new VBox(14);
  private List<String> columns = List.of();

  OldDayMappingView(Look look, OldDayModel model) {
    super(28);
    this.look = look;
    this.model = model;
    TypedForm form = model.form();
    FlowPane who =
        Fields.row(
            Fields.text(form.field("rider"), WORDS.say("rider"), "", 14),
            Fields.text(form.field("trail"), WORDS.say("trail"), "", 14),
            DateField.of(form.field("day"), WORDS.say("day"), WORDS.say("day.help")));
    Button add = Fields.button(WORDS.say("measure.add"), model::addMeasure);
    add.getStyleClass().add("quiet");
    model.measures().addListener((InvalidationListener) o -> measures());
    getChildren()
        .setAll(new VBox(10, h2("who"), who), where, new VBox(10, h2("measures"), measures, add));
  }

  private static Label h2(String key) {
    return Fields.words(WORDS.say(key), "h2");
  }

  /** Shows boxes for the columns of a file. */
  void columns(List<String> found) {
    columns = new ArrayList<>(found);
    FlowPane boxes = Fields.row();
    for (String field : OldDayModel.columnFields()) {
      boxes.getChildren().add(column(model.form().field(field), WORDS.say(field), true));
    }
    boxes.getChildren().add(decimals());
    where.getChildren().setAll(h2("where"), boxes);
    measures();
  }

  private VBox column(TypedForm.Entry entry, String title, boolean optional) {
    List<String> items = new ArrayList<>(columns);
    items.add(0, "");
    VBox box = Fields.choice(entry, title, items, optional ? WORDS.say("none") : "");
    ((Region) box.getChildren().get(1)).prefWidthProperty().bind(look.px(COLUMN));
    return box;
  }

  private VBox decimals() {
    List<String> names = OldDayModel.decimalSigns();
    VBox box = Fields.choice(model.form().field("decimals"), WORDS.say("decimals"), names, "");
    @SuppressWarnings("unchecked") // PlanFieldsView makes boxes of texts
    ComboBox<String> combo = (ComboBox<String>) box.getChildren().get(1);
    combo.setConverter(
        new StringConverter<String>() {
          @Override
          public String toString(@Nullable String name) {
            return name == null || name.isEmpty() ? "" : WORDS.say("decimals." + name);
          }

          @Override
          public String fromString(String shown) {
            return shown;
          }
        });
    return box;
  }

  private void measures() {
    measures.getChildren().setAll(model.measures().stream().map(this::measure).toList());
  }

  private VBox measure(TypedForm form) {
    FlowPane row = Fields.row(column(form.field("column"), WORDS.say("measure.column"), false));
    row.getChildren()
        .addAll(
            Fields.text(form.field("name"), WORDS.say("measure.name"), "", 14),
            Fields.choice(
                form.field("kind"), WORDS.say("measure.kind"), PlanOptions.of("kind"), ""));
    VBox unit = new VBox();
    unit(form, unit);
    form.field("kind").textProperty().addListener((o, before, now) -> unit(form, unit));
    row.getChildren().add(unit);
    VBox box = new VBox(8, row);
    box.getStyleClass().add("plan-row");
    if (model.measures().size() > 1) {
      Button remove = Fields.button(WORDS.say("measure.remove"), () -> model.remove(form));
      remove.getStyleClass().add("quiet");
      box.getChildren().add(remove);
    }
    return box;
  }

  /** Times have three units; other values are in whatever the plans say. */
  private void unit(TypedForm form, VBox place) {
    boolean timed = OldDayModel.settleUnit(form);
    VBox box =
        timed
            ? Fields.choice(
                form.field("unit"), WORDS.say("measure.unit"), OldDayModel.timeUnits(), "")
            : Fields.text(form.field("unit"), WORDS.say("measure.unit"), "", 8);
    // What is wrong with a unit is a sentence, and the box above it holds two letters.
    Region wrong = (Region) box.getChildren().get(box.getChildren().size() - 1);
    wrong.maxWidthProperty().unbind();
    wrong.maxWidthProperty().bind(look.px(SENTENCE));
    place.getChildren().setAll(box);
  }
}
