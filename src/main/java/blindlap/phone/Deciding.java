package blindlap.phone;

import blindlap.desk.day.PhoneDays;
import blindlap.session.day.ByPhone;
import blindlap.session.day.SessionId;
import blindlap.wording.day.Problems;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Decides each message once. Within a run of the server the greatest number decided of every client
 * is known, with what became of it; over runs the entries tell.
 */
final class Deciding {
  private final PhoneDays days;
  private final SessionId id;
  private final Clock clock;
  private final String run;
  private final Map<String, Decided> decided = new HashMap<>();

  /**
   * What became of the last message of a client.
   *
   * @param refused why it was not entered; null if it was
   */
  private record Decided(long number, @Nullable String refused) {}

  Deciding(PhoneDays days, SessionId id, Clock clock, String run) {
    this.days = days;
    this.id = id;
    this.clock = clock;
    this.run = run;
  }

  /** The state as a phone may know it. */
  Map<String, @Nullable Object> state(Phone phone, PhoneDays.Seen seen) {
    return StateJson.of(seen, phone.client, phone.role, run, clock.instant());
  }

  /** The day on disk. */
  PhoneDays.Seen seen() {
    return days.day(id).orElseThrow(() -> new IllegalStateException("the session is gone"));
  }

  /** Decides a message; one after the other, whoever sends it. */
  synchronized Reply decide(Phone phone, Given message) throws Turned {
    if (!message.text("run").equals(run)) {
      return Reply.json(409, Map.of("why", "run", "run", run));
    }
    ByPhone by = by(phone, message);
    Decided before = decided.get(phone.client);
    if (before != null && by.number() < before.number()) {
      return Reply.why(409, "number");
    }
    if (before == null || by.number() > before.number()) {
      before = act(phone, by, message);
      decided.put(phone.client, before);
    }
    Map<String, @Nullable Object> state = state(phone, seen());
    String refused = before.refused();
    return refused == null
        ? Reply.json(200, Map.of("done", true, "state", state))
        : Reply.json(200, Map.of("refused", refused, "state", state));
  }

  private Decided act(Phone phone, ByPhone by, Given message) throws Turned {
    Act act;
    try {
      act = Acts.read(message.inside("act"), by.role(), by.offset(), seen().day());
    } catch (Turned turned) {
      if (turned.why() == Refusal.FORM) { // later answers shall not wait behind it for ever
        return new Decided(by.number(), Acts.notUnderstood());
      }
      throw turned;
    }
    PhoneDays.Taken taken = days.act(id, by, acts -> act.on(acts, id));
    return new Decided(
        by.number(),
        taken instanceof PhoneDays.Taken.Refused refused
            ? String.join(" ", Problems.sentences(refused.problems()))
            : null);
  }

  /** A phone whose clock was set since it measured has no offset: then this message gives it. */
  private Duration offset(Given message) throws Turned {
    return message.text("offset").equals("null")
        ? Duration.between(Instant.ofEpochMilli(message.millis("sent")), clock.instant())
        : Duration.ofMillis(message.millis("offset"));
  }

  private ByPhone by(Phone phone, Given message) throws Turned {
    long number = message.number("number");
    long knew = message.has("knew") ? message.number("knew") : 0;
    if (number < 1) {
      throw Turned.form();
    }
    return new ByPhone(
        phone.client,
        number,
        phone.role,
        Instant.ofEpochMilli(message.millis("given")),
        Instant.ofEpochMilli(message.millis("sent")),
        offset(message),
        knew < 1 ? null : knew);
  }
}
