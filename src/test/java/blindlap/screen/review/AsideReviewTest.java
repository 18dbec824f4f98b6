package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.FixedSources;
import blindlap.desk.LapFiles;
import blindlap.desk.SafeKeeping;
import blindlap.desk.Sessions;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.seal.SealParameters;
import blindlap.seal.SecureBytes;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of a finding where machines recorded a secondary measure apart. */
class AsideReviewTest {
  private static final String GRIP = "grip in the rocks";

  @TempDir Path folder;

  @BeforeAll
  static void start() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static byte[] laps(String fifth) {
    StringBuilder csv = new StringBuilder("lap;lap time;" + GRIP + "\n");
    for (int lap = 1; lap <= 8; lap++) {
      csv.append(
          "%d;9%d.%d;%s\n".formatted(lap, lap * 3 % 7, lap, lap == 5 ? fifth : "4" + lap * 5 % 8));
    }
    return csv.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void done(Sessions.Result result) {
    assertThat(result).isInstanceOf(Sessions.Result.Done.class);
  }

  /** A day that is unsealed, with another machine's record of its fifth lap brought in before. */
  private TestDay unsealed() {
    Path hut = folder.resolve("hut.blindlap");
    Path home = folder.resolve("home.blindlap");
    TestDay day = new TestDay(hut, TestDay.EIGHT, 1, Optional.empty());
    try (Desk other = open(home, day)) {
      bringIn(other, home, hut);
      done(
          new LapFiles(other.sessions())
              .record(other.sessions().state(day.id()).orElseThrow(), laps("95")));
    }
    Desk desk = day.desk();
    done(new LapFiles(desk.sessions()).record(day.state(), laps("45")));
    bringIn(desk, hut, home);
    desk.riderDays().closeDay(day.id());
    done(desk.keys().closeReview(day.id()));
    done(desk.keys().unseal(day.state(), day.phrase(), Optional.empty()));
    return day;
  }

  private static Desk open(Path file, TestDay day) {
    Random random = new Random(9);
    SecureBytes ids =
        count -> {
          byte[] bytes = new byte[count];
          random.nextBytes(bytes);
          return bytes;
        };
    return new Desk(
        SqliteNotebook.open(file, ids.exactly(16), day.clock().instant()),
        day.clock(),
        FixedSources.order(2),
        new SealParameters(1),
        ids);
  }

  private static void bringIn(Desk to, Path toFile, Path from) {
    SafeKeeping keeping = new SafeKeeping(new SqliteFiles(to.clock(), () -> new byte[16]), toFile);
    assertThat(to.exchange(keeping).bringIn(from).refused()).isEmpty();
  }

  /** As a window does: what one layout makes wider the next one lays out again. */
  private static void lay(ReviewPage page, double width) {
    page.resize(width, 4200);
    for (int pulse = 0; pulse < 3; pulse++) {
      page.applyCss();
      page.layout();
    }
  }

  private static <T extends Node> Stream<T> all(Parent parent, Class<T> type) {
    return parent.getChildrenUnmodifiable().stream()
        .flatMap(
            node ->
                Stream.concat(
                    type.isInstance(node) ? Stream.of(type.cast(node)) : Stream.empty(),
                    inside(node) instanceof Parent inner ? all(inner, type) : Stream.empty()));
  }

  private static Node inside(Node node) {
    return node instanceof ScrollPane scroll ? scroll.getContent() : node;
  }

  @Test
  void thePageShowsASecondaryMeasureWithItsValuesSetAsideAndBothValuesWhole() {
    try (TestDay day = unsealed()) {
      Window.run(
          () -> {
            Look look = new Look();
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            ReviewPage page = new ReviewPage(look, model, new NoDialogs());
            Scene scene = new Scene(page, 900, 4200);
            look.dress(scene);
            Window.picture(scene, "review-aside");
            String beside = GRIP + ", with the values set aside in stint 5, which other machines";
            List<String> texts = all(page, Label.class).map(Label::getText).toList();
            assertThat(texts)
                .anyMatch(t -> t.startsWith(beside) && t.contains("p = "))
                .anyMatch(
                    t ->
                        t.startsWith("Lap 5, " + GRIP + ": machines recorded different values.")
                            && t.contains(" 45 ")
                            && t.contains(" 95 "))
                .noneMatch(t -> t.startsWith("lap time, with the values set aside"));
            for (double scale : List.of(1.0, 2.0)) {
              look.textScaleProperty().set(scale);
              for (int width : List.of(716, 900, 1180)) {
                lay(page, width);
                String moment = width + " px, " + Math.round(100 * scale) + " %";
                assertThat(Within.of(page, moment).wrong()).isEmpty();
              }
            }
            Window.picture(page, "review-aside-200");
          });
    }
  }
}
