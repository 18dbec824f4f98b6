package blindlap.plot;

import blindlap.plot.surface.Spoken;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Invented running sums along a trail of 690 m. */
final class WaySamples {
  private static final String[] NAMES = {"Gate post", "Rock garden", "Bridge", "Ford"};
  private static final double[] METRES = {0, 195, 420, 690};

  private WaySamples() {}

  static Map<String, AlongWay> all() {
    Map<String, AlongWay> all = new TreeMap<>();
    all.put("way", way(new double[] {-0.24, -0.93, -0.83}, 0.85, gates(), notes()));
    all.put(
        "way-gains-and-loses",
        way(
            new double[] {0.1, -1.4, 0.9},
            0.6,
            gates(),
            List.of(
                new WayContent.Note(195, 420, "Shock L gains 1.4 s between Rock garden and Bridge"),
                new WayContent.Note(420, 690, "Shock K gains 0.9 s between Bridge and Ford"))));
    all.put("way-nothing", way(new double[] {0.05, -0.1, 0.02}, 0.5, gates(), List.of()));
    all.put("way-no-band", way(new double[] {0.5, 0.3, 0.7}, Double.NaN, gates(), List.of()));
    all.put("way-many-gates", way(new double[] {-0.24, -0.93, -0.83}, 0.85, many(), List.of()));
    return all;
  }

  private static List<WayContent.Note> notes() {
    return List.of(
        new WayContent.Note(195, 420, "0.93 s of the 2.00 s come between Rock garden and Bridge"),
        new WayContent.Note(420, 690, "0.83 s of the 2.00 s come between Bridge and Ford"));
  }

  private static List<WayContent.Gate> gates() {
    List<WayContent.Gate> gates = new ArrayList<>();
    for (int i = 0; i < NAMES.length; i++) {
      gates.add(new WayContent.Gate(NAMES[i], METRES[i], String.valueOf((int) METRES[i])));
    }
    return gates;
  }

  private static List<WayContent.Gate> many() {
    List<WayContent.Gate> gates = new ArrayList<>();
    for (int i = 0; i <= 15; i++) {
      gates.add(new WayContent.Gate("Long name of gate " + i, 46 * i, String.valueOf(46 * i)));
    }
    return gates;
  }

  private static AlongWay way(
      double[] sectors, double half, List<WayContent.Gate> gates, List<WayContent.Note> notes) {
    double[] way = new double[24];
    double[] sums = new double[24];
    double[] halves = new double[24];
    for (int i = 0; i < 24; i++) {
      way[i] = 30 * i;
      double sum = 0;
      for (int s = 0; s < 3; s++) {
        double share = (way[i] - METRES[s]) / (METRES[s + 1] - METRES[s]);
        sum += sectors[s] * Math.max(0, Math.min(1, share));
      }
      sums[i] = sum;
      halves[i] = half * Math.sqrt(i / 23.0);
    }
    double whole = Arrays.stream(sectors).sum();
    return AlongWay.of(
        new WayContent(
            way,
            sums,
            halves,
            gates,
            notes,
            new Axis("s", Axis.Counting.DECIMAL, Samples::plain),
            "metres from Gate post",
            "95 % band for the whole line at once",
            new WayContent.Named(SetupMark.A, "Shock K", ""),
            new WayContent.Named(
                SetupMark.B, "Shock L", whole < 0 ? "2.0 s faster" : "best estimate 1.5 s slower"),
            new Spoken("Where the difference arises.", "")));
  }
}
