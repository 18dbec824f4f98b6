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

  private PlainDayGuess() {}

  static PlainDayPreview.Guess of(
      List<String> names, List<List<String>> rows, boolean commaAllowed) {
    List<String> left = new ArrayList<>(names);
    Decimals decimals = new Decimals(commaAllowed);
    String date = take(left, name -> most(names, rows, name, PlainDayRows::isDate));
    String stint = take(left, name -> STINT.contains(plain(name)));
    String lap = take(left, name -> LAP.contains(plain(name)) && most(names, rows, name, WHOLE));
    String setup = take(left, name -> SETUP.contains(plain(name)));
    String voids = take(left, name -> VOID.contains(plain(name)));
    String measure =
        take(left, name -> most(names, rows, name, cell -> decimals.time(cell).isPresent()));
    return new PlainDayPreview.Guess(date, stint, lap, setup, voids, measure);
  }

  private static final Predicate<String> WHOLE =
      cell -> TypedNumber.whole(cell).filter(number -> number >= 0).isPresent();

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
