package blindlap.compute;

import blindlap.desk.BundledProtocols;
import blindlap.desk.PlanPreview;
import blindlap.desk.TestDay;
import blindlap.plan.Rule;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.seal.SessionKind;
import java.nio.ByteBuffer;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Seeds of {@link TestDay} that draw different orders. */
public final class OrderSeeds {
  private OrderSeeds() {}

  /**
   * One seed for each of so many orders of a plan, by order.
   *
   * @throws IllegalStateException if the first 20,000 seeds do not draw so many
   */
  public static Map<String, Long> of(String plan, int orders) {
    Rule rule = PlanPreview.of(plan, BundledProtocols.load()).plan().orElseThrow().rule();
    Map<String, Long> seeds = new TreeMap<>();
    for (long seed = 1; seed <= 20_000 && seeds.size() < orders; seed++) {
      seeds.putIfAbsent(order(rule, seed), seed);
    }
    if (seeds.size() < orders) {
      throw new IllegalStateException("only " + seeds.size() + " orders were drawn");
    }
    return seeds;
  }

  private static String order(Rule rule, long seed) {
    SecureBytes order = count -> ByteBuffer.allocate(count).putLong(seed).array();
    byte[] counter = {0};
    SecureBytes other =
        count -> {
          byte[] bytes = new byte[count];
          for (int i = 0; i < count; i++) {
            bytes[i] = (byte) (counter[0]++ * 37 + 11);
          }
          return bytes;
        };
    Sealing sealing =
        new Sealing(
            new SealingSources(order, other, other, other, other, other, other),
            new SealParameters(1));
    Sealed sealed =
        sealing.seal(
            new byte[] {1},
            rule,
            "00112233445566778899aabbccddeeff",
            SessionKind.comparison(),
            sealing.drawPhrase(rule).unasked());
    return sealed.schedule().fits().stream()
        .map(fit -> String.valueOf((char) ('A' + fit.named())))
        .collect(Collectors.joining());
  }
}
