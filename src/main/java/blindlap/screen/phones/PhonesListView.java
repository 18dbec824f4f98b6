package blindlap.screen.phones;

import blindlap.screen.part.AskedOnce;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.day.PhonesWords;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Phones that came, each with what can be done with it; rows stay where they are. */
final class PhonesListView extends VBox {
  /** At 100 %: both buttons side by side. */
  private static final double ACTS = 260;

  private static final double OUT = 140;

  private final Look look;
  private final PhonesModel model;
  private final Deaf deaf;
  private final Map<String, Label> stands = new HashMap<>();
  private List<Object> built = List.of();

  PhonesListView(Look look, PhonesModel model, Deaf deaf) {
    super(12);
    this.look = look;
    this.model = model;
    this.deaf = deaf;
    getStyleClass().add("phones-list");
    deaf.guard(this);
    build(List.of());
  }

  /** Shows who came; what has the focus or is being asked keeps its place while nobody comes. */
  void show(List<PhonesShown.Phone> phones) {
    List<Object> now = new ArrayList<>();
    phones.forEach(each -> now.add(List.of(each.id(), each.in())));
    if (!now.equals(built)) {
      built = List.copyOf(now);
      boolean within = isFocusWithin();
      build(phones);
      deaf.begin();
      if (within) {
        getChildren().get(0).requestFocus(); // words, which no key presses
      }
    }
    phones.forEach(
        each -> java.util.Objects.requireNonNull(stands.get(each.id())).setText(each.stands()));
  }

  private void build(List<PhonesShown.Phone> phones) {
    stands.clear();
    Label title = Fields.words(PhonesWords.say("page.phones"), "field-title");
    title.setFocusTraversable(true);
    getChildren().setAll(title);
    if (phones.isEmpty()) {
      getChildren().add(Fields.words(PhonesWords.say("page.phones.none"), "second"));
    }
    phones.forEach(each -> getChildren().add(row(each)));
  }

  private VBox row(PhonesShown.Phone phone) {
    Label name = Fields.words(phone.name(), "strong");
    Label how = Fields.words(phone.stands());
    stands.put(phone.id(), how);
    FlowPane acts = new FlowPane(12, 8);
    acts.prefWrapLengthProperty().bind(look.px(phone.in() ? OUT : ACTS));
    if (!phone.in()) {
      Button let = Fields.button(PhonesWords.say("page.let.in"), () -> model.letIn(phone.id()));
      let.setAccessibleText(PhonesWords.say("page.let.in") + ": " + phone.name());
      let.minHeightProperty().bind(look.touch());
      acts.getChildren().add(let);
    }
    AskedOnce out =
        new AskedOnce(
            look,
            new AskedOnce.Words(
                PhonesWords.say("page.throw.out"),
                PhonesWords.say("page.throw.out.follows"),
                PhonesWords.say("page.throw.out.not")),
            () -> model.throwOut(phone.id()));
    out.first().setAccessibleText(PhonesWords.say("page.throw.out") + ": " + phone.name());
    out.maxWidthProperty().bind(widthProperty());
    acts.getChildren().add(out);
    VBox row = new VBox(4);
    row.getStyleClass().add("phones-row");
    VBox who = new VBox(name, how);
    HBox.setHgrow(who, Priority.ALWAYS);
    arrange(row, who, acts, false);
    out.askingProperty()
        .addListener(
            (o, before, now) -> {
              deaf.begin();
              arrange(row, who, acts, now);
            });
    return row;
  }

  /** Beside who it is about; a question, which has more words, below. */
  private static void arrange(VBox row, VBox who, FlowPane acts, boolean asking) {
    if (asking) {
      acts.setMinWidth(0);
      acts.setAlignment(Pos.CENTER_LEFT);
      row.getChildren().setAll(who, acts);
    } else {
      acts.setMinWidth(USE_PREF_SIZE);
      acts.setAlignment(Pos.CENTER_RIGHT);
      HBox one = new HBox(16, who, acts);
      one.setAlignment(Pos.CENTER_LEFT);
      row.getChildren().setAll(one);
    }
  }
}
