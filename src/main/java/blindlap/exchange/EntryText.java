package blindlap.exchange;

import blindlap.fault.CanonicalJson;
import blindlap.session.Entry;
import blindlap.session.Hash;
import blindlap.session.Head;
import blindlap.session.NotebookId;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The enduring text of an entry: canonical JSON, hashed as it stands. The database keeps this text;
 * its columns only repeat it for queries (docs/file-format.md).
 */
public final class EntryText {
  /** Version of the text form; the value of its first field. */
  public static final String VERSION = "blindlap-entry-1";

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final FactWriter WRITER = new FactWriter();

  private EntryText() {}

  /**
   * Writes an entry, with its hash. What is answered was read back from the text, so that nothing
   * is ever written that cannot be read again, and both sides of a saving see the same entry.
   *
   * @throws IllegalArgumentException if the entry holds what its text cannot
   */
  public static StoredEntry write(Entry entry) {
    return read(text(entry));
  }

  private static String text(Entry entry) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("form", VERSION);
    tree.put("session", entry.session().text());
    tree.put("notebook", entry.notebook().text());
    tree.put("number", String.valueOf(entry.number()));
    tree.put("previous", entry.previous().hex());
    tree.put(
        "seen",
        entry.seen().stream()
            .map(
                head ->
                    Map.of(
                        "notebook", head.notebook().text(),
                        "number", String.valueOf(head.number()),
                        "hash", head.hash().hex()))
            .toList());
    tree.put("at", entry.at().toString());
    tree.put("zone", entry.zone().getId());
    tree.put("kind", kind(entry));
    tree.put("body", entry.fact().accept(WRITER));
    return CanonicalJson.text(tree);
  }

  /** The kind's name as it stands in the text. */
  public static String kind(Entry entry) {
    return entry.fact().getClass().getSimpleName();
  }

  /**
   * Reads an entry's text.
   *
   * @throws IllegalArgumentException if it is not in a form this program knows, or not spelt as
   *     this program would spell it: one content has one text and so one hash
   */
  public static StoredEntry read(String text) {
    Entry entry = parse(text);
    if (!text(entry).equals(text)) {
      throw new IllegalArgumentException("an entry is not spelt in canonical form");
    }
    return new StoredEntry(entry, text, Hash.of(text));
  }

  private static Entry parse(String text) {
    try {
      JsonNode tree = JSON.readTree(text);
      if (!VERSION.equals(text(tree, "form"))) {
        throw new IllegalArgumentException("it has the unknown form " + tree.get("form"));
      }
      return new Entry(
          new SessionId(text(tree, "session")),
          new NotebookId(text(tree, "notebook")),
          Long.parseLong(text(tree, "number")),
          new Hash(text(tree, "previous")),
          seen(tree),
          Instant.parse(text(tree, "at")),
          ZoneId.of(text(tree, "zone")),
          FactReader.read(text(tree, "kind"), tree.path("body")));
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(e.getOriginalMessage(), e);
    } catch (RuntimeException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }

  private static List<Head> seen(JsonNode tree) {
    List<Head> heads = new ArrayList<>();
    tree.path("seen")
        .forEach(
            head ->
                heads.add(
                    new Head(
                        new NotebookId(text(head, "notebook")),
                        Long.parseLong(text(head, "number")),
                        new Hash(text(head, "hash")))));
    return heads;
  }

  private static String text(JsonNode tree, String name) {
    JsonNode value = tree.get(name);
    if (value == null || !value.isTextual()) {
      throw new IllegalArgumentException("its field " + name + " is missing");
    }
    return value.textValue();
  }
}
