package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.compute.FindingJson;
import blindlap.desk.Reviews;
import blindlap.desk.SampleDays;
import blindlap.fault.Unreadable;
import blindlap.plan.PlanJson;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.QuestionHistory;
import blindlap.review.RecordedTimes;
import blindlap.review.WhereDays;
import blindlap.review.WhereOnTrail;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Times on the way leave in two tables of the package and come back the same. */
class RecordedTablesTest {
  private static final String SECTORS =
      "stint,lap_in_stint,sector,from,to,seconds,uncertainty,void\n";
  private static final String PIECES = "stint,lap_in_stint,piece,from,to,seconds\n";
  private static final Map<String, byte[]> FILES = new HashMap<>();
  private static final List<DayRecord> DAY = new ArrayList<>();

  @BeforeAll
  static void export() {
    SampleDays.ride(
        "shocks-on-quarry-loop",
        (desk, state) -> {
          DayRecord sample = Reviews.day(state);
          DayRecord day =
              WhereDays.recorded(sample, WhereDays.gain(195, 420, 1), 0.05, new Random(2));
          day = WhereDays.with(day, 3, WhereDays.gap(day, 3, 5));
          day = WhereDays.with(day, 4, WhereDays.voided(day, 4, 1));
          DAY.add(day);
          FILES.putAll(
              DataPackage.open(
                  state,
                  day,
                  FindingJson.write(Analysis.of(day)),
                  Map.of(),
                  List.of(),
                  QuestionHistory.NONE));
          // A package holds the plan that was stored; this day was given its trail afterwards.
          FILES.put("plan.json", PlanJson.bytes(day.committedPlan()));
        });
  }

  @Test
  void theyComeBackAsTheyWere() {
    DayRecord read = DataPackageReader.read(FILES);
    assertThat(read.recorded()).isEqualTo(DAY.get(0).recorded());
    assertThat(FindingJson.write(Analysis.of(read)))
        .isEqualTo(text("finding.json").strip())
        .contains("\"where\"");
  }

  @Test
  void everyRowOfThePiecesHasItsBordersAndWhatWasNotRecordedIsEmpty() {
    String pieces = text("pieces.csv");
    assertThat(pieces).startsWith(PIECES);
    assertThat(pieces.lines().count()).isEqualTo(1 + 16L * WhereDays.pieces());
    assertThat(pieces).contains("\n3,1,6,150.0,180.0,\n");
  }

  /** A sector keeps its own masks; a stint with a piece missing or a void sector has no piece. */
  @Test
  void theUnitsAreThoseThatAreAnalysed() {
    WhereOnTrail where = Analysis.of(DAY.get(0)).where().orElseThrow();
    List<String> units = text("way.csv").lines().skip(1).toList();
    assertThat(units).hasSize(16 * (3 + WhereDays.pieces()));
    for (WhereOnTrail.OfSector sector : where.sectors().orElseThrow().each()) {
      for (int stint = 1; stint <= 16; stint++) {
        double value = sector.values()[stint - 1];
        assertThat(units)
            .contains(
                "sector,%d,%d,%s,line,true"
                    .formatted(sector.sector() + 1, stint, Double.isNaN(value) ? "" : value));
      }
    }
    assertThat(units).contains("piece,1,3,,line,true", "piece,23,4,,line,true");
  }

  @Test
  void aVoidSectorSaysSo() {
    assertThat(text("sectors.csv").lines().filter(line -> line.endsWith(",true")))
        .singleElement()
        .asString()
        .startsWith("4,1,2,");
  }

  @Test
  void aPackageWithoutRecordingsHasNoTables() {
    Map<String, byte[]> files = new HashMap<>(FILES);
    files.remove("sectors.csv");
    files.remove("pieces.csv");
    assertThat(DataPackageReader.read(files).recorded()).isEqualTo(RecordedTimes.NONE);
  }

  @Test
  void whatCannotBeMeantIsRefused() {
    refused("sectors.csv", SECTORS + "17,1,1,,,20,0.1,false\n", "stint 17");
    refused("sectors.csv", SECTORS + "1,9,1,,,20,0.1,false\n", "names lap 9");
    refused(
        "sectors.csv", SECTORS + "1,1,2,,,20,0.1,false\n", "\"2\" is not a number for \"sector\"");
    refused("sectors.csv", SECTORS + "1,1,1,,,-2,0.1,false\n", "\"-2\" is not a number");
    refused("sectors.csv", SECTORS + "1,1,1,,,20,0.1,perhaps\n", "true or false");
    refused("pieces.csv", PIECES + "1,1,1,30,0,4\n", "\"0\" is not a number for \"to\"");
    refused("pieces.csv", PIECES + "1,1,1,0,30,4\n2,1,1,0,40,4\n", "\"40\" is not a number");
    refused("pieces.csv", PIECES + "1,1,1000000000,0,30,4\n", "is not a number for \"piece\"");
  }

  private static void refused(String name, String table, String why) {
    Map<String, byte[]> files = new HashMap<>(FILES);
    files.put(name, table.getBytes(StandardCharsets.UTF_8));
    assertThatThrownBy(() -> DataPackageReader.read(files))
        .isInstanceOfSatisfying(
            Unreadable.class, e -> assertThat(Problems.sentence(e.problem())).contains(why));
  }

  private static String text(String name) {
    return new String(Objects.requireNonNull(FILES.get(name)), StandardCharsets.UTF_8);
  }
}
