package blindlap.screen;

import blindlap.desk.Desk;
import blindlap.desk.MistakeLog;
import blindlap.desk.RememberedWindow;
import blindlap.desk.SafeKeeping;
import blindlap.phone.PhoneMaker;
import blindlap.screen.book.TroubleModel;
import blindlap.screen.book.TroublePage;
import blindlap.screen.part.Background;
import blindlap.screen.part.DialogFolder;
import blindlap.screen.part.FileDialogs;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.FutureTask;
import java.util.function.Function;
import java.util.function.LongSupplier;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;

/** The window on one notebook. Started by {@link #show}. */
public final class BlindlapApp extends Application {
  private static @Nullable Function<Path, Desk> opener;
  private static @Nullable FutureTask<Desk> opening;
  private static @Nullable RuntimeException failure;
  private static @Nullable SafeKeeping keepingSafe;
  private static LongSupplier monotonic = () -> 0;
  private static @Nullable MistakeLog mistakes;
  private static @Nullable RememberedWindow remembered;
  private static @Nullable Callable<Path> sampleDays;
  private static @Nullable Function<Desk, PhoneMaker> phoneMaker;

  private final ExecutorService worker = NotebookWindow.worker();
  private @Nullable Desk desk;
  private @Nullable NotebookWindow own;
  private @Nullable NotebookWindow samples;

  /**
   * Opens the window and returns when it is closed.
   *
   * @param openDesk opens a notebook
   * @param keeping of the notebook to show; its file name is shown at the side
   * @param nanos the monotonic clock of stopwatches
   * @param log where what nobody foresaw is kept
   * @param window how the window was left
   * @param phones makes phones of the sessions of a notebook
   * @param samples makes the notebook of invented days if it is not there, and says where it is
   * @throws RuntimeException what the opener threw; if that was one sentence for the user, the
   *     window has told it and what can be done, and nothing else was opened in its place
   */
  public static void show(
      Function<Path, Desk> openDesk,
      SafeKeeping keeping,
      LongSupplier nanos,
      MistakeLog log,
      RememberedWindow window,
      Function<Desk, PhoneMaker> phones,
      Callable<Path> samples) {
    // The notebook is opened while the toolkit starts: on two cores the window is there sooner.
    FutureTask<Desk> task = new FutureTask<>(() -> openDesk.apply(keeping.notebook()));
    opener = openDesk;
    opening = task;
    new Thread(task, "open").start();
    keepingSafe = keeping;
    monotonic = nanos;
    mistakes = log;
    remembered = window;
    phoneMaker = phones;
    sampleDays = samples;
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
    FileDialogs dialogs = new FileDialogs(() -> stage, new DialogFolder(Path.of("")));
    TroublePage page = new TroublePage(look, model, dialogs, stage::close);
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
    place(stage, look);
    SafeKeeping safe = java.util.Objects.requireNonNull(keepingSafe);
    NotebookWindow window = new NotebookWindow(stage, open, safe, look);
    own = window;
    window.open(
        monotonic,
        java.util.Objects.requireNonNull(mistakes),
        java.util.Objects.requireNonNull(phoneMaker).apply(open),
        java.util.Objects.requireNonNull(sampleDays),
        file -> showSamples(file, stage, look));
  }

  /** A second window, beside the first one and in its look; its place is not remembered. */
  private void showSamples(Path file, Stage beside, Look as) {
    NotebookWindow shown = samples;
    if (shown != null && !shown.closed()) {
      shown.toFront();
      return;
    }
    Desk days = java.util.Objects.requireNonNull(opener).apply(file);
    Look look = new Look();
    look.themeProperty().set(as.themeProperty().get());
    look.scaleText(as.textScale());
    Stage stage = new Stage();
    WindowPlace.beside(beside, stage);
    SafeKeeping safe = java.util.Objects.requireNonNull(keepingSafe).of(file);
    NotebookWindow window = new NotebookWindow(stage, days, safe, look);
    samples = window;
    window.openSamples(monotonic, java.util.Objects.requireNonNull(mistakes));
  }

  @Override
  public void stop() {
    if (samples != null) {
      samples.close();
    }
    worker.shutdown();
    if (own != null) {
      own.close();
    } else if (desk != null) {
      desk.close();
    }
  }
}
