package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import blindlap.screen.part.TypedForm;
import blindlap.wording.WorkshopWords;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** Opens workshop arithmetic beside a field, and takes its result over into it. */
final class SettingAidView extends VBox {
  private static final double WIDTH = 560;

  private final SettingAid aid;
  private final Button open = new Button(WorkshopWords.say("open"));

  private SettingAidView(SettingAid aid, String what) {
    super(8);
    this.aid = aid;
    open.getStyleClass().addAll("quiet", "aid");
    open.setAccessibleText(WorkshopWords.say("open") + ": " + what);
    open.setOnAction(e -> open());
    close();
  }

  /** Beside the value of a setting; not there where nothing ends in its unit. */
  static SettingAidView ofSetting(TypedForm setting) {
    SettingAidView view =
        new SettingAidView(SettingAid.ofSetting(setting), setting.field("name").get());
    setting.field("unit").textProperty().addListener((o, before, now) -> view.close());
    return view;
  }

  /** Beside the ballast of a setup. */
  static SettingAidView ofBallast(TypedForm setup) {
    return new SettingAidView(SettingAid.ofBallast(setup), setup.field("name").get());
  }

  private void close() {
    boolean any = !aid.lines().isEmpty();
    setVisible(any);
    setManaged(any);
    setPrefWidth(USE_COMPUTED_SIZE);
    getStyleClass().remove("plan-row");
    getChildren().setAll(open);
  }

  private void open() {
    VBox work = new VBox(6);
    List<WorkshopModel.Line> lines = aid.lines();
    ComboBox<WorkshopModel.Line> choice = new ComboBox<>();
    choice.getItems().setAll(lines);
    choice.setConverter(new Titles());
    choice.setAccessibleText(WorkshopWords.say("choose"));
    choice.valueProperty().addListener((o, before, now) -> show(work, now));
    choice.setValue(lines.get(0));
    Button close =
        Fields.button(
            WorkshopWords.say("close"),
            () -> {
              close();
              open.requestFocus();
            });
    close.getStyleClass().add("quiet");
    setPrefWidth(WIDTH);
    getStyleClass().add("plan-row");
    getChildren().setAll(Fields.row(choice, close), work);
    choice.requestFocus();
  }

  private void show(VBox work, WorkshopModel.Line line) {
    Button use = new Button();
    use.getStyleClass().add("aid-use");
    use.setOnAction(e -> take(line));
    Label result = Fields.words("", "strong");
    result.textProperty().bind(line.resultProperty());
    Runnable offer =
        () -> {
          Optional<WorkshopWords.Answer> answer =
              line.answerProperty().get().filter(WorkshopWords.Answer::usable);
          use.setText(answer.map(WorkshopWords::use).orElse(""));
          use.setVisible(answer.isPresent());
          use.setManaged(answer.isPresent());
        };
    line.answerProperty().addListener((o, before, now) -> offer.run());
    offer.run();
    work.getChildren()
        .setAll(
            Fields.words(line.formula(), "note", "second"), WorkshopPane.inputs(line), result, use);
  }

  private void take(WorkshopModel.Line line) {
    line.answerProperty().get().ifPresent(aid::use);
    close();
    open.requestFocus();
  }

  private static final class Titles extends StringConverter<WorkshopModel.Line> {
    @Override
    public String toString(WorkshopModel.@Nullable Line line) {
      return line == null ? "" : line.title();
    }

    @Override
    public WorkshopModel.@Nullable Line fromString(String title) {
      return null;
    }
  }
}
