package blindlap.phone;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.util.Comparator;

/**
 * An address of this machine at which phones could find it.
 *
 * @param address the address
 * @param network what the system calls the network behind it
 */
public record PhoneAddress(InetAddress address, String network)
    implements Comparable<PhoneAddress> {
  private static final Comparator<PhoneAddress> LIKELIEST =
      Comparator.comparing((PhoneAddress each) -> each.loopback())
          .thenComparing(each -> !each.local())
          .thenComparing(each -> !(each.address instanceof Inet4Address))
          .thenComparing(PhoneAddress::network)
          .thenComparing(PhoneAddress::text);

  /** As it stands in the address that is scanned. */
  public String text() {
    return address.getHostAddress();
  }

  /** True if no phone can reach it: it leads from this machine to itself. */
  public boolean loopback() {
    return address.isLoopbackAddress();
  }

  /** True of a network of one's own, as a hotspot or a router at home makes it. */
  public boolean local() {
    return address.isSiteLocalAddress();
  }

  /** The likeliest first; the one that no phone can reach last. */
  @Override
  public int compareTo(PhoneAddress other) {
    return LIKELIEST.compare(this, other);
  }
}
