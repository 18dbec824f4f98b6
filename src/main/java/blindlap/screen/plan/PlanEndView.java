package blindlap.screen.plan;

import blindlap.plan.BlindLevel;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Words;
import java.util.function.Consumer;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The end of the page: what is still to mend, what is good to know, and the commit. */
final class PlanEndView extends SteadyBox {
  private final PlanModel model;
  private final Consumer<String> jump;
  private final VBox mends = new VBox(6);
  private final VBox mendBox = Fields.section(PlanFieldsView.heading("head.problems"), mends);

  /**
   * @param jump goes to the field at a path, as in a plan file
   */
  PlanEndView(PlanModel model, Consumer<String> jump) {
    super(16);
    this.model = model;
    this.jump = jump;
    model.mends().addListener((ListChangeListener<PlanMend>) change -> mends());
    mends();
    VBox hints = new VBox(4);
    VBox hintBox = Fields.section(PlanFieldsView.heading("head.hints"), hints);
    lines(model.hints(), hints, hintBox);
    Button begin = Fields.button(PlanWords.say("commit.begin"), model.commit()::begin);
    begin.getStyleClass().add("next");
    begin.setId("commit-begin");
    begin.disableProperty().bind(model.completeProperty().not());
    Label message = Fields.words("", "strong");
    message.textProperty().bind(model.commit().messageProperty());
    message.managedProperty().bind(message.textProperty().isNotEmpty());
    getChildren()
        .setAll(
            mendBox,
            hintBox,
            override(),
            fold(),
            new Caution(PlanWords.say("caution") + ".", Words.of("cautions").say("short")),
            Fields.section(
                PlanFieldsView.heading("head.commit"), Fields.row(begin), message, after()));
  }

  /** What the commit does, at the level of the draft. */
  private Label after() {
    PlanLevel level = new PlanLevel(model.form().part("blinding"), model::step);
    Label after = Fields.words("", "second");
    after
        .textProperty()
        .bind(level.levelProperty().map(now -> PlanWords.say("commit.after" + key(now))));
    return after;
  }

  private static String key(BlindLevel level) {
    return switch (level) {
      case HELPER -> "";
      case PREPARED -> ".prepared";
      case OPEN, DRAWN, MASKED -> ".alone";
    };
  }

  private TitledPane fold() {
    TitledPane fold = PlanFieldsView.fold("head.series", series());
    PlanTellingView.shownWhile(fold, model.rules().telling().alone().not());
    return fold;
  }

  private VBox series() {
    Label place = Fields.words("", "strong");
    place.textProperty().bind(model.copies().placeProperty());
    place.managedProperty().bind(place.textProperty().isNotEmpty());
    return new VBox(
        10,
        Fields.words(PlanWords.say("series.what"), "second"),
        place,
        Fields.row(
            PlanFieldsView.text(model.form(), "series", 24),
            PlanFieldsView.text(model.form(), "series_sessions", 6)));
  }

  /** Asked for only where the plan cannot show anything, and kept in view once it is given. */
  private VBox override() {
    TypedForm.Entry entry = model.form().field("override");
    VBox box = PlanFieldsView.text(model.form(), "override", 40);
    box.visibleProperty()
        .bind(entry.errorProperty().isNotEmpty().or(entry.textProperty().isNotEmpty()));
    box.managedProperty().bind(box.visibleProperty());
    return box;
  }

  /** What is missing in one line, what is wrong a line each; each goes to its field. */
  private void mends() {
    FlowPane missing = Fields.row();
    missing.setHgap(10);
    missing.setVgap(4);
    mends.getChildren().clear();
    for (PlanMend mend : model.mends()) {
      if (mend.missing()) {
        if (missing.getChildren().isEmpty()) {
          missing.getChildren().add(Fields.words(PlanWords.say("mend.missing")));
          mends.getChildren().add(0, missing);
        }
        missing.getChildren().add(link(mend));
      } else {
        mends.getChildren().add(link(mend));
      }
    }
    mendBox.setVisible(!model.mends().isEmpty());
    mendBox.setManaged(!model.mends().isEmpty());
  }

  private Node link(PlanMend mend) {
    Hyperlink link = new Hyperlink(mend.words());
    link.setWrapText(true);
    link.setMinHeight(Region.USE_PREF_SIZE);
    link.getStyleClass().add("strong");
    link.setOnAction(e -> jump.accept(mend.path()));
    return link;
  }

  private static void lines(ObservableList<String> from, VBox to, VBox around) {
    Runnable show =
        () -> {
          to.getChildren().setAll(from.stream().map(l -> Fields.words(l, "second")).toList());
          around.setVisible(!from.isEmpty());
          around.setManaged(!from.isEmpty());
        };
    from.addListener((ListChangeListener<String>) change -> show.run());
    show.run();
  }
}
