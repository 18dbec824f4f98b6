package blindlap.screen.alone;

import blindlap.desk.DeskFault;
import blindlap.fault.Problem;
import blindlap.wording.AloneWords;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Problems;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a lap still waits for.
 *
 * @param brief one sentence that counts it; empty if the lap may start
 * @param whole a sentence for each
 */
public record AloneWaits(String brief, String whole) {
  static final AloneWaits NONE = new AloneWaits("", "");

  /** True if nothing is waited for. */
  public boolean none() {
    return brief.isEmpty();
  }

  /**
   * What is missing, in words.
   *
   * @param unread how many settings are not measured
   * @param unit what was seen of a prepared unit; null where there is none
   */
  static AloneWaits of(List<Problem> missing, int unread, @Nullable AloneUnit unit) {
    List<String> parts = new ArrayList<>();
    List<String> sentences = new ArrayList<>();
    if (unit != null && unit.open()) {
      parts.add(AloneWords.say(unit.whole() == null ? "waits.cover" : "waits.words"));
      sentences.add(AloneWords.say(unit.whole() == null ? "unit.whole" : "unit.words"));
    }
    missing.forEach(each -> parts.add(part(each, unread)));
    sentences.addAll(Problems.sentences(missing));
    return new AloneWaits(
        parts.isEmpty() ? "" : SwapWords.waits(parts), String.join(" ", sentences));
  }

  private static String part(Problem problem, int unread) {
    String detail = problem.details().isEmpty() ? "" : problem.details().get(0);
    return problem.fault() == DeskFault.MEASURES_OPEN
        ? SwapWords.say("waits.MEASURES_OPEN", unread)
        : SwapWords.waitsFor(problem.fault(), detail).orElseGet(() -> Problems.sentence(problem));
  }
}
