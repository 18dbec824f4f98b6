package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the setups of a plan cost in money and mass, to choose the worthwhile difference by. */
public final class PayWords {
  private static final Words WORDS = Words.of("answer");

  private PayWords() {}

  /** What each setup costs more or less than the first, in money and mass; empty if unknown. */
  public static List<String> lines(Plan plan) {
    List<String> lines = new ArrayList<>();
    for (int i = 1; i < plan.setups().size(); i++) {
      Setup first = plan.setups().get(0);
      Setup other = plan.setups().get(i);
      List<String> parts = new ArrayList<>();
      Setup.Price one = first.price();
      Setup.Price two = other.price();
      if (one != null && two != null && one.currency().equals(two.currency())) {
        pay(parts, "pay.money", two.amount(), one.amount(), two.currency() + " ", "");
      }
      pay(parts, "pay.mass", other.massOnBike(), first.massOnBike(), "", " g");
      if (!parts.isEmpty()) {
        lines.add(
            WORDS.say("pay", other.name(), String.join(WORDS.say("pay.and"), parts), first.name()));
      }
    }
    return lines;
  }

  private static void pay(
      List<String> parts,
      String key,
      @Nullable BigDecimal other,
      @Nullable BigDecimal first,
      String before,
      String behind) {
    if (other != null && first != null && other.compareTo(first) != 0) {
      BigDecimal more = other.subtract(first);
      parts.add(
          WORDS.say(
              more.signum() > 0 ? key + ".more" : key + ".less",
              before + more.abs().stripTrailingZeros().toPlainString() + behind));
    }
  }
}
