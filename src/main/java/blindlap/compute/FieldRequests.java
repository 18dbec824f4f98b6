package blindlap.compute;

import blindlap.review.FieldFinding;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.pool.FieldDay;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** The calculation request that gives the numbers of a field again. */
public final class FieldRequests {
  private FieldRequests() {}

  /** Its days, values on the scale of the analysis, setups by their ids. */
  static ObjectNode of(FieldFinding finding) {
    ObjectNode root = StrictJson.NODES.objectNode();
    root.put("calculation", "field");
    ArrayNode days = root.putObject("given").putArray("days");
    for (FieldFinding.Day day : finding.days()) {
      day(days.addObject(), day.numbers());
    }
    return root;
  }

  /** The same as text. */
  public static String json(FieldFinding finding) {
    return of(finding).toString();
  }

  private static void day(ObjectNode node, FieldDay day) {
    ArrayNode setups = node.putArray("setups");
    day.setups().forEach(setups::add);
    node.put("order", Orders.letters(day.order()));
    ArrayNode values = node.putArray("values");
    for (int i = 0; i < day.values().length; i++) {
      FindingRequests.number(values, day.valid()[i] ? day.values()[i] : Double.NaN);
    }
    Nuisance nuisance = day.nuisance();
    node.put("drift", nuisance.drift().text());
    if (nuisance.covariates() > 0) {
      ArrayNode covariates = node.putArray("covariates");
      for (int i = 0; i < nuisance.covariates(); i++) {
        ArrayNode one = covariates.addArray();
        for (double value : nuisance.covariate(i)) {
          FindingRequests.number(one, value);
        }
      }
    }
  }
}
