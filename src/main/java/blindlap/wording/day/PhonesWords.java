package blindlap.wording.day;

import blindlap.session.day.PhoneRole;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * Words on phones in the window and at the command line; those on the phones themselves are others.
 */
public final class PhonesWords {
  private static final Words WORDS = Words.of("phones");
  private static final int MINUTE = 60;
  private static final int HOUR = 3600;

  private PhonesWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** The word for a role, such as "rider". */
  public static String role(PhoneRole role) {
    return WORDS.say("role." + role);
  }

  /** "Phones: on, 2 connected". */
  public static String state(boolean on, long connected, long waiting) {
    if (!on) {
      return WORDS.say("state.off");
    }
    return waiting > 0
        ? WORDS.say("state.waits", waiting)
        : WORDS.say("state.on", connected == 0 ? WORDS.say("state.nobody") : connected);
  }

  /** How long ago something was, such as "12 s ago". */
  public static String ago(Duration time) {
    long seconds = Math.max(0, time.toSeconds());
    if (seconds < MINUTE) {
      return WORDS.say("ago.seconds", seconds);
    }
    return seconds < HOUR
        ? WORDS.say("ago.minutes", seconds / MINUTE)
        : WORDS.say("ago.hours", seconds / HOUR, seconds % HOUR / MINUTE);
  }

  /** "Rider, 1a2b3c4d". */
  public static String phone(PhoneRole role, String id) {
    return WORDS.say("phone." + role, id);
  }

  /**
   * How a phone stands, such as "connected, heard 3 s ago, nothing unsent".
   *
   * @param in true once it is let in
   * @param connected true if it was heard just now
   * @param heard how long ago; empty if it was not heard since the program was started
   */
  public static String stands(
      boolean in, boolean connected, Optional<Duration> heard, long unsent) {
    String when =
        heard.map(time -> WORDS.say("heard.ago", ago(time))).orElse(WORDS.say("heard.never"));
    if (!in) {
      return WORDS.say("stands.waits", when);
    }
    if (connected) {
      return WORDS.say("stands.connected", when, unsentBriefly(unsent));
    }
    return heard
        .map(time -> WORDS.say("stands.away", ago(time), unsentBriefly(unsent)))
        .orElse(WORDS.say("stands.never"));
  }

  private static String unsentBriefly(long unsent) {
    return unsent == 0 ? WORDS.say("unsent.none") : WORDS.say("unsent.some", unsent);
  }

  /** A phone keeps answers. */
  public static String unsent(PhoneRole role, String id, long unsent) {
    return WORDS.say("awaited.unsent", role(role), id, unsent);
  }

  /**
   * A phone was let in and not heard since.
   *
   * @param since how long ago it was heard; empty if it was not since the program was started
   */
  public static String unheard(PhoneRole role, String id, Optional<Duration> since) {
    return since
        .map(time -> WORDS.say("awaited.unheard", role(role), id, ago(time)))
        .orElse(WORDS.say("awaited.never", role(role), id));
  }

  /** A lap with what is open of it, such as "lap 3 (883): grip, guess". */
  public static String openLap(int number, int code, List<String> open) {
    return WORDS.say("awaited.lap", number, code, String.join(", ", open));
  }

  /** More laps than can be said one by one, by their numbers over the day. */
  public static String manyOpen(List<Integer> laps) {
    return WORDS.say(
        "awaited.many", String.join(", ", laps.stream().map(String::valueOf).toList()));
  }

  /** Laps that are ridden and open. */
  public static String openLaps(List<String> laps) {
    return WORDS.say("awaited.open", String.join("; ", laps));
  }
}
