package blindlap.phone;

import blindlap.session.day.SessionId;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Phones without a network, on a machine with the addresses of a test. */
public final class FakeMaker implements PhoneMaker {
  private final Map<SessionId, FakePhones> made = new LinkedHashMap<>();

  private int asked;

  /** Addresses of the machine, with the names of their networks. */
  public final List<PhoneAddress> addresses =
      new ArrayList<>(List.of(address("192.168.43.117", "wlan0"), address("127.0.0.1", "lo")));

  /** An address, literal. */
  public static PhoneAddress address(String text, String network) {
    try {
      return new PhoneAddress(InetAddress.getByName(text), network);
    } catch (UnknownHostException e) {
      throw new IllegalArgumentException(text, e);
    }
  }

  @Override
  public List<PhoneAddress> addresses() {
    return addresses.stream().sorted().toList();
  }

  /** How often it was asked for phones. */
  public int asked() {
    return asked;
  }

  @Override
  public FakePhones phones(SessionId session) {
    asked++;
    return made.computeIfAbsent(session, FakePhones::new);
  }
}
