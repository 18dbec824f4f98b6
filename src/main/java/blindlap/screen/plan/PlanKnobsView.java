package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.List;
import java.util.Map;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.TitledPane;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** The knobs that decide what a day can show: stints, rule, worthwhile difference, noise. */
final class PlanKnobsView extends SteadyBox {
  private final PlanModel model;
  private final VBox rules = new VBox(6);
  private final VBox worthwhile = new VBox();
  private List<String> fitting = List.of();

  PlanKnobsView(PlanModel model) {
    super(16);
    this.model = model;
    getStyleClass().add("knobs");
    FlowPane left = Fields.row(stints(), worthwhile, noise());
    left.setHgap(32);
    rules();
    worthwhile();
    model.form().list("setups").addListener((ListChangeListener<TypedForm>) change -> rules());
    model
        .form()
        .list("measures")
        .addListener((ListChangeListener<TypedForm>) change -> worthwhile());
    model.planProperty().addListener((o, before, now) -> judged());
    Label said = Fields.words("", "note");
    said.setId("noise-said");
    said.textProperty().bind(model.noise().saidProperty());
    said.managedProperty().bind(said.textProperty().isNotEmpty());
    getChildren().setAll(left, said, earlier(), statistician(), rules);
  }

  /** For those who know it as a standard deviation; everybody else answers the easy question. */
  private TitledPane statistician() {
    TypedForm noise = model.form().part("noise");
    return PlanFieldsView.fold(
        "knob.statistician",
        Fields.row(
            PlanFieldsView.text(noise, "sd", 6),
            PlanFieldsView.text(noise, "df", 6),
            PlanFieldsView.text(noise, "noise", "laps", 6),
            PlanFieldsView.text(noise, "noise", "stint_share", 10)));
  }

  private FlowPane earlier() {
    Button take = Fields.button(PlanWords.say("noise.take"), model.noise()::takeFromEarlierDays);
    take.getStyleClass().add("quiet");
    Label message = Fields.words("", "note", "second");
    message.textProperty().bind(model.noise().messageProperty());
    return Fields.row(take, message);
  }

  private VBox stints() {
    TypedForm.Entry entry = model.form().field("stints");
    VBox field = Fields.text(entry, PlanWords.field("stints"), "", 3);
    Fields.helped(field, PlanWords.help("stints"));
    TextField typed = (TextField) field.getChildren().get(1);
    typed.setId("stints");
    Button fewer = turn("−", "fewer", -1);
    Button more = turn("+", "more", 1);
    HBox row = new HBox(6, fewer, typed, more);
    row.setAlignment(Pos.CENTER_LEFT);
    field.getChildren().add(1, row);
    return field;
  }

  private Button turn(String sign, String words, int by) {
    Button button = Fields.button(sign, () -> model.rules().turnStints(by));
    button.setAccessibleText(PlanWords.say(words));
    button.setId(words);
    button.getStyleClass().add("turn");
    return button;
  }

  private VBox noise() {
    return Fields.helped(
        Fields.text(
            model.form().part("noise").field("usual_difference"),
            PlanWords.say("knob.usual"),
            "",
            6),
        PlanWords.help("knob.usual"));
  }

  private void worthwhile() {
    TypedForm primary = model.primary().orElse(null);
    if (primary == null) {
      worthwhile.getChildren().clear();
      worthwhile.setUserData(null);
    } else if (worthwhile.getUserData() != primary) {
      worthwhile.setUserData(primary);
      worthwhile
          .getChildren()
          .setAll(
              Fields.helped(
                  Fields.text(primary.field("worthwhile"), PlanWords.say("knob.worthwhile"), "", 6),
                  PlanWords.help("worthwhile")));
    }
  }

  /** Levels are no setups of the form: which rules fit them is known once they are read. */
  private void judged() {
    worthwhile();
    if (!fitting.equals(model.rules().protocolsThatFit())) {
      rules();
    }
    chosen(model.rules().protocolNow());
  }

  private void chosen(String name) {
    rules.getChildren().stream()
        .filter(each -> each instanceof RadioButton)
        .map(RadioButton.class::cast)
        .forEach(each -> each.setSelected(each.getId().equals("rule-" + name)));
  }

  private void rules() {
    fitting = model.rules().protocolsThatFit();
    ToggleGroup group = new ToggleGroup();
    Label title = Fields.words(PlanWords.field("protocol"), "note");
    Label help = Fields.words(PlanWords.help("protocol"), "note", "second");
    rules.getChildren().setAll(title, help);
    Map<String, String> words = model.rules().protocols();
    TypedForm.Entry entry = model.form().field("protocol");
    for (String name : fitting) {
      RadioButton button = new RadioButton(words.get(name));
      button.setWrapText(true);
      button.setId("rule-" + name);
      button.setToggleGroup(group);
      button.setSelected(name.equals(model.rules().protocolNow()));
      button.setOnAction(e -> model.rules().chooseProtocol(name));
      rules.getChildren().add(button);
    }
    Label error = Fields.words("", "strong", "note");
    error.textProperty().bind(entry.errorProperty());
    error.managedProperty().bind(error.textProperty().isNotEmpty());
    rules.getChildren().add(error);
  }
}
