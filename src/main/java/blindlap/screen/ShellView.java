package blindlap.screen;

import blindlap.screen.part.ErrorNote;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.wording.NotebookWords;
import blindlap.wording.day.WordList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.BorderPane;

/**
 * The window's frame: page names at the side, one page beside them. Pages are made when first
 * opened. Ride and the helper's pages cover the whole window: they have no page names.
 */
public final class ShellView extends BorderPane {
  private final Shell shell;
  private final Map<Shell.Page, Supplier<? extends Node>> makers;
  private final Map<Shell.Page, Node> made = new EnumMap<>(Shell.Page.class);
  private final PageNames<Shell.Page> names;
  private final ScrollPane side;

  private final Look look;

  /** Made when they are first asked for. */
  private Optional<WordsPane> words = Optional.empty();

  /** What had the focus when a question came up. */
  private Optional<Node> asked = Optional.empty();

  /** What had the focus when the words came into view; empty while they are not. */
  private Optional<Node> left = Optional.empty();

  /**
   * @param makers makes the view of each page that exists
   * @param foot lines under the page names, such as the notebook's file name
   */
  public ShellView(
      Look look, Shell shell, Map<Shell.Page, Supplier<? extends Node>> makers, List<String> foot) {
    this.look = look;
    this.shell = shell;
    this.makers = new EnumMap<>(makers);
    Map<Shell.Page, String> titles = new LinkedHashMap<>();
    for (Shell.Page page : Shell.Page.values()) {
      if (makers.containsKey(page)) {
        titles.put(page, NotebookWords.say("page." + page.name()));
      }
    }
    this.names = new PageNames<>(look, "Blindlap", titles, this::go);
    names.under(new LookPane(look, door()));
    names.foot(foot);
    this.side = side(names);
    shell.pageProperty().addListener((o, before, now) -> show(now));
    shell.helperProperty().addListener((o, before, now) -> names());
    shell.questionProperty().addListener((o, before, now) -> ask(look, now));
    show(shell.pageProperty().get());
    keys(look);
  }

  /** All of the names can be reached in a low window with large text, too. */
  private static ScrollPane side(PageNames<Shell.Page> names) {
    ScrollPane side = new ScrollPane(names);
    side.getStyleClass().add("side");
    side.setFitToWidth(true);
    side.setFitToHeight(true);
    side.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    side.setFocusTraversable(false);
    side.setMinWidth(USE_PREF_SIZE);
    names.whenFocused(
        node -> {
          double view = side.getViewportBounds().getHeight();
          Bounds place = names.sceneToLocal(node.localToScene(node.getBoundsInLocal()));
          if (view > 0 && names.getHeight() > view) {
            side.setVvalue(place.getMaxY() > view ? 1 : 0);
          }
        });
    return side;
  }

  /** The way to the words for whoever does not know the key. */
  private Hyperlink door() {
    Hyperlink door = new Hyperlink(NotebookWords.say("words.door"));
    door.setId("words-door");
    door.setOnAction(e -> words());
    return door;
  }

  /**
   * The words take the place of the page, which leaves the scene as it does for another page: a
   * helper's page closes then. Pressed again, the page is back.
   */
  private void words() {
    if (inWords()) {
      leaveWords();
      return;
    }
    WordsPane pane =
        words.orElseGet(() -> new WordsPane(look, WordList.bundled(), this::leaveWords));
    words = Optional.of(pane);
    Node focus = getScene() == null ? null : getScene().getFocusOwner();
    // What a helper's page has in hand may follow from the key: nothing of it is looked up.
    Optional<Node> inHand = Optional.ofNullable(shell.helperProperty().get() ? null : focus);
    left = Optional.ofNullable(focus);
    setCenter(pane);
    pane.open(inHand);
  }

  private boolean inWords() {
    return words.isPresent() && getCenter() == words.get();
  }

  private void leaveWords() {
    show(shell.pageProperty().get());
    left.filter(node -> node.getScene() == getScene()).ifPresent(Node::requestFocus);
    left = Optional.empty();
  }

  private void go(Shell.Page page) {
    if (inWords()) {
      leaveWords();
    }
    shell.go(page);
  }

  private void show(Shell.Page page) {
    setBottom(null);
    names();
    names.open(page);
    Supplier<? extends Node> maker = makers.get(page);
    if (maker != null) {
      setCenter(made.computeIfAbsent(page, key -> maker.get()));
    }
  }

  /** Asks above the page; whatever had the focus gets it back. */
  private void ask(Look look, Optional<Shell.Question> question) {
    if (question.isEmpty()) {
      setTop(null);
      asked.ifPresent(Node::requestFocus);
      asked = Optional.empty();
      return;
    }
    if (inWords()) {
      leaveWords(); // what would be lost is on the page
    }
    if (asked.isEmpty() && getScene() != null) {
      asked = Optional.ofNullable(getScene().getFocusOwner());
    }
    LeavingPane pane = new LeavingPane(look, shell, question.get());
    setTop(pane);
    pane.focus();
  }

  /** Says a sentence under the page, until another page is opened. */
  void say(String sentence) {
    setBottom(new ErrorNote(sentence, List.of()));
  }

  private void names() {
    boolean whole = shell.helperProperty().get() || shell.pageProperty().get() == Shell.Page.RIDE;
    setLeft(whole ? null : side);
  }

  /**
   * Ctrl with a number opens a page, Ctrl with plus, minus and 0 scales the text, Ctrl T changes
   * the theme, F1 opens the words.
   */
  private void keys(Look look) {
    Map<KeyCombination, Runnable> keys = new LinkedHashMap<>();
    for (Shell.Page page : makers.keySet()) {
      KeyCode digit = KeyCode.getKeyCode(String.valueOf(page.ordinal() + 1));
      keys.put(new KeyCodeCombination(digit, KeyCombination.SHORTCUT_DOWN), () -> go(page));
    }
    keys.put(new KeyCodeCombination(KeyCode.F1), this::words);
    keys.put(
        new KeyCodeCombination(KeyCode.T, KeyCombination.SHORTCUT_DOWN),
        () -> {
          Theme[] all = Theme.values();
          look.themeProperty().set(all[(look.themeProperty().get().ordinal() + 1) % all.length]);
        });
    keys.put(
        new KeyCodeCombination(KeyCode.PLUS, KeyCombination.SHORTCUT_DOWN), () -> scale(look, 0.1));
    keys.put(
        new KeyCodeCombination(KeyCode.EQUALS, KeyCombination.SHORTCUT_DOWN),
        () -> scale(look, 0.1));
    keys.put(
        new KeyCodeCombination(KeyCode.MINUS, KeyCombination.SHORTCUT_DOWN),
        () -> scale(look, -0.1));
    keys.put(
        new KeyCodeCombination(KeyCode.DIGIT0, KeyCombination.SHORTCUT_DOWN),
        () -> look.textScaleProperty().set(1));
    sceneProperty()
        .addListener(
            (o, before, scene) -> {
              if (scene != null) {
                scene.getAccelerators().putAll(keys);
              }
            });
  }

  private static void scale(Look look, double step) {
    look.scaleText(look.textScale() + step);
  }
}
