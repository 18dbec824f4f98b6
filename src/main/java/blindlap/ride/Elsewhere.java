package blindlap.ride;

import java.util.concurrent.Callable;
import java.util.function.Consumer;

/** Does work apart from the page, so that the page never waits for the disk. */
@FunctionalInterface
public interface Elsewhere {
  /**
   * Does work and hands over what came of it where the page lives.
   *
   * @param done gets the result
   * @param failed gets what was thrown
   */
  <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed);
}
