package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.LooksOfDay;
import blindlap.review.TakenLook;
import blindlap.seal.HelperRecord;
import blindlap.session.LookCommands;
import blindlap.session.LookTaken;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.stats.look.PrefixRule;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;

/**
 * Takes a look before the end of a day, with the key open: the program looks, people read whether
 * it is settled that the setups differ, and nothing else. What the look computed is encrypted until
 * unsealing, in an entry that is as long whatever it found.
 */
public final class Looking {
  private final HelperDay day;

  public Looking(HelperDay day) {
    this.day = day;
  }

  /** What became of a look. */
  public sealed interface Result {
    /**
     * It was taken.
     *
     * @param settled true for "you may stop"
     * @param again true if it was taken before, and this is what it said
     */
    record Taken(int stint, boolean settled, boolean again, SessionState state) implements Result {}

    /** It was not, and why. */
    record Refused(List<Problem> problems) implements Result {}
  }

  /** Takes the look that is meant now, or says again what it found. */
  public Result look() {
    SessionState now = day.state().orElseThrow();
    return look(now, new LookCommands(now).meant().orElse(0));
  }

  /**
   * Takes a look, or says again what it found.
   *
   * @param stint after which stint
   */
  public Result look(int stint) {
    return look(day.state().orElseThrow(), stint);
  }

  private Result look(SessionState now, int stint) {
    LookTaken before = now.looks().get(stint);
    if (before != null) {
      return new Result.Taken(stint, before.settled(), true, now);
    }
    List<Problem> problems = new LookCommands(now).problems(stint);
    if (!problems.isEmpty()) {
      return new Result.Refused(problems);
    }
    LookTaken taken = taken(now, stint);
    Sessions.Result written = day.act(latest -> new LookCommands(latest).taken(taken));
    if (written instanceof Sessions.Result.Done done) {
      return new Result.Taken(stint, taken.settled(), false, done.state());
    }
    return new Result.Refused(((Sessions.Result.Refused) written).problems());
  }

  private LookTaken taken(SessionState now, int stint) {
    Plan plan = day.plan();
    Measure primary = plan.primary().orElseThrow();
    SortedMap<LapId, BigDecimal> values = new LookCommands(now).values(stint);
    List<TakenLook> looks = new ArrayList<>();
    now.looks().values().forEach(each -> looks.add(TakenLook.of(each)));
    looks.add(new TakenLook(stint, false, values));
    PrefixRule rule =
        LooksOfDay.taken(plan, plan.rule().assignments(), day.named(), primary, looks);
    // An earlier look that said "you may stop" stands: later ones say so, too.
    int at = rule.crossedAt(LooksOfDay.LEVEL);
    String text =
        String.join(
            "\n",
            "blindlap-look-1",
            "after_stint=" + stint,
            "settled_at=" + (at == 0 ? "none" : String.valueOf(looks.get(at - 1).stint())),
            "level_left=" + rule.left(LooksOfDay.LEVEL, looks.size()),
            "");
    HelperRecord record = day.records().sealed(LookTaken.number(stint), text);
    return new LookTaken(record, at > 0, values);
  }

  @Override
  public String toString() {
    return "Looking[" + day.id() + "]";
  }
}
