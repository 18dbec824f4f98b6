package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import blindlap.RamFolder;
import blindlap.desk.Desk;
import blindlap.desk.OddDay;
import blindlap.desk.SafeKeeping;
import blindlap.exchange.QuarryTrail;
import blindlap.fault.TypedText;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.Surface;
import blindlap.screen.book.KeepingModel;
import blindlap.screen.book.TroubleModel;
import blindlap.screen.book.TroublePage;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.screen.plan.PlanModel;
import blindlap.screen.plan.PlanPage;
import blindlap.screen.recording.RecordingModel;
import blindlap.screen.recording.RecordingPage;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.session.NotebookException;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
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
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.TitledPane;
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

  private Pages pages(Desk desk, Shell shell, Look look) {
    SafeKeeping safe =
        new SafeKeeping(
            new SqliteFiles(desk.clock(), () -> new byte[16]), folder.resolve("odd.blindlap"));
    return new Pages(
        desk,
        shell,
        look,
        Background.immediate(),
        System::nanoTime,
        new KeepingModel(desk.exchange(safe), safe, Background.immediate()),
        java.util.Optional.empty());
  }

  private static Scene scene(Look look, Parent page) {
    Scene scene = new Scene(page, 1280, 2000);
    look.dress(scene);
    return scene;
  }

  private void everyDoor(Scene scene) {
    for (int i = 0; i < doors(scene).size(); i++) {
      String door = doors(scene).get(i).getText();
      doors(scene).get(i).fire();
      look(scene, door);
      for (Node box : scene.getRoot().lookupAll(".combo-box")) {
        everyChoice(scene, (ComboBox<?>) box, door);
      }
      buttons(scene, "Back to the notebook").fire();
    }
  }

  private static List<Hyperlink> doors(Scene scene) {
    return ((Pane) scene.getRoot().lookup(".doors"))
        .getChildren().stream().map(Hyperlink.class::cast).toList();
  }

  private void everyChoice(Scene scene, ComboBox<?> box, String moment) {
    for (int i = 0; i < box.getItems().size(); i++) {
      box.getSelectionModel().select(i);
      look(scene, moment + ", choice " + i);
    }
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
    thePagesOfTheWindow();
    thePagesOfTheDayAtEveryMoment();
    aDraftFromAnOldPlanOnItsWayToTheCommit();
    aNotebookThatCannotBeOpened();
    assertThat(raw).isEmpty();
    assertThat(everyPage()).hasSizeGreaterThan(10);
    assertThat(pages).as("pages that were walked").isEqualTo(everyPage());
  }

  private void thePagesOfTheWindow() {
    try (Desk desk = OddDay.desk(folder.resolve("odd.blindlap"))) {
      List<SessionId> days = new ArrayList<>();
      for (OddDay.Gone gone : OddDay.Gone.values()) {
        days.add(OddDay.write(desk, gone).id());
      }
      desk.trails().keep(QuarryTrail.trail("Quarry\u202E loop", 10, 690));
      Window.run(
          () -> {
            Look look = new Look();
            Shell shell = new Shell();
            Pages maker = pages(desk, shell, look);
            Scene scene = scene(look, new ShellView(look, shell, maker.makers(), List.of("odd")));
            assertThat(look(scene, "Notebook")).isPositive();
            everyDoor(scene);
            for (SessionId day : days) {
              shell.readPlan(day);
              scene
                  .getRoot()
                  .lookupAll(".titled-pane")
                  .forEach(pane -> ((TitledPane) pane).setExpanded(true));
              assertThat(look(scene, "committed plan of " + day)).isPositive();
              for (Shell.Page page : Shell.Page.values()) {
                shell.open(page, day);
                look(scene, page + " of " + day);
              }
            }
            shell.go(Shell.Page.TRAIL);
            assertThat(look(scene, "Trail")).isPositive();
            shell.open(Shell.Page.REVIEW, days.get(2));
            assertThat(look(scene, "blind review")).isPositive();
            shell.open(Shell.Page.REVIEW, days.get(3));
            assertThat(look(scene, "Review")).isGreaterThan(10);
            maker.closing();
            scene.setRoot(new Pane());
          });
    }
  }

  private void thePagesOfTheDayAtEveryMoment() {
    try (Desk desk = OddDay.desk(folder.resolve("day.blindlap"))) {
      OddDay.Old old = OddDay.write(desk, OddDay.Gone.COMMITTED);
      Window.run(
          () -> {
            swap(desk, old);
            ride(desk, old);
          });
    }
  }

  private void swap(Desk desk, OddDay.Old old) {
    Look look = new Look();
    SwapModel swap =
        new SwapModel(
            desk.helperDays(),
            desk.riderDays(),
            desk.notebook()::dataVersion,
            Background.immediate(),
            desk.clock(),
            () -> 0);
    swap.open(old.id());
    Scene scene = scene(look, new SwapPage(look, swap, () -> {}));
    look(scene, "Swap, phrase");
    swap.phrase(old.phrase());
    swap.choosePin("4711");
    look(scene, "Swap, not begun");
    swap.work().begin();
    assertThat(look(scene, "Swap, at the bike")).isPositive();
    buttons(scene, "Something happened").fire();
    look(scene, "Swap, events");
    scene.setRoot(new Pane());
  }

  private void ride(Desk desk, OddDay.Old old) {
    Look look = new Look();
    RideModel ride =
        new RideModel(
            desk.riderDays(),
            desk.notebook()::dataVersion,
            Background.immediate(),
            desk.clock(),
            () -> 0);
    ride.open(old.id());
    Scene scene = scene(look, new RidePage(look, ride, () -> {}));
    look(scene, "Ride, waiting");
    ride.handedOver();
    while (ride.sheetProperty().get().lap() == null) {
      ride.warmUpRidden();
      look(scene, "Ride, warmed up");
      ride.handedOver();
    }
    assertThat(look(scene, "Ride, sheet")).isPositive();
    buttons(scene, "Something happened").fire();
    look(scene, "Ride, events");
    ride.keyIn().open(old.id());
    look(scene, "key-in");
    RecordingModel recording =
        new RecordingModel(desk.sessions(), desk.recordings(), Background.immediate());
    recording.open(old.id());
    scene.setRoot(new RecordingPage(look, recording, new NoDialogs(), () -> {}, () -> 0));
    look(scene, "Recording");
    scene.setRoot(new Pane());
  }

  private static Button buttons(Scene scene, String words) {
    return scene.getRoot().lookupAll(".button").stream()
        .filter(node -> node instanceof Button b && b.getText().startsWith(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no button " + words));
  }

  private void aDraftFromAnOldPlanOnItsWayToTheCommit() {
    try (Desk desk = OddDay.desk(folder.resolve("draft.blindlap"))) {
      OddDay.Old old = OddDay.write(desk, OddDay.Gone.COMMITTED);
      Window.run(
          () -> {
            Look look = new Look();
            PlanModel model = Models.plan(desk, new Shell(), Background.immediate(), 0);
            Scene scene = scene(look, new PlanPage(look, model, new NoDialogs()));
            model.copies().startFrom(old.id());
            assertThat(look(scene, "Plan")).isPositive();
            model.commit().begin();
            look(scene, "commit");
            scene.setRoot(new Pane());
          });
    }
  }

  /** Its folder may have a name that no screen should act on. */
  private void aNotebookThatCannotBeOpened() throws IOException {
    Path odd = Files.createDirectory(folder.resolve("rides\u0007\u202E"));
    Path file = Files.write(odd.resolve("odd.blindlap"), new byte[8192]);
    SqliteFiles files = new SqliteFiles(java.time.Clock.systemUTC(), () -> new byte[16]);
    NotebookException why =
        catchThrowableOfType(
            NotebookException.class,
            () -> SqliteNotebook.open(file, new byte[16], java.time.Instant.EPOCH).close());
    Window.run(
        () -> {
          TroubleModel model =
              TroubleModel.of(new SafeKeeping(files, file), why, Background.immediate(), path -> {})
                  .orElseThrow();
          Look look = new Look();
          Scene scene = scene(look, new TroublePage(look, model, new NoDialogs(), () -> {}));
          assertThat(look(scene, "trouble")).isPositive();
          model.recover(odd.resolve("saved.blindlap"));
          look(scene, "trouble, saved");
          scene.setRoot(new Pane());
        });
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
