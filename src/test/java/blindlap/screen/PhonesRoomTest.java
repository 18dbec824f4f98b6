package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.SafeKeeping;
import blindlap.desk.TestDay;
import blindlap.phone.FakeMaker;
import blindlap.phone.FakePhones;
import blindlap.screen.book.KeepingModel;
import blindlap.screen.part.Background;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.session.day.LapId;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.Step;
import blindlap.store.SqliteFiles;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.PasswordField;
import javafx.scene.layout.Pane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How one comes to the Phones page from the pages of the day, and what is closed meanwhile. */
class PhonesRoomTest {
  private static final String PIN = "4711";
  private static final String DOOR = "Phones: ";

  private @TempDir(factory = RamFolder.class) Path folder;
  private final FakeMaker maker = new FakeMaker();
  private TestDay day;
  private FakePhones phones;
  private Shell shell;
  private Look look;
  private Pages pages;
  private Scene scene;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void open() {
    open(TestDay.EIGHT, 2);
  }

  private void open(String plan, long seed) {
    day = new TestDay(folder, plan, seed);
    phones = maker.phones(day.id());
    SafeKeeping safe =
        new SafeKeeping(
            new SqliteFiles(day.clock(), () -> new byte[16]), folder.resolve("day-2.blindlap"));
    Window.run(
        () -> {
          shell = new Shell();
          look = new Look();
          pages =
              new Pages(
                  day.desk(),
                  shell,
                  look,
                  Background.immediate(),
                  day.clock()::nanos,
                  new KeepingModel(day.desk().exchange(safe), safe, Background.immediate()),
                  Optional.empty(),
                  Optional.of(maker));
          scene = new Scene(new ShellView(look, shell, pages.makers(), List.of("day")), 1366, 768);
          look.dress(scene);
        });
  }

  @AfterEach
  void close() {
    Window.run(
        () -> {
          pages.closing();
          scene.setRoot(new Pane());
        });
    day.close();
  }

  private void at(Shell.Page page) {
    Window.run(() -> shell.open(page, day.id()));
    heard();
  }

  private void heard() {
    Window.run(() -> day.clock().move(Deaf.FOR));
  }

  private String text() {
    return Window.call(() -> SceneText.of(scene));
  }

  private Button button(String words) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return scene.getRoot().lookupAll(".button").stream()
        .filter(n -> n instanceof Button b && b.isVisible() && b.getText().startsWith(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no button " + words));
  }

  private void press(String words) {
    Window.run(() -> button(words).fire());
    heard();
  }

  private void secret(String typed) {
    Window.run(
        () -> {
          scene.getRoot().applyCss();
          scene.getRoot().layout();
          ((PasswordField) scene.getRoot().lookup("#secret")).setText(typed);
          ((Button) scene.getRoot().lookup("#secret-open")).fire();
        });
    heard();
  }

  private void openSwap() {
    at(Shell.Page.SWAP);
    secret(day.phrase());
    secret(PIN);
    assertThat(text()).as("the key is in sight").contains("Shock");
  }

  @Test
  void openingPhonesFromTheOpenSwapPageClosesItUntilThePin() {
    openSwap();
    press(DOOR);
    assertThat(text()).contains("Who may score from the trail?").doesNotContain("Shock");
    assertThat(shell.helperProperty().get()).isFalse();

    press("Back");

    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.SWAP);
    assertThat(text()).as("closed").contains("PIN").doesNotContain("Shock", "compression");
    secret(PIN);
    assertThat(text()).contains("Shock");
  }

  @Test
  void whatAFriendPreparesIsClosedUntilThePinAsWell() {
    close();
    open(TestDay.at("level: masked, prepared_by: M. Oster"), 3);
    at(Shell.Page.SWAP);
    secret(PIN);
    press("Draw it by lot");
    assertThat(text()).as("which label is on which part").contains("X: Shock", "Y: Shock");
    at(Shell.Page.RIDE);
    press(DOOR);
    press("Back");
    Window.run(() -> shell.go(Shell.Page.SWAP));
    assertThat(text()).contains("PIN").doesNotContain("Shock");
  }

