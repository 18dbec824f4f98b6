package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.session.SafetyCheck;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javafx.geometry.Bounds;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where things stand on the Swap page: all of it in a small window, whatever is going on. */
class SwapPlacesTest {
  private static final String PIN = "4711";

  /** The usual plan and what the picture shows: five settings, seven steps. */
  static final String FULL =
      TestDay.EIGHT
          .replace(
              "      - {name: compression",
              "      - {name: \"rebound, from closed\", value: 7, unit: clicks, tolerance: 0}\n"
                  + "      - {name: compression")
          .replace(
              "bike:\n",
              "bike:\n"
                  + "  - {name: rear tyre, value: 1.70, unit: bar, tolerance: 0.03, check: each"
                  + " lap}\n")
          .replace(
              "steps: [Rider in the hut, ",
              "steps: [Rider in the hut with the door shut, Radio on,"
                  + " Take off what is on and lay it under the cloth, ");

  private static final String LONG =
      FULL.replace("Shock K", "Soft spring, long oil, high speed open")
          .replace("Shock L", "Soft spring, long oil, high speed shut");

  private static final String THREE =
      FULL.replace(
              "bike:\n",
              "  - name: Shock M\n"
                  + "    settings:\n"
                  + "      - {name: \"rebound, from closed\", value: 7, unit: clicks, tolerance:"
                  + " 0}\n"
                  + "      - {name: compression, value: 3, unit: clicks, tolerance: 0}\n"
                  + "      - {name: sag, value: 26, unit: \"%\", tolerance: 1, readings: 3}\n"
                  + "bike:\n")
          .replace("protocol: eight-stints\nstints: 8", "protocol: three-setups\nstints: 12")
          .replace("lap_budget: 12", "lap_budget: 20")
          .replace("\"16:38\"", "\"20:00\"");

  private @TempDir(factory = RamFolder.class) Path folder;
  private final Map<String, List<String>> wrong = new LinkedHashMap<>();
  private Scene scene;
  private SwapModel swap;
  private TestDay day;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static List<String> outside(Node node, Bounds view, boolean bars, List<String> found) {
    if (!node.isVisible()) {
      return found;
    }
    Bounds within = view;
    boolean scrolls = bars;
    if (node instanceof ScrollPane scroll) {
      within = scroll.localToScene(scroll.getLayoutBounds());
      scrolls = bars && scroll.getContent() instanceof SwapNoteView;
    }
    if (node instanceof ScrollBar bar && bar.getOrientation() == Orientation.VERTICAL && !scrolls) {
      found.add("a scroll bar");
    }
    if (node instanceof Labeled words
        && !words.getText().isEmpty()
        && node.lookup(".text") instanceof Text shown
        && !shown.getText().equals(words.getText())) {
      found.add("'" + words.getText() + "' is cut to '" + shown.getText() + "'");
    }
    boolean leaf = node.isFocusTraversable() && !(node instanceof ScrollPane);
    if (leaf || node instanceof Labeled || node.getStyleClass().contains("caution")) {
      Bounds at = node.localToScene(node.getLayoutBounds());
      if (!(scrolls && node.getParent() != null && inNote(node)) && !holds(within, at)) {
        String name = node instanceof Labeled words ? words.getText() : node.getAccessibleText();
        found.add(
            String.format(
                Locale.ROOT,
                "'%s' at %.0f to %.0f by %.0f to %.0f",
                name,
                at.getMinX(),
                at.getMaxX(),
                at.getMinY(),
                at.getMaxY()));
      }
    }
    if (!leaf && node instanceof Parent parent) {
      for (Node child : parent.getChildrenUnmodifiable()) {
        outside(child, within, scrolls, found);
      }
    }
    return found;
  }

