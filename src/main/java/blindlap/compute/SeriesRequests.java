package blindlap.compute;

import blindlap.review.SeriesFinding;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;

/** Calculation requests that give the pooled numbers of a series again. */
public final class SeriesRequests {
  private static final ObjectMapper JSON = new ObjectMapper();

  private SeriesRequests() {}

  /**
   * A request.
   *
   * @param about what it computes: general or agreement
   * @param json the request
   */
  public record Named(String about, String json) {}

  /** Requests of what is about several riders; empty for one. */
  public static List<Named> of(SeriesFinding finding) {
    List<Named> requests = new ArrayList<>();
    if (finding.general().isPresent()) {
      ObjectNode given = JSON.createObjectNode();
      ArrayNode estimates = given.putArray("estimates");
      ArrayNode variances = given.putArray("variances");
      for (SeriesFinding.Rider rider : finding.riders()) {
        estimates.add(rider.estimate());
        variances.add(rider.standardError() * rider.standardError());
      }
      requests.add(new Named("general", json("pool-riders", given)));
    }
    if (finding.agreement().isPresent()) {
      ObjectNode given = JSON.createObjectNode();
      ArrayNode table = given.putArray("table");
      for (SeriesFinding.Rider rider : finding.riders()) {
        ArrayNode row = table.addArray();
        rider.ranking().forEach(row::add);
      }
      requests.add(new Named("agreement", json("rank-agreement", given)));
    }
    return requests;
  }

  private static String json(String calculation, ObjectNode given) {
    ObjectNode root = JSON.createObjectNode();
    root.put("calculation", calculation);
    root.set("given", given);
    try {
      return JSON.writeValueAsString(root);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a request is always JSON", e);
    }
  }
}
