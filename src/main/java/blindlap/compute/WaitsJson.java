package blindlap.compute;

import blindlap.plan.PlanJson;
import blindlap.review.Waits;
import blindlap.stats.order.Orders;
import blindlap.stats.tell.WaitTest;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Waits and overruns of a finding as JSON; nothing where nobody timed a handling. */
final class WaitsJson {
  private WaitsJson() {}

  static void put(ObjectNode root, Waits waits) {
    if (waits.handlings().isEmpty()) {
      return;
    }
    ObjectNode node = root.putObject("waits");
    node.put("counted", waits.counted());
    waits.untested().ifPresent(why -> node.put("not_tested", PlanJson.word(why)));
    waits.test().ifPresent(test -> test(node, test));
    ArrayNode overruns = node.putArray("overruns");
    for (Waits.Timed each : waits.overruns()) {
      overruns
          .addObject()
          .put("stint", each.handling().stint())
          .put("took", each.handling().took())
          .put("given", each.handling().given())
          .put("real", each.real())
          .put("mishap", each.handling().mishap());
    }
  }

  private static void test(ObjectNode node, WaitTest test) {
    node.put("difference", test.kind().seconds());
    node.put("p", test.kind().p());
    node.put("mid_p", test.kind().midP());
    node.put("flagged", test.kind().flagged());
    test.setup()
        .ifPresent(
            setup ->
                node.putObject("by_setup")
                    .put("slowest", String.valueOf(Orders.letter(setup.slowest())))
                    .put("quickest", String.valueOf(Orders.letter(setup.quickest())))
                    .put("difference", setup.seconds())
                    .put("p", setup.p())
                    .put("mid_p", setup.midP())
                    .put("flagged", setup.flagged()));
  }
}
