package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.screen.swap.SwapSheet;
import blindlap.session.SafetyCheck;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.layout.Pane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Nothing of Ride and Swap is out of reach, small window or large, usual text or twice as large.
 */
class ReachableDayTest {
  private static final String PIN = "4711";
  private static final String TIME = "lap time";

  private @TempDir(factory = RamFolder.class) Path folder;
  private final List<String> wrong = new ArrayList<>();
  private final Look look = new Look();
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

  private void look(String moment) {
    Reachable.wrong(scene).forEach(each -> wrong.add(moment + ": " + each));
  }

  private void press(String words) {
    scene.getRoot().applyCss();
    scene.getRoot().lookupAll(".button").stream()
        .filter(n -> n instanceof Button b && shown(b) && b.getText().startsWith(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no button " + words))
        .fire();
    day.clock().move(Duration.ofSeconds(1));
  }

  private static boolean shown(Button button) {
    for (Node at = button; at != null; at = at.getParent()) {
      if (!at.isVisible()) {
        return false;
      }
    }
    return true;
  }

  private void toRide() {
    scene.setRoot(ridePage);
    ride.tick();
    day.clock().move(Duration.ofSeconds(1));
  }

  private void handle(int stint, int minutes) {
    scene.setRoot(swapPage);
    String at = "swap " + stint + " ";
    look(at + "not begun");
    swap.work().begin();
    look(at + "begun");
    press("Note, next");
    look(at + "note");
    press("Back to the stint");
    press("Something happened");
    look(at + "events");
    press("End the day early");
    look(at + "end asked");
    press("Ride on");
    press("Back to the stint");
    press("Note, next");
    press("Wrong fit");
    look(at + "later");
    if (stint > 0) {
      press("A wrong setup was on");
      look(at + "wrong fit");
    }
    press("Back to the stint");
    SwapSheet sheet = Objects.requireNonNull(swap.work().sheetProperty().get());
    day.helper()
        .settings(sheet.stint(), sheet.fitted())
        .forEach(s -> swap.work().measured(s.name(), s.value()));
    for (SafetyCheck check : SafetyCheck.values()) {
      swap.work().confirm(check.name(), true);
    }
    if (sheet.fitAsked()) {
      swap.work().riderFit(true);
    }
    day.clock().move(Duration.ofMinutes(minutes));
    swap.touch();
    swap.tick();
    look(at + "ready");
    if (swap.work().overrunProperty().get()) {
      swap.work().mishap(true, "a bolt fell into the grass");
      look(at + "mishap");
    }
    swap.work().handOver();
    assertThat(swap.work().troubleProperty().get()).isEmpty();
    look(at + "safe");
  }

  private void lap(int stint) {
    toRide();
    String at = "ride " + stint + " ";
    look(at + "empty sheet");
    ride.watches().timedBy("STARTER");
    ride.watches().start(TIME);
    look(at + "running");
    ride.done().press();
    look(at + "asked");
    ride.done().withdraw();
    day.clock().move(Duration.ofSeconds(93));
    ride.watches().stop(TIME);
    ride.answer("trust", BigDecimal.TEN.subtract(BigDecimal.ONE));
    ride.answer("harshness at the hands", BigDecimal.TEN);
    look(at + "stopped");
    press("Something happened");
    look(at + "events");
    press("Back to the sheet");
    ride.lapDone();
    look(at + "done");
    ride.done().openAgain();
    look(at + "open again");
    ride.lapDone();
    press("Key in from paper");
    look(at + "key in");
    press("Back to the sheet");
    ride.voids().spoiled("CRASH");
    press("Something happened");
    look(at + "void");
    press("Back to the sheet");
    ride.next();
    look(at + "waits");
  }

  private void wholeDay() {
    look("door");
    swap.phrase("one two three");
    look("wrong phrase");
    swap.phrase(day.phrase());
    look("pin");
    swap.choosePin(PIN);
    handle(0, 7);
    toRide();
    look("warm-up");
    ride.warmUpRidden();
    look("warm-up ridden");
    for (int stint = 1; stint <= 2; stint++) {
      swap.bikeReturned();
      scene.setRoot(swapPage);
      look("pin before stint " + stint);
      swap.reopen(PIN);
      handle(stint, 5 + 2 * stint);
      lap(stint);
    }
    ride.events().cutShort("rain", "R. Lind", false);
    look("all ridden");
    press("Close the day");
    look("close asked");
    ride.events().closeDay();
    look("closed");
    scene.setRoot(swapPage);
    swap.tick();
    look("swap over");
  }

  @ParameterizedTest
  @CsvSource({"1366,768,1", "1366,768,2", "1366,768,1.5", "1920,1080,1", "1920,1080,2"})
  void nothingOfRideAndSwapIsOutOfReachAtAnyMomentOfADay(int width, int height, double scale) {
    Window.run(
        () -> {
          day = new TestDay(folder, TestDay.EIGHT, 2);
          swap = Models.swap(day);
          ride = Models.ride(day);
          look.textScaleProperty().set(scale);
          look.themeProperty().set(scale == 2 ? Theme.DARK : Theme.SUNLIGHT);
          swapPage = new SwapPage(look, swap, () -> {});
          ridePage = new RidePage(look, ride, () -> {});
          scene = new Scene(swapPage, width, height);
          look.dress(scene);
          wholeDay();
          scene.setRoot(new Pane());
          day.close();
        });
    assertThat(wrong).isEmpty();
  }
}
