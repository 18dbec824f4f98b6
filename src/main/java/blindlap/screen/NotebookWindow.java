package blindlap.screen;

import blindlap.desk.Desk;
import blindlap.desk.MistakeLog;
import blindlap.desk.SafeKeeping;
import blindlap.phone.PhoneMaker;
import blindlap.screen.book.KeepingModel;
import blindlap.screen.book.SampleDaysModel;
import blindlap.screen.part.Background;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.wording.NotebookWords;
import blindlap.wording.SwapWords;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javafx.beans.binding.Bindings;
import javafx.scene.Scene;
import javafx.stage.Stage;

/** One window on one notebook: its pages, its worker and what keeps the notebook safe. */
final class NotebookWindow {
  /** How long a closing window waits for what is being written. */
  private static final int PATIENCE_SECONDS = 5;

  private final Stage stage;
  private final Desk desk;
  private final SafeKeeping safe;
  private final Look look;
  private final Shell shell = new Shell();
  private final Keeper keeper;
  private final ExecutorService worker = worker();
  private final ExecutorService aside = worker();
  private Runnable closing = () -> {};
  private boolean closed;

  /**
   * @param look theme and text size of the window
   */
  NotebookWindow(Stage stage, Desk desk, SafeKeeping safe, Look look) {
    this.stage = stage;
    this.desk = desk;
    this.safe = safe;
    this.look = look;
    this.keeper = new Keeper(safe);
  }

  /** What a closing window still asks for is not answered, and is no error either. */
  static ExecutorService worker() {
    return new ThreadPoolExecutor(
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
  }

  /**
   * Opens it on the notebook that somebody rides with.
   *
   * @param phones makes phones of its sessions
   * @param samples makes the notebook of invented days
   * @param openSamples opens a window on it
   */
  void open(
      LongSupplier monotonic,
      MistakeLog log,
      PhoneMaker phones,
      Callable<Path> samples,
      Consumer<Path> openSamples) {
    Background background = Background.on(worker, aside, log::keep);
    KeepingModel keeping = keeping(log);
    keeper.start(keeping::backupFailed);
    Pages pages =
        pages(
            monotonic,
            background,
            keeping,
            Optional.of(new SampleDaysModel(samples, openSamples, background)),
            Optional.of(phones));
    show(pages, log, background, List.of(name()));
  }

  /** Opens it on invented days, of which no backup is made and to which no phone comes. */
  void openSamples(LongSupplier monotonic, MistakeLog log) {
    Background background = Background.on(worker, aside, log::keep);
    Pages pages = pages(monotonic, background, keeping(log), Optional.empty(), Optional.empty());
    show(pages, log, background, List.of(name(), NotebookWords.say("samples.foot")));
  }

  private KeepingModel keeping(MistakeLog log) {
    return new KeepingModel(desk.exchange(safe), safe, Background.on(keeper.worker(), log::keep));
  }

  private String name() {
    return String.valueOf(safe.notebook().getFileName());
  }

  private Pages pages(
      LongSupplier monotonic,
      Background background,
      KeepingModel keeping,
      Optional<SampleDaysModel> days,
      Optional<PhoneMaker> phones) {
    Pages pages = new Pages(desk, shell, look, background, monotonic, keeping, days, phones);
    closing = pages::closing;
    return pages;
  }

  private void show(Pages pages, MistakeLog log, Background background, List<String> foot) {
    ShellView view = new ShellView(look, shell, pages.makers(), foot);
    Mistakes.catchAll(log, background, view::say);
    Scene scene = new Scene(view);
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
    stage.setOnHidden(e -> close());
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

  /** Brings it before the others. */
  void toFront() {
    stage.setIconified(false);
    stage.toFront();
  }

  boolean closed() {
    return closed;
  }

  /** Waits for what is being written, and closes the notebook; once. */
  void close() {
    if (closed) {
      return;
    }
    closed = true;
    closing.run();
    aside.shutdownNow();
    worker.shutdown();
    try {
      worker.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS);
      aside.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    keeper.close();
    desk.close();
  }
}
