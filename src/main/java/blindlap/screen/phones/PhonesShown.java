package blindlap.screen.phones;

import blindlap.plot.Qr;
import blindlap.session.day.PhoneRole;
import java.util.List;

/**
 * What the Phones page shows.
 *
 * @param stage where it stands
 * @param at address and port at which pages are served; empty while off
 * @param codes a code to scan per role; none while off
 * @param phones who came, in the order in which they did
 * @param connected how many are let in and were heard just now
 * @param waiting how many wait to be let in
 * @param gone true where the address at which pages are served is no longer this machine's
 */
record PhonesShown(
    Stage stage,
    String at,
    List<Code> codes,
    List<Phone> phones,
    long connected,
    long waiting,
    boolean gone) {
  /** Where the page stands. */
  enum Stage {
    NO_SESSION,
    OFF,
    ON,
    /** The day is closed. */
    OVER
  }

  /**
   * A code to scan.
   *
   * @param address what it says, to be typed where a camera fails
   */
  record Code(PhoneRole role, String address, Qr drawing) {
    @Override
    public boolean equals(Object other) {
      return other instanceof Code code && role == code.role && address.equals(code.address);
    }

    @Override
    public int hashCode() {
      return address.hashCode();
    }
  }

  /**
   * A phone that came.
   *
   * @param name such as "Rider, 1a2b3c4d"
   * @param in true once it is let in
   * @param stands how it stands, in words
   */
  record Phone(String id, String name, boolean in, String stands) {}

  /** Before a session is open. */
  static final PhonesShown NONE =
      new PhonesShown(Stage.NO_SESSION, "", List.of(), List.of(), 0, 0, false);

  PhonesShown {
    codes = List.copyOf(codes);
    phones = List.copyOf(phones);
  }

  boolean on() {
    return stage == Stage.ON;
  }
}
