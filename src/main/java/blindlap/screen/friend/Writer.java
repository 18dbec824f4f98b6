package blindlap.screen.friend;

import blindlap.desk.Sessions;
import java.util.concurrent.Callable;

/** Takes what is to be written, off the interface thread. */
@FunctionalInterface
interface Writer {
  void accept(Callable<Sessions.Result> work);
}
