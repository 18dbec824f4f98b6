package blindlap.screen.trail;

import blindlap.desk.TrailShape;
import blindlap.plot.AlongProfile;
import blindlap.plot.Axis;
import blindlap.plot.TrailMap;
import blindlap.plot.surface.Spoken;
import blindlap.wording.TrailWords;
import blindlap.wording.day.Figures;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** The drawings of the Trail page. */
final class TrailDrawings {
  private static final double KMH = 3.6;

  private TrailDrawings() {}

  static TrailMap map(TrailSight sight) {
    TrailShape shape = sight.shape().orElseThrow();
    List<TrailMap.Across> gates = new ArrayList<>();
    int last = shape.marks().size() - 1;
    for (int i = 0; i <= last; i++) {
      TrailShape.Mark mark = shape.marks().get(i);
      gates.add(
          new TrailMap.Across(
              mark.along(),
              mark.ends(),
              mark.gate().name(),
              i == 0 || i == last ? TrailWords.role(i, last + 1) : "",
              i == 0 || i == last));
    }
    String name = sight.draft().orElseThrow().name();
    return TrailMap.of(
        new TrailMap.Content(
            numbers(shape, TrailShape.Spot::east),
            numbers(shape, TrailShape.Spot::north),
            numbers(shape, TrailShape.Spot::along),
            gates,
            sight.chosen(),
            TrailWords.say("page.north"),
            metres -> TrailWords.say("page.metres", TrailWords.metres(metres)),
            new Spoken(
                TrailWords.say(
                    "page.map.spoken",
                    name,
                    TrailWords.metres(Math.round(shape.length())),
                    gates.stream()
                        .map(
                            g ->
                                g.name()
                                    + " "
                                    + TrailWords.say("page.gate.at", TrailWords.metres(g.along())))
                        .collect(Collectors.joining(", "))),
                "")));
  }

  static AlongProfile profile(TrailSight sight) {
    TrailShape shape = sight.shape().orElseThrow();
    List<AlongProfile.Strip> strips = new ArrayList<>();
    double[] speeds = numbers(shape, spot -> KMH * shape.speedAt(spot.along()));
    if (java.util.Arrays.stream(speeds).anyMatch(Double::isFinite)) {
      strips.add(new AlongProfile.Strip(speeds, axis("page.speed"), true));
    }
    double[] heights = numbers(shape, TrailShape.Spot::height);
    if (java.util.Arrays.stream(heights).anyMatch(Double::isFinite)) {
      strips.add(new AlongProfile.Strip(heights, axis("page.height"), false));
    }
    List<AlongProfile.Mark> marks = new ArrayList<>();
    for (int i = 0; i < shape.marks().size(); i++) {
      TrailShape.Mark mark = shape.marks().get(i);
      marks.add(new AlongProfile.Mark(mark.along(), mark.gate().name(), i == sight.chosen()));
    }
    return AlongProfile.of(
        new AlongProfile.Content(
            numbers(shape, TrailShape.Spot::along),
            strips,
            marks,
            axis("page.along"),
            new Spoken(
                TrailWords.say(
                    "page.profile.spoken", TrailWords.metres(Math.round(shape.length()))),
                "")));
  }

  private static double[] numbers(TrailShape shape, ToDoubleFunction<TrailShape.Spot> of) {
    return shape.spots().stream().mapToDouble(of).toArray();
  }

  private static Axis axis(String words) {
    return new Axis(
        TrailWords.say(words),
        Axis.Counting.DECIMAL,
        (value, step) -> Figures.number(value, step < 1 ? 1 : 0));
  }
}
