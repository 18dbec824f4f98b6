package blindlap.desk;

import blindlap.plan.Setting;
import blindlap.session.DayCommands;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A helper who handles stints of a test's day, and a rider who rides them. */
public final class HelperHand {
  private static final Duration GIVEN = Duration.ofMinutes(7);

  private final TestDay day;
  private final HelperDay helper;

  public HelperHand(TestDay day) {
    this.day = day;
    this.helper = day.helper();
  }

  /** The open day. */
  public HelperDay helper() {
    return helper;
  }

  /** Corrections of this day. */
  public FitCorrections fits() {
    return new FitCorrections(helper, day.clock());
  }

  /** The end of the helper's day. */
  public HelperOver over() {
    return new HelperOver(helper, day.clock());
  }

  /** What a stint's handling comes to with a setup on, everything measured and ticked. */
  public HelperEntry ready(int stint, int fitted) {
    Map<String, String> measured = new LinkedHashMap<>();
    for (Setting setting : helper.settings(stint, fitted)) {
      measured.put(setting.name(), setting.value());
    }
    return new HelperEntry(
            stint,
            "M. Oster",
            helper.work(stint).setup(),
            fitted,
            day.clock().instant(),
            null,
            measured,
            List.of(),
            EnumSet.allOf(SafetyCheck.class),
            new TreeMap<>(Map.of(day.state().lapsSoFar(), true)),
            List.of(),
            "")
        .withTiming(new HelperEntry.Timing(GIVEN, GIVEN, null, ""));
  }

  /** Handles a stint, fitted as scheduled, and hands the bike over. */
  public void handle(int stint) {
    handle(stint, helper.work(stint).setup());
  }

  /** Handles a stint with a setup on, and hands the bike over. */
  public void handle(int stint, int fitted) {
    HelperEntry entry = ready(stint, fitted);
    day.clock().move(GIVEN);
    done(helper.handOver(entry));
  }

  /** The rider rides a stint; its values are the same for every order. */
  public void ride(int stint) {
    if (stint == 0) {
      return;
    }
    day.clock().move(Duration.ofMinutes(12));
    LapInput lap =
        LapInput.of(
            new LapId(stint, 1),
            Map.of(
                "lap time",
                new BigDecimal(180 + stint * stint % 7),
                "grip in the rocks",
                new BigDecimal(40 + stint * 5 % 9)));
    done(
        day.desk()
            .sessions()
            .act(day.id(), s -> new DayCommands(s).record(List.of(lap), Source.SCREEN)));
  }

  /** Closes day and review and opens the seal. */
  public void unseal() {
    if (day.state().step().day()) {
      done(day.desk().sessions().act(day.id(), s -> new LifeCommands(s).closeDay()));
    }
    done(day.desk().sessions().act(day.id(), s -> new LifeCommands(s).closeReview()));
    done(day.desk().keys().unseal(day.state(), day.phrase()));
  }

  /** Something that must not be refused. */
  public static void done(Sessions.Result result) {
    if (result instanceof Sessions.Result.Refused refused) {
      throw new AssertionError(refused.problems().toString());
    }
  }
}
