package blindlap.wording;

import blindlap.stats.OrderSet;
import java.util.List;
import java.util.Locale;

/** What a set of orders is worth, in sentences. */
public final class PreviewWords {
  private static final Words WORDS = Words.of("preview");

  private PreviewWords() {}

  /** One sentence a line. */
  public static List<String> lines(OrderSet orders) {
    String count = String.format(Locale.ROOT, "%,d", orders.count());
    String first =
        orders.attainableLevel() == 0
            ? WORDS.say("orders.never", count, Figures.p(orders.smallestP()))
            : WORDS.say("orders.able", count, Figures.p(orders.smallestP()));
    String swaps =
        WORDS.say(
            "swaps", Figures.number(orders.meanSwaps(), 1), orders.minSwaps(), orders.maxSwaps());
    return List.of(first, swaps);
  }
}
