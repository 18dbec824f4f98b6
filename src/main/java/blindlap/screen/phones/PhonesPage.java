package blindlap.screen.phones;

import blindlap.phone.PhoneAddress;
import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.RoomFrame;
import blindlap.screen.part.WholeInView;
import blindlap.session.day.PhoneRole;
import blindlap.wording.day.PhonesWords;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * Phones of the day: the switch and the phones that came at the left, the codes to scan at the
 * right. It has no key, and no page with one is in view beside it.
 */
public final class PhonesPage extends BorderPane {
  private static final double LEFT = 540;
  private static final double SIDE = 40;

  private final Look look;
  private final PhonesModel model;
  private final Deaf deaf;
  private final AnswerSentence answer;
  private final Label rest = Fields.words(PhonesWords.say("page.lead"));
  private final Button onOff = new Button();
  private final ComboBox<@Nullable PhoneAddress> address = new ComboBox<>();
  private final TextField port = new TextField();
  private final VBox left = new VBox(14);
  private final VBox right = new VBox(10);
  private final Map<PhoneRole, PhonesCodeView> codes = new EnumMap<>(PhoneRole.class);
  private final PhonesListView phones;
  private PhonesShown.@Nullable Stage stage;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this page
  private final InvalidationListener watch;

  /**
   * @param back leaves the page; Escape does, too
   * @param monotonic nanoseconds that only ever grow
   */
  public PhonesPage(Look look, PhonesModel model, Runnable back, LongSupplier monotonic) {
    this.look = look;
    this.model = model;
    this.deaf = new Deaf(monotonic);
    this.answer = new AnswerSentence(look, PhonesWords.say("page.question"), 1);
    this.phones = new PhonesListView(look, model, deaf);
    getStyleClass().add("phones-page");
    answer.shrink(1);
    for (PhoneRole role : PhoneRole.values()) {
      codes.put(role, new PhonesCodeView(look, role));
    }
    left(back);
    right();
    arrange();
    watch = look.watch(this::arrange);
    setOnKeyPressed(
        e -> {
          if (e.getCode() == KeyCode.ESCAPE) {
            e.consume();
            back.run();
          }
        });
    model.shownProperty().addListener((o, before, now) -> show(now));
    model.addressesProperty().addListener((o, before, now) -> offer(now));
    offer(model.addressesProperty().get());
    show(model.shownProperty().get());
  }

  /** Networks are looked for, and the focus rests on words. */
  public void enter() {
    deaf.begin();
    model.lookForAddresses();
    model.tick();
    rest.requestFocus();
  }

