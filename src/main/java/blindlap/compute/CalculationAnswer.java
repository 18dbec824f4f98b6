package blindlap.compute;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/**
 * The answer to a {@link CalculationRequest}.
 *
 * @param calculation name of the calculation
 * @param result its numbers
 * @param method how they were found, in words, with the published source
 * @param notes what a reader must know besides
 */
public record CalculationAnswer(
    String calculation, ResultFields result, String method, List<String> notes) {
  public CalculationAnswer {
    notes = List.copyOf(notes);
  }

  /** This answer as a JSON object; numbers as the shortest decimals that read back the same. */
  public String print() {
    return StrictJson.print(toJson());
  }

  /** Answers as a JSON array. */
  public static String print(List<CalculationAnswer> answers) {
    ArrayNode list = StrictJson.NODES.arrayNode();
    answers.forEach(answer -> list.add(answer.toJson()));
    return StrictJson.print(list);
  }

  private ObjectNode toJson() {
    ObjectNode object = StrictJson.NODES.objectNode();
    object.put("calculation", calculation);
    object.set("result", result.toJson());
    object.put("method", method);
    ArrayNode list = object.putArray("notes");
    notes.forEach(list::add);
    return object;
  }
}
