package blindlap.session;

import blindlap.plan.Sector;
import blindlap.session.day.LapId;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** What recordings add to invented histories. */
final class RecordedHistories {
  /** Three gates. */
  static final String TRAIL =
      "{number: 1, sha256: "
          + "ab".repeat(32)
          + ", gates: ["
          + gate("Gate post", "11")
          + ", "
          + gate("Bridge", "11.002")
          + ", "
          + gate("Ford", "11.004")
          + "]}";

  private static final List<Sector> SECTORS =
      List.of(new Sector("Gate post", "Bridge"), new Sector("Bridge", "Ford"));

  private RecordedHistories() {}

  private static String gate(String name, String latitude) {
    String at = "{latitude: %s, longitude: %s}";
    return "{name: %s, first: %s, second: %s, direction: 1}"
        .formatted(name, at.formatted(latitude, "-38"), at.formatted(latitude, "-38.0001"));
  }

  /** A file, of which the same may come again, or a void of a sector, or its end. */
  static Fact any(Random random, LapId lap) {
    Sector sector = SECTORS.get(random.nextInt(2));
    return switch (random.nextInt(4)) {
      case 0 -> new SectorVoided(lap, sector, VoidEvent.TRAFFIC, "", random.nextBoolean());
      case 1 -> new SectorVoidWithdrawn(lap, sector, "another lap");
      default -> recording(random, lap);
    };
  }

  private static Fact recording(Random random, LapId lap) {
    String sha256 = String.valueOf(random.nextInt(3)).repeat(64);
    List<RecordedLap> laps = new ArrayList<>();
    for (int stint = lap.stint(); stint < lap.stint() + 1 + random.nextInt(3); stint++) {
      laps.add(
          new RecordedLap(
              new LapId(stint, 1),
              List.of(pass(0), pass(30 + random.nextInt(9)), pass(90 + random.nextInt(9))),
              List.of(),
              null,
              RecordedLap.Settled.FITS));
    }
    return new RecordingBroughtIn("ride.gpx", sha256, "ab".repeat(32), null, List.of(), laps);
  }

  private static RecordedPass pass(int seconds) {
    return new RecordedPass(BigDecimal.valueOf(seconds), new BigDecimal("0.2"), null);
  }
}
