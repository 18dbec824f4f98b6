package blindlap.screen.plan;

import blindlap.desk.Desk;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.ShellView;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import javafx.embed.swing.SwingFXUtils;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.geometry.Rectangle2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import javafx.stage.Stage;
import javax.imageio.ImageIO;

/**
 * Goes through Plan from an empty draft to a sealed session in a real window, once by keys alone
 * and once by mouse, in small and large windows, at 100 and 200 % text, and takes pictures of each
 * moment in every theme from the screen. {@code PlanWalk FOLDER [900x600 ...]}; DEVELOPERS.md has
 * the command. Ends with 1 if anything lay outside the page.
 */
public final class PlanWalk {
  private static final List<String> SIZES = List.of("900x600", "1366x768", "1920x1080");
  private static final int MOST_TABS = 400;

  private final Path pictures;
  private final String name;
  private final boolean mouse;
  private final Desk desk;
  private final Look look = new Look();
  private final PlanModel model;
  private final Stage stage;
  private final Scene scene;
  private final Keyboard keyboard;
  private final List<String> wrong = new ArrayList<>();
  private int[] last = {};

  private PlanWalk(Path pictures, String size, double scale, boolean mouse) throws IOException {
    this.pictures = pictures;
    this.name =
        String.format(Locale.ROOT, "%s-%.0f-%s", size, 100 * scale, mouse ? "mouse" : "keys");
    this.mouse = mouse;
    Path own = Files.createTempDirectory("plan-walk");
    this.desk = PlanDesk.open(own, 1);
    Shell shell = new Shell();
    this.model = Window.call(() -> Models.plan(desk, shell, Background.immediate(), 200));
    String[] sides = size.split("x", 2);
    this.stage = Window.call(Stage::new);
    this.scene = Window.call(() -> scene(shell, own, sides, scale));
    this.keyboard = new Keyboard(scene);
  }

  private Scene scene(Shell shell, Path own, String[] sides, double scale) {
    PlanPage page = new PlanPage(look, model, new OneFolder(own));
    ShellView view =
        new ShellView(look, shell, Map.of(Shell.Page.PLAN, () -> page), List.of("quarry.blindlap"));
    look.textScaleProperty().set(scale);
    Scene made = new Scene(view);
    look.dress(made);
    stage.setScene(made);
    stage.setX(0);
    stage.setY(0);
    stage.setWidth(Double.parseDouble(sides[0]));
    stage.setHeight(Double.parseDouble(sides[1]));
    shell.go(Shell.Page.PLAN);
    stage.show();
    stage.requestFocus();
    return made;
  }

  /** Walks in every size, text and way; says what was wrong. */
  public static void main(String[] arguments) throws Exception {
    Window.start();
    Window.run(Fonts::load);
    Path pictures = Files.createDirectories(Path.of(arguments[0]));
    List<String> sizes =
        arguments.length > 1 ? List.of(arguments).subList(1, arguments.length) : SIZES;
    List<String> wrong = new ArrayList<>();
    for (String size : sizes) {
      for (double scale : new double[] {1, 2}) {
        for (boolean mouse : new boolean[] {false, true}) {
          PlanWalk walk = new PlanWalk(pictures, size, scale, mouse);
          walk.go();
          System.out.println(walk.name + ": sealed; wrong: " + walk.wrong.size());
          wrong.addAll(walk.wrong);
        }
      }
    }
    wrong.forEach(System.out::println);
    System.out.flush();
    Runtime.getRuntime().halt(wrong.isEmpty() ? 0 : 1);
  }

  private void go() {
    picture("1-empty");
    type("Question", 0, "Is L quicker than K");
    type("Rider", 0, "R. Lind");
    type("Trail", 0, "Quarry loop");
    type("Name", 0, "Shock K");
    type("Name", 1, "Shock L");
    picture("2-setups");
    type("Lap, minutes", 0, "2");
    type("Climb or shuttle, minutes", 0, "8");
    type("Swap, minutes", 0, "7");
    picture("3-day");
    type("Worthwhile difference", 0, "0.5");
    type("Two laps on the same setup usually differ by about", 0, "0.75");
    picture("4-answer");
    press("commit-begin");
    press("secret");
    keyboard.type("4711");
    press("secret-open");
    press("signed");
    keyboard.type("R. Lind");
    picture("5-sign");
    press("sign");
    String phrase = Window.call(() -> ((Label) scene.lookup("#phrase")).getText());
    press("phrase-noted");
    String question = Window.call(() -> model.commit().phrase().questionProperty().get());
    press("typed-words");
    keyboard.type(HelperTypes.words(question, phrase));
    press("seal");
    picture("6-sealed");
    press("go-on");
    press("write-A4");
    press("quick-A4");
    picture("7-sheet");
    press("finish");
    if (desk.sessions().all().size() != 1) {
      throw new IllegalStateException(name + ": nothing was sealed");
    }
    Window.run(stage::hide);
    desk.close();
  }

  private void type(String field, int which, String text) {
    if (mouse) {
      click(node -> field.equals(node.getAccessibleText()), which);
    } else {
      tabTo(node -> field.equals(node.getAccessibleText()) && before(node, field) == which);
    }
    keyboard.press(KeyCode.END);
    keyboard.type(text);
  }

