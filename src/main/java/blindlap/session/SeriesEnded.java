package blindlap.session;

/**
 * A declared series was ended before its declared number of sessions was reached, so that its
 * sessions may be unsealed. It never pools a verdict from then on, whatever is ridden later.
 *
 * @param reason why, in words
 * @param decidedBy who decided it
 */
public record SeriesEnded(String reason, String decidedBy) implements Fact.OfSeries {
  @Override
  public <R> R accept(FactVisitor<R> visitor) {
    return visitor.seriesEnded(this);
  }
}
