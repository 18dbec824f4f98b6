package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.OddDay;
import blindlap.fault.TypedText;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.Surface;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.Theme;
import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.property.SimpleStringProperty;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every page on notebooks that hold, in every text that was ever typed, what a screen would act on:
 * it is shown as what it is, in letters, in pictures and to a screen reader.
 */
class ShownTextsTest {
  private @TempDir(factory = RamFolder.class) Path folder;
  private final Set<String> raw = new TreeSet<>();
  private final List<String> shown = new ArrayList<>();
  private final Set<String> pages = new TreeSet<>();

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private void text(String moment, @Nullable String words) {
    if (words == null) {
      return;
    }
    boolean odd =
        words
            .codePoints()
            .anyMatch(
                c ->
                    c != '\n' && c != '\t' && TypedText.control(c)
                        || TypedText.noCharacter(c)
                        || TypedText.turns(c));
    if (odd) {
      raw.add(moment + ": " + words);
    } else if (words.contains("␇") || words.contains("‹U+202E›")) {
      shown.add(words);
    }
  }

  /** Lays the scene out and looks at all that it holds; how many odd texts are shown in it. */
  private int look(Scene scene, String moment) {
    shown.clear();
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    look(scene.getRoot(), moment);
    return shown.size();
  }

  private void look(Node node, String moment) {
    if (node.getClass().getSimpleName().endsWith("Page")) {
      pages.add(node.getClass().getSimpleName());
    }
    text(moment + " (spoken)", node.getAccessibleText());
    text(moment + " (help)", node.getAccessibleHelp());
    if (node instanceof Text letters) {
      text(moment, letters.getText());
    } else if (node instanceof Labeled labeled && !labeled.textProperty().isBound()) {
      text(moment, labeled.getText());
    } else if (node instanceof TextInputControl field) {
      text(moment + " (asked)", field.getPromptText());
      return;
    } else if (node instanceof PlotView plot) {
      plot.drawOn(listening(moment + " (drawn)"), 744, 1);
    }
    if (node instanceof Control control && control.getTooltip() != null) {
      text(moment + " (tip)", control.getTooltip().getText());
    }
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> look(child, moment));
    }
  }

  /** A surface that keeps nothing but the words. */
  private Surface listening(String moment) {
    return (Surface)
        Proxy.newProxyInstance(
            Surface.class.getClassLoader(),
            new Class<?>[] {Surface.class},
            (proxy, method, given) -> {
              if (method.getName().equals("text")) {
                text(moment, (String) given[0]);
              }
              return method.getReturnType() == Palette.class ? Theme.PAPER.palette() : null;
            });
  }

  /** A page is a class of this name in a room of the window; none is to be entered by hand. */
  private static Set<String> everyPage() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/blindlap/screen"))) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith("Page.java"))
          .map(name -> name.substring(0, name.length() - ".java".length()))
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }

  @Test
  void everyPageThereIsShowsWhatOldNotebooksHold() throws IOException {
    new EveryPage(
            folder,
            (scene, moment, odd) ->
                assertThat(look(scene, moment)).as(moment).isGreaterThanOrEqualTo(odd))
        .walk();
    assertThat(raw).isEmpty();
    assertThat(everyPage()).hasSizeGreaterThan(10);
    assertThat(pages).as("pages that were walked").isEqualTo(everyPage());
  }

  private static Scene scene(Look look, Parent page) {
    return EveryPage.scene(look, page);
  }

  @Test
  void whateverComesIntoAWindowIsShownSafelyNowAndLater() {
    String half = "half \uD800 of one";
    Window.run(
        () -> {
          Label bound = new Label();
          SimpleStringProperty source = new SimpleStringProperty("bound" + OddDay.ODD);
          bound.textProperty().bind(source);
          Label plain = new Label("plain" + OddDay.ODD);
          Button tipped = new Button("\u202Etipped");
          VBox page = new VBox(bound, plain);
          Look look = new Look();
          Scene scene = scene(look, page);
          page.getChildren().add(new Pane(tipped));
          tipped.setTooltip(new Tooltip(OddDay.ODD));
          tipped.setAccessibleText(OddDay.ODD);
          plain.setText(half);
          source.set("later" + OddDay.ODD);
          assertThat(look(scene, "bare")).isPositive();
          assertThat(plain.getText()).isEqualTo("half ‹U+D800› of one");
          assertThat(tipped.getText()).isEqualTo("‹U+202E›tipped");
          assertThat(tipped.getTooltip().getText()).isEqualTo(OddDay.SHOWN);
          assertThat(shown).contains("later" + OddDay.SHOWN);
          scene.setRoot(new VBox(new Label("root" + OddDay.ODD)));
          look(scene, "another root");
          assertThat(shown).contains("root" + OddDay.SHOWN);
        });
    assertThat(raw).isEmpty();
  }

  @Test
  void aListThatDropsDownIsAWindowThatIsSafeToo() {
    Window.run(
        () -> {
          ComboBox<String> box = new ComboBox<>();
          box.getItems().setAll("one" + OddDay.ODD, "two" + OddDay.ODD);
          Look look = new Look();
          Stage stage = new Stage();
          stage.setScene(scene(look, new VBox(box)));
          stage.show();
          box.show();
          List<javafx.stage.Window> open = List.copyOf(javafx.stage.Window.getWindows());
          open.forEach(window -> look(window.getScene(), "window"));
          assertThat(open).hasSizeGreaterThan(1);
          assertThat(shown).contains("one" + OddDay.SHOWN, "two" + OddDay.SHOWN);
          box.hide();
          stage.hide();
        });
    assertThat(raw).isEmpty();
  }
}
