package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.fault.TypedText;
import blindlap.fault.TypedText.Form;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The rule of {@link TypedText} for what is about to be written: every text of a fact or of a
 * helper's entry that somebody typed. It walks what will be written, so that a new field is covered
 * before anybody thinks of it.
 */
public final class TypedTexts {
  /** What the program itself wrote: hashes, keys, ciphertext, plans (looked at as plans). */
  private static final Set<String> OWN =
      Set.of(
          "plan",
          "record",
          "key",
          "fingerprint",
          "codes",
          "helper_records",
          "iv",
          "ciphertext",
          "verdict",
          "figures",
          "series_heads",
          "laps");

  /** Names: one line each. */
  private static final Set<String> LINES =
      Set.of(
          "measure",
          "signed_by",
          "to",
          "decided_by",
          "unaware_by",
          "file",
          "setup",
          "helper",
          "name");

  private TypedTexts() {}

  /** What is wrong with the texts of a fact; none for what may be written. */
  public static List<Problem> problems(Fact fact) {
    List<Problem> problems = new ArrayList<>();
    object("", fact.accept(new FactWriter()), problems);
    if (fact instanceof Fact.PlanCommitted committed) {
      problems.addAll(problems(committed.plan()));
    }
    if (fact instanceof Fact.PlainDayImported day) {
      day.laps().forEach(lap -> value("setup", "setup", lap.setup(), problems));
    }
    return problems.stream().distinct().toList();
  }

  /** The same for a plan that is fixed without having been checked as one. */
  public static List<Problem> problems(Plan plan) {
    List<Problem> problems = new ArrayList<>();
    object("", PlanJson.tree(plan), problems);
    return problems;
  }

  /** The same for the helper's entry, before it is encrypted. */
  public static List<Problem> problems(HelperEntry entry) {
    List<Problem> problems = new ArrayList<>();
    value("helper", "helper", entry.helper(), problems);
    value("measured", "measured", entry.measured(), problems);
    entry.outside().forEach(each -> value("reason", "reason", each.reason(), problems));
    entry.events().forEach(each -> value("words", "words", each.words(), problems));
    value("note", "note", entry.note(), problems);
    entry.corrections().forEach(each -> value("words", "words", each.words(), problems));
    HelperEntry.Paper paper = entry.paper();
    if (paper != null) {
      value("confirmed by", "name", paper.confirmedBy(), problems);
    }
    return problems;
  }

  private static void object(String path, Map<?, ?> object, List<Problem> problems) {
    object.forEach(
        (key, value) -> {
          String name = String.valueOf(key);
          if (!OWN.contains(name)) {
            value(path.isEmpty() ? name : path + "." + name, name, value, problems);
          }
        });
  }

  private static void value(
      String path, String name, @Nullable Object value, List<Problem> problems) {
    if (value instanceof String text) {
      Form form = LINES.contains(name) ? Form.LINE : Form.WORDS;
      TypedText.problem(text, form, path.replace('_', ' ')).ifPresent(problems::add);
    } else if (value instanceof Map<?, ?> object) {
      object(path, object, problems);
    } else if (value instanceof List<?> list) {
      list.forEach(item -> value(path, name, item, problems));
    }
  }
}
