package blindlap.compute;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Set;

/**
 * A request to compute something: {@code {"calculation": "choice", "given": {…}}}.
 *
 * <p>A check file is a request with an expectation; its further fields ({@code id}, {@code title},
 * {@code source}, {@code provenance}, {@code expect}, {@code tolerance}, {@code notes}) are allowed
 * here and not read, so that a check file can be computed as it stands.
 *
 * @param calculation name of the calculation
 * @param given what it is given
 */
public record CalculationRequest(String calculation, Given given) {
  private static final Set<String> FIELDS =
      Set.of(
          "calculation",
          "given",
          "id",
          "title",
          "source",
          "provenance",
          "expect",
          "tolerance",
          "notes");

  /** The requests of one text. */
  public record Document(List<CalculationRequest> requests, boolean array) {
    public Document {
      requests = List.copyOf(requests);
    }
  }

  /**
   * Reads one request or an array of them.
   *
   * @throws RequestException if the text is not JSON or a request lacks or misspells a field
   */
  public static Document parse(String text) {
    JsonNode document = StrictJson.parse(text);
    List<CalculationRequest> requests =
        StrictJson.objects(document).stream().map(CalculationRequest::from).toList();
    return new Document(requests, document.isArray());
  }

  /** An error about the name of this calculation. */
  public RequestException refuseCalculation(String why) {
    String place = given.path();
    String prefix = place.substring(0, place.length() - "given".length());
    return new RequestException(prefix + "calculation", why);
  }

  static CalculationRequest from(StrictJson.Rooted rooted) {
    ObjectNode object = rooted.object();
    String prefix = rooted.prefix();
    StrictJson.refuseUnknown(object, prefix, FIELDS);
    JsonNode name = object.get("calculation");
    if (name == null) {
      throw new RequestException(prefix + "calculation", "is missing.");
    }
    if (!name.isTextual()) {
      throw new RequestException(prefix + "calculation", "must be a text.");
    }
    JsonNode given = object.get("given");
    if (given == null) {
      throw new RequestException(prefix + "given", "is missing.");
    }
    if (!(given instanceof ObjectNode fields)) {
      throw new RequestException(prefix + "given", "must be an object.");
    }
    return new CalculationRequest(name.textValue(), new Given(prefix + "given", fields));
  }
}
