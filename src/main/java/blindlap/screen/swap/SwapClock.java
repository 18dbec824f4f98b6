package blindlap.screen.swap;

import blindlap.plan.Plan;
import blindlap.screen.cover.Idling;
import blindlap.session.HelperEntry;
import blindlap.session.SessionState;
import blindlap.wording.SwapWords;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the page says of time: the countdown, how late the day runs, when the page closes. */
final class SwapClock {
  /**
   * What changes by the second.
   *
   * @param left the countdown
   * @param share of the handling's time that is over, 0 to 1
   * @param idle when the page closes itself
   * @param pace clock, how late the day runs, what to drop
   * @param line when it is ridden and how late the day runs, in one short line
   */
  record Time(String left, double share, String idle, String pace, String line) {
    static final Time NONE = new Time("", 0, "", "", "");
  }

  private final SwapWork work;
  private final Clock clock;
  private final Idling idling;

  SwapClock(SwapWork work, Clock clock, Idling idling) {
    this.work = work;
    this.clock = clock;
    this.idling = idling;
  }

  /**
   * The time now.
   *
   * @param earliest from where on the day may end and still show something, in words
   */
  Time now(Plan plan, @Nullable SessionState state, String earliest) {
    HelperEntry now = work.entry();
    String closes = idling.words();
    if (now == null) {
      return new Time("", 0, closes, "", "");
    }
    Duration whole = work.whole();
    Duration left = work.left();
    double share = whole.isZero() ? 1 : 1 - (double) left.toMillis() / whole.toMillis();
    Optional<SwapPace> pace =
        SwapPace.of(plan, now.stint(), now.begun(), clock.instant(), work.raise());
    return new Time(
        whole.isZero() ? "" : SwapWords.countdown(left),
        Math.max(0, Math.min(1, share)),
        closes,
        pace(plan, pace, earliest, state),
        line(pace, state));
  }

  private String pace(
      Plan plan, Optional<SwapPace> pace, String earliest, @Nullable SessionState state) {
    String at = SwapWords.say("clock", SwapWords.clock(clock.instant().atZone(clock.getZone())));
    String late =
        pace.map(
                p ->
                    SwapWords.late(p.late())
                        + " "
                        + SwapWords.drop(
                            plan, p.end(), p.limit(), p.withoutRests(), p.mostStints()))
            .orElse("");
    return Stream.of(at + ".", late.strip(), earliest, cap(state))
        .filter(words -> !words.isBlank())
        .collect(Collectors.joining(" "));
  }

  private static String cap(@Nullable SessionState state) {
    Integer most = state == null ? null : state.lapCap().orElse(null);
    if (state == null || most == null) {
      return "";
    }
    return SwapWords.say(state.capReached() ? "cap.reached" : "cap", state.lapsSoFar(), most);
  }

  private String line(Optional<SwapPace> pace, @Nullable SessionState state) {
    if (state != null && state.capReached()) {
      return SwapWords.say("line.cap");
    }
    SwapSheet sheet = work.sheetProperty().get();
    String ride = sheet == null ? "" : sheet.ride();
    return pace.map(
            p ->
                SwapWords.say(
                    "line",
                    ride,
                    p.fits() ? SwapWords.lateLine(p.late()) : SwapWords.say("line.over")))
        .orElse(ride);
  }

  /** How long every handling takes. */
  String handling() {
    return whole("call.none", "call.note", "call.note.raised");
  }

  /** What stands beside the countdown. */
  String call() {
    HelperEntry now = work.entry();
    if (now != null && now.begun() == null) {
      return whole("call.none", "call.begin", "call.begin");
    }
    return now != null && !work.whole().isZero() && work.left().isZero()
        ? SwapWords.say("call.over")
        : whole("call.none", "call.until", "call.until.raised");
  }

  private String whole(String none, String note, String raised) {
    if (work.entry() == null) {
      return "";
    }
    Duration whole = work.whole();
    return whole.isZero()
        ? SwapWords.say(none)
        : SwapWords.say(work.raise().isZero() ? note : raised, SwapWords.countdown(whole));
  }
}
