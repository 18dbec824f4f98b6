package blindlap.screen.manual;

import blindlap.desk.Desk;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperDays;
import blindlap.desk.HelperOver;
import blindlap.desk.Sessions;
import blindlap.plan.Setting;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.time.Duration;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A helper who fits what is scheduled, measures what is asked for and takes as long as planned. */
final class Hands {
  private final Desk desk;
  private final SessionId id;
  private final String phrase;

  Hands(Desk desk, SessionId id, String phrase) {
    this.desk = desk;
    this.id = id;
    this.phrase = phrase;
  }

  private SessionState state() {
    return desk.sessions().state(id).orElseThrow();
  }

  /** The helper's day, open. */
  HelperDay day() {
    return ((HelperDays.Opened.Day) desk.helperDays().open(state(), phrase)).day();
  }

  /** Handles a stint and hands the bike over. */
  void handOver(int stint, Duration given) {
    HelperDay helper = day();
    int setup = helper.work(stint).setup();
    Map<String, String> measured = new LinkedHashMap<>();
    for (Setting setting : helper.settings(stint, setup)) {
      measured.put(setting.name(), setting.value());
    }
    HelperEntry entry =
        new HelperEntry(
                stint,
                state().plan().blinding().helper(),
                setup,
                setup,
                desk.clock().instant(),
                null,
                measured,
                List.of(),
                EnumSet.allOf(SafetyCheck.class),
                new TreeMap<>(Map.of(state().lapsSoFar(), true)),
                List.of(),
                "")
            .withTiming(new HelperEntry.Timing(given, given, null, ""));
    done(helper.handOver(entry));
  }

  /** The bike is back with the helper. */
  void back(int stint) {
    done(desk.helperDays().bikeReturned(id, stint));
  }

  /** The helper's day is over. */
  void over() {
    HelperOver over = new HelperOver(day(), desk.clock());
    done(over.write(over.entry(state())));
  }

  static void done(Sessions.Result result) {
    if (result instanceof Sessions.Result.Refused refused) {
      throw new AssertionError("refused: " + refused.problems());
    }
  }
}
