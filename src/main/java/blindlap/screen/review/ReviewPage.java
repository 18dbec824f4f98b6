package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.WORDS;
import static blindlap.screen.part.ReviewParts.h2;
import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.section;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.plot.surface.Drawing;
import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Fold;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.ReviewParts;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.Headline;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.value.ObservableValue;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Duration;

/**
 * The Review page: verdict first, then the evidence, then the method. While the key is sealed it is
 * the blind review.
 */
public final class ReviewPage extends StackPane {
  private final Look look;
  private final ReviewModel model;
  private final Dialogs dialogs;
  private final PageGrid page;
  private final BlindReviewPage blind;
  private final VBox notice;
  private Optional<SessionId> shown = Optional.empty();
  private boolean whole;
  private double place;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held while it beats
  private final Timeline beat;

  public ReviewPage(Look look, ReviewModel model, Dialogs dialogs) {
    this.look = look;
    this.model = model;
    this.dialogs = dialogs;
    this.page = new PageGrid(look);
    this.blind = new BlindReviewPage(look, model.blind());
    Label why = words("", "lead");
    why.textProperty().bind(model.noticeProperty());
    this.notice = new VBox(16, why, trouble());
    notice.getStyleClass().add("page");
    follow(model.stageProperty(), this::show);
    follow(model.earlyProperty(), this::show);
    follow(model.viewProperty(), this::show);
    follow(model.tellingProperty(), this::show);
    beat = new Timeline(new KeyFrame(Duration.millis(800), e -> model.look()));
    beat.setCycleCount(Animation.INDEFINITE);
    sceneProperty().addListener((o, before, scene) -> beat(scene != null));
    show();
  }

  private void beat(boolean inView) {
    if (inView) {
      beat.play();
    } else {
      beat.stop();
    }
  }

  private static void follow(ObservableValue<?> value, Runnable change) {
    value.addListener((o, before, now) -> change.run());
  }

  private void show() {
    switch (model.stageProperty().get()) {
      case NOTICE -> getChildren().setAll(notice);
      case BLIND -> getChildren().setAll(blind);
      case OPEN -> {
        build();
        getChildren().setAll(page);
      }
    }
  }

  /** The finding stays where it was scrolled to when something is added to its session. */
  private void build() {
    if (whole) {
      place = page.getVvalue();
    }
    page.clear();
    whole = model.viewProperty().get().isPresent();
    if (whole) {
      whole(model.viewProperty().get().get());
      Optional<SessionId> now = model.session().map(SessionState::id);
      page.setVvalue(now.equals(shown) ? place : 0);
      shown = now;
      return;
    }
    if (model.tellingProperty().get().isPresent()) {
      telling(model.tellingProperty().get().get());
      return;
    }
    AnswerSentence answer = new AnswerSentence(look, WORDS.say("question.open"));
    model.earlyProperty().get().ifPresent(h -> answer.say(h.before(), h.phrase(), h.after()));
    Label progress = words("", "lead");
    progress.textProperty().bind(model.progressProperty());
    page.add(new VBox(16, answer, progress, trouble(), words(WORDS.say("not.asked"), "note")));
  }

