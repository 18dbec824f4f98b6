package blindlap.compute;

import java.util.List;

/**
 * What a {@link Calculation} found.
 *
 * @param result the fields of the answer
 * @param method how they were found, with the published source
 * @param notes what a reader must know besides
 */
public record Evaluation(ResultFields result, String method, List<String> notes) {
  public Evaluation {
    notes = List.copyOf(notes);
  }

  public static Evaluation of(ResultFields result, String method) {
    return new Evaluation(result, method, List.of());
  }

  public static Evaluation of(ResultFields result, String method, String note) {
    return new Evaluation(result, method, List.of(note));
  }
}
