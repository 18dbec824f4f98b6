package blindlap.screen.manual;

import blindlap.desk.OneStints;
import blindlap.phone.FakeMaker;
import blindlap.phone.FakePhones;
import blindlap.screen.ManualWindow;
import blindlap.screen.NoDialogs;
import blindlap.screen.part.Background;
import blindlap.screen.part.LineScale;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.recording.RecordingModel;
import blindlap.screen.recording.RecordingPage;
import blindlap.session.day.PhoneRole;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** The pages of helper and rider on the day, and what is brought in when it is ridden. */
final class DayPages {
  private static final int STINT = 5;

  private DayPages() {}

  private static ManualWindow window(ForkDay day, FakeMaker maker) {
    return ManualWindow.open(day.desk(), day.notebook(), day.clock(), maker, Map.of());
  }

  /** Four stints are ridden; the fifth is handled, and ridden. */
  static void inHand(Path folder, Album album) {
    FakeMaker maker = new FakeMaker();
    try (ForkDay day = new ForkDay(folder, "hand").commit().ride(STINT - 1);
        ManualWindow window = window(day, maker)) {
      swap(day, window, album);
      day.helper().handOver(STINT, ForkDay.HANDLED);
      ride(day, window, album);
      phones(day, maker, window, album);
    }
    try (ForkDay day = new ForkDay(folder, "passer").commit().ride(STINT);
        ManualWindow window = window(day, maker)) {
      oneStint(day, window, album);
    }
  }

  private static void swap(ForkDay day, ManualWindow window, Album album) {
    window.open(Shell.Page.SWAP, day.id());
    window.type("#secret", day.phrase());
    window.press("#secret-open");
    window.type("#secret", "4711");
    window.press("#secret-open");
    window.press("Begin");
    window.type("rebound, measured", "8");
    window.type("sag, measured", "22.5");
    window.press("Axles");
    window.press("Pivots");
    window.press("Spring");
    day.clock().move(Duration.ofSeconds(95));
    window.settle();
    album.take(window, ManualPicture.SWAP);
    window.press("Hide now");
  }

  private static void ride(ForkDay day, ManualWindow window, Album album) {
    window.open(Shell.Page.RIDE, day.id());
    window.press("Who holds the watch?: starter");
    window.press("lap time: Start");
    day.clock().move(Duration.ofMillis(61_600));
    window.press("lap time: Stop");
    window.with(LineScale.class, "calm over stones", scale -> mark(scale));
    window.press("trust in the front: none (1) to complete (9): 4");
    window.press("Your guess: Fork M");
    window.press("How sure?: a hunch");
    window.settle();
    album.take(window, ManualPicture.RIDE);
  }

  /** By keys: from the right end, four pages down. */
  private static void mark(LineScale scale) {
    key(scale, KeyCode.RIGHT);
    for (int page = 0; page < 4; page++) {
      key(scale, KeyCode.PAGE_DOWN);
    }
    key(scale, KeyCode.ENTER);
  }

  private static void key(Node node, KeyCode code) {
    node.fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false));
  }

  private static void phones(ForkDay day, FakeMaker maker, ManualWindow window, Album album) {
    window.press("Phones");
    window.press("#phones-switch");
    FakePhones phones = maker.phones(day.id());
    phones.come("1a2b3c4d", PhoneRole.RIDER, true, day.clock().instant(), 0);
    phones.come("9aabbccd", PhoneRole.STARTER, true, day.clock().instant(), 0);
    window.settle();
    album.take(window, ManualPicture.PHONES);
  }

  private static void oneStint(ForkDay day, ManualWindow window, Album album) {
    OneStints.Slip slip =
        ((OneStints.Made.Slips) day.desk().oneStints().make(day.helper().day(), day.state()))
            .slips()
            .get(0);
    window.open(Shell.Page.SWAP, day.id());
    window.press("Somebody swaps for one stint");
    window.type("Your name", "P. Wier");
    window.type("Stint on the slip", String.valueOf(slip.stint()));
    window.type("The three words on the slip", slip.words().text());
    window.press("Show what to set");
    day.clock().move(Duration.ofSeconds(12));
    window.settle();
    album.take(window, ManualPicture.ONE_STINT);
    window.press("Hide now");
  }

  /** All laps are ridden, and the recorder's file is chosen. */
  static void recording(Path folder, Album album) {
    try (ForkDay day = new ForkDay(folder, "recording").commit().ride(16);
        ManualWindow window =
            ManualWindow.open(
                day.desk(),
                day.notebook(),
                day.clock(),
                new FakeMaker(),
                Map.of(Shell.Page.RIDE, look -> recordingPage(day, look)))) {
      window.open(Shell.Page.RIDE, day.id());
      window.press("Choose a recording");
      album.take(window, ManualPicture.RECORDING);
    }
  }

  private static Node recordingPage(ForkDay day, Look look) {
    RecordingModel model =
        new RecordingModel(day.desk().sessions(), day.desk().recordings(), Background.immediate());
    model.open(day.id());
    NoDialogs chosen =
        new NoDialogs() {
          @Override
          public Optional<Path> openFile(String title) {
            return Optional.of(ForkDay.recording());
          }
        };
    return new RecordingPage(look, model, chosen, () -> {}, day.clock()::nanos);
  }
}
