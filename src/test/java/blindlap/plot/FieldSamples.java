package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Invented drawings of fields. */
final class FieldSamples {
  private FieldSamples() {}

  static Map<String, Drawing> all() {
    Map<String, Drawing> all = new TreeMap<>();
    all.put("field", whole());
    all.put("field-far-and-apart", farAndApart());
    return all;
  }

  /** One of every kind. */
  static FieldRows whole() {
    return of(
        List.of(
            row(FieldRows.Kind.RIDDEN, "Shock L", "ridden with it on 14 Nov 2026", -2, 0.7),
            row(FieldRows.Kind.RIDDEN, "Shock N", "ridden with it on 29 Aug 2026", -0.1, 0.7),
            row(FieldRows.Kind.FOLLOWS, "Shock P", "only follows, over Shock M", -2.2, 1.1)));
  }

  /** An end far away, and a setup that no days lead to. */
  static FieldRows farAndApart() {
    return of(
        List.of(
            row(FieldRows.Kind.FOLLOWS, "Shock L", "only follows, over Shock M", 0.3, 40),
            row(FieldRows.Kind.APART, "Shock Q", "", 0, 0)));
  }

  private static FieldRows of(List<FieldRows.Row> against) {
    List<FieldRows.Row> rows = new ArrayList<>();
    rows.add(row(FieldRows.Kind.REFERENCE, "Shock K", "ridden on 3 of the 5 days", 0, 0));
    rows.addAll(against);
    return FieldRows.of(
        new FieldRows.Content(
            rows,
            Optional.of(new Band(0.5, List.of("under 0.5 s: too small", "to matter"))),
            new Axis("s a lap", Axis.Counting.DECIMAL, Samples::signed),
            "faster than Shock K",
            "slower than Shock K",
            new Spoken("Shock L was faster; Shock P was faster only if leads hold.", "")));
  }

  private static FieldRows.Row row(
      FieldRows.Kind kind, String label, String below, double at, double half) {
    return new FieldRows.Row(
        kind, label, below, at, new Limits(at - half, at + half), "2.0 s faster");
  }
}
