package blindlap.desk;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.KeyingIn;
import blindlap.desk.day.PhoneActs;
import blindlap.desk.day.PhoneDays;
import blindlap.session.HandOver;
import blindlap.session.Head;
import blindlap.session.Notebook;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.day.ByPhone;
import blindlap.session.day.SessionId;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * What phones say, decided on the whole record like what is said in the window, and entered once:
 * whether a message is in already is asked in the same decision that enters it.
 */
final class RecordedPhones implements PhoneDays {
  private final Sessions sessions;
  private final Notebook notebook;
  private final KeyingIn keyingIn;
  private final Clock clock;

  RecordedPhones(Sessions sessions, Notebook notebook, KeyingIn keyingIn, Clock clock) {
    this.sessions = sessions;
    this.notebook = notebook;
    this.keyingIn = keyingIn;
    this.clock = clock;
  }

  @Override
  public Optional<Seen> day(SessionId id) {
    return sessions.state(id).map(this::seen);
  }

  private Seen seen(SessionState state) {
    long entries =
        state.heads().stream()
            .filter(head -> head.notebook().equals(notebook.id()))
            .mapToLong(Head::number)
            .findFirst()
            .orElse(0);
    return new Seen(state.day(), entries, state.phones().last());
  }

  @Override
  public long version() {
    return sessions.version();
  }

  @Override
  public Taken act(SessionId id, ByPhone by, Function<PhoneActs, DayResult> act) {
    Message message = new Message(asItCame(by));
    DayResult result = act.apply(message);
    if (result instanceof DayResult.Refused refused) {
      return new Taken.Refused(refused.problems());
    }
    Seen seen = day(id).orElseThrow();
    return message.before ? new Taken.Already(seen) : new Taken.Done(seen);
  }

  /**
   * What came at once was said as in a window, and nothing was said later than it came: a phone
   * whose clock is ahead of what it measured is set right.
   */
  private ByPhone asItCame(ByPhone by) {
    Instant now = clock.instant();
    boolean late = by.at().plus(ByPhone.LATE).isBefore(now);
    Duration offset = by.at().isAfter(now) ? Duration.between(by.given(), now) : by.offset();
    return new ByPhone(
        by.client(),
        by.number(),
        by.role(),
        by.given(),
        by.sent(),
        Duration.ofMillis(offset.toMillis()),
        late ? by.knew() : null);
  }

  /** One message of a phone: one thing that is done with it becomes entries. */
  private final class Message extends RecordedDays implements PhoneActs {
    private final ByPhone by;
    private boolean before;

    Message(ByPhone by) {
      super(sessions, keyingIn, clock);
      this.by = by;
    }

    @Override
    Sessions.Result decide(SessionId id, Function<SessionState, Outcome> decision) {
      return sessions.act(id, latest -> entered(latest) ? nothing() : decision.apply(latest), by);
    }

    private boolean entered(SessionState latest) {
      before = latest.phones().last().getOrDefault(by.client(), 0L) >= by.number();
      return before;
    }

    private static Outcome nothing() {
      return new Outcome.Accepted(List.of());
    }

    @Override
    Instant said() {
      return by.at();
    }

    @Override
    boolean late() {
      return by.late();
    }

    @Override
    public DayResult plateRead(SessionId id, int stint) {
      return act(id, latest -> new HandOver(latest).plateRead(stint, by.at()));
    }
  }
}
