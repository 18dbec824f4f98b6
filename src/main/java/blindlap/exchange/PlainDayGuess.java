package blindlap.exchange;

import blindlap.fault.Decimals;
import blindlap.fault.TypedNumber;
import blindlap.session.PlainDayPreview;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;

/** Finds the columns that speak for themselves. */
final class PlainDayGuess {
  private static final Set<String> STINT = Set.of("stint", "block");
  private static final Set<String> LAP =
      Set.of("lap", "lap number", "lap no", "run", "nr", "no", "#");
  private static final Set<String> SETUP = Set.of("setup", "set-up", "what was on", "fitted");
  private static final Set<String> VOID = Set.of("void", "spoiled", "invalid");

  /** Fewer rows than this tell nothing of a column. */
  private static final int FEWEST = 3;

  private PlainDayGuess() {}

  static PlainDayPreview.Guess of(
      List<String> names, List<List<String>> rows, boolean commaAllowed) {
    List<String> left = new ArrayList<>(names);
    Decimals decimals = new Decimals(commaAllowed);
    String date = take(left, name -> most(names, rows, name, PlainDayRows::isDate));
    String stint = take(left, name -> STINT.contains(plain(name)));
    String named = take(left, name -> LAP.contains(plain(name)) && most(names, rows, name, WHOLE));
    String lap = named.isEmpty() ? take(left, name -> counts(names, rows, name, 1)) : named;
    String setup = take(left, name -> SETUP.contains(plain(name)));
    String voids = take(left, name -> VOID.contains(plain(name)));
    String measure =
        take(
            left,
            name ->
                !counts(names, rows, name, 0)
                    && most(names, rows, name, cell -> decimals.time(cell).isPresent()));
    return new PlainDayPreview.Guess(date, stint, lap, setup, voids, measure);
  }

  private static final Predicate<String> WHOLE =
      cell -> TypedNumber.whole(cell).filter(number -> number >= 0).isPresent();

  /**
   * True for a column that counts rows, whatever its name: whole numbers from 0 or 1 that go on by
   * one, or begin anew. A lap time does not.
   *
   * @param least least step from one row to the next; 0 where several rows may share a number
   */
  private static boolean counts(
      List<String> names, List<List<String>> rows, String name, int least) {
    int column = names.indexOf(name);
    List<Integer> numbers = new ArrayList<>();
    for (List<String> row : rows) {
      String cell = row.get(column);
      if (cell.isEmpty() || !WHOLE.test(cell)) {
        return false;
      }
      numbers.add(TypedNumber.whole(cell).orElse(0));
    }
    if (numbers.size() < FEWEST || numbers.get(0) > 1) {
      return false;
    }
    int first = numbers.get(0);
    for (int i = 1; i < numbers.size(); i++) {
      int step = numbers.get(i) - numbers.get(i - 1);
      if ((step < least || step > 1) && numbers.get(i) != first) {
        return false;
      }
    }
    return numbers.stream().anyMatch(number -> number > first);
  }

  private static String plain(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }

  private static String take(List<String> left, Predicate<String> wanted) {
    for (String name : left) {
      if (wanted.test(name)) {
        left.remove(name);
        return name;
      }
    }
    return "";
  }

  /** True if nine of ten cells that have something have that: one mistake hides no column. */
  private static boolean most(
      List<String> names, List<List<String>> rows, String name, Predicate<String> wanted) {
    int column = names.indexOf(name);
    List<String> cells =
        rows.stream().map(row -> row.get(column)).filter(cell -> !cell.isEmpty()).toList();
    long fitting = cells.stream().filter(wanted).count();
    return fitting > 0 && 10 * fitting >= 9L * cells.size();
  }
}
