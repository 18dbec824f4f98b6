package blindlap.exchange;

import blindlap.exchange.PackageTables.Column;
import blindlap.plan.Plan;
import blindlap.plan.TrailVersion;
import blindlap.session.Recorded;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Recordings as two tables of a data package: which were brought in, and when a lap went through
 * the gates. They know nothing of the time of day and of what was between laps.
 */
final class PassTables {
  private static final List<Column> RECORDINGS =
      List.of(
          Column.of("recording", "integer", "number in the order of bringing in, from 1"),
          Column.of("file", "string", "name of the file that was brought in"),
          Column.of("sha256", "string", "SHA-256 of that file"),
          Column.of("trail", "string", "SHA-256 of the trail version whose gates were used"),
          new Column(
              "offset",
              "number",
              "s",
              "by which the day's clock was ahead of the recorder's, as found; empty if none told"),
          Column.of("laps", "integer", "number of laps found in it"));

  private static final List<Column> PASSES =
      List.of(
          Column.of("lap", "integer", "number over the day, settling laps included"),
          Column.of("stint", "integer", "stint, from 1"),
          Column.of("lap_in_stint", "integer", "lap within the stint, from 1"),
          Column.of("recording", "integer", "the recording that counts for the lap"),
          Column.of("gate", "integer", "gate in the order of riding, from 1"),
          Column.of("name", "string", "name of the gate; empty if the plan names no trail"),
          new Column(
              "seconds", "number", "s", "after the start gate; empty where the pass is missing"),
          new Column(
              "uncertainty", "number", "s", "standard deviation of the pass, of the recorder"),
          Column.of("doubtful", "string", "gap or slow, where the pass needed a person"),
          Column.of("settled", "string", "fits; kept or chosen by a person"));

  private PassTables() {}

  /** Nothing where nothing was brought in. */
  static void write(PackageTables tables, Plan plan, Recorded recorded) {
    if (recorded.files().isEmpty()) {
      return;
    }
    List<List<String>> files = new ArrayList<>();
    Map<LapId, Integer> counts = new TreeMap<>();
    for (RecordingBroughtIn file : recorded.files()) {
      int number = files.size() + 1;
      files.add(
          List.of(
              String.valueOf(number),
              file.file(),
              file.sha256(),
              file.trail(),
              text(file.offset()),
              String.valueOf(file.laps().size())));
      file.laps().forEach(lap -> counts.put(lap.lap(), number));
    }
    List<List<String>> passes = new ArrayList<>();
    recorded
        .laps()
        .forEach((id, lap) -> passes(passes, plan, lap, counts.getOrDefault(id, files.size())));
    tables.table("recordings", RECORDINGS, files);
    tables.table("passes", PASSES, passes);
  }

  private static void passes(List<List<String>> rows, Plan plan, RecordedLap lap, int recording) {
    TrailVersion trail = plan.trailVersion();
    LapId id = lap.lap();
    for (int gate = 0; gate < lap.passes().size(); gate++) {
      RecordedPass pass = lap.passes().get(gate);
      RecordedPass.Doubt doubt = pass.doubtful();
      rows.add(
          List.of(
              String.valueOf(id.ofDay(plan.laps().perStint())),
              String.valueOf(id.stint()),
              String.valueOf(id.lap()),
              String.valueOf(recording),
              String.valueOf(gate + 1),
              trail == null || gate >= trail.gates().size() ? "" : trail.gates().get(gate).name(),
              text(pass.seconds()),
              text(pass.uncertainty()),
              doubt == null ? "" : doubt.name().toLowerCase(Locale.ROOT),
              lap.settled().name().toLowerCase(Locale.ROOT)));
    }
  }

  private static String text(@Nullable BigDecimal number) {
    return number == null ? "" : number.toPlainString();
  }
}
