package blindlap.compute;

import blindlap.review.WhereOnTrail;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.Supplier;

/** The requests behind where on the trail the difference arises. */
final class WhereRequests {
  /** Takes a request: which number, of what, by which calculation, from what. */
  interface Taker {
    void take(String about, String of, String calculation, ObjectNode given);
  }

  private final WhereOnTrail where;
  private final Supplier<ObjectNode> day;
  private final Taker taker;

  /**
   * @param day makes what every request is given: rule and order
   */
  WhereRequests(WhereOnTrail where, Supplier<ObjectNode> day, Taker taker) {
    this.where = where;
    this.day = day;
    this.taker = taker;
  }

  void all() {
    where.line().ifPresent(line -> along("where.line", line.values()));
    where.sectors().ifPresent(this::sectors);
  }

  private void sectors(WhereOnTrail.Sectors sectors) {
    if (sectors.together()) {
      int stints = sectors.each().get(0).values().length;
      double[][] table = new double[stints][sectors.each().size()];
      for (WhereOnTrail.OfSector sector : sectors.each()) {
        for (int stint = 0; stint < stints; stint++) {
          table[stint][sector.sector()] = sector.values()[stint];
        }
      }
      along("where.sectors", table);
      return;
    }
    List<WhereOnTrail.OfSector> compared =
        sectors.each().stream().filter(s -> !Double.isNaN(s.estimate())).toList();
    for (WhereOnTrail.OfSector sector : compared) {
      ObjectNode given = given();
      values(given.putArray("values"), sector.values());
      taker.take("where.sector", name(sector), "compare-two", given);
    }
    ObjectNode given = given();
    ArrayNode measures = given.putArray("measures");
    compared.stream()
        .filter(sector -> sector.p().isPresent())
        .forEach(
            sector ->
                values(
                    measures.addObject().put("name", name(sector)).putArray("values"),
                    sector.values()));
    if (!measures.isEmpty()) {
      taker.take("where.family", "", "compare-measures", given);
    }
  }

  private static String name(WhereOnTrail.OfSector sector) {
    return "sector " + (sector.sector() + 1);
  }

  private ObjectNode given() {
    return day.get().put("drift", where.drift().text());
  }

  private void along(String about, double[][] table) {
    ObjectNode given = given();
    ArrayNode pieces = given.putArray("pieces");
    for (double[] stint : table) {
      values(pieces.addArray(), stint);
    }
    taker.take(about, "", "along", given);
  }

  private static void values(ArrayNode node, double[] values) {
    for (double value : values) {
      if (Double.isNaN(value)) {
        node.addNull();
      } else {
        node.add(value);
      }
    }
  }
}
