package blindlap.compute;

import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.review.LooksFound;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Looks before the end of a day as JSON; nothing is written for a day without. */
final class LooksJson {
  private LooksJson() {}

  static void put(ObjectNode root, Finding finding) {
    finding.primary().ifPresent(primary -> put(root, primary));
  }

  private static void put(ObjectNode root, Comparison primary) {
    LooksFound looks = primary.looks().orElse(null);
    if (looks == null) {
      return;
    }
    ObjectNode node = root.putObject("looks");
    ArrayNode taken = node.putArray("taken");
    for (LooksFound.Seen seen : looks.seen()) {
      ObjectNode each = taken.addObject();
      each.put("after_stint", seen.look().stint());
      each.put("settled", seen.look().settled());
      each.put("agrees", seen.agrees());
      ArrayNode changed = each.putArray("changed_stints");
      seen.changed().forEach(changed::add);
    }
    ArrayNode untaken = node.putArray("not_taken");
    looks.untaken().forEach(untaken::add);
    node.put("stopped_early", looks.stopped());
    node.put("p", looks.p());
    node.put("p_without_looks", primary.ordinaryP());
    looks.left().ifPresent(left -> node.put("level_left", left));
  }
}
