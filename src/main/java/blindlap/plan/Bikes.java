package blindlap.plan;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Two bikes, each carrying one of two setups. Whatever else differs between them is compared along
 * with the setups; changing the hardware over at half day spreads it over both.
 *
 * @param first the bike that carries setup A at the start
 * @param second the bike that carries setup B at the start
 * @param differences what differs between the bikes besides the setups
 * @param changeAfter the stint after which the hardware changes bikes; null for never
 */
public record Bikes(
    String first, String second, List<Difference> differences, @Nullable Integer changeAfter) {

  /** One thing that differs between the bikes, as typed. */
  public record Difference(String name, String first, String second) {}

  public Bikes {
    differences = List.copyOf(differences);
  }
}
