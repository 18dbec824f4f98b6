package blindlap;

import blindlap.phone.PhoneAddress;
import blindlap.phone.PhoneMaker;
import blindlap.phone.Phones;
import blindlap.session.day.SessionId;
import java.net.Inet4Address;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Phones on the networks of this machine.
 *
 * @param made phones of a session, switched off
 */
record Networks(Function<SessionId, Phones> made) implements PhoneMaker {
  /** Those of version 4 alone: the others are too long to be typed where a camera fails. */
  @Override
  public List<PhoneAddress> addresses() {
    try {
      return NetworkInterface.networkInterfaces()
          .filter(Networks::up)
          .flatMap(Networks::addresses)
          .sorted()
          .toList();
    } catch (SocketException e) {
      return List.of(); // as on a machine without any
    }
  }

  private static boolean up(NetworkInterface network) {
    try {
      return network.isUp();
    } catch (SocketException e) {
      return false;
    }
  }

  private static Stream<PhoneAddress> addresses(NetworkInterface network) {
    return network
        .inetAddresses()
        .filter(Inet4Address.class::isInstance)
        .map(address -> new PhoneAddress(address, network.getDisplayName()));
  }

  @Override
  public Phones phones(SessionId session) {
    return made.apply(session);
  }
}
