package blindlap.desk;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.PhoneActs;
import blindlap.desk.day.PhoneDays;
import blindlap.session.day.ByPhone;
import blindlap.session.day.PhoneRole;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Function;

/** A phone on a test's day: what it says now, and what it said and only sends now. */
public final class PhoneHand {
  private final TestDay day;
  private final PhoneDays phones;
  private final String client;
  private final Duration ahead;
  private long number;
  private long knew;

  /**
   * A phone.
   *
   * @param client any number; another one is another phone
   * @param ahead how far its clock is ahead of the laptop's
   */
  public PhoneHand(TestDay day, int client, Duration ahead) {
    this(day, day.desk().phoneDays(), client, ahead);
  }

  PhoneHand(TestDay day, PhoneDays phones, int client, Duration ahead) {
    this.day = day;
    this.phones = phones;
    this.client = String.format("%032x", client);
    this.ahead = ahead;
    look();
  }

  /** It has signal, and sees the day as it stands. */
  public void look() {
    knew = phones.day(day.id()).orElseThrow().entries();
  }

  /** By its own clock. */
  private Instant now() {
    return day.clock().instant().plus(ahead);
  }

  /** What it says now, to be sent at any time. */
  public Kept say(Function<PhoneActs, DayResult> act) {
    number++;
    return new Kept(
        new ByPhone(client, number, PhoneRole.RIDER, now(), now(), ahead.negated(), knew), act);
  }

  /** Something said, kept on the phone. */
  public final class Kept {
    private final ByPhone by;
    private final Function<PhoneActs, DayResult> act;

    private Kept(ByPhone by, Function<PhoneActs, DayResult> act) {
      this.by = by;
      this.act = act;
    }

    /** Client and number. */
    String name() {
      return by.client() + "/" + by.number();
    }

    /** Sends it, once more if it was sent before. */
    public PhoneDays.Taken send() {
      return phones.act(day.id(), by, act);
    }
  }
}
