package blindlap.screen.plan;

import blindlap.plan.BlindLevel;
import blindlap.screen.cover.HelperCover;
import blindlap.screen.cover.HelperDoorView;
import blindlap.screen.cover.HelperFrameView;
import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.wording.LevelWords;
import blindlap.wording.PlanSummary;
import blindlap.wording.PlanWords;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * The steps of the commit, one at a time. Of a blind session they are the helper's from the
 * hand-over on: in the helper's frame, over the whole window, blank when idle and at one key, as
 * the Swap page. Nothing here depends on the order that is drawn.
 */
final class CommitPane extends StackPane {
  private static final double CODE = 220;
  private static final double BESIDE = 480;
  private static final double HAND_OVER = 860;

  private final Look look;
  private final CommitModel model;
  private final Dialogs dialogs;
  private final StackPane content = new StackPane();
  private final VBox door = new VBox(16);
  private final ScrollPane scroll;
  private HelperFrameView frame;

  CommitPane(Look look, CommitModel model, Dialogs dialogs) {
    this.look = look;
    this.model = model;
    this.dialogs = dialogs;
    HelperCover cover = model.cover();
    door.setAlignment(Pos.CENTER_LEFT);
    door.maxWidthProperty().bind(look.px(HelperDoorView.WIDTH));
    scroll = new ScrollPane(door);
    scroll.setFitToWidth(true);
    scroll.setFitToHeight(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    frame = frame(look, model, content, scroll);
    HelperDoorView.watch(this, cover::touch, cover::hide, cover::tick);
    cover.stateProperty().addListener((o, before, now) -> cover(now));
    cover.idleProperty().addListener((o, before, now) -> frame.idle(now));
  }

  /** A frame for whoever will hold the phrase. */
  private static HelperFrameView frame(Look look, CommitModel model, Node page, Node door) {
    HelperFrameView.Words words =
        new HelperFrameView.Words(
            model.phrase().words().say("helper"),
            PlanWords.say("look.away"),
            PlanWords.say("hide"));
    return new HelperFrameView(look, words, page, door, model.cover()::hide);
  }

  /** Takes everything off. */
  void clear() {
    content.getChildren().clear();
    door.getChildren().clear();
    getChildren().clear();
  }

  /** Shows a step. */
  void show(CommitModel.Step step) {
    content.getChildren().clear();
    switch (step) {
      case EDITING -> clear();
      case HAND_OVER -> {
        frame = frame(look, model, content, scroll);
        door.maxWidthProperty().bind(look.px(HAND_OVER));
        door.getChildren().setAll(handOver());
      }
      case SIGNING -> content.getChildren().setAll(signing());
      case PHRASE -> content.getChildren().setAll(phrase());
      case WORDS -> content.getChildren().setAll(typedBack());
      case SEALED -> content.getChildren().setAll(sealed());
      case SHEET -> content.getChildren().setAll(sheet());
    }
    if (step != CommitModel.Step.EDITING) {
      getChildren().setAll(model.secret() ? frame : content);
      cover(model.cover().stateProperty().get());
    }
  }

  private void cover(HelperCover.State state) {
    if (state == HelperCover.State.BLANK) {
      door.maxWidthProperty().bind(look.px(HelperDoorView.WIDTH));
      door.getChildren().setAll(secret("commit.pin.ask", "commit.pin.open", model.cover()::reopen));
    }
    frame.blankProperty().set(state != HelperCover.State.OPEN);
  }

  private Node[] secret(String asked, String open, Consumer<String> typed) {
    return HelperDoorView.secret(
        look,
        model.phrase().words().say(asked),
        PlanWords.say("commit.pin"),
        model.phrase().words().say(open),
        model.cover().troubleProperty(),
        typed);
  }

  private PageGrid page(Node... parts) {
    PageGrid page = new PageGrid(look);
    for (Node part : parts) {
      page.add(part instanceof VBox box ? box : Fields.section(part));
    }
    Label message = Fields.words("", "strong");
    message.textProperty().bind(model.messageProperty());
    page.add(Fields.section(message));
    return page;
  }

  private Node[] handOver() {
    AnswerSentence answer = new AnswerSentence(look, PlanWords.say("commit.handover.question"));
    answer.say(
        PlanWords.say("commit.handover.before"),
        model.phrase().words().say("commit.handover.marked"),
        PlanWords.say("commit.handover.after"));
    List<Node> parts = new ArrayList<>();
    parts.add(answer);
    parts.add(HelperDoorView.lead(model.phrase().words().say("commit.handover.lead")));
    parts.addAll(List.of(secret("commit.handover.pin", "commit.helper.has.it", model::handedOver)));
    Button back = Fields.button(PlanWords.say("commit.back"), model::back);
    back.minHeightProperty().bind(look.touch());
    for (int i = 0; i < parts.size(); i++) {
      if (parts.get(i) instanceof Button go) {
        parts.set(i, Fields.row(go, back));
      }
    }
    return parts.toArray(Node[]::new);
  }

  private static Button next(String id, String words, Runnable work) {
    Button button = Fields.button(words, work);
    button.getStyleClass().add("next");
    button.setId(id);
    return button;
  }

  private PageGrid signing() {
    List<Node> parts = new ArrayList<>();
    parts.add(Fields.section(PlanFieldsView.heading("commit.sign.title")));
    Optional<BlindLevel> alone = model.alone();
    if (alone.isPresent()) {
      parts.add(
          Fields.section(
              Fields.words(alone(alone.get()), "strong"),
              Fields.words(PlanWords.say("commit.alone.note"))));
    } else if (model.open()) {
      parts.add(Fields.section(Fields.words(PlanWords.say("commit.open.title"), "strong")));
    }
    for (PlanSummary.Part part : model.summary()) {
      VBox box = Fields.section(Fields.words(part.title(), "strong"));
      part.lines().forEach(line -> box.getChildren().add(Fields.words(line)));
      parts.add(box);
    }
    if (model.secret()) {
      parts.add(nullRun());
    }
    TextArea names = new TextArea();
    names.setId("signed");
    names.setPrefRowCount(3);
    Fields.leaveByTab(names);
    names.textProperty().bindBidirectional(model.signedProperty());
    Label title = Fields.words(PlanWords.say("commit.signed"), "note");
    title.setLabelFor(names);
    parts.add(Fields.section(title, names));
    String key =
        alone.isPresent() ? "commit.seal.alone" : model.open() ? "commit.seal.open" : "commit.sign";
    Button sign = next("sign", model.phrase().words().say(key), model::sign);
    sign.disableProperty().bind(model.busyProperty());
    parts.add(Fields.row(sign, back()));
    return page(parts.toArray(Node[]::new));
  }

  private Button back() {
    Button back = Fields.button(PlanWords.say("commit.back"), model::back);
    back.disableProperty().bind(model.busyProperty());
    return back;
  }

  private Button write(String paper) {
    return toFolder("write-" + paper, "commit.sheet." + paper, f -> model.writeSheet(f, paper));
  }

  private Button quickStart(String paper) {
    CommitHandOut out = model.handOut();
    return toFolder("quick-" + paper, "commit.quick." + paper, f -> out.writeQuickStart(f, paper));
  }

  private Button toFolder(String id, String key, Consumer<Path> work) {
    String words = PlanWords.say(key);
    Button write = Fields.button(words, () -> dialogs.coveredFolder(words).ifPresent(work));
    write.setId(id);
    write.disableProperty().bind(model.busyProperty());
    return write;
  }

  private VBox nullRun() {
    VBox box =
        Fields.section(
            Fields.words(model.phrase().words().say("commit.null.title"), "strong"),
            Fields.words(PlanWords.say("commit.null.note"), "second"));
    Optional<String> refused = model.nullRunRefused();
    if (refused.isPresent()) {
      box.getChildren().set(1, Fields.words(refused.get(), "second"));
      return box;
    }
    ToggleGroup group = new ToggleGroup();
    RadioButton no = choice(group, PlanWords.say("commit.null.no"), null);
    no.setSelected(true);
    box.getChildren().add(no);
    List<String> setups = model.setups();
    for (int i = 0; i < setups.size(); i++) {
      box.getChildren().add(choice(group, PlanWords.say("commit.null.setup", setups.get(i)), i));
    }
    return box;
  }

  private RadioButton choice(ToggleGroup group, String words, @Nullable Integer setup) {
    RadioButton button = new RadioButton(words);
    button.setToggleGroup(group);
    button.setOnAction(e -> model.concealNullRun(setup));
    return button;
  }

  private static String alone(BlindLevel level) {
    return PlanWords.say("commit.alone.title", LevelWords.name(level), LevelWords.mayBeSaid(level));
  }

  private PageGrid sealed() {
    Optional<BlindLevel> alone = model.alone();
    String key = alone.isPresent() ? "commit.covered." : "commit.sealed.";
    AnswerSentence answer = new AnswerSentence(look, PlanWords.say(key + "question"));
    answer.say(
        PlanWords.say(key + "before"), PlanWords.say(key + "marked"), PlanWords.say(key + "after"));
    List<Node> parts = new ArrayList<>();
    parts.add(Fields.section(answer));
    alone.ifPresent(
        level -> parts.add(Fields.section(Fields.words(PlanWords.say("commit.next." + level)))));
    model.handOut().sealingProperty().get().ifPresent(sealing -> parts.add(fingerprint(sealing)));
    parts.add(
        Fields.section(
            alone.isPresent()
                ? next("finish", PlanWords.say("commit.finish.unblinded"), model::finish)
                : next("go-on", model.phrase().words().say("commit.go.on"), model::goOn)));
    return page(parts.toArray(Node[]::new));
  }

  private VBox fingerprint(CommitHandOut.Sealing sealing) {
    Label text = Fields.words(sealing.fingerprint(), "field-title");
    text.setId("fingerprint");
    PlotView code = new PlotView(look, sealing.code());
    code.setId("fingerprint-code");
    code.maxWidthProperty().bind(look.px(CODE));
    TextField to = new TextField();
    to.setId("given-to");
    to.setPrefColumnCount(20);
    to.setAccessibleText(PlanWords.say("commit.given.to"));
    to.setPromptText(PlanWords.say("commit.given.to"));
    to.textProperty().bindBidirectional(model.handOut().givenToProperty());
    code.prefWidthProperty().bind(look.px(CODE));
    VBox beside =
        new VBox(
            10,
            text,
            Fields.words(PlanWords.say("commit.fingerprint.note"), "second"),
            Fields.tight(
                to,
                Fields.button(PlanWords.say("commit.give"), model.handOut()::fingerprintGiven)));
    beside.prefWidthProperty().bind(look.px(BESIDE));
    return Fields.section(
        Fields.words(PlanWords.say("commit.fingerprint"), "strong"), Fields.row(code, beside));
  }

  private PageGrid phrase() {
    Label words = Fields.words("", "lead", "phrase");
    words.setId("phrase");
    words.textProperty().bind(model.phrase().shownProperty());
    String key = "commit.phrase";
    return page(
        Fields.section(
            PlanFieldsView.titled(model.phrase().words().say(key)),
            words,
            Fields.words(model.phrase().words().say(key + ".note"))),
        Fields.row(
            next("phrase-noted", PlanWords.say("commit.phrase.noted"), model::phraseNoted),
            back()));
  }

  private PageGrid typedBack() {
    Label question = Fields.words(model.phrase().questionProperty().get(), "strong");
    TextField typed = new TextField();
    typed.setId("typed-words");
    typed.setPrefColumnCount(30);
    question.setLabelFor(typed);
    typed.setAccessibleText(question.getText());
    typed.textProperty().bindBidirectional(model.phrase().typedProperty());
    Button seal = next("seal", PlanWords.say("commit.seal"), model::seal);
    Button again = Fields.button(PlanWords.say("commit.phrase.again"), model::phraseAgain);
    again.setId("phrase-again");
    seal.disableProperty().bind(model.busyProperty());
    again.disableProperty().bind(model.busyProperty());
    return page(
        Fields.section(
            PlanFieldsView.heading("commit.words.title"),
            question,
            typed,
            Fields.words(PlanWords.say("commit.words.note"), "second")),
        Fields.row(seal, again, back()));
  }

  private PageGrid sheet() {
    List<Node> parts = new ArrayList<>();
    parts.add(
        Fields.section(
            PlanFieldsView.titled(model.phrase().words().say("commit.sheet.title")),
            Fields.words(PlanWords.say("commit.sheet.note")),
            Fields.row(write("A4"), write("LETTER"))));
    if (model.handOut().toHelper()) {
      parts.add(
          Fields.section(
              Fields.words(PlanWords.say("commit.quick.note")),
              Fields.row(quickStart("A4"), quickStart("LETTER"))));
    }
    parts.add(
        Fields.section(
            Fields.row(
                next("finish", PlanWords.say("commit.finish"), model::finish),
                next("finish-read", PlanWords.say("commit.finish.read"), model::finishAndRead))));
    return page(parts.toArray(Node[]::new));
  }
}
