package blindlap.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * The version of a trail that a day is timed on: its gates as numbers, and what its whole text,
 * which also holds the reference line, is known by.
 *
 * @param number version of the trail of this name in the trail book, from 1
 * @param gates start, splits and finish, in the order of riding; at least two
 * @param sha256 SHA-256 of the trail's text (docs/trail-file.md), 64 lower-case hexadecimal digits
 */
public record TrailVersion(int number, List<TrailGate> gates, String sha256) {
  public TrailVersion {
    gates = List.copyOf(gates);
  }

  /** Index of the gate of this name, from 0; −1 if there is none. */
  public int gate(String name) {
    for (int i = 0; i < gates.size(); i++) {
      if (gates.get(i).name().equals(name)) {
        return i;
      }
    }
    return -1;
  }

  /** True if riders pass the same gates, whatever the number of the version and its line. */
  public boolean sameGates(TrailVersion other) {
    boolean same = gates.size() == other.gates.size();
    for (int i = 0; same && i < gates.size(); i++) {
      same = gates.get(i).sameAs(other.gates.get(i));
    }
    return same;
  }

  /** Names of the ways from gate to gate: "Gate post to Bridge". */
  public List<Sector> sectors() {
    List<Sector> sectors = new ArrayList<>();
    for (int i = 1; i < gates.size(); i++) {
      sectors.add(new Sector(gates.get(i - 1).name(), gates.get(i).name()));
    }
    return sectors;
  }
}
