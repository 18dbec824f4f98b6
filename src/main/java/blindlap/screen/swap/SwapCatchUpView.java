package blindlap.screen.swap;

import blindlap.desk.PaperForm;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.session.KeptOnPaper;
import blindlap.session.SafetyCheck;
import blindlap.wording.SwapWords;
import blindlap.wording.day.SafetyRow;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** One stint after the other from paper; nothing is chosen or ticked beforehand. */
final class SwapCatchUpView extends VBox {
  private final Look look;
  private final SwapLater later;
  private final VBox measured = new VBox(8);
  private final Map<String, TextField> fields = new LinkedHashMap<>();
  private final Set<SafetyCheck> ticked = EnumSet.noneOf(SafetyCheck.class);
  private final TextField by = Fields.wide(new TextField());
  private final TextField note = Fields.wide(new TextField());

  @SuppressWarnings("FieldCanBeLocal") // held, for the model holds it weakly
  private final ChangeListener<@Nullable SwapPaper> changed =
      (o, before, now) -> {
        if (before == null || now == null || before.stint() != now.stint()) {
          show(now);
        }
      };

  private @Nullable Integer fitted;
  private int stint = -1;

  SwapCatchUpView(Look look, SwapLater later) {
    super(12);
    this.look = look;
    this.later = later;
    for (TextField each : List.of(by, note)) {
      each.minHeightProperty().bind(look.touch());
      each.textProperty().addListener((o, before, now) -> typing());
    }
    by.setAccessibleText(SwapWords.say("later.paper.by"));
    note.setAccessibleText(SwapWords.say("later.paper.note"));
    later.paperProperty().addListener(new WeakChangeListener<>(changed));
    show(later.paperProperty().get());
  }

  private void show(@Nullable SwapPaper now) {
    stint = -1; // what is put into the fields now is not being typed
    getChildren().clear();
    ticked.clear();
    fields.clear();
    measured.getChildren().clear();
    if (now == null) {
      return;
    }
    PaperForm before = later.typed(now.stint());
    fitted = before.fitted();
    ticked.addAll(before.confirmed());
    by.setText(before.by().isEmpty() ? by.getText() : before.by());
    note.setText(before.note());
    build(now, before);
    stint = now.stint();
  }

  private void build(SwapPaper now, PaperForm before) {
    Label head = new Label(now.head());
    head.getStyleClass().add("field-title");
    head.setWrapText(true);
    Label standing = new Label(now.standing());
    standing.setWrapText(true);
    Button record = Fields.wide(new Button(SwapWords.say("later.paper.record", now.called())));
    record.minHeightProperty().bind(look.touch());
    record.setWrapText(true);
    record.setDisable(fitted == null);
    record.setOnAction(e -> form(now.stint()).whole().ifPresent(later::keptOnPaper));
    ChoiceRow<Integer> row =
        new ChoiceRow<>(
            look,
            SwapWords.say("later.paper.fitted"),
            options(now),
            2,
            chosen -> {
              fitted = chosen;
              settings(now, chosen, typed());
              record.setDisable(false);
              typing();
            });
    Integer chosen = fitted;
    if (chosen != null) {
      row.show(chosen);
      settings(now, chosen, before.measured());
    }
    getChildren().addAll(head, standing, row, ticks(now));
    getChildren().addAll(asked("later.paper.by", by), by, measured);
    getChildren().addAll(asked("later.paper.note", note), note, record);
  }

  /** Something was typed, ticked or chosen: it is kept half way. */
  private void typing() {
    if (stint >= 0) {
      later.typing(form(stint));
    }
  }

  private PaperForm form(int of) {
    return new PaperForm(of, fitted, by.getText(), ticked, typed(), note.getText());
  }

  private static List<ChoiceRow.Option<Integer>> options(SwapPaper now) {
    List<ChoiceRow.Option<Integer>> options = new ArrayList<>();
    options.add(
        new ChoiceRow.Option<>(
            KeptOnPaper.AS_SCHEDULED, SwapWords.say("later.paper.as.scheduled")));
    for (int i = 0; i < now.setups().size(); i++) {
      if (i != now.scheduled()) {
        String words = SwapWords.say("later.paper.otherwise", now.setups().get(i));
        options.add(new ChoiceRow.Option<>(i, words));
      }
    }
    return options;
  }

  private static Label asked(String key, TextField field) {
    Label asked = new Label(SwapWords.say(key));
    asked.setLabelFor(field);
    asked.setWrapText(true);
    return asked;
  }

  private VBox ticks(SwapPaper now) {
    Label title = new Label(SwapWords.say("later.paper.ticks"));
    title.getStyleClass().add("field-title");
    title.setWrapText(true);
    VBox box = new VBox(4, title);
    for (SafetyRow check : now.checks()) {
      CheckBox tick = Fields.wide(new CheckBox(check.words()));
      tick.setWrapText(true);
      tick.minHeightProperty().bind(look.touch());
      SafetyCheck of = SafetyCheck.valueOf(check.key());
      tick.setSelected(ticked.contains(of));
      tick.setOnAction(e -> tick(of, tick.isSelected()));
      box.getChildren().add(tick);
    }
    return box;
  }

  private void tick(SafetyCheck check, boolean yes) {
    if (yes) {
      ticked.add(check);
    } else {
      ticked.remove(check);
    }
    typing();
  }

  /**
   * The settings of what was fitted.
   *
   * @param fitted as chosen
   * @param typed what was typed before: for a setting that both have it stays
   */
  private void settings(SwapPaper now, int fitted, Map<String, String> typed) {
    int setup = fitted == KeptOnPaper.AS_SCHEDULED ? now.scheduled() : fitted;
    fields.clear();
    GridPane grid = new GridPane();
    grid.setHgap(16);
    grid.setVgap(8);
    int row = 0;
    for (String name : now.settings().get(setup)) {
      TextField field = Fields.wide(new TextField(typed.getOrDefault(name, "")));
      field.minHeightProperty().bind(look.touch());
      field.setAccessibleText(SwapWords.say("later.paper.measured", name));
      field.textProperty().addListener((o, before, after) -> typing());
      fields.put(name, field);
      Label label = new Label(SwapWords.say("later.paper.measured", name));
      label.setLabelFor(field);
      label.setWrapText(true);
      grid.addRow(row++, label, field);
    }
    measured.getChildren().setAll(grid);
  }

  private Map<String, String> typed() {
    Map<String, String> typed = new LinkedHashMap<>();
    fields.forEach((name, field) -> typed.put(name, field.getText()));
    return typed;
  }
}
