package blindlap.phone;

import blindlap.session.day.PhoneRole;
import blindlap.session.day.SessionId;
import java.net.InetSocketAddress;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** The phones of one session: off until they are switched on, and ended with the day. */
public interface Phones extends AutoCloseable {
  /**
   * A phone that came to the laptop.
   *
   * @param id by which it is let in and thrown out: the first eight digits of its client
   * @param role as its code said
   * @param in true once it is let in; false while it waits
   * @param heard when it was heard last; the epoch if not since the program was started
   * @param unsent answers that it still keeps, as it said when it was heard last
   */
  record Known(String id, PhoneRole role, boolean in, Instant heard, long unsent) {}

  /**
   * Something refused.
   *
   * @param who the address that asked, or the beginning of its client
   */
  record Refused(Refusal why, String who, Instant at) {}

  /** Which session. */
  SessionId session();

  /**
   * Switches on.
   *
   * @param at one address of this machine, and a port; 0 for any free one
   * @throws java.io.IOException if nothing can be served there
   */
  void on(InetSocketAddress at) throws java.io.IOException;

  /** Switches off; phones keep what they have, and those let in need no new code. */
  void off();

  /** Where pages are served; empty while off. */
  Optional<InetSocketAddress> at();

  /**
   * Address to open on a phone, with a token that is good for one phone; another one once it was
   * used. Empty while off.
   */
  Optional<URI> link(PhoneRole role);

  /** All phones that came, in the order in which they did. */
  List<Known> known();

  /** Lets a waiting phone in. */
  void letIn(String id);

  /** Throws a phone out; what it said stays. */
  void throwOut(String id);

  /** What was refused since it was switched on first, once for each reason and whoever asked. */
  default List<Refused> refusals() {
    return List.of();
  }

  /** Told, on any thread, after something above has changed; replaces who was told before. */
  void whenChanged(Runnable told);

  /** Off, and nothing more is told. */
  @Override
  void close();
}
