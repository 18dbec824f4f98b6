package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Decimals;
import blindlap.plan.Measure;
import blindlap.session.PlainDay;
import blindlap.session.PlainDayPlaces;
import blindlap.session.PlainDayPreview;
import blindlap.session.PlainLap;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Drift;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PlainDayFileTest {
  private static final Optional<LocalDate> DAY = Optional.of(LocalDate.of(2025, 5, 10));

  private static PlainDayMapping mapping(
      String date, String stint, String lap, Decimals.Sign sign) {
    return new PlainDayMapping(
        List.of(
            new PlainDayMapping.Column(
                new Measure(
                    "lap time",
                    Measure.Kind.LAP_TIME,
                    "s",
                    "",
                    "",
                    Measure.Role.SECONDARY,
                    Measure.Better.LOWER,
                    null,
                    Drift.LINE,
                    Scale.RAW),
                "t",
                PlainDayMapping.TimeUnit.SECONDS)),
        new PlainDayPlaces(date, stint, lap, "on", "", sign));
  }

  private static PlainDayMapping mapping(String date, String stint, String lap) {
    return mapping(date, stint, lap, Decimals.Sign.AS_WRITTEN);
  }

  private static PlainDayReading read(String csv, PlainDayMapping mapping) {
    return PlainDayFile.read(csv.getBytes(StandardCharsets.UTF_8), mapping, DAY);
  }

  private static List<String> said(PlainDay day) {
    return Problems.sentences(day.problems());
  }

  @Test
  void aColumnWithTheDatePartsTheFileIntoDays() {
    PlainDayReading reading =
        read(
            "d;t;on\n2025-05-10;95;K\n24.10.2025;93;K\n2025-05-10;94;L\n24.10.2025;fast;K\n",
            mapping("d", "", ""));
    assertThat(reading.problems()).isEmpty();
    assertThat(reading.days())
        .extracting(PlainDay::day)
        .containsExactly(LocalDate.of(2025, 5, 10), LocalDate.of(2025, 10, 24));
    assertThat(reading.days().get(0).lines()).containsExactly(2, 4);
    assertThat(reading.days().get(0).laps()).extracting(PlainLap::setup).containsExactly("K", "L");
    // Only the day with the mistake is refused.
    assertThat(reading.days().get(1).laps()).isEmpty();
    assertThat(said(reading.days().get(1))).singleElement().asString().contains("Line 5");
  }

  @Test
  void aDateThatCouldBeReadTwoWaysIsNotTaken() {
    PlainDayReading reading = read("d;t;on\n4/5/2025;95;K\n31.4.2025;95;K\n", mapping("d", "", ""));
    assertThat(reading.days()).isEmpty();
    assertThat(Problems.sentences(reading.problems()))
        .hasSize(2)
        .allSatisfy(s -> assertThat(s).contains("is not a date", "2025-10-24"));
  }

  @Test
  void lapsByNumberAreOrderedAndAMissingOneLeavesItsPlace() {
    PlainDay day =
        read("n;t;on\n13;95;K\n11;93;K\n12;94;K\n15;96;K\n", mapping("", "", "n")).days().get(0);
    assertThat(day.laps()).extracting(PlainLap::position).containsExactly(1, 2, 3, 5);
    assertThat(day.laps())
        .extracting(lap -> lap.values().get("lap time").intValue())
        .containsExactly(93, 94, 95, 96);
    assertThat(day.lines()).containsExactly(3, 4, 2, 5);
  }

  @Test
  void aLapTwiceALapWithoutNumberAndLapsOfAnotherDayAreNamedByLine() {
    assertThat(said(read("n;t;on\n1;95;K\n1;93;K\n", mapping("", "", "n")).days().get(0)))
        .singleElement()
        .asString()
        .contains("Line 3", "Lap 1 stands twice", "line 2");
    assertThat(said(read("n;t;on\n1;95;K\nx;93;K\n", mapping("", "", "n")).days().get(0)))
        .singleElement()
        .asString()
        .contains("Line 3, column 1", "\"x\" is not the number of a lap");
    assertThat(said(read("n;t;on\n1;95;K\n900;93;K\n", mapping("", "", "n")).days().get(0)))
        .singleElement()
        .asString()
        .contains("Line 3", "more than 400 laps");
  }

  @Test
  void stintsHoldTheSameNumberOfLapsOnOneSetup() {
    PlainDay day =
        read("s;t;on\na;95;K\na;93;K\nb;94;L\nb;96;L\n", mapping("", "s", "")).days().get(0);
    assertThat(day.lapsPerStint()).isEqualTo(2);
    assertThat(day.laps()).extracting(PlainLap::position).containsExactly(1, 2, 3, 4);
    assertThat(said(read("s;t;on\na;95;K\na;93;K\nb;94;L\n", mapping("", "s", "")).days().get(0)))
        .singleElement()
        .asString()
        .contains("Line 4", "Stint \"b\" has 1 lap, the first stint 2");
    assertThat(
            said(
                read("s;t;on\na;95;K\na;93;L\nb;94;L\nb;9;L\n", mapping("", "s", ""))
                    .days()
                    .get(0)))
        .singleElement()
        .asString()
        .contains("Line 3", "is on \"L\" here but on \"K\" before");
    assertThat(
            said(
                read("s;t;on\na;95;K\nb;93;K\na;94;K\nb;9;K\n", mapping("", "s", ""))
                    .days()
                    .get(0)))
        .anySatisfy(s -> assertThat(s).contains("Line 4", "goes on here after another one"));
  }

  @Test
  void aChosenDecimalSignIsTheOnlyOneTakenAlsoWhereCommasPartColumns() {
    PlainDayMapping comma = mapping("", "", "", Decimals.Sign.COMMA);
    assertThat(read("t,on\n\"95,5\",K\n\"94,5\",K\n", comma).days().get(0).laps().get(0).values())
        .hasEntrySatisfying("lap time", t -> assertThat(t).isEqualByComparingTo("95.5"));
    assertThat(said(read("t;on\n95.5;K\n94,5;K\n", comma).days().get(0)))
        .singleElement()
        .asString()
        .contains("Line 2", "does not have the decimal sign that was chosen");
  }

  @Test
  void columnsThatSpeakForThemselvesAreSuggested() {
    PlainDayPreview.Guess guess =
        PlainDayFile.preview(
                "When;Lap;Setup;;Time\n2025-05-10;1;K;hot;95,1\n2025-05-10;2;L;;1:34,9\n"
                    .getBytes(StandardCharsets.UTF_8),
                5)
            .guess();
    assertThat(guess).isEqualTo(new PlainDayPreview.Guess("When", "", "Lap", "Setup", "", "Time"));
    assertThat(PlainDayFile.preview("a;;b\n1;2;3\n".getBytes(StandardCharsets.UTF_8), 5).header())
        .containsExactly("a", "column 2", "b");
  }

  @Test
  void aColumnNamedTwiceIsNotGuessedAt() {
    PlainDayReading reading = read("t;t;on\n95;96;K\n", mapping("", "", ""));
    assertThat(reading.days()).isEmpty();
    assertThat(Problems.sentences(reading.problems()))
        .singleElement()
        .asString()
        .contains("\"t\" stands twice");
  }
}
