package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Stack;
import blindlap.plot.surface.Surface;
import java.util.ArrayList;
import java.util.List;

/** Raw stints of two to four setups in rows, for a cell of a table; each has its own scale. */
public final class SmallStints implements Drawing {
  /**
   * The stints of one setup.
   *
   * @param mark letter, shape and ink
   * @param values raw stints
   */
  public record Row(SetupMark mark, List<Double> values) {
    /** Copies and checks the values. */
    public Row {
      values = List.copyOf(values);
      if (!values.stream().allMatch(Double::isFinite)) {
        throw new IllegalArgumentException("A stint of " + mark + " is not a number");
      }
    }
  }

  private static final double MARK = 4;

  private final List<Row> rows;
  private final Spoken spoken;

  private SmallStints(List<Row> rows, Spoken spoken) {
    this.rows = rows;
    this.spoken = spoken;
  }

  /**
   * Makes the picture.
   *
   * @throws IllegalArgumentException when there are not 1 to 4 rows, or no value at all
   */
  public static SmallStints of(List<Row> rows, Spoken spoken) {
    if (rows.isEmpty() || rows.size() > 4) {
      throw new IllegalArgumentException("One to four setups are drawn, got " + rows.size());
    }
    if (rows.stream().allMatch(row -> row.values().isEmpty())) {
      throw new IllegalArgumentException("No stint has a value to draw");
    }
    return new SmallStints(List.copyOf(rows), spoken);
  }

  @Override
  public Spoken spoken() {
    return spoken;
  }

  @Override
  public double heightFor(double width, double textScale) {
    return Math.max(40, 20 * rows.size()) * new Faces(textScale).scale();
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    double mark = MARK * Math.sqrt(textScale);
    List<Double> all = new ArrayList<>();
    rows.forEach(row -> all.addAll(row.values()));
    double low = all.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    double high = all.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    Scale scale = Scale.around(low, high, 0, 1.4 * mark, width - 1.4 * mark);
    double distance = heightFor(width, textScale) / rows.size();
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      double line = (i + 0.5) * distance;
      Stack stack = Stack.of(row.values().stream().map(scale::at).toList(), 1.2 * mark);
      double room = Math.max(0, distance - 2.4 * mark);
      double pile = Math.min(0.9 * mark, room / Math.max(1, stack.height() - 1));
      double base = line + pile * (stack.height() - 1) / 2;
      for (int j = 0; j < row.values().size(); j++) {
        double y = base - pile * stack.levels().get(j);
        row.mark().draw(surface, scale.at(row.values().get(j)), y, mark);
      }
    }
  }
}
