package blindlap.phone;

import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * Threads that read, decide and answer. Whoever is slow to say what he wants, or to take the
 * answer, holds one of them: after a while it is interrupted, which closes his connection, and
 * sooner where others wait. What is being decided is never interrupted.
 */
final class Workers implements Executor, AutoCloseable {
  private static final int THREADS = 48;

  /** Longest time for a request, or for an answer, with nobody waiting. */
  private static final long PATIENCE = TimeUnit.SECONDS.toNanos(6);

  /** The same while others wait. */
  private static final long HURRY = TimeUnit.MILLISECONDS.toNanos(300);

  /** A piece of work that can be cut off while it reads or writes. */
  private final class Work implements Runnable {
    private final Runnable task;
    private Thread thread = Thread.currentThread();
    private long since;
    private boolean guarded;
    private boolean cut;

    Work(Runnable task) {
      this.task = task;
    }

    @Override
    public void run() {
      synchronized (this) {
        thread = Thread.currentThread();
      }
      guard(true);
      current.set(this);
      busy.add(this);
      try {
        task.run();
      } finally {
        busy.remove(this);
        current.remove();
        guard(false);
      }
    }

    /** Begins or ends a time in which it can be cut off; true if it was. */
    private synchronized boolean guard(boolean on) {
      guarded = on;
      since = nanos.getAsLong();
      return Thread.interrupted() || cut;
    }

    private synchronized void cutAfter(long patience) {
      if (guarded && nanos.getAsLong() - since > patience) {
        cut = true;
        guarded = false;
        thread.interrupt();
      }
    }
  }

  private final LongSupplier nanos;
  private final LinkedBlockingQueue<Runnable> waiting = new LinkedBlockingQueue<>();
  private final ExecutorService pool;
  private final Set<Work> busy = ConcurrentHashMap.newKeySet();
  private final ThreadLocal<Work> current = new ThreadLocal<>();

  Workers(LongSupplier nanos) {
    this.nanos = nanos;
    ThreadPoolExecutor threads =
        new ThreadPoolExecutor(THREADS, THREADS, 10, TimeUnit.SECONDS, waiting, Workers::thread);
    threads.allowCoreThreadTimeOut(true);
    pool = threads;
  }

  static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "phones");
    thread.setDaemon(true);
    return thread;
  }

  @Override
  public void execute(Runnable task) {
    pool.execute(new Work(task));
  }

  /** The request of this thread is read; false if it was too slow and its connection is closed. */
  boolean read() {
    Work work = current.get();
    return work == null || !work.guard(false);
  }

  /** The answer of this thread is written from now on. */
  void writes() {
    Work work = current.get();
    if (work != null) {
      work.guard(true);
    }
  }

  /** Cuts off whoever is too slow; called often. */
  void look() {
    long patience = waiting.isEmpty() ? PATIENCE : HURRY;
    busy.forEach(work -> work.cutAfter(patience));
  }

  @Override
  public void close() {
    pool.shutdown();
    busy.forEach(work -> work.cutAfter(-1));
  }
}
