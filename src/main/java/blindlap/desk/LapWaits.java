package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Problems;
import java.util.ArrayList;
import java.util.List;

/**
 * What a lap still waits for before it may start, whoever swaps.
 *
 * @param brief one sentence that counts it; empty if the lap may start
 * @param whole a sentence for each
 */
public record LapWaits(String brief, String whole) {
  /** The lap may start. */
  public static final LapWaits NONE = new LapWaits("", "");

  /**
   * Something that is said in words of its own.
   *
   * @param part a few words
   * @param sentence the same in a sentence
   */
  public record Part(String part, String sentence) {}

  /** True if nothing is waited for. */
  public boolean none() {
    return brief.isEmpty();
  }

  /**
   * What is missing, in words.
   *
   * @param first what is said first
   * @param unread how many settings are not measured
   */
  public static LapWaits of(List<Part> first, List<Problem> missing, int unread) {
    List<String> parts = new ArrayList<>(first.stream().map(Part::part).toList());
    List<String> sentences = new ArrayList<>(first.stream().map(Part::sentence).toList());
    missing.forEach(each -> parts.add(part(each, unread)));
    sentences.addAll(Problems.sentences(missing));
    return parts.isEmpty()
        ? NONE
        : new LapWaits(SwapWords.waits(parts), String.join(" ", sentences));
  }

  private static String part(Problem problem, int unread) {
    String detail = problem.details().isEmpty() ? "" : problem.details().get(0);
    return problem.fault() == DeskFault.MEASURES_OPEN
        ? SwapWords.say("waits.MEASURES_OPEN", unread)
        : SwapWords.waitsFor(problem.fault(), detail).orElseGet(() -> Problems.sentence(problem));
  }
}
