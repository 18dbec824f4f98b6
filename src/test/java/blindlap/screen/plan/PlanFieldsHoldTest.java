package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.exchange.PlanText;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.TypedForm;
import java.lang.ref.WeakReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.DatePicker;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Fields of the Plan page after a while: nothing that is bound to them has been swept away. */
class PlanFieldsHoldTest {
  private static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");

  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;
  private Scene scene;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
  }

  @BeforeEach
  void open() throws Exception {
    desk = PlanDesk.open(folder, 1);
    Map<String, Object> fields = PlanText.read(Files.readString(SAMPLE)).fields();
    Window.run(
        () -> {
          model = Models.plan(desk, new Shell(), Background.immediate(), 0);
          model.form().fill(fields);
          scene = new Scene(new PlanPage(new Look(), model, new NoDialogs()), 1280, 800);
          laidOut();
        });
    sweep();
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private void laidOut() {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
  }

  /** Collects garbage until something that nobody holds is gone. */
  private static void sweep() {
    WeakReference<Object> probe = new WeakReference<>(new Object());
    List<byte[]> pressure = new ArrayList<>();
    for (int i = 0; i < 200 && probe.get() != null; i++) {
      pressure.add(new byte[1 << 16]);
      System.gc();
    }
    assertThat(probe.get()).isNull();
  }

  private static List<Node> within(Node node) {
    List<Node> all = new ArrayList<>(List.of(node));
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> all.addAll(within(child)));
    }
    return all;
  }

  private List<TextField> fields(Node of) {
    return within(of).stream()
        .filter(TextField.class::isInstance)
        .map(TextField.class::cast)
        // A calendar has a field of its own that nobody sees.
        .filter(field -> !(field.getParent() instanceof DatePicker))
        .toList();
  }

  private static String said(Node node) {
    return within(node).stream()
        .filter(Label.class::isInstance)
        .map(each -> ((Label) each).getText())
        .reduce("", (all, each) -> all + "\n" + each);
  }

  @Test
  void whatIsTypedIntoAnyFieldReachesThePlan() {
    Window.run(
        () -> {
          int reached = 0;
          for (TextField field : fields(scene.getRoot())) {
            boolean aid = inside(field, "WorkshopPane");
            String before = field.getText();
            String marker = "zq" + reached;
            field.setText(marker);
            assertThat(aid || model.form().tree().toString().contains(marker))
                .as(field.getAccessibleText())
                .isTrue();
            field.setText(before);
            reached++;
          }
          assertThat(reached).isGreaterThan(100);
        });
  }

  private static boolean inside(Node node, String type) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (at.getClass().getSimpleName().equals(type)) {
        return true;
      }
    }
    return false;
  }

  /**
   * Every number field says the same of 0,5 as of 0.5, and which sign it takes where both occur.
   */
  @Test
  void aCommaIsAsGoodAsAPointInEveryField() {
    TreeSet<String> numbers = new TreeSet<>();
    Window.run(
        () -> {
          for (TextField field : fields(scene.getRoot())) {
            // Lists of times, stints and levels are parted by commas; they have no decimal comma of
            // their own.
            String called = field.getAccessibleText();
            boolean list =
                called.startsWith("Practised swaps")
                    || called.startsWith("Looks before")
                    || called.startsWith("Levels");
            if (list || inside(field, "WorkshopPane") || inside(field, "SettingAidView")) {
              continue;
            }
            String before = field.getText();
            String point = error(field, "0.5");
            String comma = error(field, "0,5").replace("0,5", "0.5");
            assertThat(comma).as(field.getAccessibleText()).isEqualTo(point);
            if (error(field, "many").contains("number")) {
              numbers.add(Objects.requireNonNull(field.getAccessibleText()));
              assertThat(error(field, "1.000,5"))
                  .as(field.getAccessibleText())
                  .contains("one decimal sign, point or comma");
            }
            field.setText(before);
          }
        });
    assertThat(numbers)
        .hasSizeGreaterThan(20)
        .contains("Lap, minutes", "Tolerance", "Ballast, grams", "Worthwhile difference", "Stints");
  }

  private static String error(TextField field, String typed) {
    field.setText(typed);
    return Objects.requireNonNullElse(field.getAccessibleHelp(), "");
  }

  @Test
  void theWorkshopAnswersWithAPointOrAComma() {
    Window.run(
        () -> {
          Node workshop =
              within(scene.getRoot()).stream()
                  .filter(WorkshopPane.class::isInstance)
                  .findFirst()
                  .orElseThrow();
          for (WorkshopModel.Line line : new WorkshopModel().lines()) {
            String title = line.title() + ": ";
            List<TextField> typed =
                fields(workshop).stream()
                    .filter(field -> field.getAccessibleText().startsWith(title))
                    .toList();
            assertThat(typed).as(title).isNotEmpty();
            Parent box = typed.get(0).getParent().getParent();
            String[] answers = {answer(typed, box, "0,5"), answer(typed, box, "0.5")};
            assertThat(answers[0].replace("0,5", "0.5")).as(title).isEqualTo(answers[1]);
            assertThat(answer(typed, box, "1.000,5")).contains("one decimal sign");
          }
        });
  }

  private static String answer(List<TextField> fields, Parent box, String typed) {
    fields.forEach(field -> field.setText(""));
    String before = said(box);
    fields.forEach(field -> field.setText(typed));
    assertThat(said(box)).isNotEqualTo(before);
    return said(box);
  }

  @Test
  void anAidBesideASettingWritesItsResultIntoItsRow() {
    TypedForm setting = model.form().list("setups").get(0).list("settings").get(0);
    Window.run(
        () -> {
          setting.field("unit").set("%");
          setting.field("value").set("");
          aid(setting).fire();
        });
    sweep();
    Window.run(
        () -> {
          laidOut();
          List<TextField> typed = fields(scene.getRoot()).stream().filter(this::inAid).toList();
          typed.get(0).setText("57,5");
          typed.get(1).setText("16.1");
          Button use =
              within(scene.getRoot()).stream()
                  .filter(node -> node.getStyleClass().contains("aid-use"))
                  .map(Button.class::cast)
                  .findFirst()
                  .orElseThrow();
          assertThat(use.getText()).isEqualTo("Use 28 %");
          use.fire();
        });

    assertThat(setting.field("value").get()).isEqualTo("28");
    assertThat(setting.field("unit").get()).isEqualTo("%");
  }

  private boolean inAid(Node node) {
    return inside(node, "SettingAidView");
  }

  private Button aid(TypedForm setting) {
    String words = "Work it out: " + setting.field("name").get();
    return within(scene.getRoot()).stream()
        .filter(node -> words.equals(node.getAccessibleText()))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow();
  }
}
