package blindlap.exchange;

import blindlap.fault.CanonicalJson;
import blindlap.fault.Unreadable;
import blindlap.session.Entry;
import blindlap.session.EntryFault;
import blindlap.session.Hash;
import blindlap.session.NotebookId;
import blindlap.session.StoredEntry;
import blindlap.session.day.ByPhone;
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

  /** The form of an entry that a phone gave, which has one field more. Since version 7. */
  public static final String BY_PHONE = "blindlap-entry-2";

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
    tree.put("form", entry.phone() == null ? VERSION : BY_PHONE);
    tree.put("session", entry.session().text());
    tree.put("notebook", entry.notebook().text());
    tree.put("number", String.valueOf(entry.number()));
    tree.put("previous", entry.previous().hex());
    tree.put("seen", EntryHeads.tree(entry.seen()));
    tree.put("at", entry.at().toString());
    tree.put("zone", entry.zone().getId());
    tree.put("kind", kind(entry));
    tree.put("body", entry.fact().accept(WRITER));
    ByPhone phone = entry.phone();
    if (phone != null) {
      tree.put("by_phone", PhoneText.tree(phone));
    }
    return CanonicalJson.text(tree);
  }

  /** The kind's name as it stands in the text. */
  public static String kind(Entry entry) {
    return entry.fact().getClass().getSimpleName();
  }

  /**
   * Reads an entry's text.
   *
   * @throws Unreadable if it is not in a form this program knows, or not spelt as this program
   *     would spell it: one content has one text and so one hash
   */
  public static StoredEntry read(String text) {
    try {
      Entry entry = parse(JSON.readTree(text));
      if (!text(entry).equals(text)) {
        throw new Unreadable(EntryFault.NOT_CANONICAL);
      }
      return new StoredEntry(entry, text, Hash.of(text));
    } catch (Unreadable refusal) {
      throw refusal;
    } catch (JsonProcessingException e) {
      throw because(e, EntryFault.NOT_JSON);
    } catch (RuntimeException e) {
      // The text may be anything, so whatever reading it stumbles over says something of the text.
      throw because(e, EntryFault.NOT_IN_FORM);
    }
  }

  private static Unreadable because(Exception cause, EntryFault fault) {
    Unreadable refusal = new Unreadable(fault);
    refusal.initCause(cause);
    return refusal;
  }

  private static Entry parse(JsonNode tree) {
    String form = text(tree, "form");
    if (!VERSION.equals(form) && !BY_PHONE.equals(form)) {
      throw new Unreadable(EntryFault.UNKNOWN_FORM, form);
    }
    String kind = tree.path("kind").asText("?");
    try {
      return entry(tree);
    } catch (Unreadable refusal) {
      throw refusal.problem().details().isEmpty()
              || refusal.problem().fault() == EntryFault.UNKNOWN_KIND
          ? refusal
          : within(kind, refusal);
    }
  }

  /** The same with the kind of its entry. */
  private static Unreadable within(String kind, Unreadable refusal) {
    List<Object> details = new ArrayList<>(refusal.problem().details());
    details.add(kind);
    return new Unreadable(refusal.problem().fault(), details.toArray());
  }

  private static Entry entry(JsonNode tree) {
    return new Entry(
        new SessionId(text(tree, "session")),
        new NotebookId(text(tree, "notebook")),
        Long.parseLong(text(tree, "number")),
        new Hash(text(tree, "previous")),
        EntryHeads.read(tree),
        Instant.parse(text(tree, "at")),
        ZoneId.of(text(tree, "zone")),
        FactReader.read(text(tree, "kind"), tree.path("body")),
        tree.has("by_phone") ? PhoneText.read(tree.path("by_phone")) : null);
  }

  private static String text(JsonNode tree, String name) {
    JsonNode value = tree.get(name);
    if (value == null || !value.isTextual()) {
      throw new Unreadable(EntryFault.NOT_IN_FORM, name);
    }
    return value.textValue();
  }
}
