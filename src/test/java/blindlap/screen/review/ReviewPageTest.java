package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.AskedAgain;
import blindlap.desk.Desk;
import blindlap.desk.SampleDays;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.Theme;
import blindlap.session.Fact;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.timing.Stopwatch;
import blindlap.timing.TimeRecord;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.control.PasswordField;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The review pages, driven in a real window without a screen; their pictures go into the manual.
 */
class ReviewPageTest {
  private static final Dialogs NONE = new NoDialogs();

  @BeforeAll
  static void start() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void theFindingShowsVerdictFirstInEveryTheme() {
    SampleDays.ride(
        "shocks-on-quarry-loop",
        (desk, state) ->
            Window.run(
                () -> {
                  Look look = new Look();
                  ReviewModel model = Models.review(desk, Background.immediate());
                  model.open(state.id());
                  ReviewPage page = new ReviewPage(look, model, NONE);
                  Scene scene = new Scene(page, 1100, 2900);
                  look.dress(scene);
                  for (Theme theme : Theme.values()) {
                    look.themeProperty().set(theme);
                    picture(scene, "review-" + theme.name().toLowerCase(java.util.Locale.ROOT));
                  }
                  assertThat(texts(page))
                      .contains("real and worthwhile")
                      .anyMatch(t -> t.contains("Shock L was 2.0 s a lap faster than Shock K"))
                      .anyMatch(t -> t.contains("both fingerprints".substring(5)))
                      .anyMatch(t -> t.contains("It approves no part and no setting."))
                      .anyMatch(t -> t.contains("Follow the maker's manual"))
                      .anyMatch(t -> t.startsWith("One rider, one trail, one day."));
                }));
  }

