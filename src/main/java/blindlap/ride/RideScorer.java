package blindlap.ride;

import blindlap.desk.day.RiderDays;
import blindlap.session.day.LapId;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.util.TreeMap;

/** Who scores the laps: whether that person knows the key is said with every score. */
public final class RideScorer {
  private final RideHand hand;
  private final RiderDays days;
  private boolean knowsKey;

  RideScorer(RideHand hand, RiderDays days) {
    this.hand = hand;
    this.days = days;
  }

  /** True if whoever scores knows the key. */
  public boolean knowsKey() {
    return knowsKey;
  }

  /** Whether whoever scores knows the key; what this lap was given already is said of as well. */
  public void knowsKey(boolean knows) {
    knowsKey = knows;
    if (!knows) {
      return;
    }
    hand.say(RideWords.say("scorer.knows"));
    RideSheet now = hand.sheet();
    if (now.stage() == RideSheet.Stage.SCORED) {
      LapId lap = hand.lap();
      new TreeMap<>(now.values()).forEach((measure, value) -> again(lap, measure, value));
    }
  }

  private void again(LapId lap, String measure, BigDecimal value) {
    hand.save(() -> days.score(hand.session(), lap, measure, value, true), latest -> {});
  }
}