  private static boolean inNote(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (at instanceof SwapNoteView) {
        return true;
      }
    }
    return false;
  }

  private static boolean holds(Bounds view, Bounds at) {
    return at.getMinX() >= view.getMinX() - 1
        && at.getMaxX() <= view.getMaxX() + 1
        && at.getMinY() >= view.getMinY() - 1
        && at.getMaxY() <= view.getMaxY() + 1;
  }

  private void look(String moment) {
    Window.look(scene, "swap-768-" + moment.replace(' ', '-'));
    List<String> found =
        outside(scene.getRoot(), scene.getRoot().getLayoutBounds(), true, new ArrayList<>());
    if (!found.isEmpty()) {
      wrong.put(moment, found);
    }
  }

  private void open(String plan, long seed, int width, int height) {
    day = new TestDay(folder, plan, seed);
    swap = Models.swap(day);
    Look look = new Look();
    look.themeProperty().set(seed % 2 == 0 ? Theme.DARK : Theme.PAPER);
    scene = new Scene(new SwapPage(look, swap, () -> {}), width, height);
    look.dress(scene);
  }

  private void shut() {
    scene.setRoot(new Pane());
    day.close();
  }

  private Button button(String words) {
    return scene.getRoot().lookupAll(".button").stream()
        .filter(n -> n instanceof Button b && b.isVisible() && b.getText().startsWith(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no button " + words));
  }

  private void work(Duration time) {
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
    day.clock().move(time);
    swap.touch();
    swap.tick();
  }

  private void wholeDay(String name, int stints) {
    look(name + " phrase");
    swap.phrase("one two three");
    look(name + " wrong phrase");
    swap.phrase(day.phrase());
    look(name + " pin");
    swap.choosePin(PIN);
    for (int stint = 0; stint <= stints; stint++) {
      String at = name + " " + stint;
      look(at + " not begun");
      swap.work().begin();
      swap.work().step(0, true);
      look(at + " begun");
      swap.work().measured("sag", "24.5");
      if (scene.getHeight() >= 768) {
        look(at + " outside"); // in a lower window a reason makes its column scroll
      }
      if (stint < 2) {
        button("Note, next").fire();
        look(at + " sheet");
        button("Wrong fit").fire();
        look(at + " later");
        if (stint == 1) {
          button("A wrong setup was on").fire();
          look(at + " wrong fit");
        }
        button("Back to the stint").fire();
        button("Something happened").fire();
        look(at + " events");
        if (scene.getHeight() >= 768) {
          button("Close the day").fire();
          look(at + " close asked");
        }
        button("Back to the stint").fire();
      }
      work(Duration.ofMinutes(stint == 1 ? 9 : 7));
      look(at + " ready");
      if (swap.work().overrunProperty().get()) {
        swap.work().handOver();
        assertThat(swap.work().troubleProperty().get()).isNotEmpty();
        if (scene.getHeight() >= 768) {
          look(at + " refused with an overrun open"); // the refusal takes a line of its own
        }
        scene.getRoot().lookupAll(".toggle-button").stream()
            .filter(
                n -> "Longer than planned: was there a mishap?: yes".equals(n.getAccessibleText()))
            .forEach(n -> ((ToggleButton) n).fire());
        look(at + " mishap");
      }
      swap.work().handOver();
      assertThat(swap.work().troubleProperty().get()).isEmpty();
      look(at + " safe");
      swap.bikeReturned();
      look(at + " back");
      swap.reopen(PIN);
    }
    look(name + " all done");
  }

  @ParameterizedTest
  @CsvSource({
    "usual,1366,768",
    "full,1366,768",
    "full,1366,729",
    "full,1366,694",
    "long,1366,768",
    "full,1920,1080"
  })
  void nothingOfThePageLiesOutsideASmallWindowAtAnyMoment(String name, int width, int height) {
    String plan =
        switch (name) {
          case "usual" -> TestDay.EIGHT;
          case "full" -> FULL;
          default -> LONG;
        };
    Window.run(
        () -> {
          open(plan, height >= 768 ? 2 : 3, width, height);
          assertThat(day.helper().work(1).settings()).hasSize(name.equals("usual") ? 3 : 5);
          wholeDay(name + "-" + height, 3);
          shut();
        });
    assertThat(wrong).isEmpty();
  }

  @Test
  void threeSetupsFitToo() {
    Window.run(
        () -> {
          open(THREE, 2, 1366, 768);
          wholeDay("three", 2);
          shut();
        });
    assertThat(wrong).isEmpty();
  }

  @Test
  void withMoreSettingsThanFiveTheirColumnAloneScrolls() {
    String more =
        FULL.replace(
            "bike:\n",
            "bike:\n  - {name: lever reach, value: 4, unit: mm, tolerance: 1}\n"
                + "  - {name: bar height, value: 20, unit: mm, tolerance: 1}\n");
    Window.run(
        () -> {
          open(more, 2, 1366, 768);
          swap.phrase(day.phrase());
          swap.choosePin(PIN);
          swap.work().begin();
          look("seven settings");
          shut();
        });
    assertThat(wrong.keySet()).containsExactly("seven settings");
    assertThat(wrong.get("seven settings"))
        .filteredOn(each -> each.equals("a scroll bar"))
        .hasSize(1);
    assertThat(wrong.get("seven settings"))
        .filteredOn(each -> !each.equals("a scroll bar"))
        .allSatisfy(each -> assertThat(each).containsAnyOf("lever", "bar", "tyre", "mm"));
  }

  @ParameterizedTest
  @CsvSource({"2,1366", "1,1000", "2,1920"})
  void withLargeTextOrInANarrowWindowCountdownAndGateStayInSight(double scale, int width) {
    Window.run(
        () -> {
          open(FULL, 3, width, 768);
          Look look = new Look();
          look.textScaleProperty().set(scale);
          scene = new Scene(new SwapPage(look, swap, () -> {}), width, 768);
          look.dress(scene);
          swap.phrase(day.phrase());
          swap.choosePin(PIN);
          swap.work().begin();
          day.clock().move(Duration.ofMinutes(1));
          swap.tick();
          Window.look(scene, "swap-large-" + scale + "-" + width);
          Bounds page = scene.getRoot().getLayoutBounds();
          for (Node each : List.of(button("Safe: "), scene.getRoot().lookup(".swap-clock"))) {
            assertThat(holds(page, each.localToScene(each.getLayoutBounds()))).isTrue();
            for (Node up = each; up != null; up = up.getParent()) {
              assertThat(up).isNotInstanceOf(ScrollPane.class);
            }
          }
          shut();
        });
  }
}
