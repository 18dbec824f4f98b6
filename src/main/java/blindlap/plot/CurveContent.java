package blindlap.plot;

import blindlap.plot.surface.Spoken;
import java.util.List;

/**
 * Everything that is drawn.
 *
 * @param estimate the best supported difference
 * @param estimateWords such as "best supported: 2.3 s"
 * @param ninetyFive 95 % interval, with its words, such as "95 %: 1.7 to 3.0 s"
 * @param ninety 90 % interval, with its words
 * @param none p of "no difference", 0 to 1
 * @param noneWords such as "no difference" and "p = .0015", a line each
 * @param worthwhile the worthwhile difference
 * @param across axis of the supposed difference
 * @param upright axis of p
 * @param spoken the picture in words
 */
public record CurveContent(
    double estimate,
    String estimateWords,
    Named ninetyFive,
    Named ninety,
    double none,
    List<String> noneWords,
    Band worthwhile,
    Axis across,
    Axis upright,
    Spoken spoken) {
  /** Copies the list. */
  public CurveContent {
    noneWords = List.copyOf(noneWords);
  }

  /**
   * An interval and its words.
   *
   * @param limits the interval
   * @param words what to write beside it
   */
  public record Named(Limits limits, String words) {}
}
