package blindlap.screen.alone;

import blindlap.desk.LapWaits;
import blindlap.plot.LoneMark;
import blindlap.plot.SetupMark;
import blindlap.plot.surface.Spoken;
import blindlap.screen.part.BigWords;
import blindlap.screen.part.Caution;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.TickKeys;
import blindlap.screen.part.WholeInView;
import blindlap.screen.ride.OwnSwapView;
import blindlap.wording.AloneWords;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javafx.beans.InvalidationListener;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * What a rider who swaps alone mounts next. Two steps that follow each other never stand at one
 * place: what shows it is at the right, the gate below at the left, the watch in the other column.
 */
public final class AloneView extends VBox implements OwnSwapView {
  private static final double COLUMNS = 700;
  private static final double MARK = 48;
  private static final double NAME = 64;
  private static final double GATE = 230;
  private static final int FEW = 3;

  private final Look look;
  private final AloneModel model;
  private final Deaf deaf;
  private final Label lead = new Label();
  private final Label waits = Fields.words("", "note");
  private final Label trouble = Fields.words("", "strong");
  private final Button gate = new Button();

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this view
  private final InvalidationListener watch;

  private @Nullable AloneSettingsView settings;
  private @Nullable AloneSafetyView safety;
  private @Nullable ChoiceRow<Integer> fitted;
  private List<Object> built = List.of();

  /** The view of a model. */
  public AloneView(Look look, AloneModel model) {
    super(6);
    this.look = look;
    this.model = model;
    this.deaf = new Deaf(model.monotonic());
    getStyleClass().add("alone");
    deaf.guard(this);
    lead.getStyleClass().add("lead");
    lead.setWrapText(true);
    lead.setMinHeight(USE_PREF_SIZE);
    lead.setFocusTraversable(true); // a key that bounces finds words and no button
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    gate();
    model.sheetProperty().addListener((o, before, now) -> show(now));
    widthProperty().addListener(o -> show(model.sheetProperty().get()));
    watch = look.watch(() -> show(model.sheetProperty().get()));
    new TickKeys(this::letter, step -> false).listen(this);
    show(model.sheetProperty().get());
  }

  private void gate() {
    gate.getStyleClass().add("next");
    gate.setWrapText(true);
    gate.minHeightProperty().bind(look.touch());
    gate.minWidthProperty().bind(look.px(GATE));
    gate.setOnAction(e -> deaf.hear(model::mounted));
    model.waitsProperty().addListener((o, before, now) -> waits(now));
    waits(model.waitsProperty().get());
    waits.setMinWidth(0);
  }

  private void waits(LapWaits now) {
    gate.setDisable(!now.none());
    waits.setText(now.brief());
    waits.setAccessibleText(now.whole());
  }

  @Override
  public ReadOnlyBooleanProperty aloneProperty() {
    return model.aloneProperty();
  }

  @Override
  public Node view() {
    return this;
  }

  @Override
  public void comes() {
    deaf.begin();
    model.reload();
  }

  @Override
  public Node first() {
    return needed()
        .filter(node -> node.getScene() != null && !(node instanceof ButtonBase))
        .orElse(lead);
  }

  private boolean columns() {
    return !look.stacked() && getWidth() >= COLUMNS * Math.max(1, look.textScale());
  }

  private void show(Optional<AloneSheet> now) {
    if (now.isEmpty()) {
      built = List.of();
      getChildren().clear();
      return;
    }
    AloneSheet sheet = now.get();
    List<Object> key =
        List.of(sheet.stint(), sheet.hidden(), sheet.fitted(), columns(), look.textScale());
    if (key.equals(built)) {
      again(sheet);
      return;
    }
    boolean other = built.isEmpty() || !key.subList(0, 2).equals(built.subList(0, 2));
    built = key;
    if (other) {
      deaf.begin();
    }
    if (sheet.hidden()) {
      hidden(sheet);
    } else {
      mount(sheet);
    }
    if (other && getScene() != null) {
      lead.requestFocus();
    }
  }

  private void again(AloneSheet sheet) {
    AloneSettingsView values = settings;
    AloneSafetyView list = safety;
    if (values != null && list != null) {
      values.show(sheet);
      list.show(sheet);
    }
    ChoiceRow<Integer> really = fitted;
    if (really != null) {
      really.show(sheet.fitted());
    }
  }

  private void hidden(AloneSheet sheet) {
    settings = null;
    safety = null;
    lead.setText(of(sheet.paper() ? "paper" : "hidden", sheet.stint()));
    Button show = new Button(AloneWords.say("show"));
    show.getStyleClass().add("next");
    show.setWrapText(true);
    show.minHeightProperty().bind(look.touch());
    show.setMinWidth(USE_PREF_SIZE);
    show.setOnAction(e -> deaf.hear(model::showNext));
    HBox right = new HBox(show);
    right.setAlignment(Pos.CENTER_RIGHT);
    getChildren()
        .setAll(
            WholeInView.together(
                new VBox(12, lead, Fields.words(AloneWords.say("hidden.note")), right, trouble)));
  }

