package blindlap.desk;

import blindlap.plan.Trail;
import blindlap.plan.TrailGate;
import blindlap.recording.Gate;
import blindlap.recording.GatesOnLine;
import blindlap.sample.InventedDay;
import blindlap.sample.InventedRecorder;
import blindlap.sample.InventedTrail;
import blindlap.seal.HelperSchedule;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The invented day with a recording, whose truth is known, and its files: the scouting lap and the
 * trail made of it, the day's recording and what was said of it. Fork N gains its time among the
 * stones alone. {@link SampleRecordingTest} writes the files.
 */
public final class JuniperChute {
  public static final String NAME = "forks-on-juniper-chute";

  /** The recorder's clock goes fast by that share. */
  static final double RATE = 0.00002;

  /** The lap on which the recorder lost its way, from 0: at the second gate. */
  static final int GAP = 5;

  /** The ride that is no lap, from 0: the helper tried the brake. */
  static final int EXTRA = 8;

  private static final int LAPS = 16;
  private static final Instant MORNING = Instant.parse("2026-09-19T07:30:00Z");

  /** Gates by metres along the trail. */
  private static final Map<String, Double> GATES = new LinkedHashMap<>();

  static {
    GATES.put("Stile", 60.0);
    GATES.put("Cairn", 190.0);
    GATES.put("Culvert", 340.0);
    GATES.put("Barn", 460.0);
  }

  private static final InventedTrail GROUND = new InventedTrail(23, 400);

  private final Trail trail = trail();
  private final double[] gates = onGround();
  private final InventedDay day;

  /**
   * @param order what was fitted on each stint
   */
  JuniperChute(HelperSchedule order) {
    int[] setups = new int[LAPS + 1];
    List<InventedDay.Stand> stands = new ArrayList<>();
    for (int ride = 0; ride <= LAPS; ride++) {
      int stint = ride < EXTRA ? ride + 1 : ride;
      setups[ride] = ride == EXTRA ? setups[ride - 1] : order.fit(stint).fitted();
      boolean swapped = ride > 0 && setups[ride] != setups[ride - 1];
      stands.add(new InventedDay.Stand(ride == EXTRA ? 150 : 340, swapped));
    }
    InventedDay.Rider rider = new InventedDay.Rider(0.02, 0.008, 0.03, 25, 10);
    List<InventedDay.Effect> stones = List.of(new InventedDay.Effect(210, 330, -0.1));
    day = new InventedDay(29, GROUND, setups, stones, rider, stands);
  }

  private static InventedDay scout() {
    InventedDay.Rider rider = new InventedDay.Rider(0, 0, 0, 25, 10);
    return new InventedDay(
        31, GROUND, new int[1], List.of(), rider, List.of(new InventedDay.Stand(40, false)));
  }

  /** The recording of one lap, some days before. */
  private static String scouting() {
    return InventedRecorder.PLAIN.record(scout(), 31, MORNING.minus(7, ChronoUnit.DAYS)).gpx();
  }

  /** The trail, made of the scouting lap. */
  static Trail trail() {
    InventedDay lap = scout();
    TrailDraft line =
        TrailBook.draft(
            "Juniper chute",
            TrailBook.recording(bytes(scouting())),
            Math.ceil(lap.passed(0, 0)),
            Math.floor(lap.passed(0, GROUND.line().length())));
    List<TrailDraft.Across> across = new ArrayList<>();
    GATES.forEach((name, along) -> across.add(new TrailDraft.Across(name, along, 24)));
    return line.with(across).trail();
  }

  private double[] onGround() {
    List<Gate> lines = trail.gates().stream().map(TrailDraft::gate).toList();
    List<Integer> directions = trail.gates().stream().map(TrailGate::direction).toList();
    return GatesOnLine.of(GROUND.line(), lines, directions).places().stream()
        .mapToDouble(GatesOnLine.Place::along)
        .toArray();
  }

  /** The truth: what a lap took from gate to gate, by the stint's number. */
  double[] seconds(int stint) {
    return day.pieces(stint <= EXTRA ? stint - 1 : stint, gates);
  }

  /** The truth: seconds by which Fork N takes longer than Fork M, from gate to gate. */
  double[] difference() {
    return day.difference(gates);
  }

  /**
   * The truth: seconds by which Fork N has taken longer down to a share of the way from start to
   * finish.
   */
  double difference(double share) {
    double start = gates[0];
    double finish = gates[gates.length - 1];
    return day.difference(new double[] {start, start + share * (finish - start)})[0];
  }

  private String recording() {
    List<InventedRecorder.Loss> silent = new ArrayList<>();
    double finished = 0;
    for (int ride = 0; ride < day.laps(); ride++) {
      // It stops by itself where the bike stands; when exactly is not known to the metre.
      double rolls = day.passed(ride, 0) - 20;
      silent.add(new InventedRecorder.Loss(ride == 0 ? 10 : finished + 90, rolls));
      finished = day.passed(ride, GROUND.line().length());
    }
    double cairn = day.passed(GAP, gates[1]);
    silent.add(new InventedRecorder.Loss(cairn - 4, cairn + 3));
    return InventedRecorder.PLAIN.clock(3612, RATE).losing(silent).record(day, 37, MORNING).gpx();
  }

  private String events() {
    List<String> entered = new ArrayList<>();
    for (int ride = 0; ride < day.laps(); ride++) {
      if (ride != EXTRA) {
        double second = day.passed(ride, gates[gates.length - 1]) + 20 + ride * 7 % 5 * 6;
        entered.add(MORNING.plusSeconds(Math.round(second)).toString());
      }
    }
    return """
    # When the rider entered each lap; what was said of two passes of the recording: the recorder had lost its way at
    # the Cairn on the sixth, and the ninth was the helper's, who tried the brake; and walkers on one lap.
    entered = %s
    settled = %d=keep %d=none
    void_sector = 13, Culvert, Barn, traffic, walkers at the barn
    """
        .formatted(String.join(" ", entered), GAP + 1, EXTRA + 1);
  }

  /** All files that are made, by name. */
  Map<String, byte[]> files() {
    return Map.of(
        "scouting.gpx", bytes(scouting()),
        "trail.geojson", TrailBook.geoJson(trail),
        "recording.gpx", bytes(recording()),
        "events.properties", bytes(events()));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
