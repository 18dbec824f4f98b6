package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Two rows of docs/pooling.md with other days; the whole is written by {@link RidersTable}. */
class RidersTableTest {
  private static final int DAYS = 400;

  /** Three standard errors of both simulations: 400 days here, 2 000 on the page. */
  private static double error(double rate) {
    return 3 * Math.sqrt(rate * (1 - rate) * (1.0 / DAYS + 1.0 / 2000));
  }

  @Test
  void fiveRidersWhoDifferAreRejectedAsOftenAsInTheTable() {
    RidersTable.Cell cell = RidersTable.cell(5, 1, DAYS, 199, 1);
    assertThat(cell.stratified()).isCloseTo(0.203, within(error(0.203)));
    assertThat(cell.reml()).isCloseTo(0.125, within(error(0.125)));
    assertThat(cell.mean()).isCloseTo(0.047, within(error(0.047)));
    assertThat(cell.modified()).isLessThanOrEqualTo(0.05 + error(0.05));
    assertThat(cell.halfWidth()).isCloseTo(1.29, within(0.12));
  }

  @Test
  void threeRidersWhoDoNotDifferHoldTheLevelAndSeeLittle() {
    RidersTable.Cell cell = RidersTable.cell(3, 0, DAYS, 199, 2);
    assertThat(cell.stratified()).isCloseTo(0.043, within(error(0.043)));
    assertThat(cell.mean()).isCloseTo(0.035, within(error(0.035)));
    assertThat(cell.halfWidth()).isGreaterThan(1.0);
  }
}