  @Test
  void openingPhonesFromTheRidePageFindsSwapClosedAsWell() {
    openSwap();
    at(Shell.Page.RIDE);
    press(DOOR);
    assertThat(text()).contains("Who may score from the trail?");
    press("Back");
    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.RIDE);
    assertThat(text()).contains("Something happened");
    Window.run(() -> shell.go(Shell.Page.SWAP));
    assertThat(text()).contains("PIN").doesNotContain("Shock", "compression");
  }

  @Test
  void whileTheBikeIsOutTheStateStandsInTheLowerEdgeAndLeadsThere() {
    openSwap();
    Window.run(() -> new OneRideDay(day, Models.ride(day), true, moment -> {}).handle(0));
    at(Shell.Page.RIDE);
    at(Shell.Page.SWAP);
    Node state =
        Window.call(
            () ->
                scene.getRoot().lookupAll(".safe-ride").stream()
                    .filter(each -> ((Label) each).getText().startsWith(DOOR))
                    .findFirst()
                    .orElseThrow());
    Window.run(() -> Window.look(scene, "phones-safe"));
    Window.run(() -> state.getOnMouseClicked().handle(null));
    assertThat(text()).contains("Who may score from the trail?").doesNotContain("Shock");
  }

  @Test
  void whoeverHasNotYetChosenAPinTypesThePhraseAgain() {
    at(Shell.Page.SWAP);
    secret(day.phrase());
    press(DOOR);
    press("Back");
    assertThat(text()).contains("phrase").doesNotContain("Choose a day PIN");
  }

  @Test
  void leavingThePageByItsNameLeadsToTheRidePageTheNextTime() {
    at(Shell.Page.RIDE);
    press(DOOR);
    at(Shell.Page.NOTEBOOK);
    at(Shell.Page.RIDE);
    assertThat(text()).contains("Something happened").doesNotContain("Who may score");
  }

  @ParameterizedTest
  @CsvSource({"RIDE,1", "RIDE,2", "SWAP,1", "SWAP,2"})
  void theStateIsSeenFromRideAndSwapAndMovesNothingWhenItChanges(Shell.Page page, double scale) {
    Window.run(() -> look.textScaleProperty().set(scale));
    if (page == Shell.Page.SWAP) {
      openSwap();
    } else {
      at(page);
    }
    List<Bounds> before = places();
    assertThat(text()).contains("Phones: off");
    Window.run(
        () -> {
          phones.come("1a2b3c4d", PhoneRole.RIDER, true, day.clock().instant(), 0);
          phones.come("9aabbccd", PhoneRole.STARTER, true, day.clock().instant(), 0);
          try {
            phones.on(new java.net.InetSocketAddress("127.0.0.1", 8480));
          } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
          }
        });
    await("Phones: on, 2 connected");
    assertThat(places()).isEqualTo(before);
    Window.run(
        () ->
            Window.look(
                scene,
                "phones-door-" + page.name().toLowerCase(java.util.Locale.ROOT) + (int) scale));
  }

  /** The window looks once a second. */
  private void await(String words) {
    for (int i = 0; i < 100 && !text().contains(words); i++) {
      try {
        Thread.sleep(50);
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
    assertThat(text()).contains(words);
  }

  private List<Bounds> places() {
    return Window.call(
        () -> {
          scene.getRoot().applyCss();
          scene.getRoot().layout();
          return scene.getRoot().lookupAll(".button").stream()
              .filter(Node::isVisible)
              .map(node -> node.localToScene(node.getLayoutBounds()))
              .toList();
        });
  }

  @Test
  void theRidePageSaysWhatItWaitsForBeforeItClosesTheDayAndClosesAllTheSame() {
    day.desk().riderDays().handedOver(day.id(), 1);
    day.desk()
        .riderDays()
        .score(day.id(), new LapId(1, 1), "grip in the rocks", BigDecimal.TEN, false);
    day.desk().riderDays().ridden(day.id(), new LapId(1, 1));
    day.desk().riderDays().cutShort(day.id(), 1, "rain", "R. Lind", false);
    phones.come("1a2b3c4d", PhoneRole.RIDER, true, day.clock().instant(), 3);
    at(Shell.Page.RIDE);
    press("Close the day");
    assertThat(text())
        .contains("The rider's phone 1a2b3c4d keeps 3 answers", "Ridden and still open: lap 1");
    Window.run(
        () -> {
          Window.look(scene, "phones-close-asked");
          assertThat(Outside.of(scene)).isEmpty();
        });
    press("Close the day");
    assertThat(day.state().step()).isEqualTo(Step.DAY_CLOSED);
    assertThat(text()).contains("Phones: off");
  }

  @Test
  void whereNoPhoneEverCameTheQuestionIsTheOneItWas() {
    day.desk().riderDays().handedOver(day.id(), 1);
    day.desk().riderDays().ridden(day.id(), new LapId(1, 1));
    day.desk().riderDays().cutShort(day.id(), 1, "rain", "R. Lind", false);
    at(Shell.Page.RIDE);
    press("Close the day");
    assertThat(text())
        .contains("From then on no lap can be recorded")
        .doesNotContain("still open", "the notebook yet");
  }

  @Test
  void aWindowThatClosesSaysOnceThatPhonesAreConnectedAndSwitchesThemOff() {
    AtomicInteger closed = new AtomicInteger();
    at(Shell.Page.RIDE);
    Window.run(() -> shell.close(closed::incrementAndGet));
    assertThat(closed).as("no phone is connected").hasValue(1);
    press(DOOR);
    press("Switch phones on");
    phones.come("1a2b3c4d", PhoneRole.RIDER, true, day.clock().instant(), 0);

    Window.run(() -> shell.close(closed::incrementAndGet));
    assertThat(text()).contains("1 phone is connected.");
    assertThat(closed).hasValue(1);
    Window.run(shell::stay);
    Window.run(() -> shell.close(closed::incrementAndGet));
    Window.run(shell::leave);
    assertThat(closed).as("asked once").hasValue(2);

    Window.run(pages::closing);
    assertThat(phones.closed()).isTrue();
    assertThat(phones.at()).isEmpty();
  }

  @Test
  void aPhoneThatIsOutOfReachKeepsNoWindowOpen() {
    AtomicInteger closed = new AtomicInteger();
    at(Shell.Page.RIDE);
    press(DOOR);
    press("Switch phones on");
    phones.come("1a2b3c4d", PhoneRole.RIDER, true, day.clock().instant(), 0);
    Window.run(() -> day.clock().move(Duration.ofMinutes(2)));
    Window.run(() -> shell.close(closed::incrementAndGet));
    assertThat(closed).hasValue(1);
  }
}
