package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Which address of a machine is offered first, and which is taken without a word. */
class PhoneAddressTest {
  private static List<PhoneAddress> sorted(String... texts) {
    return Stream.of(texts).map(text -> FakeMaker.address(text, "net")).sorted().toList();
  }

  @Test
  void thoseOfANetworkOfOnesOwnComeFirstAndTheMachinesOwnLast() {
    assertThat(sorted("127.0.0.1", "203.0.113.7", "fe80::1", "192.168.1.4", "10.0.0.2"))
        .extracting(PhoneAddress::text)
        .containsExactly(
            "10.0.0.2", "192.168.1.4", "203.0.113.7", "fe80:0:0:0:0:0:0:1", "127.0.0.1");
  }

  @Test
  void anAddressOnTheOpenInternetIsNeverTakenUnasked() {
    List<PhoneAddress> open = sorted("203.0.113.7", "127.0.0.1");
    assertThat(Switching.choose(open, null).problem().orElseThrow().fault())
        .isEqualTo(SwitchFault.SEVERAL_ADDRESSES);
    assertThat(Switching.choose(open, " 203.0.113.7").address()).isEqualTo(open.get(0));
  }

  @Test
  void aNetworkThatLeadsToProgramsOnThisMachineIsNeitherOfferedFirstNorTakenUnasked() {
    PhoneAddress bridge = FakeMaker.address("172.17.0.1", "docker0");
    PhoneAddress air = FakeMaker.address("192.168.43.117", "wlan0");
    assertThat(Stream.of(bridge, air).sorted()).containsExactly(air, bridge);
    assertThat(Switching.choose(List.of(bridge, air), null).address()).isEqualTo(air);
    assertThat(Switching.choose(List.of(bridge), null).address()).isNull();
  }

  @Test
  void theOnlyOneOfAnOwnNetworkIsTaken() {
    List<PhoneAddress> one = sorted("203.0.113.7", "192.168.1.4", "127.0.0.1");
    assertThat(Switching.choose(one, null).address()).isEqualTo(one.get(0));
    assertThat(one.get(0).text()).isEqualTo("192.168.1.4");
  }
}
