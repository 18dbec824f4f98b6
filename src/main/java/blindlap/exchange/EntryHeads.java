package blindlap.exchange;

import blindlap.fault.Unreadable;
import blindlap.session.EntryFault;
import blindlap.session.Hash;
import blindlap.session.Head;
import blindlap.session.NotebookId;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Heads of chains as they stand in the text of an entry (docs/file-format.md). */
final class EntryHeads {
  private EntryHeads() {}

  /** As a tree for canonical JSON. */
  static List<Map<String, String>> tree(List<Head> heads) {
    return heads.stream()
        .map(
            head ->
                Map.of(
                    "notebook", head.notebook().text(),
                    "number", String.valueOf(head.number()),
                    "hash", head.hash().hex()))
        .toList();
  }

  /**
   * The heads in an object's field "seen".
   *
   * @throws Unreadable if a field of one is missing
   */
  static List<Head> read(JsonNode object) {
    List<Head> heads = new ArrayList<>();
    object
        .path("seen")
        .forEach(
            head ->
                heads.add(
                    new Head(
                        new NotebookId(text(head, "notebook")),
                        Long.parseLong(text(head, "number")),
                        new Hash(text(head, "hash")))));
    return heads;
  }

  private static String text(JsonNode head, String name) {
    JsonNode value = head.get(name);
    if (value == null || !value.isTextual()) {
      throw new Unreadable(EntryFault.NOT_IN_FORM, name);
    }
    return value.textValue();
  }
}
