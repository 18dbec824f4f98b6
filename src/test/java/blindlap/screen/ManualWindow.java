package blindlap.screen;

import blindlap.desk.Desk;
import blindlap.desk.SafeKeeping;
import blindlap.desk.SetClock;
import blindlap.phone.PhoneMaker;
import blindlap.screen.book.KeepingModel;
import blindlap.screen.part.Background;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteFiles;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.event.ActionEvent;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.Pane;
import javafx.scene.robot.Robot;
import javafx.stage.Screen;
import javafx.stage.Stage;
import javafx.util.Duration;

/**
 * The window that the program opens on a notebook, with all of its pages, pressed by the words that
 * stand on them. Whatever is asked for is done at once, before the call returns.
 */
public final class ManualWindow implements AutoCloseable {
  /** As wide as the window of a small laptop; as high, or higher where a page is longer. */
  public static final int WIDTH = 1366;

  public static final int HEIGHT = 768;
  private static final int PASSES = 60;

  /** A list is made longer by that until all of its rows are there. */
  private static final double ROW = 30;

  /** Longer than the seconds in which pages look at the clock. */
  private static final Duration BEAT = Duration.millis(1_200);

  private final Look look = new Look();
  private final Shell shell = new Shell();
  private final SetClock clock;
  private final Pages pages;
  private final Stage stage = new Stage();
  private final Scene scene;

  /**
   * Opens it.
   *
   * @param notebook the desk's own file
   * @param clock the desk's own; it goes on a little before everything that is pressed
   * @param instead pages in place of the program's own, such as one whose file is chosen already
   */
  public static ManualWindow open(
      Desk desk,
      Path notebook,
      SetClock clock,
      PhoneMaker phones,
      Map<Shell.Page, Function<Look, Node>> instead) {
    return Window.call(() -> new ManualWindow(desk, notebook, clock, phones, instead));
  }

  private ManualWindow(
      Desk desk,
      Path notebook,
      SetClock clock,
      PhoneMaker phones,
      Map<Shell.Page, Function<Look, Node>> instead) {
    this.clock = clock;
    SafeKeeping safe = new SafeKeeping(new SqliteFiles(desk.clock(), () -> new byte[16]), notebook);
    pages =
        new Pages(
            desk,
            shell,
            look,
            Background.immediate(),
            clock::nanos,
            new KeepingModel(desk.exchange(safe), safe, Background.immediate()),
            Optional.empty(),
            Optional.of(phones));
    Map<Shell.Page, Supplier<? extends Node>> makers = pages.makers();
    instead.forEach((page, maker) -> makers.put(page, () -> maker.apply(look)));
    scene =
        new Scene(new ShellView(look, shell, makers, List.of("juniper.blindlap")), WIDTH, HEIGHT);
    look.dress(scene);
    if (Screen.getPrimary().getBounds().getWidth() >= WIDTH) {
      stage.setScene(scene);
      stage.show();
      stage.requestFocus();
      scene.getRoot().requestFocus();
      new Robot().mouseMove(WIDTH - 1, HEIGHT - 1); // nothing is under it that would light up
    }
    lay();
  }

  /** What the window shows. */
  public Scene scene() {
    return scene;
  }

  private void does(Runnable work) {
    Window.run(
        () -> {
          clock.move(Deaf.FOR);
          work.run();
          lay();
        });
  }

  /** Opens a draft on the Plan page. */
  public void draft(String name) {
    does(() -> shell.openDraft(name));
  }

  /** Opens a page. */
  public void go(Shell.Page page) {
    does(() -> shell.go(page));
  }

  /** Opens a page of a session. */
  public void open(Shell.Page page, SessionId session) {
    does(() -> shell.open(page, session));
  }

  /** Presses what begins with these words, or has this id if they begin with #. */
  public void press(String words) {
    does(
        () ->
            ((ButtonBase)
                    find(
                        node ->
                            node instanceof ButtonBase && !node.isDisabled() && called(node, words),
                        words))
                .fire());
  }

  /** Types into the field of this name, or of this id if it begins with #. */
  public void type(String field, String text) {
    does(
        () -> {
          TextInputControl typed = field(field);
          typed.requestFocus();
          typed.setText(text);
        });
  }