  @Test
  void aRepeatSaysSoUnderItsVerdictAndTheOtherSessionsStandFurtherDown(@TempDir Path folder) {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      AskedAgain again = new AskedAgain(day);
      again.unsealed(day.id(), day.phrase(), 3);
      SessionState repeat = again.unsealed(again.commit(AskedAgain.byGrip()), 0);
      Window.run(
          () -> {
            Look look = new Look();
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(repeat.id());
            ReviewView view = model.viewProperty().get().orElseThrow();
            assertThat(view.circumstances().get(0))
                .startsWith("Repeat decided after seeing a result: session ");
            assertThat(view.method()).contains("Computed by method 3, as at the opening.");
            List<String> texts = texts(new ReviewPage(look, model, NONE));
            int verdict = texts.indexOf(view.headline().phrase());
            int said = texts.indexOf(view.circumstances().get(0));
            int title = texts.indexOf("Other sessions of the same question");
            assertThat(verdict).isBetween(0, said);
            assertThat(title).isBetween(said, texts.indexOf(view.history().get(0)));
            assertThat(view.history())
                .hasSize(1)
                .allMatch(line -> line.endsWith("primary measure lap time; real and worthwhile."));
          });
    }
  }

  @Test
  void theBlindReviewKnowsNoSetupAndLeadsToTheOpenKey() {
    SampleDays.sealed(
        "shocks-on-quarry-loop",
        (desk, state, phrase) ->
            Window.run(
                () -> {
                  Look look = new Look();
                  ReviewModel model = Models.review(desk, Background.immediate());
                  model.open(state.id());
                  ReviewPage page = new ReviewPage(look, model, NONE);
                  Scene scene = new Scene(page, 1100, 2300);
                  look.dress(scene);
                  picture(scene, "blind-review");
                  assertThat(texts(page)).noneMatch(t -> t.contains("Shock"));
                  press(page, "Close the review");
                  assertThat(texts(page)).doesNotContain("The review is closed.");
                  press(page, "Not yet");
                  press(page, "Close the review");
                  press(page, "Close the review");
                  picture(scene, "blind-review-closed");
                  assertThat(texts(page)).contains("The review is closed.");
                  assertThat(texts(page)).noneMatch(t -> t.contains("Shock"));
                  all(page, PasswordField.class).get(0).setText("wrong words");
                  press(page, "Open the key");
                  assertThat(texts(page)).anyMatch(t -> t.contains("Nothing was opened"));
                  all(page, PasswordField.class).get(0).setText(phrase);
                  press(page, "Open the key");
                  assertThat(texts(page)).contains("real and worthwhile");
                }));
  }

  @Test
  void aVoidSaysWhatFollowsAsksOnceAndIsTakenBackUntilTheReviewIsClosed() {
    SampleDays.sealed(
        "shocks-on-quarry-loop",
        (desk, state, phrase) ->
            Window.run(
                () -> {
                  ReviewModel model = Models.review(desk, Background.immediate());
                  model.open(state.id());
                  ReviewPage page = new ReviewPage(new Look(), model, NONE);
                  Scene scene = new Scene(page, 1100, 2300);
                  new Look().dress(scene);
                  int before = voids(desk, state);
                  chooseEvent(page, "traffic");
                  assertThat(texts(page))
                      .anyMatch(t -> t.startsWith("Lap 1 is left out because of traffic."));
                  press(page, "Keep it");
                  assertThat(voids(desk, state)).isEqualTo(before);
                  chooseEvent(page, "traffic");
                  press(page, "Void lap 1");
                  assertThat(voids(desk, state)).isEqualTo(before + 1);
                  press(page, "keep");
                  assertThat(voids(desk, state)).isEqualTo(before);
                }));
  }

  private static int voids(Desk desk, SessionState state) {
    return (int)
        desk.sessions().state(state.id()).orElseThrow().laps().stream()
            .filter(lap -> lap.voided().isPresent())
            .count();
  }

  @SuppressWarnings("unchecked")
  private static void chooseEvent(Parent page, String event) {
    // A box tells of its choice once it is drawn.
    page.applyCss();
    page.layout();
    ComboBox<String> first =
        all(page, ComboBox.class).stream()
            .filter(box -> "void 1".equals(box.getAccessibleText()))
            .findFirst()
            .orElseThrow();
    first.getSelectionModel().select(event);
  }

  @Test
  void theFindingShowsTheGuessesAsAStripWithItsWordsForAReader() {
    SampleDays.ride(
        "shocks-on-quarry-loop",
        (desk, state) ->
            Window.run(
                () -> {
                  ReviewModel model = Models.review(desk, Background.immediate());
                  model.open(state.id());
                  ReviewPage page = new ReviewPage(new Look(), model, NONE);
                  String words = model.viewProperty().get().orElseThrow().guesses();
                  assertThat(words).contains("No sign of unblinding");
                  assertThat(all(page, PlotView.class))
                      .filteredOn(p -> words.equals(p.getAccessibleText()))
                      .hasSize(1);
                }));
  }

  @Test
  void theCardIsWrittenFromThePageIntoTheFolderThatWasChosen(@TempDir Path folder) {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) ->
            Window.run(
                () -> {
                  ReviewModel model = Models.review(desk, Background.immediate());
                  model.open(state.id());
                  Dialogs chosen =
                      new NoDialogs() {
                        @Override
                        public Optional<Path> folder(String title) {
                          return Optional.of(folder);
                        }
                      };
                  ReviewPage page = new ReviewPage(new Look(), model, chosen);
                  press(page, "Write card");
                  String name = "card-" + state.plan().day() + "-" + state.id().brief();
                  assertThat(folder.toFile().list())
                      .containsExactlyInAnyOrder(
                          name + "-1600x900.png",
                          name + "-1600x900.svg",
                          name + "-1080x1350.png",
                          name + "-1080x1350.svg",
                          name + ".txt");
                  assertThat(model.troubleProperty().get())
                      .startsWith("Written to " + folder + ": " + name + "-1600x900.png, ");
                }));
  }

  @Test
  void anotherDayAndASeriesArePlannedFromTheFinding() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) ->
            Window.run(
                () -> {
                  List<String> opened = new ArrayList<>();
                  ReviewModel model = Models.review(desk, opened::add, Background.immediate());
                  model.open(state.id());
                  ReviewPage page = new ReviewPage(new Look(), model, NONE);

                  press(page, "Plan another day like this");
                  press(page, "Declare a series from here on");

                  assertThat(opened).hasSize(2);
                  assertThat(desk.planning().drafts().get(opened.get(0)))
                      .doesNotContainKeys("day", "series")
                      .containsEntry("stints", String.valueOf(state.plan().stints()));
                  assertThat(desk.planning().drafts().get(opened.get(1)))
                      .containsEntry("series", "after-" + state.id().brief())
                      .containsEntry("series_sessions", "3");
                  assertThat(texts(page)).anyMatch(t -> t.contains("stays outside its pool"));
                }));
  }

  @Test
  void anAmendmentTypedOnThePageIsDatedAndChangesNothingElse() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) ->
            Window.run(
                () -> {
                  ReviewModel model = Models.review(desk, Background.immediate());
                  model.open(state.id());
                  Look look = new Look();
                  ReviewPage page = new ReviewPage(look, model, NONE);
                  List<String> before = texts(page);
                  type(page, "What is added", "The gauge read low.");
                  press(page, "Add");
                  assertThat(texts(page)).anyMatch(t -> t.contains("reason"));
                  type(page, "Reason", "found in the workshop");
                  press(page, "Add");
                  assertThat(texts(page))
                      .anyMatch(
                          t ->
                              t.matches(
                                  "2026-06-06 09:\\d\\d CEST, amendment: The gauge read low."
                                      + " \\(reason: found in the workshop\\)"))
                      .anyMatch(t -> t.startsWith("Amended after the opening, once."))
                      .containsAll(before);
                  Scene scene = new Scene(page, 1100, 4200);
                  look.dress(scene);
                  Window.picture(scene, "review-amended");
                }));
  }

  @Test
  void threeSetupsHaveSmallPicturesPairsAndGuessesAndNoVerdictPhrase() {
    SampleDays.ride(
        "tyres-on-fern-trail",
        (desk, state) ->
            Window.run(
                () -> {
                  Look look = new Look();
                  ReviewModel model = Models.review(desk, Background.immediate());
                  model.open(state.id());
                  ReviewPage page = new ReviewPage(look, model, NONE);
                  Scene scene = new Scene(page, 1100, 2900);
                  look.dress(scene);
                  picture(scene, "review-three-setups");
                  assertThat(model.viewProperty().get().orElseThrow().others())
                      .extracting(blindlap.screen.review.ReviewView.Other::name)
                      .containsExactly("grip", "braking", "dabs");
                  assertThat(all(page, PlotView.class))
                      .extracting(Node::getAccessibleText)
                      .contains("grip", "dabs");
                  assertThat(texts(page))
                      .anyMatch(t -> t.contains("Tyre T less Tyre S: −"))
                      .anyMatch(
                          t ->
                              t.startsWith(
                                  "dabs: whether there is harm of 2 a lap or more stays open"))
                      .anyMatch(t -> t.contains("counted and shown, not tested"))
                      .noneMatch(t -> t.contains("real and worthwhile"))
                      .noneMatch(t -> t.contains("not settled"));
                }));
  }

  @Test
  void atTwiceTheTextSizeNothingIsWiderThanThePageAndNoLabelIsCut() {
    for (String name : List.of("shocks-on-quarry-loop", "tyres-on-fern-trail")) {
      SampleDays.ride(
          name,
          (desk, state) ->
              Window.run(
                  () -> {
                    Look look = new Look();
                    look.textScaleProperty().set(2);
                    ReviewModel model = Models.review(desk, Background.immediate());
                    model.open(state.id());
                    ReviewPage page = new ReviewPage(look, model, NONE);
                    Scene scene = new Scene(page, 1100, 4200);
                    look.dress(scene);
                    look.themeProperty().set(Theme.DARK);
                    Window.picture(scene, "review-200-" + name);
                    for (Labeled label : all(page, javafx.scene.control.Label.class)) {
                      double right = label.localToScene(label.getBoundsInLocal()).getMaxX();
                      assertThat(right).as(label.getText()).isLessThanOrEqualTo(1100);
                      assertThat(label.lookup(".text"))
                          .satisfies(
                              shown ->
                                  assertThat(((Text) shown).getText())
                                      .as("not cut")
                                      .doesNotContain(label.getEllipsisString()));
                    }
                  }));
    }
  }

  @Test
  void anUnblindedSessionIsCalledSoBeforeAndAfterUnsealing() {
    SampleDays.sealed(
        "grips-on-moor-path",
        (desk, state, phrase) ->
            Window.run(
                () -> {
                  ReviewModel model = Models.review(desk, Background.immediate());
                  model.open(state.id());
                  ReviewPage page = new ReviewPage(new Look(), model, NONE);
                  assertThat(texts(page)).anyMatch(t -> t.startsWith("Unblinded session: "));
                  press(page, "Close the review");
                  press(page, "Close the review");
                  all(page, PasswordField.class).get(0).setText(phrase);
                  press(page, "Open the key");
                  assertThat(texts(page))
                      .anyMatch(t -> t.startsWith("Grip P against Grip Q, unblinded (open) ·"))
                      .anyMatch(t -> t.startsWith("Unblinded (open): Grip P and Grip Q:"));
                }));
  }

  @Test
  void theBlindReviewShowsByCodeWhenEachLapWasStarted(@TempDir Path folder) {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      var rider = day.desk().riderDays();
      for (int stint = 1; stint <= 2; stint++) {
        LapId lap = new LapId(stint, 1);
        if (stint == 1) {
          day.watched(lap, "lap time", 90);
        } else {
          TimeRecord typed =
              Stopwatch.typed(
                  new java.math.BigDecimal("91.2"), TimeRecord.TimedBy.RIDER, day.clock());
          rider.time(day.id(), lap, "lap time", typed, false);
        }
        day.desk()
            .sessions()
            .act(day.id(), latest -> Outcome.accepted(new Fact.LapRidden(lap, Source.SCREEN)));
      }
      rider.closeDay(day.id());
      Window.run(
          () -> {
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            ReviewPage page = new ReviewPage(new Look(), model, NONE);
            List<String> texts = texts(page);
            assertThat(texts).contains("start", "09:00:00");
            assertThat(model.blind().viewProperty().get().orElseThrow().rows())
                .extracting(
                    blindlap.screen.review.BlindReviewView.Row::code,
                    blindlap.screen.review.BlindReviewView.Row::start)
                .containsExactly(
                    org.assertj.core.groups.Tuple.tuple(day.state().code(1), "09:00:00"),
                    org.assertj.core.groups.Tuple.tuple(day.state().code(2), ""));
          });
    }
  }

  private static void type(Parent page, String field, String words) {
    all(page, javafx.scene.control.TextInputControl.class).stream()
        .filter(f -> field.equals(f.getAccessibleText()))
        .reduce((first, last) -> last)
        .orElseThrow()
        .setText(words);
  }

  /** Takes a picture, and with -Dblindlap.write=true puts it into the manual. */
  private static void picture(Scene scene, String name) {
    Window.picture(scene, name);
    if (Boolean.getBoolean("blindlap.write")) {
      try {
        java.nio.file.Files.createDirectories(Path.of("docs", "pictures"));
        java.nio.file.Files.copy(
            Path.of("target", "pictures", name + ".png"),
            Path.of("docs", "pictures", name + ".png"),
            java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      } catch (java.io.IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    }
  }

  private static void press(Parent page, String words) {
    all(page, Button.class).stream()
        .filter(b -> b.getText().equals(words))
        .findFirst()
        .orElseThrow()
        .fire();
  }

  private static List<String> texts(Parent page) {
    List<String> texts = new ArrayList<>();
    all(page, Labeled.class).forEach(l -> texts.add(String.valueOf(l.getText())));
    all(page, Text.class).forEach(t -> texts.add(t.getText()));
    all(page, Node.class)
        .forEach(n -> texts.add(n.getAccessibleText() == null ? "" : n.getAccessibleText()));
    return texts;
  }

  private static <T> List<T> all(Parent parent, Class<T> type) {
    List<T> found = new ArrayList<>();
    for (Node node : parent.getChildrenUnmodifiable()) {
      if (type.isInstance(node)) {
        found.add(type.cast(node));
      }
      if (node instanceof javafx.scene.control.ScrollPane scroll
          && scroll.getContent() instanceof Parent content) {
        found.addAll(all(content, type));
      } else if (node instanceof Parent inner) {
        found.addAll(all(inner, type));
      }
    }
    return found;
  }
}
