package blindlap.command;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;

/** A question that is asked again until somebody says yes or no to it. */
final class YesOrNo {
  private YesOrNo() {}

  /**
   * Asks.
   *
   * @param question with the words to type
   * @param unclear said where something else is typed
   * @return true for yes; false for no, and where nobody answers any more
   */
  static boolean ask(
      CommandSetting.Terminal terminal, String question, Consumer<String> say, String unclear) {
    while (true) {
      Optional<String> typed = terminal.answer(question);
      switch (typed.orElse("no").strip().toLowerCase(Locale.ROOT)) {
        case "yes", "y" -> {
          return true;
        }
        case "no", "n" -> {
          return false;
        }
        default -> say.accept(unclear);
      }
    }
  }
}
