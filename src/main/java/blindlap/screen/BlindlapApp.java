package blindlap.screen;

import blindlap.desk.Desk;
import blindlap.desk.MistakeLog;
import blindlap.desk.RememberedWindow;
import blindlap.desk.SafeKeeping;
import blindlap.screen.book.KeepingModel;
import blindlap.screen.book.TroubleModel;
import blindlap.screen.book.TroublePage;
import blindlap.screen.part.Background;
import blindlap.screen.part.FileDialogs;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.wording.SwapWords;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.FutureTask;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.LongSupplier;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.scene.Scene;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;

/** The window on one notebook. Started by {@link #show}. */
public final class BlindlapApp extends Application {
  /** How long a closing window waits for what is being written. */
  private static final int PATIENCE_SECONDS = 5;

  private static @Nullable Function<Path, Desk> opener;
  private static @Nullable FutureTask<Desk> opening;
  private static @Nullable RuntimeException failure;
  private static @Nullable SafeKeeping keepingSafe;
  private static LongSupplier monotonic = () -> 0;
  private static @Nullable MistakeLog mistakes;
  private static @Nullable RememberedWindow remembered;

  /** What a closing window still asks for is not answered, and is no error either. */
  private final ExecutorService worker =
      new ThreadPoolExecutor(
          1,
          1,
          0,
          TimeUnit.SECONDS,
          new LinkedBlockingQueue<>(),
          task -> {
            Thread thread = new Thread(task, "work");
            thread.setDaemon(true);
            return thread;
          },
          new ThreadPoolExecutor.DiscardPolicy());

  private @Nullable Desk desk;
  private @Nullable Keeper keeper;
  private Runnable closing = () -> {};

  /**
   * Opens the window and returns when it is closed.
   *
   * @param openDesk opens a notebook
   * @param keeping of the notebook to show; its file name is shown at the side
   * @param nanos the monotonic clock of stopwatches
   * @param log where what nobody foresaw is kept
   * @param window how the window was left
   * @throws RuntimeException what the opener threw; if that was one sentence for the user, the
   *     window has told it and what can be done, and nothing else was opened in its place
   */
  public static void show(
      Function<Path, Desk> openDesk,
      SafeKeeping keeping,
      LongSupplier nanos,
      MistakeLog log,
      RememberedWindow window) {
    // The notebook is opened while the toolkit starts: on two cores the window is there sooner.
    FutureTask<Desk> task = new FutureTask<>(() -> openDesk.apply(keeping.notebook()));
    opener = openDesk;
    opening = task;
    new Thread(task, "open").start();
    keepingSafe = keeping;
    monotonic = nanos;
    mistakes = log;
    remembered = window;
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
      tell(stage, failure);
      return;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      Platform.exit();
      return;
    }
    show(stage, desk);
  }

  /** Instead of the pages: why there are none, and what can be saved. */
  private void tell(Stage stage, RuntimeException why) {
    TroubleModel.of(
            java.util.Objects.requireNonNull(keepingSafe),
            why,
            background(worker),
            notebook -> open(stage, notebook))
        .ifPresentOrElse(model -> tell(stage, model), Platform::exit);
  }

  private void tell(Stage stage, TroubleModel model) {
    Look look = new Look();
    TroublePage page = new TroublePage(look, model, new FileDialogs(() -> stage), stage::close);
    Scene scene = new Scene(page);
    place(stage, look);
    look.dress(scene);
    stage.setTitle("Blindlap");
    stage.setScene(scene);
    stage.show();
  }

  /** As it was left, and no larger than the screen: what lies outside of it nobody can press. */
  private void place(Stage stage, Look look) {
    RememberedWindow window = java.util.Objects.requireNonNull(remembered);
    WindowPlace.of(window, stage, look, worker);
  }

  private void open(Stage stage, Path notebook) {
    Desk opened = java.util.Objects.requireNonNull(opener).apply(notebook);
    desk = opened;
    failure = null;
    keepingSafe = java.util.Objects.requireNonNull(keepingSafe).of(notebook);
    show(stage, opened);
  }

  private static Background background(Executor executor) {
    return Background.on(executor, java.util.Objects.requireNonNull(mistakes)::keep);
  }

  private void show(Stage stage, Desk open) {
    Look look = new Look();
    Shell shell = new Shell();
    SafeKeeping safe = java.util.Objects.requireNonNull(keepingSafe);
    Keeper kept = new Keeper(safe);
    keeper = kept;
    KeepingModel keeping = new KeepingModel(open.exchange(safe), safe, background(kept.worker()));
    kept.start(keeping::backupFailed);
    Pages pages = new Pages(open, shell, look, background(worker), monotonic, keeping);
    closing = pages::closing;
    String name = String.valueOf(safe.notebook().getFileName());
    ShellView view = new ShellView(look, shell, pages.makers(), List.of(name));
    Mistakes.catchAll(java.util.Objects.requireNonNull(mistakes), background(worker), view::say);
    Scene scene = new Scene(view);
    place(stage, look);
    look.dress(scene);
    // A window that holds the key says so in its title, too.
    stage
        .titleProperty()
        .bind(
            Bindings.createStringBinding(
                () -> shell.helperProperty().get() ? SwapWords.say("title") : "Blindlap",
                shell.helperProperty()));
    askBeforeClosing(stage, shell);
    stage.setScene(scene);
    stage.show();
  }

  /** A window that is asked to close asks back while something would be lost. */
  static void askBeforeClosing(Stage stage, Shell shell) {
    stage.setOnCloseRequest(
        request -> {
          request.consume();
          shell.close(stage::close);
        });
  }

  @Override
  public void stop() {
    closing.run();
    worker.shutdown();
    try {
      worker.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    if (keeper != null) {
      keeper.close();
    }
    if (desk != null) {
      desk.close();
    }
  }
}
