package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.FixedSources;
import blindlap.desk.LapFiles;
import blindlap.desk.SafeKeeping;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.seal.SealParameters;
import blindlap.seal.SecureBytes;
import blindlap.session.DayCommands;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.Step;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.Pane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Review and blind review where another machine or another process writes, too. */
class FollowingReviewTest {
  private static final LapId FIFTH = new LapId(5, 1);

  @TempDir Path folder;
  private Path hut;
  private Path home;

  @BeforeAll
  static void start() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void folders() throws IOException {
    hut = Files.createDirectory(folder.resolve("hut")).resolve("quarry.blindlap");
    home = Files.createDirectory(folder.resolve("home"));
  }

  private static byte[] laps(String fifth) {
    StringBuilder csv = new StringBuilder("lap;lap time\n");
    for (int lap = 1; lap <= 8; lap++) {
      csv.append(lap).append(';').append(lap == 5 ? fifth : "9" + lap + ".4").append('\n');
    }
    return csv.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static Desk open(Path file, long seed, TestDay day) {
    Random random = new Random(seed);
    SecureBytes ids =
        count -> {
          byte[] bytes = new byte[count];
          random.nextBytes(bytes);
          return bytes;
        };
    return new Desk(
        SqliteNotebook.open(file, ids.exactly(16), day.clock().instant()),
        day.clock(),
        FixedSources.order(seed),
        new SealParameters(1),
        ids);
  }

  private static void bringIn(Desk to, Path toFile, Path from) {
    SafeKeeping keeping = new SafeKeeping(new SqliteFiles(to.clock(), () -> new byte[16]), toFile);
    assertThat(to.exchange(keeping).bringIn(from).refused()).isEmpty();
  }

  /** The hut's day, closed, with the home machine's record of the same laps brought in. */
  private TestDay apart(String plan) {
    TestDay day = new TestDay(hut, plan, 1, java.util.Optional.empty());
    Path other = home.resolve("quarry.blindlap");
    try (Desk desk = open(other, 2, day)) {
      bringIn(desk, other, hut);
      SessionState there = desk.sessions().state(day.id()).orElseThrow();
      new LapFiles(desk.sessions()).record(there, laps("95.4"));
    }
    new LapFiles(day.desk().sessions()).record(day.state(), laps("9.54"));
    bringIn(day.desk(), hut, other);
    day.desk().riderDays().closeDay(day.id());
    return day;
  }

  private static BigDecimal fifth(TestDay day) {
    return day.state().lap(FIFTH).orElseThrow().values().get("lap time");
  }

  private static <T extends Node> Stream<T> all(Parent parent, Class<T> type) {
    return parent.getChildrenUnmodifiable().stream()
        .flatMap(
            node ->
                Stream.concat(
                    type.isInstance(node) ? Stream.of(type.cast(node)) : Stream.empty(),
                    inside(node) instanceof Parent inner ? all(inner, type) : Stream.empty()));
  }

  /** What scrolls is no child of what it scrolls in before that is drawn. */
  private static Node inside(Node node) {
    return node instanceof ScrollPane scroll ? scroll.getContent() : node;
  }

  private static List<String> texts(Parent page) {
    return all(page, Label.class).map(Label::getText).toList();
  }

  private static void press(Parent page, String words) {
    all(page, Button.class)
        .filter(b -> b.getText().startsWith(words))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no button " + words))
        .fire();
  }

  private static void whoDecides(Scene scene, String who) {
    ((TextField) scene.lookup("#choose-who")).setText(who);
    ((CheckBox) scene.lookup("#choose-neither")).setSelected(true);
  }

  @Test
  void another_of_two_values_counts_once_somebody_is_named_who_knows_neither() {
    try (TestDay day = apart(TestDay.EIGHT)) {
      Window.run(
          () -> {
            Look look = new Look();
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            ReviewPage page = new ReviewPage(look, model, new NoDialogs());
            Scene scene = new Scene(page, 1100, 2600);
            look.dress(scene);
            Window.picture(scene, "blind-review-two-values");
            assertThat(texts(page))
                .contains("Values that stand twice")
                .anyMatch(t -> t.startsWith("Lap 5, lap time: machines recorded different values."))
                .anyMatch(t -> t.startsWith("0:09.5") && t.contains("also recorded: 1:35.4"));
            press(page, "1:35.4");
            assertThat(texts(page)).anyMatch(t -> t.contains("Nothing was changed."));
            whoDecides(scene, "M. Oster");
            press(page, "1:35.4");
            assertThat(texts(page)).anyMatch(t -> t.contains("M. Oster cannot decide"));
            assertThat(fifth(day)).isEqualByComparingTo("9.54");
            whoDecides(scene, "E. Moor");
            press(page, "1:35.4");
            assertThat(fifth(day)).isEqualByComparingTo("95.4");
            assertThat(texts(page))
                .anyMatch(t -> t.contains("counts, as E. Moor decided"))
                .anyMatch(t -> t.startsWith("1:35.4") && t.contains("also recorded: 0:09.5"))
                .noneMatch(t -> t.contains("Nothing was changed."));
            look.textScaleProperty().set(2);
            look.themeProperty().set(Theme.DARK);
            Window.picture(scene, "blind-review-two-values-200");
            for (Label label : all(page, Label.class).toList()) {
              double right = label.localToScene(label.getBoundsInLocal()).getMaxX();
              assertThat(right).as(label.getText()).isLessThanOrEqualTo(1100);
            }
          });
    }
  }

  @Test
  void in_an_unblinded_session_both_values_stand_and_nothing_can_be_chosen() {
    String plan =
        TestDay.EIGHT.replace(
            "blinding: {helper: M. Oster, cover: Cloth over the shock}", "blinding: {blinded: no}");
    try (TestDay day = apart(plan)) {
      Window.run(
          () -> {
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            ReviewPage page = new ReviewPage(new Look(), model, new NoDialogs());
            assertThat(texts(page))
                .anyMatch(t -> t.contains("In an unblinded session there is no choice"))
                .anyMatch(t -> t.startsWith("0:09.5") && t.contains("also recorded: 1:35.4"));
            assertThat(all(page, Button.class))
                .noneMatch(b -> b.getStyleClass().contains("choose"));
          });
    }
  }

  /** A closed day whose review a window shows while another opening of the file writes. */
  private TestDay closed() {
    TestDay day = new TestDay(hut, TestDay.EIGHT, 1, java.util.Optional.empty());
    new LapFiles(day.desk().sessions()).record(day.state(), laps("95.4"));
    day.desk().riderDays().closeDay(day.id());
    return day;
  }

  private void elsewhere(TestDay day, java.util.function.Consumer<Desk> writes) {
    // The same file, opened once more: what it writes the first has not heard of.
    try (Desk other = open(hut, 3, day)) {
      assertThat(other.sessions().state(day.id())).isPresent();
      writes.accept(other);
    }
  }

  private static void voidFifth(TestDay day, Desk desk) {
    desk.sessions()
        .act(day.id(), latest -> new DayCommands(latest).voidLap(FIFTH, "traffic", "walkers"));
  }

  @Test
  void what_is_pressed_on_an_old_page_is_refused_in_view_and_the_page_shows_how_it_stands() {
    try (TestDay day = closed()) {
      Window.run(
          () -> {
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            ReviewPage page = new ReviewPage(new Look(), model, new NoDialogs());
            elsewhere(day, desk -> voidFifth(day, desk));
            assertThat(texts(page)).noneMatch(t -> t.contains("traffic"));
            press(page, "Close the review");
            press(page, "Close the review");
            assertThat(day.state().step()).isEqualTo(Step.DAY_CLOSED);
            assertThat(texts(page))
                .anyMatch(t -> t.startsWith("Something was written to this session elsewhere"))
                .anyMatch(t -> t.contains("traffic"));
            press(page, "Close the review");
            press(page, "Close the review");
            assertThat(day.state().step()).isEqualTo(Step.REVIEW_CLOSED);
          });
    }
  }

  @Test
  void the_key_is_not_opened_on_a_page_that_is_old() {
    try (TestDay day = closed()) {
      day.desk().keys().closeReview(day.id());
      Window.run(
          () -> {
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            elsewhere(
                day,
                desk ->
                    desk.keys()
                        .unseal(desk.sessions().state(day.id()).orElseThrow(), day.phrase()));
            assertThat(model.stageProperty().get()).isEqualTo(ReviewModel.Stage.BLIND);
            model.blind().unseal("wrong words");
            assertThat(model.stageProperty().get()).isEqualTo(ReviewModel.Stage.OPEN);
            assertThat(model.troubleProperty().get())
                .startsWith("Something was written to this session elsewhere");
          });
    }
  }

  @Test
  void a_refused_press_is_said_on_the_page_that_another_process_has_put_in_its_place() {
    try (TestDay day = closed()) {
      day.desk().keys().closeReview(day.id());
      Window.run(
          () -> {
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            ReviewPage page = new ReviewPage(new Look(), model, new NoDialogs());
            String refused = "Something was written to this session elsewhere";
            elsewhere(
                day,
                desk ->
                    desk.keys()
                        .unseal(desk.sessions().state(day.id()).orElseThrow(), day.phrase()));
            assertThat(texts(page)).noneMatch(t -> t.startsWith(refused));
            model.blind().unseal(day.phrase());
            assertThat(model.stageProperty().get()).isEqualTo(ReviewModel.Stage.OPEN);
            assertThat(visible(page)).as("beside the finding").anyMatch(t -> t.startsWith(refused));
            elsewhere(
                day,
                desk ->
                    desk.sessions()
                        .act(
                            day.id(),
                            latest ->
                                new blindlap.session.LifeCommands(latest)
                                    .amend("The gauge read low.", "found later")));
            model.look();
            assertThat(visible(page)).as("gone").noneMatch(t -> t.startsWith(refused));
          });
    }
  }

  @Test
  void a_press_after_another_process_has_abandoned_the_session_is_refused_in_view() {
    try (TestDay day = closed()) {
      Window.run(
          () -> {
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            ReviewPage page = new ReviewPage(new Look(), model, new NoDialogs());
            elsewhere(
                day,
                desk ->
                    desk.sessions()
                        .act(
                            day.id(),
                            latest -> new blindlap.session.LifeCommands(latest).abandon("rain")));
            press(page, "Close the review");
            press(page, "Close the review");
            assertThat(model.stageProperty().get()).isEqualTo(ReviewModel.Stage.NOTICE);
            assertThat(visible(page))
                .anyMatch(t -> t.startsWith("Something was written to this session elsewhere"))
                .anyMatch(t -> t.contains("rain"));
          });
    }
  }

  private static List<String> visible(Parent page) {
    return all(page, Label.class).filter(Label::isManaged).map(Label::getText).toList();
  }

  @Test
  void both_reviews_in_a_window_follow_by_themselves() throws Exception {
    AtomicReference<Scene> scene = new AtomicReference<>();
    ExecutorService worker = Executors.newSingleThreadExecutor();
    try (TestDay day = closed()) {
      ReviewPage page =
          Window.call(
              () -> {
                ReviewModel model = Models.review(day.desk(), Background.on(worker));
                ReviewPage made = new ReviewPage(new Look(), model, new NoDialogs());
                scene.set(new Scene(made, 1100, 900));
                model.open(day.id());
                return made;
              });
      until("the blind review", () -> texts(page).contains("Correct a value"));
      elsewhere(day, desk -> voidFifth(day, desk));
      until("the void", () -> texts(page).stream().anyMatch(t -> t.contains("traffic")));
      elsewhere(
          day,
          desk -> {
            desk.keys().closeReview(day.id());
            desk.keys().unseal(desk.sessions().state(day.id()).orElseThrow(), day.phrase());
          });
      until("the finding", () -> texts(page).stream().anyMatch(t -> t.contains("Shock L")));
      elsewhere(
          day,
          desk ->
              desk.sessions()
                  .act(
                      day.id(),
                      latest ->
                          new blindlap.session.LifeCommands(latest)
                              .amend("The gauge read low.", "found in the workshop")));
      until(
          "the amendment",
          () -> texts(page).stream().anyMatch(t -> t.contains("The gauge read low.")));
    } finally {
      Window.run(() -> scene.get().setRoot(new Pane()));
      worker.shutdown();
      assertThat(worker.awaitTermination(20, TimeUnit.SECONDS)).isTrue();
    }
  }

  private static void until(String what, Callable<Boolean> there) throws InterruptedException {
    for (int tenths = 0; tenths < 200; tenths++) {
      if (Window.call(there)) {
        return;
      }
      Thread.sleep(100);
    }
    assertThat(false).as(what).isTrue();
  }
}
