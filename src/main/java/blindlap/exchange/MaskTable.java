package blindlap.exchange;

import blindlap.exchange.PackageTables.Column;
import blindlap.fault.Unreadable;
import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.review.Masks;
import blindlap.session.MasksRead;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which label was on which setup, and the rider's guess, as a table of a data package. */
final class MaskTable {
  static final String NAME = "masks";
  static final String FILE = NAME + ".csv";

  private static final List<Column> COLUMNS =
      List.of(
          Column.of("label", "string", "label that the parts bore; A in every other table is X"),
          Column.of("setup", "string", "name of the setup it was on; empty while it is not read"),
          Column.of("guess", "string", "name of the setup as the rider guessed; empty without"),
          Column.of("read_from", "string", "phrase, or marks that nothing sealed"));

  private MaskTable() {}

  /** Only at masked labels. */
  static void write(PackageTables tables, Optional<Masks> known) {
    known.ifPresent(
        masks -> {
          List<List<String>> rows = new ArrayList<>();
          for (int place = 0; place < masks.committed().setups().size(); place++) {
            rows.add(
                List.of(
                    Labels.of(place),
                    name(masks, masks.isRead(), masks.read(), place),
                    name(masks, masks.isGuessed(), masks.guessed(), place),
                    masks.source().orElse("")));
          }
          tables.table(NAME, COLUMNS, rows);
        });
  }

  private static String name(Masks masks, boolean known, List<Integer> setups, int place) {
    return known ? masks.committed().setups().get(setups.get(place)).name() : "";
  }

  /**
   * Masks of the files of a package; empty where it has no table of them.
   *
   * @throws Unreadable if a column is missing or a cell cannot be read
   */
  static Optional<Masks> of(Map<String, byte[]> files, Plan plan) {
    byte[] table = files.get(FILE);
    return table == null
        ? Optional.empty()
        : Optional.of(read(CsvText.read(FILE, new String(table, StandardCharsets.UTF_8)), plan));
  }

  private static Masks read(List<Map<String, String>> rows, Plan plan) {
    List<Integer> read = new ArrayList<>();
    List<Integer> guessed = new ArrayList<>();
    Optional<MasksRead.From> from = Optional.empty();
    for (Map<String, String> row : rows) {
      setup(row, "setup", plan).ifPresent(read::add);
      setup(row, "guess", plan).ifPresent(guessed::add);
      String typed = PackageCells.text(row, "read_from");
      for (MasksRead.From each : MasksRead.From.values()) {
        from = typed.equals(PlanJson.word(each)) ? Optional.of(each) : from;
      }
    }
    return new Masks(plan, guessed, from.isPresent() ? read : List.of(), from);
  }

  private static Optional<Integer> setup(Map<String, String> row, String column, Plan plan) {
    String name = PackageCells.text(row, column);
    if (name.isEmpty()) {
      return Optional.empty();
    }
    for (int i = 0; i < plan.setups().size(); i++) {
      if (plan.setups().get(i).name().equals(name)) {
        return Optional.of(i);
      }
    }
    throw new Unreadable(PackageFault.NO_SETUP_OF_PLAN, name);
  }
}
