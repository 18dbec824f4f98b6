package blindlap.plan;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What differs between the setups, setting by setting: one change at a time is the rule, and parity
 * is what must not differ.
 *
 * @param rows every setting that any setup names, in the order in which they first appear
 * @param bikes what the two bikes differ in; empty unless there are two
 */
public record Differences(List<Row> rows, List<Bikes.Difference> bikes) {

  /** What is to be said of one setting. */
  public enum Status {
    /** Equal, or equal within its tolerance where it is meant to be equal. */
    SAME,
    /** Differs: part of the question. */
    DIFFERS,
    /** Meant to be equal, and further apart than its tolerance. */
    PARITY_BROKEN
  }

  /**
   * One setting across the setups.
   *
   * @param name as first typed
   * @param values one per setup; empty where a setup does not name it
   * @param tolerance the smallest tolerance given, in the unit of the first; null for none
   * @param status what is to be said of it
   */
  public record Row(
      String name,
      List<Optional<Setting>> values,
      @org.jspecify.annotations.Nullable BigDecimal tolerance,
      Status status) {
    public Row {
      values = List.copyOf(values);
    }

    /** Values with their units, "–" where a setup does not name the setting. */
    public List<String> shown() {
      return values.stream().map(v -> v.map(Setting::shown).orElse("–")).toList();
    }
  }

  public Differences {
    rows = List.copyOf(rows);
    bikes = List.copyOf(bikes);
  }

  /** Differences of a plan. */
  public static Differences of(Plan plan) {
    Map<String, String> names = new LinkedHashMap<>();
    for (Setup setup : plan.setups()) {
      setup.settings().forEach(s -> names.putIfAbsent(Setting.key(s.name()), s.name()));
    }
    List<Row> rows = new ArrayList<>();
    for (String name : names.values()) {
      rows.add(row(name, plan.setups()));
    }
    boolean two = plan.change() == ChangeMethod.TWO_BIKES && plan.bikes() != null;
    return new Differences(
        rows, two ? java.util.Objects.requireNonNull(plan.bikes()).differences() : List.of());
  }

  private static Row row(String name, List<Setup> setups) {
    List<Optional<Setting>> values = setups.stream().map(s -> s.setting(name)).toList();
    List<Setting> given = values.stream().flatMap(Optional::stream).toList();
    boolean equalMeant = given.stream().anyMatch(Setting::equal);
    BigDecimal tolerance =
        given.stream()
            .map(Setting::tolerance)
            .filter(java.util.Objects::nonNull)
            .min(BigDecimal::compareTo)
            .orElse(null);
    BigDecimal allowed = equalMeant && tolerance != null ? tolerance : BigDecimal.ZERO;
    boolean same = given.size() == setups.size();
    for (int i = 0; i < given.size() && same; i++) {
      for (int j = i + 1; j < given.size() && same; j++) {
        same = given.get(i).within(given.get(j), allowed);
      }
    }
    Status status = same ? Status.SAME : equalMeant ? Status.PARITY_BROKEN : Status.DIFFERS;
    return new Row(name, values, tolerance, status);
  }

  /** Settings that differ, parity aside. */
  public List<Row> differing() {
    return rows.stream().filter(r -> r.status() == Status.DIFFERS).toList();
  }

  /** Settings that are meant to be equal and are not. */
  public List<Row> broken() {
    return rows.stream().filter(r -> r.status() == Status.PARITY_BROKEN).toList();
  }

  /** Names of everything that differs, the bikes' own differences included. */
  public List<String> names() {
    List<String> names = new ArrayList<>();
    differing().forEach(r -> names.add(r.name()));
    bikes.forEach(b -> names.add(b.name()));
    return names;
  }
}
