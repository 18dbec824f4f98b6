package blindlap.plan;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A trail of the trail book: the way that laps are ridden on, and the gates across it.
 *
 * @param name what people call it; the same as a plan's {@code trail}
 * @param line places in the order of riding, from in front of the start to behind the finish; at
 *     least two
 * @param gates start, splits and finish, in the order of riding; at least two
 */
public record Trail(String name, List<Place> line, List<TrailGate> gates) {
  /**
   * A place of the line.
   *
   * @param at where, on WGS 84
   * @param height metres above the sea, with at most one decimal; null where it is not known
   * @param seconds after the first place, on the lap that the line was recorded on, with at most
   *     three decimals; null where the line was drawn
   */
  public record Place(
      TrailGate.Point at, @Nullable BigDecimal height, @Nullable BigDecimal seconds) {
    /** A place whose height and time are not known. */
    public static Place of(TrailGate.Point at) {
      return new Place(at, null, null);
    }
  }

  public Trail {
    line = List.copyOf(line);
    gates = List.copyOf(gates);
  }

  /** The gate of this name. */
  public Optional<TrailGate> gate(String wanted) {
    return gates.stream().filter(gate -> gate.name().equals(wanted)).findFirst();
  }

  /** What a plan keeps of a version of it. */
  public TrailVersion version(int number, String sha256) {
    return new TrailVersion(number, gates, sha256);
  }
}
