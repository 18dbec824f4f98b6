package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.StepsTestDay;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.session.SafetyCheck;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.scene.Scene;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the helper is told to do on a steps day: the way from the level that is really on. */
class SwapStepsDayTest {
  private static final String PIN = "4711";

  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static int number(List<String> steps, String pattern) {
    Matcher found = Pattern.compile(pattern).matcher(String.join("\n", steps));
    return found.find() ? Integer.parseInt(found.group(1)) : 0;
  }

  private static SwapSheet sheet(SwapModel swap) {
    return Objects.requireNonNull(swap.work().sheetProperty().get());
  }

  private static int level(String name) {
    return Integer.parseInt(name.replaceAll("\\D.*", ""));
  }

  /** In stint 4 another level is fitted than was drawn: the next way begins there. */
  @Test
  void everyHandlingOfTheDayIsCountedOutFromTheLevelThatIsReallyOn() {
    try (TestDay day = new TestDay(folder, StepsTestDay.NINE, 2)) {
      SwapModel swap = Models.swap(day);
      swap.phrase(day.phrase());
      swap.choosePin(PIN);
      int on = -1;
      int handled = 0;
      while (swap.phaseProperty().get() == SwapModel.Phase.OPEN) {
        SwapSheet now = sheet(swap);
        List<String> steps = now.steps();
        int in = number(steps, "Count (\\d+) clicks? to the end");
        int detour = number(steps, "Count (\\d+) out and \\d+ back");
        int out = number(steps, "Count (\\d+) clicks? out: that is");
        int beside = String.join(" ", steps).contains("beside the bike") ? 1 : 0;
        assertThat(in).isEqualTo(Math.max(0, on));
        assertThat(out).isEqualTo(level(now.name()));
        assertThat(in + 2 * detour + out + beside).isEqualTo(20);
        assertThat(now.setup()).isEqualTo(SwapSheet.NO_MARK);
        assertThat(now.limits())
            .anyMatch(line -> line.contains("20 clicks in all"))
            .contains("rebound: 2 to 16 clicks, the maker's limits as you typed them (p. 12)");
        assertThat(steps.get(0)).contains("out of sight and earshot");
        assertThat(now.swap())
            .startsWith(on < 0 ? "First" : on == level(now.name()) ? "Dummy" : "A change");
        on = handle(day, swap, now, handled == 4);
        handled++;
        swap.bikeReturned();
        swap.reopen(PIN);
      }
      assertThat(handled).isEqualTo(10);
    }
  }

  private static int handle(TestDay day, SwapModel swap, SwapSheet now, boolean wrong) {
    SwapWork work = swap.work();
    work.begin();
    day.clock().move(Duration.ofMinutes(8));
    swap.touch();
    swap.tick();
    for (SafetyCheck check : SafetyCheck.values()) {
      work.confirm(check.name(), true);
    }
    if (now.fitAsked()) {
      work.riderFit(true);
    }
    int fitted = wrong ? (now.fitted() + 1) % 3 : now.fitted();
    work.fitted(fitted);
    day.helper()
        .settings(now.stint(), fitted)
        .forEach(setting -> work.measured(setting.name(), setting.value()));
    work.note(wrong ? "misread" : "");
    if (work.overrunProperty().get()) {
      work.mishap(false, "");
    }
    work.handOver();
    assertThat(work.troubleProperty().get()).isEmpty();
    return level(now.setups().get(fitted));
  }

  @Test
  void thePageIsDrawnInEveryThemeAndSizeOfText() {
    try (TestDay day =
        new TestDay(
            folder, StepsTestDay.plan("levels: [3, 5, 7, 9, 11, 14], least: 2, most: 16", 18), 3)) {
      Window.run(
          () -> {
            SwapModel swap = Models.swap(day);
            swap.phrase(day.phrase());
            swap.choosePin(PIN);
            handle(day, swap, sheet(swap), false);
            swap.bikeReturned();
            swap.reopen(PIN);
            swap.work().begin();
            for (double text : new double[] {1, 2}) {
              Look look = new Look();
              look.textScaleProperty().set(text);
              Scene scene = new Scene(new SwapPage(look, swap, () -> {}), 1366, 768);
              look.dress(scene);
              for (Theme theme : Theme.values()) {
                look.themeProperty().set(theme);
                scene.getRoot().applyCss();
                scene.getRoot().layout();
                String name = theme.name().toLowerCase(Locale.ROOT) + "-" + (int) (100 * text);
                Window.picture(scene, "steps-swap-" + name);
                assertThat(beyond(scene)).as(name).isEmpty();
              }
            }
          });
      assertThat(day.state().helperRecords()).hasSize(1);
    }
  }

  /** What can be pressed or typed into and reaches beyond the left or right edge. */
  private static List<String> beyond(Scene scene) {
    return scene.getRoot().lookupAll("*").stream()
        .filter(node -> node.isFocusTraversable() && node.isVisible())
        .filter(node -> !(node instanceof javafx.scene.control.ScrollPane))
        .map(node -> node.localToScene(node.getLayoutBounds()))
        .filter(at -> at.getMinX() < -1 || at.getMaxX() > scene.getWidth() + 1)
        .map(Object::toString)
        .toList();
  }
}
