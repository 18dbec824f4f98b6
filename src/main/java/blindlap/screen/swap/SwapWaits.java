package blindlap.screen.swap;

import blindlap.desk.DeskFault;
import blindlap.fault.Problem;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Problems;
import java.util.List;

/**
 * What a lap still waits for.
 *
 * @param brief one sentence that counts it; empty if the lap may start
 * @param whole a sentence for each
 */
public record SwapWaits(String brief, String whole) {
  static final SwapWaits NONE = new SwapWaits("", "");

  /**
   * What is missing, in words.
   *
   * @param unmeasured how many settings are not measured
   */
  static SwapWaits of(List<Problem> missing, int unmeasured) {
    if (missing.isEmpty()) {
      return NONE;
    }
    List<String> parts = missing.stream().map(each -> part(each, unmeasured)).toList();
    return new SwapWaits(SwapWords.waits(parts), String.join(" ", Problems.sentences(missing)));
  }

  private static String part(Problem problem, int unmeasured) {
    String detail = problem.details().isEmpty() ? "" : problem.details().get(0);
    return problem.fault() == DeskFault.MEASURES_OPEN
        ? SwapWords.say("waits.MEASURES_OPEN", unmeasured)
        : SwapWords.waitsFor(problem.fault(), detail).orElseGet(() -> Problems.sentence(problem));
  }

  /** True if nothing is waited for. */
  public boolean none() {
    return brief.isEmpty();
  }
}
