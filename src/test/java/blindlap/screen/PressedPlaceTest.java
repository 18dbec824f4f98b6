package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.session.SafetyCheck;
import blindlap.session.day.Step;
import blindlap.wording.SwapWords;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javafx.event.Event;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.PickResult;
import javafx.scene.layout.Pane;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A whole day of presses on Swap and Ride: what comes under a finger that has just pressed means
 * the same, or is one of the few pairs below, and then the page is deaf.
 */
class PressedPlaceTest {
  private static final String PIN = "4711";
  private static final int STINTS = 3;

  /** What was pressed, and what may come in its place: nothing of it burns a lap or a stint. */
  private static final Set<String> MAY_FOLLOW =
      Set.of(
          "Start > Stop", // one place for the watch; a test of its own holds that it is deaf
          "Something happened … > Back to the sheet",
          "Back to the sheet > Something happened …",
          "End the day early > Ride on",
          "Ride on > End the day early",
          "Close the day > Not yet",
          "Ride on > Whoever decided knows the key", // a box, and the question has gone
          "Back to the stint > Pivots and mounts to the maker's torque", // ticked, and ticked off
          "Open > Keep", // of a PIN that has four digits to be typed first
          "Keep > 4 Set clicks and check sag, key 4", // ticked, and ticked off
          "Keep > 5 Cycle the bike ten times, key 5",
          "Take back: how sure you are > Take back: your guess");

  private @TempDir(factory = RamFolder.class) Path folder;
  private final List<String> wrong = new ArrayList<>();
  private int presses;
  private Scene scene;
  private TestDay day;
  private SwapModel swap;
  private RideModel ride;
  private Parent swapPage;
  private Parent ridePage;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private void lay() {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
  }

