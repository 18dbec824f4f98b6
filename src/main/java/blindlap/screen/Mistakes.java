package blindlap.screen;

import blindlap.desk.MistakeLog;
import blindlap.screen.part.Background;
import blindlap.wording.day.Trouble;
import java.util.function.Consumer;

/** What nobody foresaw, on whichever thread: kept in the log, and said in one sentence. */
final class Mistakes {
  private Mistakes() {}

  /**
   * Catches what is thrown from now on and by nobody caught.
   *
   * @param say shows a sentence; is called on the interface thread
   */
  static void catchAll(MistakeLog log, Background background, Consumer<String> say) {
    Thread.UncaughtExceptionHandler handler =
        (thread, why) -> {
          String sentence = Trouble.inWindow(why, log.keep(why));
          background.onScreen(() -> say.accept(sentence));
        };
    Thread.setDefaultUncaughtExceptionHandler(handler);
    Thread.currentThread().setUncaughtExceptionHandler(handler);
  }
}
