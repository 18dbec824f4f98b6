package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Cells of docs/method.md#prototype-riders; the whole table is printed by {@link RidersTable}. */
class RidersTableTest {
  private static final int DAYS = 400;

  /** Three standard errors of both simulations: ours of 400 days, theirs of 2 000. */
  private static double error(double rate) {
    return 3 * Math.sqrt(rate * (1 - rate) * (1.0 / DAYS + 1.0 / 2000));
  }

  @Test
  void fiveRidersWhoDifferAreRejectedAsOftenAsInTheTable() {
    RidersTable.Cell cell = RidersTable.cell(5, 1, DAYS, 199, 1);
    assertThat(cell.stratified()).isCloseTo(0.181, within(error(0.181)));
    assertThat(cell.reml()).isCloseTo(0.111, within(error(0.111)));
    assertThat(cell.mean()).isCloseTo(0.041, within(error(0.041)));
    assertThat(cell.modified()).isLessThanOrEqualTo(0.05 + error(0.05));
    assertThat(cell.halfWidth()).isCloseTo(1.33, within(0.12));
  }

  @Test
  void threeRidersWhoDoNotDifferHoldTheLevelAndSeeLittle() {
    RidersTable.Cell cell = RidersTable.cell(3, 0, DAYS, 199, 2);
    assertThat(cell.stratified()).isCloseTo(0.052, within(error(0.052)));
    assertThat(cell.mean()).isCloseTo(0.043, within(error(0.043)));
    assertThat(cell.halfWidth()).isGreaterThan(1.0);
  }
}
