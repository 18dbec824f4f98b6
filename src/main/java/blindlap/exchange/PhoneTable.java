package blindlap.exchange;

import blindlap.exchange.PackageTables.Column;
import blindlap.session.Entry;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.ByPhone;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Which entries phones gave, as a table of a data package. */
final class PhoneTable {
  private static final List<Column> COLUMNS =
      List.of(
          Column.of("entry", "integer", "number of the entry in its notebook's chain"),
          Column.of("notebook", "string", "id of that notebook"),
          Column.of("kind", "string", "kind of the entry"),
          Column.of("stint", "integer", "which stint it is about, if any"),
          Column.of("lap_in_stint", "integer", "which lap of it, if any"),
          Column.of("role", "string", "rider, starter"),
          Column.of("client", "string", "id that the page on the phone gave itself"),
          Column.of("message", "integer", "number of the message among that phone's"),
          Column.of("said", "datetime", "when it was said, by the phone's clock and its offset"),
          Column.of("written", "datetime", "when it was written into the notebook"),
          Column.of(
              "late",
              "boolean",
              "true of what was said without signal and came later; it replaces nothing that the"
                  + " phone had not seen"));

  private PhoneTable() {}

  /** Nothing where no phone was used. */
  static void write(PackageTables tables, SessionState state) {
    List<List<String>> rows = new ArrayList<>();
    FactWriter bodies = new FactWriter();
    for (StoredEntry stored : state.entries()) {
      Entry entry = stored.entry();
      ByPhone phone = entry.phone();
      if (phone != null) {
        Map<String, Object> body = entry.fact().accept(bodies);
        rows.add(
            List.of(
                String.valueOf(entry.number()),
                entry.notebook().text(),
                EntryText.kind(entry),
                String.valueOf(body.getOrDefault("stint", "")),
                String.valueOf(body.getOrDefault("lap", "")),
                phone.role().text(),
                phone.client(),
                String.valueOf(phone.number()),
                entry.when().toString(),
                entry.at().toString(),
                String.valueOf(phone.late())));
      }
    }
    if (!rows.isEmpty()) {
      tables.table("phones", COLUMNS, rows);
    }
  }
}