  private Label trouble() {
    Label trouble = words("", "strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    return trouble;
  }

  private void whole(ReviewView view) {
    AnswerSentence answer = new AnswerSentence(look, WORDS.say("question.open"));
    Headline headline = view.headline();
    answer.say(headline.before(), headline.phrase(), headline.after());
    VBox head =
        new VBox(12, words(view.running(), "note", "second"), answer, new Lead(view.lead()));
    head.getChildren().add(lines(view.circumstances()));
    head.getChildren().add(new Caution(WORDS.say("caution"), Words.of("cautions").say("trust")));
    page.add(
        head,
        new MarginNote(
            WORDS.say("expected"),
            view.expected().isEmpty()
                ? WORDS.say("expected.none")
                : String.join("\n", view.expected())),
        new MarginNote(WORDS.say("seal"), String.join("\n", view.seal())));
    masks();
    answer(view);
    if (!view.beside().isEmpty() || !view.events().isEmpty()) {
      List<String> both = new ArrayList<>(view.beside());
      both.addAll(view.events());
      page.add(section("events", both));
    }
    view.order().ifPresent(d -> page.add(new VBox(10, h2("order"), new PlotView(look, d))));
    view.curve().ifPresent(d -> picture("curve", d, "curve.title", "curve.note"));
    others(view);
    view.profiles().ifPresent(words -> page.addWide(new ProfilesFoundView(look, words)));
    VBox blind = section("blind", List.of(view.guesses()));
    view.guessed().ifPresent(d -> blind.getChildren().add(new PlotView(look, d)));
    if (!view.waits().isEmpty()) {
      blind.getChildren().add(lines(view.waits()));
    }
    page.add(blind);
    if (!view.next().isEmpty()) {
      page.add(section("next", view.next()));
    }
    ending(view.history(), view.method(), view.requests(), view.amendments());
  }

  private void telling(TellingReview review) {
    new TellingReviewView(look, review).addTo(page);
    ending(review.history(), review.method(), review.requests(), review.amendments());
  }

  /** What every opened session ends with. */
  private void ending(
      List<String> history,
      List<String> method,
      List<ReviewView.How> requests,
      List<String> amendments) {
    page.add(section("history", history.isEmpty() ? List.of(WORDS.say("history.none")) : history));
    page.add(section("method", method));
    page.add(how(requests));
    page.add(amendments(amendments));
    page.add(actions());
  }

  /** The evidence of the answer: the levels of a steps day, or every stint by setup. */
  private void answer(ReviewView view) {
    if (view.levels().isPresent()) {
      new LevelsView(look, view.levels().get()).addTo(page, view.difference());
      return;
    }
    boolean two = view.columns().size() == OtherMeasuresView.COLUMNS_OF_TWO;
    String note = two ? "picture.note.text" : "picture.note.many";
    view.difference().ifPresent(d -> picture("picture", d, "picture.note", note));
  }

  /** Of masked labels it is still to be read which was which. */
  private void masks() {
    model
        .session()
        .filter(MasksModel::asksReading)
        .ifPresent(session -> page.add(MasksView.read(look, model.masks(), session)));
  }

  private void picture(String key, Drawing drawing, String note, String noteText) {
    page.add(
        new VBox(10, h2(key), new PlotView(look, drawing)),
        new MarginNote(WORDS.say(note), WORDS.say(noteText)));
  }

  private void others(ReviewView view) {
    view.where().ifPresent(where -> new WhereView(look, where).addTo(page));
    if (view.others().isEmpty()) {
      if (!view.sentences().isEmpty()) {
        page.add(section("others", view.sentences()));
      }
      return;
    }
    page.addWide(
        new VBox(
            10,
            h2("others"),
            new OtherMeasuresView(look, view.columns(), view.others()),
            words(WORDS.say("others.note"), "note", "second"),
            lines(view.sentences())));
  }

  private static VBox how(List<ReviewView.How> requests) {
    VBox box = new VBox(6, h2("how"));
    for (ReviewView.How how : requests) {
      TextArea request = new TextArea(how.request());
      request.setEditable(false);
      request.setWrapText(true);
      request.setPrefRowCount(4);
      request.setAccessibleText(how.about());
      // The name of a measure is as long as its tester likes.
      box.getChildren().add(new Fold(how.about(), request));
    }
    return box;
  }

  private VBox amendments(List<String> made) {
    TextArea what = new TextArea();
    Fields.leaveByTab(what);
    what.setPromptText(WORDS.say("amend.what"));
    what.setAccessibleText(WORDS.say("amend.what"));
    what.setWrapText(true);
    what.setPrefRowCount(2);
    TextField reason = ReviewParts.field("amend.reason");
    reason.setPrefColumnCount(32);
    Button add = new Button(WORDS.say("amend.do"));
    add.setOnAction(e -> model.amend(what.getText(), reason.getText()));
    VBox box = new VBox(10, h2("amend"), words(WORDS.say("amend.text"), "note", "second"));
    if (!made.isEmpty()) {
      box.getChildren().add(lines(made));
    }
    box.getChildren().addAll(what, Fields.row(reason, add), trouble());
    return box;
  }

  /** Another day like this one; only two setups have an analysis that pools days. */
  private VBox again() {
    Button again = new Button(WORDS.say("again"));
    again.setOnAction(e -> model.planAnother());
    Button series = new Button(WORDS.say("again.series"));
    series.setOnAction(e -> model.declareSeries());
    boolean two = model.poolable();
    FlowPane buttons = Fields.row(again);
    if (two) {
      buttons.getChildren().add(series);
    }
    VBox steps = new VBox();
    AfterStepsModel after = model.afterSteps();
    after.offer().ifPresent(offer -> steps.getChildren().add(new AfterStepsView(after, offer)));
    return new VBox(
        6,
        steps,
        buttons,
        words(WORDS.say(two ? "again.series.note" : "again.note"), "note", "second"));
  }

  private VBox actions() {
    Button report = new Button(WORDS.say("report"));
    report.getStyleClass().add("next");
    report.setOnAction(e -> dialogs.folder(WORDS.say("report")).ifPresent(model::report));
    Button card = new Button(WORDS.say("card"));
    card.setOnAction(e -> dialogs.folder(WORDS.say("card")).ifPresent(model::card));
    Button export = new Button(WORDS.say("export"));
    export.setOnAction(e -> dialogs.folder(WORDS.say("export")).ifPresent(model::export));
    return new VBox(
        12,
        again(),
        Fields.row(report, card, export),
        trouble(),
        new Caution(WORDS.say("caution"), Words.of("cautions").say("short")));
  }
}
