package blindlap.stats.pool;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.LeastSquares;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Several days together beside one large regression. */
class FieldTest {
  private static final List<String> NAMES = List.of("K", "L", "M");

  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(24L);

  private FieldDay day(String first, String second, String order, Drift drift) {
    double[] values = random.doubles(order.length(), 90, 95).toArray();
    boolean[] valid = new boolean[order.length()];
    Arrays.fill(valid, true);
    return new FieldDay(List.of(first, second), Orders.parse(order), values, valid, drift);
  }

  private List<FieldDay> ring() {
    List<FieldDay> days = new ArrayList<>();
    days.add(day("K", "L", "ABBABAABAB", Drift.LINE));
    days.add(day("M", "L", "ABABBABA", Drift.CURVE));
    FieldDay last = day("M", "K", "BAABABBAAB", Drift.LINE);
    last.values()[3] = Double.NaN;
    last.valid()[6] = false;
    days.add(last);
    return days;
  }

  /**
   * Stints of all days one under another: one column a day and power, one a setup but the first.
   */
  private static LeastSquares regression(List<FieldDay> days, boolean perDay) {
    List<double[]> rows = new ArrayList<>();
    List<Double> response = new ArrayList<>();
    int nuisance = days.stream().mapToInt(day -> day.nuisance().drift().columns()).sum();
    int setups = perDay ? days.size() : NAMES.size() - 1;
    int offset = 0;
    for (int d = 0; d < days.size(); d++) {
      FieldDay day = days.get(d);
      for (int i = 0; i < day.order().length; i++) {
        if (!day.valid()[i] || Double.isNaN(day.values()[i])) {
          continue;
        }
        double[] row = new double[nuisance + setups];
        for (int power = 0; power < day.nuisance().drift().columns(); power++) {
          row[offset + power] = Math.pow(i / 10.0, power);
        }
        int named = NAMES.indexOf(day.setups().get(day.order()[i]));
        if (perDay) {
          row[nuisance + d] = day.order()[i];
        } else if (named > 0) {
          row[nuisance + named - 1] = 1;
        }
        rows.add(row);
        response.add(day.values()[i]);
      }
      offset += day.nuisance().drift().columns();
    }
    List<double[]> columns = new ArrayList<>();
    for (int k = 0; k < nuisance + setups; k++) {
      int column = k;
      columns.add(rows.stream().mapToDouble(row -> row[column]).toArray());
    }
    return LeastSquares.of(columns, response.stream().mapToDouble(Double::doubleValue).toArray());
  }

  @Test
  void pairsAndNoiseAreThoseOfOneRegressionOverAllDays() {
    List<FieldDay> days = ring();
    Field found = Field.of(days);
    LeastSquares one = regression(days, false);
    int stints = 10 + 8 + 8;
    assertThat(found.df()).isEqualTo(stints - 7 - 2);
    assertThat(found.residualSd()).isCloseTo(Math.sqrt(one.rss() / found.df()), within(1e-9));
    double l = one.beta()[7];
    double m = one.beta()[8];
    assertThat(found.pairs()).extracting(Field.Pair::days).containsExactly(1, 1, 1);
    assertThat(found.pairs().get(0).estimate()).isCloseTo(l, within(1e-9));
    assertThat(found.pairs().get(1).estimate()).isCloseTo(m, within(1e-9));
    assertThat(found.pairs().get(2).estimate()).isCloseTo(m - l, within(1e-9));
    assertThat(found.interval95(found.pairs().get(0)).orElseThrow().low()).isLessThan(l);
  }

  @Test
  void agreementIsTheFOfADifferenceOfItsOwnForEveryDay() {
    List<FieldDay> days = ring();
    Field.AgreementOfDays agreement = Field.of(days).agreement().orElseThrow();
    double together = regression(days, false).rss();
    double apart = regression(days, true).rss();
    assertThat(agreement.df1()).isEqualTo(1);
    assertThat(agreement.df2()).isEqualTo(26 - 7 - 3);
    assertThat(agreement.f()).isCloseTo((together - apart) / (apart / 16), within(1e-8));
  }

  @Test
  void aStarHasNothingToAgreeOn() {
    List<FieldDay> star =
        List.of(day("K", "L", "ABBABAABAB", Drift.LINE), day("K", "M", "ABABBABAAB", Drift.LINE));
    assertThat(Field.of(star).agreement()).isEmpty();
    assertThat(Field.of(star).pairs().get(2).days()).isZero();
    assertThat(Field.of(star).pairs().get(2).known()).isTrue();
  }

