package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Trails that nobody has ridden, drawn. */
final class TrailSamples {
  private static final String[] NAMES = {
    "Gate post", "Rock garden", "Old wooden bridge", "Second crossing of the stream", "Ford"
  };
  private static final Axis METRES =
      new Axis("metres", Axis.Counting.DECIMAL, (value, step) -> Math.round(value) + "");

  private TrailSamples() {}

  static Map<String, Drawing> all() {
    return Map.of(
        "trail-winding", map(2, 1, 3),
        "trail-straight", map(0, 0, 2),
        "trail-twelve-gates", map(3, 5, 12),
        "trail-two-close-gates", close(),
        "profile", profile(true, 4),
        "profile-drawn-line", profile(false, 3),
        "profile-twelve-gates", profile(true, 12));
  }

  private static double[] along() {
    double[] along = new double[141];
    for (int i = 0; i < along.length; i++) {
      along[i] = 5 * i;
    }
    return along;
  }

  static TrailMap map(double bend, int chosen, int gates) {
    double[] along = along();
    double[] east = new double[along.length];
    double[] north = new double[along.length];
    for (int i = 1; i < along.length; i++) {
      double heading = bend * Math.sin(along[i] / 90);
      east[i] = east[i - 1] + 5 * Math.sin(heading);
      north[i] = north[i - 1] + 5 * Math.cos(heading);
    }
    List<TrailMap.Across> across = new ArrayList<>();
    for (int g = 0; g < gates; g++) {
      int i = 2 + g * 136 / Math.max(1, gates - 1);
      double dx = (east[Math.min(140, i + 1)] - east[i - 1]) / 10;
      double dy = (north[Math.min(140, i + 1)] - north[i - 1]) / 10;
      boolean outer = g == 0 || g == gates - 1;
      across.add(
          new TrailMap.Across(
              along[i],
              new double[] {
                east[i] - 12 * dy, north[i] + 12 * dx, east[i] + 12 * dy, north[i] - 12 * dx
              },
              name(g),
              g == 0 ? "start" : outer ? "finish" : "",
              outer));
    }
    return TrailMap.of(content(east, north, along, across, chosen));
  }

  private static TrailMap close() {
    double[] along = {0, 500};
    return TrailMap.of(
        content(
            new double[] {0, 500},
            new double[] {0, 0},
            along,
            List.of(
                new TrailMap.Across(
                    250, new double[] {250, 12, 250, -12}, "Gate post", "start", true),
                new TrailMap.Across(252, new double[] {252, 12, 252, -12}, "Ford", "finish", true)),
            -1));
  }

  private static TrailMap.Content content(
      double[] east, double[] north, double[] along, List<TrailMap.Across> across, int chosen) {
    return new TrailMap.Content(
        east,
        north,
        along,
        across,
        chosen,
        "N",
        metres -> Math.round(metres) + " m",
        new Spoken("A trail from above.", ""));
  }

  private static String name(int gate) {
    return gate < NAMES.length ? NAMES[gate] : "Split " + gate;
  }

  static AlongProfile profile(boolean recorded, int gates) {
    double[] along = along();
    double[] speed = new double[along.length];
    double[] height = new double[along.length];
    for (int i = 0; i < along.length; i++) {
      speed[i] = 20 + 9 * Math.sin(along[i] / 40);
      height[i] = 1240 - along[i] / 8;
    }
    List<AlongProfile.Mark> marks = new ArrayList<>();
    for (int g = 0; g < gates; g++) {
      marks.add(new AlongProfile.Mark(10 + g * 680.0 / Math.max(1, gates - 1), name(g), g == 1));
    }
    return AlongProfile.of(
        new AlongProfile.Content(
            along,
            recorded
                ? List.of(
                    new AlongProfile.Strip(speed, axis("speed in km/h"), true),
                    new AlongProfile.Strip(height, axis("height in m"), false))
                : List.of(),
            marks,
            METRES,
            new Spoken("Speed and height along 700 m.", "")));
  }

  private static Axis axis(String words) {
    return new Axis(words, Axis.Counting.DECIMAL, (value, step) -> Math.round(value) + "");
  }
}
