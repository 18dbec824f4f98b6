package blindlap.session;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * First look at the finding of an unsealed session under another edition of the method.
 *
 * @param edition of the method that was looked with
 * @param same true if its finding read like the earlier one
 * @param unsealedUnder the earlier edition
 * @param verdict the fixed string that the earlier edition gives; null without a verdict
 * @param figures of the primary measure by name, by the earlier edition
 */
public record FindingSeenAgain(
    int edition,
    boolean same,
    int unsealedUnder,
    @Nullable String verdict,
    Map<String, BigDecimal> figures)
    implements Fact.OfFindings {
  public FindingSeenAgain {
    figures = byName(figures);
  }

  /** In the order of their names, so that a finding is written in the same letters every time. */
  static Map<String, BigDecimal> byName(Map<String, BigDecimal> figures) {
    return Collections.unmodifiableMap(new TreeMap<>(figures));
  }

  @Override
  public <R> R accept(FactVisitor<R> visitor) {
    return visitor.findingSeenAgain(this);
  }
}