  @Test
  void aPairThatNoDaysConnectIsNotKnown() {
    List<FieldDay> apart =
        List.of(day("K", "L", "ABBABAABAB", Drift.LINE), day("M", "N", "ABABBABAAB", Drift.LINE));
    Field found = Field.of(apart);
    assertThat(found.pairs()).hasSize(6);
    assertThat(found.pairs())
        .filteredOn(Field.Pair::known)
        .extracting(pair -> pair.first() + pair.second())
        .containsExactly("KL", "MN");
    Field.Pair unknown = found.pairs().get(1);
    assertThat(unknown.estimate()).isNaN();
    assertThat(found.interval95(unknown)).isEmpty();
  }

  @Test
  void aConstantOnOneDayAndALineOnAnotherChangeNothing() {
    List<FieldDay> days = ring();
    Field before = Field.of(days);
    for (int i = 0; i < 10; i++) {
      days.get(0).values()[i] += 1000;
      days.get(2).values()[i] -= 3 * i;
    }
    Field after = Field.of(days);
    assertThat(after.residualSd()).isCloseTo(before.residualSd(), within(1e-7));
    assertThat(after.pairs().get(2).estimate())
        .isCloseTo(before.pairs().get(2).estimate(), within(1e-7));
  }

  @Test
  void daysThatCannotBeFittedAreRefused() {
    refused("days", () -> Field.of(List.of()));
    refused("days", () -> Field.of(List.of(day("K", "L", "ABA", Drift.CURVE))));
    refused("days[0].order", () -> Field.of(List.of(day("K", "L", "ABCABC", Drift.LINE))));
  }

  /** With a covariate: one column more of that day, by the same regression. */
  @Test
  void aCovariateIsTakenOutOfItsDayAlone() {
    List<FieldDay> days = ring();
    double[] wind = random.doubles(8, 0, 5).toArray();
    wind[2] = Double.NaN;
    FieldDay windy = days.get(1);
    Nuisance nuisance = Nuisance.of(windy.nuisance().drift(), List.of(wind));
    List<FieldDay> with = new ArrayList<>(days);
    with.set(
        1, new FieldDay(windy.setups(), windy.order(), windy.values(), windy.valid(), nuisance));
    Field before = Field.of(with);
    for (int i = 0; i < 8; i++) {
      windy.values()[i] += Double.isNaN(wind[i]) ? 50 : 3 * wind[i];
    }
    Field after = Field.of(with);
    assertThat(before.df()).isEqualTo(26 - 7 - 2 - 2);
    assertThat(after.residualSd()).isCloseTo(before.residualSd(), within(1e-9));
    assertThat(after.pairs().get(0).estimate())
        .isCloseTo(before.pairs().get(0).estimate(), within(1e-9));
    refused(
        "days[0].covariates[0]",
        () ->
            Field.of(
                List.of(
                    new FieldDay(
                        windy.setups(),
                        windy.order(),
                        windy.values(),
                        windy.valid(),
                        Nuisance.of(Drift.LINE, List.of(new double[] {1, 2}))))));
  }

  /** A day that is added in an order balanced against the line does what the formula says. */
  @Test
  void whatOneMoreDayNarrowsIsWhatABalancedDayDoes() {
    List<FieldDay> star = new ArrayList<>();
    star.add(day("K", "L", "ABBABAABAB", Drift.LINE));
    star.add(day("K", "M", "ABABBABAAB", Drift.LINE));
    Field now = Field.of(star);
    List<Field.NextDay> next = now.next(8, Drift.LINE.columns());
    assertThat(next).extracting(n -> n.first() + n.second()).containsExactly("KL", "KM", "LM");
    for (Field.NextDay each : next) {
      List<FieldDay> more = new ArrayList<>(star);
      more.add(day(each.first(), each.second(), "ABBAABBA", Drift.LINE));
      assertThat(widest(Field.of(more)) * now.residualSd() / Field.of(more).residualSd())
          .isCloseTo(each.widest(), within(1e-9));
      assertThat(each.widest()).isLessThan(now.widest());
    }
    assertThat(now.widest()).isCloseTo(widest(now), within(1e-9));
    assertThat(next.get(2).widest()).isLessThan(next.get(0).widest());
    refused("stints", () -> now.next(2, 2));
  }

  private static double widest(Field field) {
    return field.pairs().stream()
        .mapToDouble(pair -> field.interval95(pair).orElseThrow().halfWidth())
        .max()
        .orElseThrow();
  }

  @Test
  void onlyADayThatConnectsThePiecesLeavesNoPairUnknown() {
    Field apart =
        Field.of(
            List.of(
                day("K", "L", "ABBABAABAB", Drift.LINE), day("M", "N", "ABABBABAAB", Drift.LINE)));
    assertThat(apart.widest()).isInfinite();
    assertThat(apart.next(16, 2))
        .filteredOn(next -> Double.isFinite(next.widest()))
        .extracting(next -> next.first() + next.second())
        .containsExactly("KM", "KN", "LM", "LN");
  }
}
