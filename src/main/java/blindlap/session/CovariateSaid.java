package blindlap.session;

import blindlap.session.day.CovariateAt;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A covariate was said, or taken back, for a stint or a lap; the latest stands. Since version 4.
 *
 * @param value what it is; null takes it out
 * @param reason why it was corrected; empty where it is said for the first time, or changed before
 *     the stint
 */
public record CovariateSaid(
    CovariateAt at, @Nullable BigDecimal value, Source source, String reason)
    implements Fact.OfCovariates {
  @Override
  public <R> R accept(FactVisitor<R> visitor) {
    return visitor.covariateSaid(this);
  }
}
