package blindlap.command;

import blindlap.wording.PlanWords;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/** Says what is being worked out if it takes longer than two seconds, and that it goes on. */
final class StillWorking implements AutoCloseable {
  private static final long FIRST_S = 2;
  private static final long AGAIN_S = 10;

  private final ScheduledExecutorService clock =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "still working");
            thread.setDaemon(true);
            return thread;
          });

  private volatile String step = "";

  /**
   * @param say gets a sentence now and then, on a thread of its own
   */
  StillWorking(Consumer<String> say) {
    clock.scheduleAtFixedRate(
        () -> say.accept(PlanWords.say("still.working", PlanWords.say(step))),
        FIRST_S,
        AGAIN_S,
        TimeUnit.SECONDS);
  }

  /** What is worked out from now on: a key of the bundle. */
  void on(String next) {
    step = next;
  }

  @Override
  public void close() {
    clock.shutdownNow();
  }
}