  private void left(Runnable back) {
    Button leave = Fields.button(PhonesWords.say("page.back"), back);
    leave.getStyleClass().add("quiet");
    leave.minHeightProperty().bind(look.touch());
    rest.setFocusTraversable(true);
    onOff.setId("phones-switch");
    onOff.minHeightProperty().bind(look.touch());
    onOff.setMinWidth(USE_PREF_SIZE);
    onOff.setOnAction(
        e ->
            deaf.hear(
                () -> {
                  if (model.shownProperty().get().on()) {
                    model.off();
                  } else {
                    model.on();
                  }
                }));
    Label wrong = Fields.words("", "strong");
    wrong
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                this::wrong, model.troubleProperty(), model.shownProperty()));
    wrong.managedProperty().bind(wrong.textProperty().isNotEmpty());
    left.getChildren()
        .setAll(
            leave,
            answer,
            rest,
            fields(),
            new FlowPane(12, 8, onOff),
            wrong,
            Fields.words(PhonesWords.say("page.same"), "note", "second"),
            phones);
  }

  /** What was refused last; else that no phone comes to the address any more. */
  private String wrong() {
    String refused = model.troubleProperty().get();
    PhonesShown now = model.shownProperty().get();
    return refused.isEmpty() && now.gone() ? PhonesWords.say("page.gone", now.at()) : refused;
  }

  private FlowPane fields() {
    address.minHeightProperty().bind(look.touch());
    address.valueProperty().addListener((o, before, now) -> chosen(now));
    model.addressProperty().addListener((o, before, now) -> address.setValue(now));
    VBox where = RoomFrame.choice(PhonesWords.say("page.address"), address, PhonesPage::words);
    address.setPromptText(PhonesWords.say("page.address.none"));
    Label name = Fields.words(PhonesWords.say("page.port"), "note");
    name.setLabelFor(port);
    port.setAccessibleText(PhonesWords.say("page.port"));
    port.setPrefColumnCount(5);
    port.minHeightProperty().bind(look.touch());
    port.textProperty().bindBidirectional(model.portProperty());
    port.setOnAction(e -> onOff.requestFocus());
    return new FlowPane(16, 8, where, new VBox(2, name, port));
  }

  private void chosen(@Nullable PhoneAddress now) {
    if (now != null) {
      model.addressProperty().set(now);
    }
  }

  private static String words(@Nullable PhoneAddress each) {
    if (each == null) {
      return "";
    }
    return each.loopback()
        ? PhonesWords.say("page.address.loopback", each.text())
        : PhonesWords.say("page.address.own", each.text(), each.network());
  }

  private void offer(List<PhoneAddress> all) {
    address.getItems().setAll(all);
    address.setValue(model.addressProperty().get());
  }

  private void right() {
    right
        .getChildren()
        .setAll(
            Fields.words(PhonesWords.say("page.scan")),
            new Pane(),
            Fields.words(PhonesWords.say("page.hotspot")),
            Fields.words(PhonesWords.say("page.private")),
            Fields.words(PhonesWords.say("page.swap.closed"), "note", "second"));
  }

  /** Side by side; with large text one below the other. */
  private void arrange() {
    boolean stacked = look.stacked();
    FlowPane both = new FlowPane(24, 12);
    both.getChildren().setAll(codes.values());
    right.getChildren().set(1, both);
    Pane all;
    if (stacked) {
      left.maxWidthProperty().unbind();
      left.prefWidthProperty().unbind();
      left.setPrefWidth(USE_COMPUTED_SIZE);
      left.setMaxWidth(Double.MAX_VALUE);
      all = new VBox(24, left, right);
    } else {
      left.prefWidthProperty().bind(look.px(LEFT));
      left.maxWidthProperty().bind(look.px(LEFT));
      right.prefWidthProperty().bind(look.px(2 * PhonesCodeView.SIDE + 24));
      all = new HBox(SIDE, left, right);
    }
    all.setPadding(new Insets(14, SIDE, 14, SIDE));
    ScrollPane scroll = new ScrollPane(all);
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    WholeInView.keep(scroll, deaf::begin);
    setCenter(scroll);
  }

  private void show(PhonesShown now) {
    boolean on = now.on();
    switch (now.stage()) {
      case NO_SESSION -> answer.say(PhonesWords.say("page.no.session"), "", "");
      case OFF -> answer.say(PhonesWords.say("page.off"), "", "");
      case OVER -> answer.say(PhonesWords.say("page.over"), "", "");
      case ON ->
          answer.say(
              PhonesWords.say("page.on.before") + " ",
              now.connected() == 0
                  ? PhonesWords.say("page.on.nobody")
                  : PhonesWords.say("page.on.marked", now.connected()),
              PhonesWords.say("page.on.after"));
    }
    boolean may = on || now.stage() == PhonesShown.Stage.OFF;
    onOff.setText(PhonesWords.say(on ? "page.switch.off" : "page.switch.on"));
    onOff.setDisable(!may);
    address.setDisable(on || !may);
    port.setDisable(on || !may);
    onOff.getStyleClass().remove("next");
    if (!on && may) {
      onOff.getStyleClass().add("next");
    }
    for (Map.Entry<PhoneRole, PhonesCodeView> each : codes.entrySet()) {
      each.getValue()
          .show(now.codes().stream().filter(code -> code.role() == each.getKey()).findFirst());
    }
    phones.show(now.phones());
    if (now.stage() != stage) {
      stage = now.stage();
      deaf.begin();
    }
  }
}
