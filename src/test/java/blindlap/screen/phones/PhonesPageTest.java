package blindlap.screen.phones;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.phone.Awaited;
import blindlap.phone.FakeMaker;
import blindlap.phone.FakePhones;
import blindlap.screen.Keyboard;
import blindlap.screen.Reachable;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.Theme;
import blindlap.session.day.LapId;
import blindlap.session.day.PhoneRole;
import java.awt.image.BufferedImage;
import java.math.BigDecimal;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.embed.swing.SwingFXUtils;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The page on which phones are switched on, let in and thrown out. */
class PhonesPageTest {
  private static final String RIDER = "1a2b3c4d";
  private static final String OTHER = "5e6f7081";
  private static final String STARTER = "9aabbccd";

  /** As wide as the screen that tests have. */
  private static final int SHOWN = 1280;

  /** 12 mm at 96 dots an inch. */
  private static final double TWELVE_MILLIMETRES = 12 / 25.4 * 96;

  private @TempDir(factory = RamFolder.class) Path folder;
  private final FakeMaker maker = new FakeMaker();
  private TestDay day;
  private FakePhones phones;
  private PhonesModel model;
  private Look look;
  private Scene scene;
  private int left;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void open() {
    day = new TestDay(folder, TestDay.EIGHT, 2);
    phones = maker.phones(day.id());
    model =
        new PhonesModel(
            maker,
            day.desk().riderDays(),
            day.desk()::dataVersion,
            Background.immediate(),
            day.clock());
    Window.run(
        () -> {
          model.open(day.id());
          look = new Look();
          PhonesPage page = new PhonesPage(look, model, () -> left++, day.clock()::nanos);
          scene = new Scene(page, SHOWN, 768);
          look.dress(scene);
          page.enter();
        });
    heard();
  }

  @AfterEach
  void close() {
    Window.run(
        () -> {
          model.close();
          scene.setRoot(new Pane());
        });
    day.close();
  }

  private void heard() {
    Window.run(() -> day.clock().move(Deaf.FOR));
  }

  private void come(String id, PhoneRole role, boolean in, long unsent) {
    phones.come(id, role, in, day.clock().instant(), unsent);
    Window.run(model::tick);
  }

