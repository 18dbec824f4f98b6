package blindlap.session;

import blindlap.session.day.SessionId;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Where the other sessions of a series stood when a review was closed, a seal was opened or a
 * session was abandoned: written directly after that entry, in the same writing. Of two entries in
 * two sessions it tells which came first without trusting a clock (docs/method.md#series).
 *
 * @param heads of every other session of the series that this notebook knew, by session
 */
public record SeriesStood(Map<SessionId, List<Head>> heads) implements Fact.OfSeries {
  public SeriesStood {
    Map<SessionId, List<Head>> sorted =
        new TreeMap<>(java.util.Comparator.comparing(SessionId::text));
    heads.forEach((session, at) -> sorted.put(session, List.copyOf(at)));
    heads = java.util.Collections.unmodifiableMap(sorted);
  }

  @Override
  public <R> R accept(FactVisitor<R> visitor) {
    return visitor.seriesStood(this);
  }
}
