package blindlap.wording.day;

import blindlap.fault.Problem;
import blindlap.fault.Told;
import java.util.ArrayList;
import java.util.List;

/** What went wrong, in one sentence: what a file refuses, and what nobody foresaw. */
public final class Trouble {
  private static final Words WORDS = Words.of("problems");

  private Trouble() {}

  /** Why work could not be done. */
  public static String sentence(Throwable why) {
    return why instanceof Told told
        ? sentence(told)
        : WORDS.say("unforeseen", why.getClass().getSimpleName(), String.valueOf(why.getMessage()));
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
