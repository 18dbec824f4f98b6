package blindlap.screen.part;

import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import javafx.application.Platform;

/**
 * Work off the interface thread, its result on it. The only place that hops between the two; tests
 * give executors that run at once.
 */
public final class Background {
  /** Long enough for a page to be laid out and drawn, too short to be waited for. */
  private static final long LULL_MS = 250;

  private final Executor worker;
  private final Executor lull;
  private final Executor aside;
  private final Executor asideLull;
  private final Executor screen;
  private final Consumer<Exception> keep;

  private Background(
      Executor worker,
      Executor lull,
      Executor aside,
      Executor asideLull,
      Executor screen,
      Consumer<Exception> keep) {
    this.worker = worker;
    this.lull = lull;
    this.aside = aside;
    this.asideLull = asideLull;
    this.screen = screen;
    this.keep = keep;
  }

  /** Work on the given executor, results on the interface thread. */
  public static Background on(Executor worker) {
    return on(worker, thrown -> {});
  }

  /**
   * The same.
   *
   * @param keep is told first of everything that is thrown, on the thread that works
   */
  public static Background on(Executor worker, Consumer<Exception> keep) {
    return on(worker, worker, keep);
  }

  /**
   * The same.
   *
   * @param aside works on what takes long, so that nothing waits for it
   */
  public static Background on(Executor worker, Executor aside, Consumer<Exception> keep) {
    return new Background(worker, later(worker), aside, later(aside), Platform::runLater, keep);
  }

  private static Executor later(Executor executor) {
    return CompletableFuture.delayedExecutor(LULL_MS, TimeUnit.MILLISECONDS, executor);
  }

  /** Work on the given executor, results on the thread that works, for tests. */
  public static Background by(Executor worker) {
    return new Background(worker, worker, worker, worker, Runnable::run, thrown -> {});
  }

  /** Everything at once on the calling thread, for tests. */
  public static Background immediate() {
    return by(Runnable::run);
  }

  /**
   * Runs work and hands over what came of it.
   *
   * @param work off the interface thread
   * @param done gets the result on the interface thread
   * @param failed gets what was thrown on the interface thread
   */
  public <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
    run(worker, work, done, failed);
  }

  /**
   * As {@link #run}, for what may come a little later: it leaves the processors to what is being
   * shown for the first time.
   */
  public <T> void whenQuiet(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
    run(lull, work, done, failed);
  }

  /** As {@link #run}, for what takes seconds: what is asked for meanwhile does not wait for it. */
  public <T> void aside(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
    run(aside, work, done, failed);
  }

  /** Both: it takes seconds, and may come a little later. */
  public <T> void asideWhenQuiet(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
    run(asideLull, work, done, failed);
  }

  private <T> void run(
      Executor executor, Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
    executor.execute(
        () -> {
          try {
            T result = work.call();
            screen.execute(() -> done.accept(result));
          } catch (Exception e) {
            keep.accept(e);
            screen.execute(() -> failed.accept(e));
          }
        });
  }

  /** Runs something on the interface thread. */
  public void onScreen(Runnable change) {
    screen.execute(change);
  }
}