  private void mount(AloneSheet sheet) {
    lead.setText(
        sheet.paper()
            ? of("paper", sheet.stint())
            : AloneWords.say(sheet.prepared() ? "mount.unit" : "mount"));
    settings = new AloneSettingsView(look, model, sheet, this::next);
    AloneSafetyView list = new AloneSafetyView(look, model, sheet, columns() ? 2 : 1, this::next);
    safety = list;
    VBox left = new VBox(6, steps(sheet), settings);
    VBox right = new VBox(10, list);
    right.getChildren().addAll(limits(sheet));
    right
        .getChildren()
        .add(new Caution(SwapWords.say("caution"), Words.of("cautions").say("short")));
    Optional<Node> really = really(sheet);
    gate.setText(of(sheet.paper() ? "record" : "go", sheet.stint()));
    List<Node> parts = new ArrayList<>();
    Label swap = Fields.words(sheet.swap());
    // Beside the name and not below the settings, so that the gate stays within the window.
    if (columns() && sheet.prepared()) {
      parts.add(columns(what(sheet), list.asked()));
      parts.add(columns(swap, list.seen()));
    } else if (columns() && really.isPresent()) {
      parts.addAll(List.of(columns(what(sheet), really.get()), swap));
    } else {
      really.ifPresent(left.getChildren()::add);
      parts.addAll(List.of(what(sheet), swap));
      if (sheet.prepared()) {
        parts.add(WholeInView.together(new VBox(6, list.asked(), list.seen())));
      }
    }
    if (columns()) {
      left.getChildren().addAll(gate, waits);
      parts.add(columns(left, right));
      parts.add(trouble);
    } else {
      parts.addAll(List.of(left, right, trouble, waits, gate));
    }
    getChildren().setAll(parts);
  }

  /** A sentence about a stint; the warm-up has its own. */
  private static String of(String key, int stint) {
    return stint == 0 ? AloneWords.say(key + ".0") : AloneWords.say(key, stint);
  }

  private Region what(AloneSheet sheet) {
    BigWords name = BigWords.setupName(look);
    name.atMost(NAME);
    name.say(sheet.name());
    name.setMinWidth(0);
    HBox.setHgrow(name, Priority.ALWAYS);
    lead.setMinWidth(USE_PREF_SIZE);
    HBox what = new HBox(16, lead);
    Integer setup = sheet.setup();
    if (setup != null) {
      PlotView mark =
          new PlotView(look, LoneMark.of(SetupMark.values()[setup], new Spoken(sheet.name(), "")));
      for (var width :
          List.of(mark.minWidthProperty(), mark.prefWidthProperty(), mark.maxWidthProperty())) {
        width.bind(look.px(MARK));
      }
      mark.maxHeightProperty().bind(look.px(MARK));
      mark.setAccessibleText("");
      what.getChildren().add(mark);
    }
    what.getChildren().add(name);
    what.setAlignment(Pos.CENTER_LEFT);
    boolean words = sheet.paper() || sheet.prepared() && sheet.stint() == 0;
    if (columns() && !words) {
      return what;
    }
    // A sentence needs a line of its own, and so do words in place of a code.
    lead.setMinWidth(0);
    what.getChildren().remove(lead);
    return new VBox(4, lead, what);
  }

  private static VBox steps(AloneSheet sheet) {
    VBox steps = new VBox(2, Fields.words(AloneWords.say("do"), "h2"));
    for (int i = 0; i < sheet.steps().size(); i++) {
      steps.getChildren().add(Fields.words((i + 1) + "  " + sheet.steps().get(i)));
    }
    return steps;
  }

  private static List<Node> limits(AloneSheet sheet) {
    List<Node> lines = new ArrayList<>();
    sheet.limits().forEach(limit -> lines.add(Fields.words(limit, "note")));
    sheet.cautions().forEach(each -> lines.add(Fields.words(each, "note", "strong")));
    return lines;
  }

  private static GridPane columns(Node left, Node right) {
    GridPane grid = new GridPane();
    grid.setHgap(32);
    for (int i = 0; i < 2; i++) {
      ColumnConstraints half = new ColumnConstraints();
      half.setPercentWidth(50);
      grid.getColumnConstraints().add(half);
    }
    grid.add(left, 0, 0);
    grid.add(right, 1, 0);
    return grid;
  }

  /** What was really mounted may be other than what was shown. */
  private Optional<Node> really(AloneSheet sheet) {
    if (sheet.names().isEmpty()) {
      fitted = null;
      return Optional.empty();
    }
    ChoiceRow<Integer> choice =
        new ChoiceRow<>(
            look,
            AloneWords.say("fitted"),
            IntStream.range(0, sheet.names().size())
                .mapToObj(i -> new ChoiceRow.Option<>(i, sheet.names().get(i)))
                .toList(),
            look.stacked() ? 1 : Math.min(FEW, sheet.names().size()),
            model::fitted);
    choice.setSpacing(2);
    choice.atLeast(look.touch(44));
    choice.show(sheet.fitted());
    fitted = choice;
    return Optional.of(choice);
  }

  private boolean letter(String letter) {
    AloneSafetyView list = safety;
    if (list == null || deaf.now() || !list.key(letter)) {
      return false;
    }
    if (needed().isEmpty()) {
      next();
    }
    return true;
  }

  /** What is needed next: a value, a reason, a tick, an answer. */
  private Optional<Node> needed() {
    AloneSettingsView values = settings;
    AloneSafetyView list = safety;
    return values == null || list == null
        ? Optional.empty()
        : list.openUnit().or(values::open).or(list::open);
  }

  private void next() {
    needed().orElse(lead).requestFocus();
  }
}
