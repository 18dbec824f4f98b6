package blindlap.screen;

import blindlap.desk.Desk;
import blindlap.screen.model.Background;
import blindlap.screen.model.Shell;
import blindlap.screen.view.Fonts;
import blindlap.screen.view.Look;
import blindlap.screen.view.ShellView;
import blindlap.wording.SwapWords;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import javafx.application.Application;
import javafx.beans.binding.Bindings;
import javafx.scene.Scene;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;

/** The window on one notebook. Started by {@link #show}. */
public final class BlindlapApp extends Application {
  private static @Nullable Supplier<Desk> opener;
  private static String notebookName = "";
  private static LongSupplier monotonic = () -> 0;

  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "work");
            thread.setDaemon(true);
            return thread;
          });
  private @Nullable Desk desk;

  /**
   * Opens the window and returns when it is closed.
   *
   * @param openDesk opens the notebook
   * @param name the notebook's file name, shown at the side
   * @param nanos the monotonic clock of stopwatches
   */
  public static void show(Supplier<Desk> openDesk, String name, LongSupplier nanos) {
    opener = openDesk;
    notebookName = name;
    monotonic = nanos;
    launch(BlindlapApp.class);
  }

  @Override
  public void start(Stage stage) {
    Desk open = java.util.Objects.requireNonNull(opener).get();
    desk = open;
    Fonts.load();
    Look look = new Look();
    Shell shell = new Shell();
    Pages pages = new Pages(open, shell, look, Background.on(worker), monotonic);
    Scene scene =
        new Scene(new ShellView(look, shell, pages.makers(), List.of(notebookName)), 1280, 800);
    look.dress(scene);
    // A window that holds the key says so in its title, too.
    stage
        .titleProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    shell.pageProperty().get() == Shell.Page.SWAP
                        ? SwapWords.say("title")
                        : "Blindlap",
                shell.pageProperty()));
    stage.setMinWidth(900);
    stage.setMinHeight(600);
    stage.setScene(scene);
    stage.show();
  }

  @Override
  public void stop() {
    worker.shutdown();
    if (desk != null) {
      desk.close();
    }
  }
}
