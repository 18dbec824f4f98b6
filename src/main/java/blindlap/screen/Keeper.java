package blindlap.screen;

import blindlap.desk.SafeKeeping;
import java.time.Duration;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Backups while the window is open, on a thread of their own, and one more when it closes. They
 * start and end with the window.
 */
final class Keeper implements AutoCloseable {
  private static final Duration EVERY = Duration.ofMinutes(3);
  private static final Duration PATIENCE = Duration.ofSeconds(5);

  private final SafeKeeping keeping;
  private final Duration every;
  private boolean started;
  private final ScheduledExecutorService worker =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "keep");
            thread.setDaemon(true);
            thread.setPriority(Thread.MIN_PRIORITY);
            return thread;
          });

  Keeper(SafeKeeping keeping) {
    this(keeping, EVERY);
  }

  Keeper(SafeKeeping keeping, Duration every) {
    this.keeping = keeping;
    this.every = every;
  }

  /** The thread of their own; what takes long may share it. */
  Executor worker() {
    return worker;
  }

  /**
   * Begins.
   *
   * @param trouble is told on the thread of their own why there is no backup
   */
  void start(Consumer<Exception> trouble) {
    started = true;
    keeping.watch(worker, every, trouble);
  }

  /** Ends; what is under way is waited for, but not for long. */
  @Override
  public void close() {
    if (started) {
      worker.execute(keeping::backUpAtClosing);
    }
    worker.shutdown();
    try {
      worker.awaitTermination(PATIENCE.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
