package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.day.LapTable;
import blindlap.exchange.CsvText;
import blindlap.exchange.HelperFits;
import blindlap.exchange.LapsFile;
import blindlap.exchange.PlanReader;
import blindlap.exchange.Protocols;
import blindlap.fault.CanonicalJson;
import blindlap.fault.Decimals;
import blindlap.fault.TypedNumber;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.review.HelperFit;
import blindlap.screen.plan.WorkshopModel;
import blindlap.session.PlainDayPlaces;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is typed, every door into Blindlap reads the same number or none. */
class TypedNumbersEverywhereTest {
  private static final Protocols PROTOCOLS = BundledProtocols.load();
  private static final String[] SIGNS = {"", "", "", "-", "+", "−", "–", "--", "- "};
  private static final String[] MARKS = {".", ",", ".", ",", ":", "..", ",.", " ", "e", "\u202f"};
  private static final String[] BLANKS = {"", "", "", " ", "\u00a0", "\u2009", "x"};

  private @TempDir(factory = RamFolder.class) Path folder;
  private final Random random = new Random(20_261_118);
  private TestDay day;
  private Plan plan;

  @BeforeEach
  void open() {
    day = new TestDay(folder, TestDay.EIGHT, 4);
    plan = day.state().plan();
  }

  @AfterEach
  void close() {
    day.close();
  }

  private String digits() {
    int many = random.nextInt(8) == 0 ? random.nextInt(18) : 1 + random.nextInt(2);
    StringBuilder digits = new StringBuilder();
    for (int i = 0; i < many; i++) {
      digits.append(random.nextInt(10));
    }
    return digits.toString();
  }

  private <T> T any(T[] of) {
    return of[random.nextInt(of.length)];
  }

  /** Something that might be a number; never empty, and never the dash that stands for nothing. */
  private String typed() {
    StringBuilder text = new StringBuilder(any(BLANKS)).append(any(SIGNS)).append(digits());
    for (int i = random.nextInt(3); i > 0; i--) {
      text.append(any(MARKS)).append(digits());
    }
    String typed = text.append(any(BLANKS)).toString();
    return TypedNumber.time(typed).isEmpty() && !typed.matches(".*\\d.*") ? typed() : typed;
  }

  private String clock() {
    String minutes = String.valueOf(random.nextInt(100));
    String part = random.nextBoolean() ? any(MARKS) + digits() : "";
    return any(BLANKS) + minutes + ":" + (5 + random.nextInt(65)) + part + any(BLANKS);
  }

  private @Nullable BigDecimal lap(String measure, byte[] csv) {
    LapsFile.Reading reading = LapsFile.read(csv, plan, day.state().codes());
    assertThat(reading.laps().isEmpty()).isNotEqualTo(reading.problems().isEmpty());
    return reading.laps().isEmpty() ? null : reading.laps().get(0).values().get(measure);
  }

  private static byte[] table(String measure, String typed) {
    return CsvText.write(';', List.of("lap", measure), List.of(List.of("1", typed)))
        .getBytes(StandardCharsets.UTF_8);
  }

  private @Nullable BigDecimal keyedIn(String measure, String typed) {
    LapTable empty = LapTable.empty(day.state().day());
    List<List<String>> rows = new ArrayList<>(empty.rows());
    List<String> row = new ArrayList<>(rows.get(0));
    row.set(empty.columns().indexOf(measure), typed);
    rows.set(0, row);
    return lap(measure, day.desk().keyingIn().csv(new LapTable(empty.columns(), rows)));
  }

  private Optional<BigDecimal> oldDay(Measure.Kind kind, String typed) {
    String csv = CsvText.write(';', List.of("n", "t"), List.of(List.of("1", typed)));
    PlainDays.Reading reading =
        day.desk()
            .plainDays()
            .read(
                new PlainDays.Origin("f", "A. Kern", "B", Optional.of(LocalDate.of(2025, 5, 1))),
                csv.getBytes(StandardCharsets.UTF_8),
                new PlainDays.Mapping(
                    List.of(new PlainDays.Wanted("m", "t", kind, kind.timed() ? "s" : "points")),
                    new PlainDayPlaces("", "", "n", "", "", Decimals.Sign.AS_WRITTEN)));
    return reading.days().get(0).laps().stream()
        .map(lap -> Objects.requireNonNull(lap.values().get("m")).stripTrailingZeros())
        .findFirst();
  }

