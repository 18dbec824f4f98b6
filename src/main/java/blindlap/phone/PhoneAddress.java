package blindlap.phone;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.util.Comparator;
import java.util.regex.Pattern;

/**
 * An address of this machine at which phones could find it.
 *
 * @param address the address
 * @param network what the system calls the network behind it
 */
public record PhoneAddress(InetAddress address, String network)
    implements Comparable<PhoneAddress> {
  private static final Pattern INWARD =
      Pattern.compile("docker|br-|veth|virbr|vmnet|vbox|tun|tap|lxc", Pattern.CASE_INSENSITIVE);

  private static final Comparator<PhoneAddress> LIKELIEST =
      Comparator.comparing((PhoneAddress each) -> each.loopback())
          .thenComparing(PhoneAddress::inward)
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

  /**
   * True of a network that most likely leads to programs on this machine and to no phone, by the
   * names that systems give those (common practice, no source).
   */
  public boolean inward() {
    return INWARD.matcher(network).lookingAt();
  }

  /** The likeliest first; the one that no phone can reach last. */
  @Override
  public int compareTo(PhoneAddress other) {
    return LIKELIEST.compare(this, other);
  }
}
