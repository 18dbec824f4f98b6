package blindlap.desk;

import blindlap.plan.Sector;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.Outcome;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.SectorVoided;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Days of tests whose times a recording gives: of the lap, and of its half down to the bridge. */
public final class RecordedDay {
  private static final String GATE =
      "{name: %s, first: {latitude: %s, longitude: 8.1}, second: {latitude: %s, longitude: 8.2}}";

  /** Three gates: Top, Bridge, Barn. */
  public static final String TRAIL =
      "{number: 2, gates: [%s, %s, %s], sha256: %s}"
          .formatted(
              GATE.formatted("Top", "47", "47"),
              GATE.formatted("Bridge", "47.1", "47.1"),
              GATE.formatted("Barn", "47.2", "47.2"),
              "0123456789abcdef".repeat(4));

  /** Sixteen stints: the lap timed by a recording, the upper half by a watch as well. */
  public static final String PLAN = plan("recording", "recording and watch");

  private RecordedDay() {}

  /** The same where other things time the lap and its upper half. */
  public static String plan(String lap, String half) {
    return TestDay.SIXTEEN
        .replaceAll(" *- \\{name: (lap time|grip|harshness|trust|feet)[^\n]*\n", "")
        .replace("trail: Quarry loop", "trail: Quarry loop\ntrail_version: " + TRAIL)
        .replace(
            "measures:\n",
            """
            measures:
              - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5, timed_by: %s}
              - {name: upper half, kind: sector time, unit: s, timed_by: %s%s}
            """
                .formatted(
                    lap, half, half.equals("watch") ? "" : ", from_gate: Top, to_gate: Bridge"));
  }

  /** A pass so many seconds after the start. */
  public static RecordedPass pass(double seconds, String uncertainty) {
    return new RecordedPass(
        BigDecimal.valueOf(seconds).setScale(3), new BigDecimal(uncertainty), null);
  }

  /** Seconds to the bridge and to the barn of a stint's lap. */
  public static double[] seconds(int stint) {
    double lap = 90 + (stint * 7 % 5) / 4.0;
    return new double[] {lap / 2, lap};
  }

  /**
   * A recording of the first laps, of the morning or also of the afternoon; one lacks the bridge.
   */
  public static RecordingBroughtIn recording(int stints, int missing) {
    List<RecordedLap> laps = new ArrayList<>();
    for (int stint = 1; stint <= stints; stint++) {
      double[] seconds = seconds(stint);
      laps.add(
          new RecordedLap(
              new LapId(stint, 1),
              List.of(
                  pass(0, "0.3"),
                  stint == missing
                      ? new RecordedPass(null, null, RecordedPass.Doubt.GAP)
                      : pass(seconds[0], "0.4"),
                  pass(seconds[1], "0.4")),
              List.of(),
              null,
              stint == missing ? RecordedLap.Settled.KEPT : RecordedLap.Settled.FITS));
    }
    return new RecordingBroughtIn(
        stints > 8 ? "afternoon.gpx" : "morning.gpx",
        (stints > 8 ? "ab" : "cd").repeat(32),
        "0123456789abcdef".repeat(4),
        new BigDecimal("-3601.5"),
        List.of(),
        laps);
  }

  /** Writes a fact as it is. */
  public static void put(TestDay day, Fact fact) {
    day.desk().sessions().act(day.id(), latest -> Outcome.accepted(fact));
  }

  /** Rides every stint; what there is a value for is typed. */
  public static void ride(TestDay day, Typed typed) {
    HelperHand hand = new HelperHand(day);
    hand.handle(0);
    for (int stint = 1; stint <= day.state().plan().stints(); stint++) {
      hand.handle(stint);
      Map<String, BigDecimal> values = new TreeMap<>();
      for (String measure : List.of("lap time", "upper half")) {
        BigDecimal value = typed.value(stint, measure);
        if (value != null) {
          values.put(measure, value);
        }
      }
      LapInput lap = LapInput.of(new LapId(stint, 1), values);
      HelperHand.done(
          day.desk()
              .sessions()
              .act(day.id(), now -> new DayCommands(now).record(List.of(lap), Source.SCREEN)));
    }
  }

  /** What somebody types. */
  public interface Typed {
    @Nullable BigDecimal value(int stint, String measure);
  }

  /** The watch's times of the upper half: a quarter of a second longer than recorded. */
  public static @Nullable BigDecimal watched(int stint, String measure) {
    return measure.equals("upper half")
        ? BigDecimal.valueOf(seconds(stint)[0] + 0.25 + stint % 3 / 10.0)
        : null;
  }

  /** Ridden, brought in, stint 5 without the bridge, and walkers between bridge and barn on 9. */
  public static void bringIn(TestDay day) {
    put(day, recording(16, 5));
    put(
        day,
        new SectorVoided(
            new LapId(9, 1), new Sector("Bridge", "Barn"), VoidEvent.TRAFFIC, "walkers", false));
  }
}
