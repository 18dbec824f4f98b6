package blindlap.screen;

import blindlap.desk.Desk;
import blindlap.screen.model.Background;
import blindlap.screen.model.Shell;
import blindlap.screen.view.Fonts;
import blindlap.screen.view.Look;
import blindlap.screen.view.ShellView;
import blindlap.wording.SwapWords;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.scene.Scene;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;

/** The window on one notebook. Started by {@link #show}. */
public final class BlindlapApp extends Application {
  private static @Nullable FutureTask<Desk> opening;
  private static @Nullable RuntimeException failure;
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
   * @throws RuntimeException what the opener threw; no window was shown then
   */
  public static void show(Supplier<Desk> openDesk, String name, LongSupplier nanos) {
    // The notebook is opened while the toolkit starts: on two cores the window is there sooner.
    FutureTask<Desk> task = new FutureTask<>(openDesk::get);
    opening = task;
    new Thread(task, "open").start();
    notebookName = name;
    monotonic = nanos;
    launch(BlindlapApp.class);
    if (failure != null) {
      throw failure;
    }
  }

  @Override
  public void init() {
    Fonts.load();
  }

  @Override
  public void start(Stage stage) {
    try {
      desk = java.util.Objects.requireNonNull(opening).get();
    } catch (ExecutionException e) {
      failure =
          e.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(e);
      Platform.exit();
      return;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      Platform.exit();
      return;
    }
    show(stage, desk);
  }

  private void show(Stage stage, Desk open) {
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
