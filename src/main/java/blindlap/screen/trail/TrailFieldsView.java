package blindlap.screen.trail;

import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.RoomFrame;
import blindlap.screen.part.WholeChoice;
import blindlap.session.TrailTitle;
import blindlap.wording.TrailWords;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** Beside the drawing: which trail, its gates, the one in hand, and what to do with them. */
final class TrailFieldsView extends VBox {
  private static final int NAME_COLUMNS = 13;
  private static final int NUMBER_COLUMNS = 5;

  private final TrailModel model;
  private final Dialogs dialogs;
  private final TrailGatesView gates;

  TrailFieldsView(Look look, TrailModel model, Dialogs dialogs) {
    super(8);
    this.model = model;
    this.dialogs = dialogs;
    this.gates = new TrailGatesView(model);
    setMinWidth(0);
    ObservableBooleanValue there = there();
    getChildren()
        .setAll(
            shown(Bindings.isNotEmpty(model.titles()), choice(look)),
            shown(there, new VBox(2, gatesHead(), gates)),
            shown(there, gate()),
            shown(there, another()),
            shown(Bindings.and(there, model.recordingProperty()), lap()),
            shown(there, keep()),
            notice(),
            files(there),
            uses());
  }

  /** Puts the focus on the gate in hand. */
  void focusGate() {
    gates.focus();
  }

  private ObservableBooleanValue there() {
    return Bindings.createBooleanBinding(
        () -> model.hand().sightProperty().get().draft().isPresent(), model.hand().sightProperty());
  }

  private static <T extends Node> T shown(ObservableBooleanValue when, T node) {
    node.visibleProperty().bind(when);
    node.managedProperty().bind(when);
    return node;
  }

  private Node choice(Look look) {
    ComboBox<TrailTitle> box = new WholeChoice<>(model.titles());
    box.valueProperty().bindBidirectional(model.titleProperty());
    VBox choice =
        RoomFrame.choice(
            TrailWords.say("page.version"),
            box,
            title ->
                TrailWords.say("page.version.of", title.name(), String.valueOf(title.number())));
    choice.maxWidthProperty().bind(look.px(420));
    return choice;
  }

  /** What is typed is taken over when the field is left, or with Enter. */
  private VBox applied(VBox field) {
    TextField typed = (TextField) field.getChildren().get(1);
    typed
        .focusedProperty()
        .addListener(
            (o, before, now) -> {
              if (!now) {
                model.hand().apply();
              }
            });
    typed.setOnAction(e -> model.hand().apply());
    return field;
  }

  private VBox field(String name, String title, int columns) {
    return Fields.text(model.form().field(name), TrailWords.say(title), "", columns);
  }

  private Node gate() {
    FlowPane row =
        Fields.row(
            applied(field("gate", "page.gate.name", NAME_COLUMNS)),
            applied(field("along", "page.gate.along", NUMBER_COLUMNS)),
            applied(field("width", "page.gate.width", NUMBER_COLUMNS)));
    return shown(chosen(), row);
  }

  private ObservableBooleanValue chosen() {
    return Bindings.createBooleanBinding(
        () -> model.hand().sightProperty().get().gate().isPresent(), model.hand().sightProperty());
  }

  private Node another() {
    VBox field = field("new", "page.new.along", NUMBER_COLUMNS);
    TextField typed = (TextField) field.getChildren().get(1);
    typed.setOnAction(e -> model.hand().addTyped());
    Button remove = quiet("", model.hand()::remove);
    remove
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    model
                        .hand()
                        .sightProperty()
                        .get()
                        .gate()
                        .map(gate -> TrailWords.say("page.remove", gate.name()))
                        .orElse(""),
                model.hand().sightProperty()));
    FlowPane row =
        Fields.row(
            field,
            quiet(TrailWords.say("page.new"), model.hand()::addTyped),
            shown(chosen(), remove));
    row.setRowValignment(VPos.BOTTOM);
    return row;
  }

  /** What can be taken back has a place of its own, so that nothing moves when it comes. */
  private Node gatesHead() {
    Button undo = quiet("", model.hand()::takeBack);
    undo.textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> TrailWords.say("page.undo", model.hand().undoProperty().get()),
                model.hand().undoProperty()));
    undo.visibleProperty().bind(model.hand().undoProperty().isNotEmpty());
    Label head = Fields.words(TrailWords.say("page.gates"), "h2");
    head.setMinWidth(USE_PREF_SIZE);
    HBox row = new HBox(16, head, undo);
    row.setAlignment(Pos.CENTER_LEFT);
    row.setMinWidth(0);
    return row;
  }

  private Node lap() {
    FlowPane row =
        Fields.row(
            field("from", "page.lap.from", NUMBER_COLUMNS),
            field("to", "page.lap.to", NUMBER_COLUMNS),
            quiet(TrailWords.say("page.lap"), model::takeLap));
    row.setRowValignment(VPos.BOTTOM);
    return row;
  }

  private Node keep() {
    Button keep = Fields.button(TrailWords.say("page.keep"), model::keep);
    keep.getStyleClass().add("next");
    keep.disableProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> {
                  TrailSight now = model.hand().sightProperty().get();
                  return now.draft().filter(draft -> draft.gates().size() >= 2).isEmpty();
                },
                model.hand().sightProperty()));
    FlowPane row = Fields.row(field("name", "page.name", NAME_COLUMNS), keep);
    row.setRowValignment(VPos.BOTTOM);
    return row;
  }

  private Node files(ObservableBooleanValue there) {
    FlowPane row = new FlowPane(10, 8);
    row.getChildren()
        .setAll(
            recording(),
            quiet(
                TrailWords.say("page.read.geojson"),
                () ->
                    dialogs
                        .openFile(TrailWords.say("page.read.geojson"))
                        .ifPresent(model::readGeoJson)),
            shown(
                there,
                quiet(
                    TrailWords.say("page.write.geojson"),
                    () ->
                        dialogs
                            .saveFile(TrailWords.say("page.write.geojson"), "trail.geojson")
                            .ifPresent(model::writeGeoJson))));
    return row;
  }

  /** The next step on an empty page. */
  private Button recording() {
    String words = TrailWords.say("page.read.recording");
    Button button = quiet(words, () -> dialogs.openFile(words).ifPresent(model::readRecording));
    // Listened to at its source: a binding that nothing else holds would be let go with its
    // listener.
    model.hand().sightProperty().addListener((o, before, now) -> next(button, now));
    next(button, model.hand().sightProperty().get());
    return button;
  }

  private static void next(Button button, TrailSight sight) {
    button.getStyleClass().remove("next");
    if (sight.draft().isEmpty()) {
      button.getStyleClass().add("next");
    }
  }

  private static Button quiet(String words, Runnable work) {
    Button button = Fields.button(words, work);
    button.getStyleClass().add("quiet");
    return button;
  }

  /** Where the hand is; a line is kept free for it, so that nothing moves when it comes. */
  private Node notice() {
    Label label = Fields.words("", "strong", "note");
    label.textProperty().bind(model.noticeProperty());
    label.setAccessibleRole(AccessibleRole.TEXT);
    return label;
  }

  private Node uses() {
    Label label = Fields.words("", "note", "second");
    label
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> {
                  List<String> lines = model.hand().sightProperty().get().uses();
                  return String.join("\n", lines);
                },
                model.hand().sightProperty()));
    return shown(label.textProperty().isNotEmpty(), label);
  }
}
