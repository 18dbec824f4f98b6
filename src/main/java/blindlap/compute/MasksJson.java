package blindlap.compute;

import blindlap.plan.Labels;
import blindlap.review.DayRecord;
import blindlap.review.KnownStints;
import blindlap.review.Masks;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** What is known of masked labels as JSON; nothing at any other level. */
final class MasksJson {
  private MasksJson() {}

  static void put(ObjectNode root, DayRecord day) {
    Masks masks = day.masks().orElse(null);
    if (masks == null) {
      return;
    }
    ObjectNode node = root.putObject("masks");
    names(node, "read", masks, masks.isRead() ? masks.read() : List.of());
    masks.source().ifPresent(source -> node.put("from", source));
    names(node, "guessed", masks, masks.isGuessed() ? masks.guessed() : List.of());
    KnownStints.labelsOut(day).ifPresent(stint -> node.put("came_out", stint));
    if (masks.isRead() && masks.isGuessed() && KnownStints.labelsOut(day).isEmpty()) {
      node.put("right", masks.right());
      if (masks.right()) {
        node.put("p", masks.chance());
      }
    }
  }

  private static void names(ObjectNode node, String field, Masks masks, List<Integer> setups) {
    ObjectNode each = node.putObject(field);
    for (int place = 0; place < setups.size(); place++) {
      each.put(Labels.of(place), masks.committed().setups().get(setups.get(place)).name());
    }
  }
}
