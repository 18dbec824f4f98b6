package blindlap.benchmark;

import blindlap.desk.Desk;
import blindlap.desk.MistakeLog;
import blindlap.desk.RememberedWindow;
import blindlap.desk.SafeKeeping;
import blindlap.phone.FakeMaker;
import blindlap.screen.BlindlapApp;
import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.time.Clock;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.stage.Stage;
import javafx.stage.Window;

/**
 * One start, measured from the birth of the process to the second pulse after a window shows:
 * {@code bare} for a window with one label, {@code blindlap FILE} for the window on a notebook.
 * Prints milliseconds and ends.
 */
public final class WindowStart {
  private WindowStart() {}

  public static void main(String[] args) {
    Thread watcher = new Thread(WindowStart::watch, "watch");
    watcher.setDaemon(true);
    watcher.start();
    open(args);
  }

  static void open(String[] args) {
    if (args[0].equals("bare")) {
      Application.launch(Bare.class);
    } else {
      SecureBytes none = byte[]::new;
      Path file = Path.of(args[1]);
      BlindlapApp.show(
          notebook ->
              new Desk(
                  SqliteNotebook.open(notebook, none.exactly(16), Clock.systemUTC().instant()),
                  Clock.systemUTC(),
                  SealingSources.allFrom(none),
                  SealParameters.standard(),
                  none),
          new SafeKeeping(new SqliteFiles(Clock.systemUTC(), () -> none.exactly(16)), file),
          System::nanoTime,
          new MistakeLog(file.resolveSibling("mistakes.log"), Clock.systemUTC(), ""),
          new RememberedWindow(file.resolveSibling("window.properties")),
          desk -> new FakeMaker(),
          () -> file.resolveSibling("samples.blindlap"));
    }
  }

  private static void watch() {
    boolean shown = false;
    while (!shown) {
      try {
        Thread.sleep(5);
        shown = !Window.getWindows().isEmpty() && Window.getWindows().get(0).isShowing();
      } catch (RuntimeException | InterruptedException e) {
        // The toolkit is not up yet; look again.
      }
    }
    Platform.runLater(() -> Platform.runLater(WindowStart::end));
  }

  private static void end() {
    System.out.println(ManagementFactory.getRuntimeMXBean().getUptime());
    Runtime.getRuntime().halt(0);
  }

  /** The smallest window there is. */
  public static final class Bare extends Application {
    @Override
    public void start(Stage stage) {
      stage.setScene(new Scene(new Label("bare"), 1280, 800));
      stage.show();
    }
  }
}
