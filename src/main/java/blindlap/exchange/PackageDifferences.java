package blindlap.exchange;

import blindlap.compute.RequestException;
import blindlap.compute.StrictJson;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Where a data package says something else than what it is held against, by file, row and field.
 * Numbers may differ by what two computers round differently.
 */
public final class PackageDifferences {
  private static final double ROUNDING = 1e-9;
  private static final int SHOWN = 60;

  private final List<Problem> problems = new ArrayList<>();

  private final boolean common;

  private PackageDifferences(boolean common) {
    this.common = common;
  }

  /**
   * Compares tables, cell by cell.
   *
   * @param name of the file
   */
  public static List<Problem> table(String name, byte[] there, byte[] wanted) {
    PackageDifferences differences = new PackageDifferences(false);
    try {
      differences.rows(name, CsvText.read(name, text(there)), CsvText.read(name, text(wanted)));
    } catch (Unreadable e) {
      differences.problems.add(e.problem());
    }
    return differences.problems;
  }

  /**
   * Compares JSON, field by field.
   *
   * @param left names of fields that are left out, wherever they stand
   * @param common true to compare only fields that both have, as of two programs
   */
  public static List<Problem> json(
      String name, byte[] there, byte[] wanted, Set<String> left, boolean common) {
    PackageDifferences differences = new PackageDifferences(common);
    try {
      JsonNode other = StrictJson.parse(text(there));
      differences.nodes(name, "", other, StrictJson.parse(text(wanted)), left);
    } catch (RequestException e) {
      differences.problems.add(Problem.of(PackageFault.NOT_JSON, "", name));
    }
    return differences.problems;
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private void rows(String name, List<Map<String, String>> there, List<Map<String, String>> want) {
    for (int i = 0; i < Math.min(there.size(), want.size()); i++) {
      for (Map.Entry<String, String> cell : want.get(i).entrySet()) {
        String found = there.get(i).get(cell.getKey());
        if (found == null) {
          problems.add(Problem.of(PackageFault.NO_COLUMN, name, cell.getKey()));
          return;
        }
        if (!found.equals(cell.getValue()) && !same(found, cell.getValue())) {
          problems.add(
              Problem.of(
                  PackageFault.CELL_DIFFERS,
                  name + ", row " + (i + 1) + ", " + cell.getKey(),
                  shown(found),
                  shown(cell.getValue())));
        }
      }
    }
    if (there.size() != want.size()) {
      problems.add(Problem.of(PackageFault.ROWS_DIFFER, name, there.size(), want.size()));
    }
  }

  private void nodes(String name, String at, JsonNode there, JsonNode wanted, Set<String> left) {
    if (there.isObject() && wanted.isObject()) {
      Set<String> fields = new LinkedHashSet<>();
      wanted.fieldNames().forEachRemaining(fields::add);
      if (common) {
        fields.removeIf(field -> !there.has(field));
      } else {
        there.fieldNames().forEachRemaining(fields::add);
      }
      fields.removeAll(left);
      fields.forEach(
          field ->
              nodes(
                  name,
                  at.isEmpty() ? field : at + "." + field,
                  there.path(field),
                  wanted.path(field),
                  left));
    } else if (there.isArray() && wanted.isArray() && there.size() == wanted.size()) {
      for (int i = 0; i < wanted.size(); i++) {
        nodes(name, at + "[" + (i + 1) + "]", there.path(i), wanted.path(i), left);
      }
    } else if (!there.equals(wanted) && !sameNumber(there, wanted)) {
      problems.add(
          Problem.of(PackageFault.FIELD_DIFFERS, name + ", " + at, shown(there), shown(wanted)));
    }
  }

  private static boolean sameNumber(JsonNode a, JsonNode b) {
    return a.isNumber() && b.isNumber() && same(a.doubleValue(), b.doubleValue());
  }

  private static boolean same(String a, String b) {
    try {
      return same(Double.parseDouble(a), Double.parseDouble(b));
    } catch (NumberFormatException e) {
      return false;
    }
  }

  private static boolean same(double a, double b) {
    return a == b || Math.abs(a - b) <= ROUNDING * Math.max(Math.abs(a), Math.abs(b));
  }

  private static String shown(JsonNode node) {
    return node.isMissingNode() ? "\u2013" : shown(node.toString());
  }

  private static String shown(String text) {
    return text.length() <= SHOWN ? text : text.substring(0, SHOWN) + "\u2026";
  }
}
