package blindlap.screen.plan;

import blindlap.plan.BlindLevel;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.LevelWords;
import blindlap.wording.PlanWords;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import javafx.beans.InvalidationListener;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * How blind the day is: one choice, and beside each what it proves, what it needs and what the
 * words may then say, to be compared down the columns. Where there is no room for columns, each
 * level is read from top to bottom.
 */
final class PlanLevelView extends SteadyBox {
  /** What is told of a level: the head of its column, and the words. */
  private record Tell(String head, Function<BlindLevel, String> words) {}

  private static final List<Tell> TELLS =
      List.of(
          new Tell("level.proves", LevelWords::proves),
          new Tell("level.needs", LevelWords::needs),
          new Tell("level.says", LevelWords::mayBeSaid));

  private static final double COLUMNS = 820;

  private final Look look;
  private final PlanLevel model;
  private final Map<BlindLevel, RadioButton> buttons = new EnumMap<>(BlindLevel.class);
  private final GridPane table = new GridPane();
  private boolean columns;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this view
  private final InvalidationListener watch;

  PlanLevelView(Look look, PlanLevel model) {
    super(10);
    this.look = look;
    this.model = model;
    table.getStyleClass().add("levels");
    table.setMinWidth(0);
    ToggleGroup group = new ToggleGroup();
    for (BlindLevel level : BlindLevel.values()) {
      buttons.put(level, button(level, group));
    }
    model.levelProperty().addListener((o, before, now) -> select(now));
    select(model.levelProperty().get());
    Label error = Fields.words("", "strong", "note");
    error.textProperty().bind(model.entry().errorProperty());
    error.managedProperty().bind(error.textProperty().isNotEmpty());
    getChildren().setAll(table, error);
    watch = look.watch(this::arrange);
    widthProperty().addListener(o -> refold());
    arrange();
  }

  private RadioButton button(BlindLevel level, ToggleGroup group) {
    RadioButton button = new RadioButton(name(level));
    button.setId("level-" + level);
    button.setToggleGroup(group);
    button.setWrapText(true);
    button.setMinWidth(0);
    button.setMinHeight(Region.USE_PREF_SIZE);
    button.getStyleClass().add("strong");
    button.getProperties().put(TypedForm.Entry.class, model.entry());
    button.setAccessibleHelp(
        String.join(" ", TELLS.stream().map(tell -> tells(tell, level)).toList()));
    button.setOnAction(e -> model.choose(level));
    return button;
  }

  private void select(BlindLevel level) {
    buttons.forEach((each, button) -> button.setSelected(each == level));
  }

  private static String name(BlindLevel level) {
    String name = LevelWords.name(level);
    return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
  }

  private static String tells(Tell tell, BlindLevel level) {
    return PlanWords.say(tell.head()) + ": " + tell.words().apply(level);
  }

  private void refold() {
    if (columns != wide()) {
      arrange();
    }
  }

  private boolean wide() {
    return getWidth() >= look.px(COLUMNS).get();
  }

  private void arrange() {
    columns = wide();
    table.getChildren().clear();
    table.getColumnConstraints().clear();
    table.setHgap(look.px(20).get());
    table.setVgap(look.px(columns ? 12 : 16).get());
    if (columns) {
      inColumns();
    } else {
      below();
    }
  }

  private void inColumns() {
    List<Double> shares = List.of(19.0, 29.0, 25.0, 27.0);
    shares.forEach(this::column);
    for (int i = 0; i < TELLS.size(); i++) {
      table.add(Fields.words(PlanWords.say(TELLS.get(i).head()), "note", "second"), i + 1, 0);
    }
    buttons.forEach(
        (level, button) -> {
          int row = level.ordinal() + 1;
          table.add(top(button), 0, row);
          for (int i = 0; i < TELLS.size(); i++) {
            table.add(top(Fields.words(TELLS.get(i).words().apply(level))), i + 1, row);
          }
        });
  }

  private void below() {
    column(100);
    buttons.forEach(
        (level, button) -> {
          List<Node> parts = new ArrayList<>(List.of(button));
          TELLS.forEach(
              tell -> {
                Label line = Fields.words(tells(tell, level));
                line.getStyleClass().add("level-line");
                parts.add(line);
              });
          table.add(new VBox(4, parts.toArray(Node[]::new)), 0, level.ordinal());
        });
  }

  private void column(double share) {
    ColumnConstraints column = new ColumnConstraints();
    column.setPercentWidth(share);
    table.getColumnConstraints().add(column);
  }

  private static Node top(Region part) {
    GridPane.setValignment(part, VPos.TOP);
    return part;
  }
}
