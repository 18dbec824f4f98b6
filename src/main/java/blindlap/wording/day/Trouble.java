package blindlap.wording.day;

import blindlap.fault.Problem;
import blindlap.fault.Told;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What went wrong, in one sentence: what a file refuses, and what nobody foresaw. */
public final class Trouble {
  private static final Words WORDS = Words.of("problems");

  private Trouble() {}

  /** Why work could not be done. */
  public static String sentence(Throwable why) {
    return why instanceof Told told
        ? sentence(told)
        : WORDS.say(why instanceof OutOfMemoryError ? "unforeseen.memory" : "unforeseen");
  }

  /**
   * The same at the command line.
   *
   * @param log where the mistake was kept, if it was
   */
  public static String atCommand(Throwable why, Optional<Path> log) {
    if (why instanceof Told || why instanceof OutOfMemoryError) {
      return sentence(why);
    }
    return log.map(file -> WORDS.say("unforeseen.command", file))
        .orElseGet(() -> WORDS.say("unforeseen.nowhere"));
  }

  /** The same in the window. */
  public static String inWindow(Throwable why, Optional<Path> log) {
    return why instanceof Told || log.isEmpty()
        ? sentence(why)
        : WORDS.say("unforeseen.window", log.get());
  }

  private static String sentence(Told why) {
    Problem problem = why.problem();
    Problem behind = why.behind();
    if (behind == null) {
      return Problems.sentence(problem);
    }
    List<String> details = new ArrayList<>(problem.details());
    details.add(Problems.sentence(behind));
    return Problems.sentence(new Problem(problem.fault(), problem.where(), details));
  }
}
