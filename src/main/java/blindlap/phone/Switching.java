package blindlap.phone;

import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import java.io.IOException;
import java.net.BindException;
import java.net.InetSocketAddress;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Switching phones on at an address and a port as typed, for the page and the command. */
public final class Switching {
  /**
   * The port that is offered. It stays the same from day to day: what a phone keeps belongs to the
   * address with its port.
   */
  public static final int PORT = 8480;

  private static final int MOST = 65_535;

  /** What came of choosing: an address, or why there is none. */
  public record Chosen(@Nullable PhoneAddress address, Optional<Problem> problem) {
    private static Chosen refused(SwitchFault fault, Object... details) {
      return new Chosen(null, Optional.of(Problem.of(fault, "", details)));
    }
  }

  private Switching() {}

  /**
   * The address that was typed, or the only one of a network of one's own.
   *
   * @param typed null if none was
   */
  public static Chosen choose(List<PhoneAddress> all, @Nullable String typed) {
    if (typed != null) {
      return all.stream()
          .filter(each -> each.text().equals(typed.strip()))
          .findFirst()
          .map(each -> new Chosen(each, Optional.empty()))
          .orElseGet(() -> Chosen.refused(SwitchFault.NO_SUCH_ADDRESS, typed, names(all)));
    }
    List<PhoneAddress> own = all.stream().filter(each -> !each.loopback()).toList();
    List<PhoneAddress> local = own.stream().filter(each -> each.local() && !each.inward()).toList();
    if (local.size() == 1) {
      return new Chosen(local.get(0), Optional.empty());
    }
    return own.isEmpty()
        ? Chosen.refused(SwitchFault.NO_NETWORK)
        : Chosen.refused(SwitchFault.SEVERAL_ADDRESSES, names(own));
  }

  private static String names(List<PhoneAddress> all) {
    return all.stream()
        .map(each -> each.text() + " (" + each.network() + ")")
        .collect(Collectors.joining(", "));
  }

  /**
   * Switches on.
   *
   * @param port as typed
   * @return why not; empty if it is on
   */
  public static Optional<Problem> on(Phones phones, PhoneAddress address, String port) {
    Optional<Integer> number =
        TypedNumber.whole(port.strip()).filter(each -> each >= 1 && each <= MOST);
    if (number.isEmpty()) {
      return Optional.of(Problem.of(SwitchFault.PORT, "", port.strip()));
    }
    try {
      phones.on(new InetSocketAddress(address.address(), number.get()));
      return Optional.empty();
    } catch (BindException e) {
      return refused(SwitchFault.PORT_TAKEN, address, number.get());
    } catch (IOException e) {
      return refused(SwitchFault.NOT_SERVED, address, number.get());
    }
  }

  private static Optional<Problem> refused(SwitchFault fault, PhoneAddress address, int port) {
    return Optional.of(Problem.of(fault, "", address.text(), port));
  }
}
