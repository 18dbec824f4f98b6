package blindlap.screen.part;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.LapFiles;
import blindlap.desk.TestDay;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.session.Fact;
import blindlap.session.day.Step;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What ends the day asks once, in the page, and says what of the day is missing. */
class DayEventsViewTest {
  @TempDir Path folder;

  @BeforeAll
  static void start() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static <T extends Node> Stream<T> all(Parent parent, Class<T> type) {
    return parent.getChildrenUnmodifiable().stream()
        .flatMap(
            node ->
                Stream.concat(
                    type.isInstance(node) ? Stream.of(type.cast(node)) : Stream.empty(),
                    node instanceof Parent inner ? all(inner, type) : Stream.empty()));
  }

  private static List<String> texts(Parent page) {
    return all(page, Label.class).map(Label::getText).toList();
  }

  private static void press(Parent page, String words) {
    Optional<Button> button =
        all(page, Button.class).filter(b -> b.getText().equals(words)).findFirst();
    button.orElseThrow(() -> new AssertionError("no button " + words)).fire();
  }

  private void record(TestDay day, int laps) {
    StringBuilder csv = new StringBuilder("lap;lap time\n");
    for (int lap = 1; lap <= laps; lap++) {
      csv.append(lap).append(";9").append(lap).append(".4\n");
    }
    new LapFiles(day.desk().sessions())
        .record(day.state(), csv.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static DayEventsView view(TestDay day) {
    DayEventsModel model =
        new DayEventsModel(day.desk().riderDays(), Background.immediate(), () -> 1, changed -> {});
    model.open(day.id());
    DayEventsView view = new DayEventsView(new Look(), model);
    new Scene(view, 1000, 900);
    return view;
  }

  private void asks(String plan, long seed) {
    try (TestDay day = new TestDay(folder, plan, seed)) {
      record(day, 6);
      Window.run(
          () -> {
            DayEventsView view = view(day);
            String missing = "2 laps are not recorded: 6 of 8 stints are ridden whole.";
            assertThat(texts(view)).noneMatch(t -> t.contains(missing));
            press(view, "Close the day");
            assertThat(texts(view))
                .anyMatch(t -> t.startsWith(missing) && t.contains("nothing opens the day again"));
            assertThat(day.state().step()).isEqualTo(Step.RIDING);
            press(view, "Not yet");
            assertThat(texts(view)).noneMatch(t -> t.contains(missing));
            assertThat(day.state().step()).isEqualTo(Step.RIDING);
            press(view, "Close the day");
            press(view, "Close the day");
            assertThat(day.state().step()).isEqualTo(Step.DAY_CLOSED);
          });
    }
  }

  @Test
  void closing_with_laps_missing_says_which_and_closes_only_when_pressed_again() {
    asks(TestDay.EIGHT, 1);
  }

  @Test
  void after_a_look_that_said_stop_the_reason_settled_is_picked_with_a_press() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 4)) {
      record(day, 6);
      SimpleBooleanProperty told = new SimpleBooleanProperty(false);
      Window.run(
          () -> {
            DayEventsView view = view(day);
            view.offerSettled(told);
            Button settled = (Button) view.lookup("#cut-settled");
            assertThat(settled.isManaged()).isFalse();
            told.set(true);
            assertThat(settled.isManaged() && settled.isVisible()).isTrue();
            press(view, "The reason is \"settled\"");
            all(view, TextField.class)
                .filter(f -> f.getPromptText().equals("Who decided?"))
                .forEach(f -> f.setText("M. Oster"));
            press(view, "End the day early");
            press(view, "End the day early");
            assertThat(day.state().cutShort())
                .get()
                .extracting(Fact.DayCutShort::lastStint, Fact.DayCutShort::reason)
                .containsExactly(6, "settled");
          });
    }
  }

  @Test
  void a_day_without_a_look_offers_no_such_reason() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 5)) {
      Window.run(() -> assertThat(view(day).lookup("#cut-settled").isManaged()).isFalse());
    }
  }

  @Test
  void what_can_come_out_is_offered_in_the_words_of_what_is_hidden_and_nothing_where_nothing_is() {
    String plan = TestDay.at("level: masked, prepared_by: M. Oster, masks: marks");
    try (TestDay day = new TestDay(folder, plan, 6)) {
      Window.run(
          () -> {
            DayEventsView view = view(day);
            view.withLabels();
            assertThat(SceneText.of(view.getScene()))
                .contains("as \"It came out which part is which\"");
            all(view, TextField.class)
                .filter(f -> f.getPromptText().startsWith("How did it come out?"))
                .forEach(f -> f.setText("A mask tore."));
            press(view, "It came out which part is which");
            assertThat(texts(view))
                .anyMatch(t -> t.contains("a guess of the labels means nothing"));
            assertThat(day.state().blindBroken())
                .containsExactly(new Fact.BlindBroken(1, "A mask tore."));
            assertThat(all(view, Button.class).map(Button::getText))
                .doesNotContain("I saw or was told what is fitted");
          });
    }
    try (TestDay day = new TestDay(folder, TestDay.at("level: drawn"), 7)) {
      Window.run(
          () -> {
            DayEventsView view = view(day);
            view.withoutBlind();
            assertThat(SceneText.of(view.getScene())).doesNotContain("blind broken");
            assertThat(all(view, Button.class).map(Button::getText))
                .doesNotContain("I saw or was told what is fitted", "A cover came off");
          });
    }
  }

  @Test
  void an_unblinded_day_asks_the_same() {
    asks(
        TestDay.EIGHT.replace(
            "blinding: {helper: M. Oster, cover: Cloth over the shock}", "blinding: {blinded: no}"),
        2);
  }

  @Test
  void of_a_day_that_is_ridden_whole_nothing_is_said_to_be_missing_though_a_value_is() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 3)) {
      // Every lap has its time; the scales of the rider have no value at all.
      record(day, 8);
      Window.run(
          () -> {
            DayEventsView view = view(day);
            press(view, "Close the day");
            assertThat(texts(view))
                .anyMatch(t -> t.startsWith("From then on no lap can be recorded"))
                .noneMatch(t -> t.contains("not recorded:"));
            press(view, "Close the day");
            assertThat(day.state().step()).isEqualTo(Step.DAY_CLOSED);
            assertThat(texts(view)).anyMatch(t -> t.contains("closed"));
          });
    }
  }
}