  /** Presses Enter in a field. */
  public void enter(String field) {
    does(() -> field(field).fireEvent(new ActionEvent()));
  }

  /** Unfolds what bears these words. */
  public void unfold(String words) {
    does(
        () -> {
          TitledPane pane =
              (TitledPane)
                  find(node -> node instanceof TitledPane t && t.getText().equals(words), words);
          pane.setAnimated(false);
          pane.setExpanded(true);
        });
  }

  /** Does something with the first node in view that is one of these. */
  public <T extends Node> void with(Class<T> kind, String words, Consumer<T> work) {
    does(
        () ->
            work.accept(
                kind.cast(find(node -> kind.isInstance(node) && called(node, words), words))));
  }

  /**
   * Waits until every page has looked at the clock once more, which each does by itself once a
   * second: by the same beat, however slow the machine is.
   */
  public void settle() {
    CountDownLatch beaten = new CountDownLatch(1);
    Window.run(() -> new Timeline(new KeyFrame(BEAT, e -> beaten.countDown())).play());
    try {
      if (!beaten.await(60, TimeUnit.SECONDS)) {
        throw new AssertionError("the window's clock stands still");
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
    Window.run(this::lay);
  }

  /** The words of the first node with this id; of a field, what it is called. */
  public String said(String id) {
    return Window.call(
        () -> {
          Node node = find(each -> called(each, id), id);
          return words(node).isEmpty() ? String.valueOf(node.getAccessibleText()) : words(node);
        });
  }

  private TextInputControl field(String name) {
    return (TextInputControl)
        find(node -> node instanceof TextInputControl && called(node, name), name);
  }

  private static boolean called(Node node, String words) {
    return words.startsWith("#")
        ? words.equals("#" + node.getId())
        : words(node).startsWith(words)
            || String.valueOf(node.getAccessibleText()).startsWith(words);
  }

  private Node find(Predicate<Node> which, String called) {
    return scene.getRoot().lookupAll("*").stream()
        .filter(which)
        .filter(ManualWindow::shown)
        .findFirst()
        .orElseThrow(() -> new AssertionError("nothing in the window is called " + called));
  }

  private static String words(Node node) {
    return node instanceof Labeled labeled && labeled.getText() != null ? labeled.getText() : "";
  }

  /** True for what no parent hides. */
  public static boolean shown(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (!at.isVisible()) {
        return false;
      }
    }
    return true;
  }

  /** Lays everything out anew: words may break in another way, and fold by their width. */
  public void lay() {
    for (int pass = 0; pass < 3; pass++) {
      scene.getRoot().applyCss();
      scene.getRoot().layout();
    }
  }

  /**
   * As high as what is longest in it, so that nothing is left to scroll to; the window itself stays
   * as it is, for a screen ends somewhere. It lasts until the next pulse.
   */
  public void whole() {
    height(HEIGHT);
    for (int pass = 0; pass < PASSES; pass++) {
      double hidden = hidden();
      if (hidden < 1) {
        return;
      }
      height(Math.ceil(scene.getRoot().getLayoutBounds().getHeight() + hidden));
    }
    throw new AssertionError("the page does not end: " + hidden());
  }

  /** How much of the page cannot be seen without scrolling. */
  private double hidden() {
    boolean rows =
        scene.getRoot().lookupAll(".list-view .scroll-bar").stream()
            .anyMatch(
                node ->
                    node instanceof ScrollBar bar
                        && bar.getOrientation() == Orientation.VERTICAL
                        && shown(bar));
    return rows ? ROW : longest();
  }

  private double longest() {
    return scene.getRoot().lookupAll(".scroll-pane").stream()
        .filter(node -> node instanceof ScrollPane && shown(node))
        .map(ScrollPane.class::cast)
        .filter(
            pane -> pane.getContent() != null && !(pane.getParent() instanceof TextInputControl))
        .mapToDouble(
            pane ->
                pane.getContent().getLayoutBounds().getHeight()
                    - pane.getViewportBounds().getHeight())
        .max()
        .orElse(0);
  }

  private void height(double height) {
    scene.getRoot().resize(WIDTH, height);
    lay();
  }

  @Override
  public void close() {
    Window.run(
        () -> {
          pages.closing();
          scene.setRoot(new Pane());
          stage.close();
        });
  }
}