  private static List<ButtonBase> buttons(Node node, List<ButtonBase> found) {
    if (!node.isVisible() || node.isDisabled()) {
      return found;
    }
    if (node instanceof ButtonBase button) {
      found.add(button);
    } else if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> buttons(child, found));
    }
    return found;
  }

  private static String words(Labeled button) {
    String text = button.getText() == null ? "" : button.getText();
    return text.isEmpty() ? String.valueOf(button.getAccessibleText()) : text;
  }

  private void press(String words) {
    day.clock().move(Deaf.FOR);
    lay();
    ButtonBase button =
        buttons(scene.getRoot(), new ArrayList<>()).stream()
            .filter(b -> words(b).startsWith(words) || accessible(b).startsWith(words))
            .findFirst()
            .orElseThrow(() -> new AssertionError("there is no " + words));
    String pressed = words(button);
    Bounds at = button.localToScene(button.getLayoutBounds());
    button.fire();
    presses++;
    lay();
    for (double x : new double[] {0.1, 0.3, 0.5, 0.7, 0.9}) {
      for (double y : new double[] {0.15, 0.5, 0.85}) {
        ButtonBase there = at(at.getMinX() + x * at.getWidth(), at.getMinY() + y * at.getHeight());
        if (there != null && !words(there).equals(pressed)) {
          compare(pressed, there);
        }
      }
    }
  }

  private static String accessible(Node node) {
    return String.valueOf(node.getAccessibleText());
  }

  private @Nullable ButtonBase at(double x, double y) {
    return buttons(scene.getRoot(), new ArrayList<>()).stream()
        .filter(b -> b.localToScene(b.getLayoutBounds()).contains(x, y) && inView(b, x, y))
        .findFirst()
        .orElse(null);
  }

  /** What is scrolled away lies behind other things. */
  private static boolean inView(Node node, double x, double y) {
    for (Node up = node; up != null; up = up.getParent()) {
      if (up instanceof ScrollPane && !up.localToScene(up.getLayoutBounds()).contains(x, y)) {
        return false;
      }
    }
    return true;
  }

  private void compare(String pressed, ButtonBase there) {
    String pair = pressed + " > " + words(there);
    if (!MAY_FOLLOW.contains(pair) && !wrong.contains(pair)) {
      wrong.add(pair);
    }
    Bounds at = there.localToScene(there.getLayoutBounds());
    Event.fireEvent(
        there,
        new MouseEvent(
            MouseEvent.MOUSE_PRESSED,
            at.getCenterX(),
            at.getCenterY(),
            at.getCenterX(),
            at.getCenterY(),
            MouseButton.PRIMARY,
            1,
            false,
            false,
            false,
            false,
            true,
            false,
            false,
            true,
            false,
            true,
            new PickResult(there, at.getCenterX(), at.getCenterY())));
    if (there.isArmed()) {
      there.disarm();
      String heard = pair + " is heard at once";
      if (!wrong.contains(heard)) {
        wrong.add(heard);
      }
    }
  }

  private void show(Parent page) {
    scene.setRoot(page);
    ride.tick();
    swap.tick();
  }

  private void handle(int stint) {
    show(swapPage);
    press("Begin");
    day.helper().work(stint).settings().forEach(s -> swap.work().measured(s.name(), s.value()));
    for (SafetyCheck check : SafetyCheck.values()) {
      press(SwapWords.say("check." + check));
    }
    if (stint > 0) {
      press("Is the rider fit to go on?: yes");
    }
    if (stint == 1) {
      press("Something happened");
      press("Back to the stint");
    }
    // The overrun of stint 2 raises later countdowns once.
    day.clock().move(Duration.ofSeconds(stint < 2 ? 420 : stint == 2 ? 540 : 525));
    swap.touch();
    swap.tick();
    if (swap.work().overrunProperty().get()) {
      press("Longer than planned: was there a mishap?: no");
    }
    assertThat(swap.work().waitsProperty().get().whole()).isEmpty();
    press("Safe: ");
    assertThat(day.state().handedOver(stint)).isTrue();
    show(ridePage);
  }

  /** What opens the helper's page: the door is deaf, too. */
  private void secret(String typed, String open) {
    lay();
    ((TextField) scene.getRoot().lookup("#secret")).setText(typed);
    press(open);
  }

  private void back() {
    show(swapPage);
    press("The bike is back");
    secret(PIN, "Open");
  }

  private void lap(int lap) {
    press("lap time: Start");
    day.clock().move(Duration.ofSeconds(93));
    press("lap time: Stop");
    press("trust: none (1) to complete (9): 6");
    press("feet off the pedals: one more");
    press("Your guess: Shock K");
    press("How sure?: a hunch");
    press("Take back: how sure you are");
    press("Done with lap " + lap);
    press("Done as it is");
    press("Open lap " + lap + " again");
    press("Something happened");
    press("This lap was spoiled by an event … What happened? A score is never a reason.: crash");
    press("Keep it");
    press("End the day early");
    press("Ride on");
    press("Back to the sheet");
    press("Done with lap " + lap);
    press("Done as it is");
  }

  private void wholeDay() {
    show(swapPage);
    secret(day.phrase(), "Open");
    secret(PIN, "Keep");
    handle(0);
    press("Warm-up lap ridden");
    ride.watches().timedBy("STARTER");
    for (int stint = 1; stint <= STINTS; stint++) {
      back();
      handle(stint);
      lap(stint);
      if (stint < STINTS) {
        press("On to the next lap");
      }
    }
    ride.events().cutShort("rain", "R. Lind", false);
    press("Something happened");
    press("Back to the sheet");
    press("On to the end");
    press("Close the day");
    press("Close the day");
  }

  @ParameterizedTest
  @CsvSource({"1366,768,1", "1366,768,2"})
  void nothingThatMeansSomethingElseComesUnderAFingerThatHasJustPressed(
      int width, int height, double scale) {
    Window.run(
        () -> {
          day = new TestDay(folder, TestDay.EIGHT, 2);
          swap = Models.swap(day);
          ride = Models.ride(day);
          Look look = new Look();
          look.textScaleProperty().set(scale);
          swapPage = new SwapPage(look, swap, () -> {});
          ridePage = new RidePage(look, ride, () -> {});
          scene = new Scene(swapPage, width, height);
          look.dress(scene);
          wholeDay();
          scene.setRoot(new Pane());
        });
    assertThat(day.state().step()).isEqualTo(Step.DAY_CLOSED);
    day.close();
    assertThat(presses).isGreaterThan(80);
    assertThat(wrong).isEmpty();
  }
}