  private void press(String id) {
    if (mouse) {
      click(node -> id.equals(node.getId()), 0);
    } else {
      tabTo(node -> id.equals(node.getId()));
      if (!List.of("secret", "signed", "typed-words").contains(id)) {
        keyboard.press(KeyCode.SPACE);
      }
    }
  }

  /** How many fields of this name stand before this one on the page. */
  private int before(Node node, String field) {
    return nodes(each -> field.equals(each.getAccessibleText())).indexOf(node);
  }

  private List<Node> nodes(Predicate<Node> wanted) {
    List<Node> found = new ArrayList<>();
    gather(scene.getRoot(), wanted, found);
    return found;
  }

  private static void gather(Node node, Predicate<Node> wanted, List<Node> found) {
    if (!node.isVisible()) {
      return;
    }
    if (node.isFocusTraversable() && wanted.test(node)) {
      found.add(node);
    } else if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> gather(child, wanted, found));
    }
  }

  private void tabTo(Predicate<Node> wanted) {
    for (int i = 0; i < MOST_TABS; i++) {
      boolean there =
          Window.call(() -> scene.getFocusOwner() != null && wanted.test(scene.getFocusOwner()));
      if (there) {
        return;
      }
      keyboard.strike(KeyCode.TAB);
    }
    throw new IllegalStateException(name + ": the focus never got there");
  }

  /** Turns the wheel until it is in view, and presses it. */
  private void click(Predicate<Node> wanted, int which) {
    for (int turns = 0; turns < 300; turns++) {
      int by = Window.call(() -> pressed(nodes(wanted).get(which)));
      keyboard.press(KeyCode.SHIFT);
      if (by == 0) {
        return;
      }
    }
    throw new IllegalStateException(name + ": the wheel never brings it into view");
  }

  /** 0 if it was pressed, else the way the wheel was turned. */
  private int pressed(Node node) {
    Robot robot = new Robot();
    Node view = pageOf(node);
    Bounds page = view.localToScene(view.getLayoutBounds());
    Bounds at = node.localToScene(node.getLayoutBounds());
    int by = at.getMinY() < page.getMinY() ? -1 : at.getMaxY() > page.getMaxY() ? 1 : 0;
    if (by == 0) {
      Bounds screen = node.localToScreen(node.getLayoutBounds());
      robot.mouseMove(new Point2D(screen.getCenterX(), screen.getCenterY()));
      robot.mouseClick(MouseButton.PRIMARY);
    } else {
      Bounds screen = view.localToScreen(view.getLayoutBounds());
      robot.mouseMove(new Point2D(screen.getMinX() + 6, screen.getCenterY()));
      robot.mouseWheel(by * 2);
    }
    return by;
  }

  private Node pageOf(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (at.getStyleClass().contains("scroll-pane")) {
        return at;
      }
    }
    return scene.getRoot();
  }

  /** From the screen, in every theme; and whether all of it lies within the page. */
  private void picture(String moment) {
    Node page = Window.call(() -> scene.lookup(".scroll-pane.page, .scroll-pane"));
    for (Theme theme : Theme.values()) {
      Window.run(() -> look.themeProperty().set(theme));
      keyboard.press(KeyCode.SHIFT);
      keyboard.press(KeyCode.SHIFT);
      String file = name + "-" + moment + "-" + theme.name().toLowerCase(Locale.ROOT);
      boolean there = false;
      for (int looks = 0; looks < 20 && !there; looks++) {
        drawn();
        there = Window.call(() -> capture(file));
      }
      if (!there) {
        wrong.add(file + ": nothing is on the screen");
      }
    }
    Window.run(() -> look.themeProperty().set(Theme.PAPER));
    if (page instanceof PageGrid grid) {
      Within within = Window.call(() -> Within.of(grid, name + " " + moment));
      wrong.addAll(within.wrong());
    }
  }

  /** What is laid out is not yet on the screen. */
  private static void drawn() {
    try {
      Thread.sleep(250);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** False if the window was not drawn since the last picture, which was of another theme. */
  private boolean capture(String file) {
    Rectangle2D shown =
        new Rectangle2D(stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight());
    BufferedImage taken = SwingFXUtils.fromFXImage(new Robot().getScreenCapture(null, shown), null);
    try {
      ImageIO.write(taken, "png", Objects.requireNonNull(pictures.resolve(file + ".png").toFile()));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    int[] colours =
        taken.getRGB(0, 0, taken.getWidth(), taken.getHeight(), null, 0, taken.getWidth());
    boolean drawn =
        !Arrays.equals(colours, last) && Arrays.stream(colours).anyMatch(c -> c != colours[0]);
    if (drawn) {
      last = colours;
    }
    return drawn;
  }

  /** Always answers with one folder. */
  private static final class OneFolder extends NoDialogs {
    private final Path chosen;

    OneFolder(Path chosen) {
      this.chosen = chosen;
    }

    @Override
    public Optional<Path> folder(String title) {
      return Optional.of(chosen);
    }
  }
}