  private @Nullable BigDecimal planned(String typed) {
    Map<String, Object> setting = Map.of("name", "s", "value", "3", "tolerance", typed);
    String json = CanonicalJson.text(Map.of("bike", List.of(setting)));
    Plan read = Objects.requireNonNull(PlanReader.read(json, PROTOCOLS).plan());
    return read.bike().get(0).tolerance();
  }

  private static String workshop(String typed) {
    WorkshopModel.Line line =
        new WorkshopModel().lines().get(WorkshopModel.Kind.RATE_TO_METRIC.ordinal());
    line.inputs().get(0).set(typed);
    return line.resultProperty().get();
  }

  @Test
  void aNumberIsTheSameAtEveryDoor() {
    int numbers = 0;
    for (int i = 0; i < 1_500; i++) {
      String typed = typed();
      BigDecimal number = TypedNumber.number(typed).orElse(null);
      numbers += number == null ? 0 : 1;
      Setting aim = new Setting("s", "0", "", BigDecimal.ZERO, Setting.Check.EACH_STINT, false);
      HelperFit fit =
          HelperFits.read(
                  Map.of(1, CanonicalJson.text(Map.of("measured", Map.of("s", typed)))), plan)
              .get(1);

      assertThat(new Setting("s", typed, "", null, aim.check(), false).number())
          .as(typed)
          .isEqualTo(number);
      assertThat(Tolerance.readable(aim, typed)).as(typed).isEqualTo(number != null);
      assertThat(Tolerance.outside(aim, typed).map(out -> out.by()))
          .as(typed)
          .isEqualTo(Optional.ofNullable(number).filter(value -> value.signum() != 0));
      assertThat(Objects.requireNonNull(fit).measured().get("s")).as(typed).isEqualTo(number);
      assertThat(fit.words().containsKey("s")).as(typed).isEqualTo(number == null);
      assertThat(lap("trust", table("trust", typed))).as(typed).isEqualTo(number);
      assertThat(keyedIn("trust", typed)).as(typed).isEqualTo(number);
      assertThat(planned(typed)).as(typed).isEqualTo(number);
      assertThat(workshop(typed).contains("\"")).as(typed).isEqualTo(number == null);
      if (number != null) {
        assertThat(workshop(typed)).as(typed).isEqualTo(workshop(number.toPlainString()));
      }
      assertThat(oldDay(Measure.Kind.LINE_SCALE, typed))
          .as(typed)
          .isEqualTo(
              Optional.ofNullable(number)
                  .filter(Measure.Kind.LINE_SCALE::admits)
                  .map(BigDecimal::stripTrailingZeros));
    }
    assertThat(numbers).isBetween(400, 1_100);
  }

  @Test
  void aTimeIsTheSameAtEveryDoor() {
    int times = 0;
    for (int i = 0; i < 1_500; i++) {
      String typed = random.nextBoolean() ? clock() : typed();
      Optional<BigDecimal> time = TypedNumber.time(typed);
      times += time.isPresent() && typed.contains(":") ? 1 : 0;

      assertThat(Optional.ofNullable(RideWords.seconds(typed)))
          .as(typed)
          .isEqualTo(time.filter(seconds -> seconds.signum() > 0));
      assertThat(lap("lap time", table("lap time", typed))).as(typed).isEqualTo(time.orElse(null));
      assertThat(keyedIn("lap time", typed)).as(typed).isEqualTo(time.orElse(null));
      assertThat(oldDay(Measure.Kind.LAP_TIME, typed))
          .as(typed)
          .isEqualTo(
              time.filter(Measure.Kind.LAP_TIME::admits).map(BigDecimal::stripTrailingZeros));
    }
    assertThat(times).isGreaterThan(100);
  }

  @Test
  void aCorrectionIsReadAsTheFirstTypingWas() {
    LapFiles files = new LapFiles(day.desk().sessions());
    files.record(day.state(), table("lap time", "1:33,1"));
    Sessions.Result done = files.correct(day.state(), " 1 ", "lap time", "1:34,2", "misread");
    assertThat(done).isInstanceOf(Sessions.Result.Done.class);
    assertThat(day.state().laps().iterator().next().values().get("lap time"))
        .isEqualByComparingTo("94.2");
    assertThat(files.correct(day.state(), "1", "lap time", "1:34;2", "misread"))
        .isInstanceOf(Sessions.Result.Refused.class);
  }
}