  private Button button(String words) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return scene.getRoot().lookupAll(".button").stream()
        .filter(n -> n instanceof Button b && b.isVisible() && words(b).startsWith(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no button " + words));
  }

  private static String words(Button button) {
    String said = button.getAccessibleText();
    return said == null ? button.getText() : said;
  }

  private void press(String words) {
    Window.run(() -> button(words).fire());
    Window.run(model::tick);
    heard();
  }

  private String text() {
    return Window.call(() -> SceneText.of(scene));
  }

  @Test
  void phonesAreOffUntilTheSwitchAndThenThereIsACodeForEachRole() {
    assertThat(text()).contains("Phones are off.").doesNotContain("http");
    assertThat(model.stateProperty().get()).isEqualTo("Phones: off");
    assertThat(phones.at()).isEmpty();

    press("Switch phones on");

    assertThat(phones.at()).contains(new InetSocketAddress("192.168.43.117", 8480));
    assertThat(text())
        .contains(
            "http://192.168.43.117:8480/ride#",
            "http://192.168.43.117:8480/start#",
            "Nothing of the order goes to a phone",
            "hotspot of your own",
            "No private tab",
            "paper is the way");
    assertThat(model.stateProperty().get()).isEqualTo("Phones: on, none connected");

    press("Switch phones off");

    assertThat(phones.at()).isEmpty();
    assertThat(text()).contains("Phones are off.").doesNotContain("http");
  }

  @Test
  void theSwitchHearsNoSecondPressOnTheSamePlace() {
    Window.run(() -> button("Switch phones on").fire());
    Window.run(() -> button("Switch phones off").fire());
    assertThat(phones.at()).isPresent();
  }

  @Test
  void aPortThatIsTakenOrNoneIsRefusedInASentenceAndNothingIsOn() {
    phones.take(8480);
    press("Switch phones on");
    assertThat(text()).contains("already uses port 8480 at 192.168.43.117", "Phones are off.");
    Window.run(() -> model.portProperty().set("80000"));
    press("Switch phones on");
    assertThat(text()).contains("\"80000\" is no port");
    Window.run(() -> model.portProperty().set("8481"));
    press("Switch phones on");
    assertThat(text()).doesNotContain("is no port");
    assertThat(phones.at()).contains(new InetSocketAddress("192.168.43.117", 8481));
  }

  @Test
  void aSecondPhoneInARoleWaitsUntilItIsLetInAndThrowingOutAsksOnce() {
    press("Switch phones on");
    come(RIDER, PhoneRole.RIDER, true, 2);
    come(OTHER, PhoneRole.RIDER, false, 0);
    heard();
    assertThat(text()).contains("Rider, " + RIDER, "2 answers unsent", "waits to be let in");
    assertThat(model.stateProperty().get()).isEqualTo("Phones: on, 1 waits");

    press("Let in: Rider, " + OTHER);

    assertThat(phones.known()).extracting("in").containsExactly(true, true);
    assertThat(model.stateProperty().get()).isEqualTo("Phones: on, 2 connected");

    press("Throw out: Rider, " + RIDER);
    assertThat(phones.known()).as("asked first").hasSize(2);
    assertThat(text()).contains("What it said so far stays");
    press("Throw out");
    assertThat(phones.known()).extracting("id").containsExactly(OTHER);
  }

  @Test
  void whatAPhoneHasNotSaidForLongIsSaidAndItIsNotConnected() {
    press("Switch phones on");
    come(RIDER, PhoneRole.RIDER, true, 0);
    assertThat(text()).contains("connected, heard 0 s ago, nothing unsent");
    Window.run(() -> day.clock().move(Awaited.CONNECTED.minusSeconds(1)));
    Window.run(model::tick);
    assertThat(text()).contains("connected, heard 29 s ago");
    Window.run(() -> day.clock().move(Duration.ofSeconds(151)));
    Window.run(model::tick);
    assertThat(text()).contains("out of reach, last heard 3 min ago");
    assertThat(model.stateProperty().get()).isEqualTo("Phones: on, none connected");
  }

  @Test
  void anAddressThatTheMachineNoLongerHasIsSaidAndComesBackByItself() {
    press("Switch phones on");
    maker.addresses.removeIf(each -> !each.loopback());
    Window.run(model::tick);
    assertThat(text()).contains("no longer has the address of 192.168.43.117:8480");
    maker.addresses.add(FakeMaker.address("192.168.43.117", "wlan0"));
    Window.run(model::tick);
    assertThat(text()).doesNotContain("no longer has");
  }

  @Test
  void aPhoneThatWasLetInBeforeTheProgramWasStartedIsWaitedForWithoutASillyTime() {
    phones.come(RIDER, PhoneRole.RIDER, true, Instant.EPOCH, 0);
    phones.come(OTHER, PhoneRole.RIDER, false, Instant.EPOCH, 0);
    Window.run(model::tick);
    assertThat(text())
        .contains("let in before, not heard since this program was started")
        .contains("waits to be let in, not heard yet")
        .doesNotContain(" h ");
    assertThat(model.awaited())
        .contains("The rider's phone " + RIDER + " was let in, and this program has not heard it")
        .doesNotContain(OTHER);
  }

  @Test
  void aPhoneThatSaysSomethingMovesNothingAndTakesNoFocus() {
    press("Switch phones on");
    come(RIDER, PhoneRole.RIDER, true, 0);
    Bounds before = Window.call(() -> place("Throw out: Rider, " + RIDER));
    Window.run(() -> button("Throw out: Rider, " + RIDER).requestFocus());
    Window.run(() -> day.clock().move(Duration.ofSeconds(12)));
    come(RIDER, PhoneRole.RIDER, true, 4);
    come(STARTER, PhoneRole.STARTER, true, 0);
    assertThat(Window.call(() -> place("Throw out: Rider, " + RIDER))).isEqualTo(before);
  }

  private Bounds place(String words) {
    Button found = button(words);
    return found.localToScene(found.getLayoutBounds());
  }

  @Test
  void phonesThatAnotherProgramLetInAreKnownOnceTheNotebookWasWrittenTo() {
    Window.run(model::tick);
    int before = maker.asked();
    Window.run(model::tick);
    assertThat(maker.asked()).as("nothing was written").isEqualTo(before);
    score(new LapId(1, 1));
    Window.run(model::tick);
    assertThat(maker.asked()).isEqualTo(before + 1);
    press("Switch phones on");
    before = maker.asked();
    score(new LapId(2, 1));
    Window.run(model::tick);
    assertThat(maker.asked()).as("they are served here").isEqualTo(before);
    assertThat(phones.at()).isPresent();
  }

  @Test
  void theDayEndsAndPhonesEndWithIt() {
    press("Switch phones on");
    come(RIDER, PhoneRole.RIDER, true, 0);
    score(new LapId(1, 1));
    day.desk().riderDays().cutShort(day.id(), 1, "rain", "R. Lind", false);
    day.desk().riderDays().closeDay(day.id());
    Window.run(model::tick);
    assertThat(phones.at()).as("on until phones were told").isPresent();
    assertThat(model.connected()).as("nobody need wait for it").isZero();
    assertThat(text()).contains("The day is closed: no phone is heard any more.");
    assertThat(model.stateProperty().get()).isEqualTo("Phones: off");
    assertThat(button("Switch phones on").isDisabled()).isTrue();
  }

  private void score(LapId lap) {
    day.desk().riderDays().handedOver(day.id(), lap.stint());
    day.desk().riderDays().score(day.id(), lap, "grip in the rocks", BigDecimal.TEN, false);
    day.desk().riderDays().ridden(day.id(), lap);
  }

  @Test
  void beforeTheDayIsClosedItIsSaidWhichAnswersAreWaitedFor() {
    assertThat(model.awaited()).as("no phone ever came").isEmpty();
    score(new LapId(1, 1));
    assertThat(model.awaited()).as("no phone ever came").isEmpty();
    press("Switch phones on");
    come(RIDER, PhoneRole.RIDER, true, 3);
    come(STARTER, PhoneRole.STARTER, true, 0);
    int code = day.state().day().code(1);
    assertThat(model.awaited())
        .contains("The rider's phone " + RIDER + " keeps 3 answers")
        .contains("lap 1 (" + code + "): lap time, harshness at the hands, trust")
        .doesNotContain(STARTER, "grip in the rocks");
    Window.run(() -> day.clock().move(Duration.ofMinutes(4)));
    come(RIDER, PhoneRole.RIDER, true, 0);
    assertThat(model.awaited())
        .contains("The starter's phone " + STARTER + " was last heard 4 min ago")
        .doesNotContain("The rider's phone");
    for (int stint = 2; stint <= 4; stint++) {
      score(new LapId(stint, 1));
    }
    assertThat(model.awaited()).endsWith("Ridden, and answers still open: laps 1, 2, 3, 4.");
    phones.throwOut(STARTER);
    phones.throwOut(RIDER);
    assertThat(model.awaited()).as("thrown out").isEmpty();
  }

  @Test
  void byKeyboardAlonePhonesAreSwitchedOnLetInAndLeft() {
    Stage stage =
        Window.call(
            () -> {
              Stage made = new Stage();
              made.setScene(scene);
              made.show();
              made.requestFocus();
              ((PhonesPage) scene.getRoot()).enter();
              return made;
            });
    try {
      heard();
      Keyboard keys = new Keyboard(scene);
      assertThat(keys.here()).as("words, which no key presses").contains("Rider and starter use");
      keys.choose("Switch phones on");
      assertThat(phones.at()).isPresent();
      come(RIDER, PhoneRole.RIDER, false, 0);
      heard();
      keys.choose("Let in: Rider, " + RIDER);
      Window.run(model::tick);
      assertThat(phones.known().get(0).in()).isTrue();
      heard();
      keys.choose("Throw out: Rider, " + RIDER);
      heard();
      keys.press(KeyCode.SPACE);
      assertThat(phones.known()).as("kept by the button with the focus").hasSize(1);
      keys.press(KeyCode.ESCAPE);
      assertThat(left).isEqualTo(1);
    } finally {
      Window.run(stage::close);
    }
  }

  @ParameterizedTest
  @EnumSource(Theme.class)
  void aCodeIsDarkOnLightInEveryThemeWithItsQuietZone(Theme theme) {
    press("Switch phones on");
    Window.run(
        () -> {
          look.themeProperty().set(theme);
          Window.look(scene, "phones-" + theme.name().toLowerCase(Locale.ROOT));
          scene.getRoot().applyCss();
          scene.getRoot().layout();
          List<Node> codes = new ArrayList<>(scene.getRoot().lookupAll(".plot"));
          assertThat(codes).hasSameSizeAs(PhoneRole.values());
          for (Node code : codes) {
            assertThat(((PlotView) code).getWidth()).isGreaterThanOrEqualTo(280);
            BufferedImage image = SwingFXUtils.fromFXImage(code.snapshot(null, null), null);
            for (int at = 2; at < 20; at++) {
              assertThat(image.getRGB(at, 2 * at) & 0xffffff).isEqualTo(0xffffff);
            }
          }
        });
  }

  @ParameterizedTest
  @CsvSource({"1366,768,1", "1280,800,1", "1280,800,2", "1024,700,1.3"})
  void nothingIsCutOrOutOfReachWithThreePhonesAtAnySize(int width, int height, double scale) {
    Window.run(() -> look.themeProperty().set(Theme.SUNLIGHT));
    press("Switch phones on");
    come(RIDER, PhoneRole.RIDER, true, 2);
    come(STARTER, PhoneRole.STARTER, true, 0);
    come(OTHER, PhoneRole.RIDER, false, 0);
    Window.run(
        () -> {
          look.textScaleProperty().set(scale);
          PhonesPage page = new PhonesPage(look, model, () -> {}, day.clock()::nanos);
          scene.setRoot(new Pane());
          scene = new Scene(page, width, height);
          look.dress(scene);
          page.enter();
          Window.look(scene, "phones-" + width + "-" + (int) (100 * scale));
          assertThat(Reachable.wrong(scene)).isEmpty();
          List<String> small = new ArrayList<>();
          for (Node node : scene.getRoot().lookupAll(".button")) {
            if (node.getLayoutBounds().getHeight() < TWELVE_MILLIMETRES - 0.5) {
              small.add(((Button) node).getText());
            }
          }
          assertThat(small).isEmpty();
          if (width == 1366) {
            ScrollPane scroll = (ScrollPane) ((PhonesPage) scene.getRoot()).getCenter();
            assertThat(((Pane) scroll.getContent()).getHeight())
                .as("codes and switch are in view without scrolling")
                .isLessThan(2 * height);
            for (Node code : scene.getRoot().lookupAll(".plot")) {
              assertThat(code.localToScene(code.getLayoutBounds()).getMaxY()).isLessThan(height);
            }
          }
        });
  }

  @Test
  void thePictureOfTheManual() {
    press("Switch phones on");
    come(RIDER, PhoneRole.RIDER, true, 0);
    Window.run(() -> day.clock().move(Duration.ofSeconds(12)));
    come(STARTER, PhoneRole.STARTER, true, 1);
    Window.run(() -> Window.picture(scene, "phones-paper"));
    assertThat(text()).contains("heard 12 s ago", "1 answer unsent", "2 connected");
  }
}
