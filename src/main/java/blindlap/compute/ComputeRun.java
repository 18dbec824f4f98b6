package blindlap.compute;

import java.util.ArrayList;
import java.util.List;

/** Computes the requests of some texts: all of them, or none. */
public final class ComputeRun {
  private final Calculations calculations;

  public ComputeRun(Calculations calculations) {
    this.calculations = calculations;
  }

  /**
   * A text with requests.
   *
   * @param name what to call it in a refusal, such as its file name
   * @param text one request or an array of them
   */
  public record Source(String name, String text) {}

  /** How a run ended. */
  public interface Outcome {}

  /**
   * All requests were computed.
   *
   * @param json one JSON document: the answer if a single lone request was given, else an array of
   *     answers in the order of the requests
   */
  public record Computed(String json) implements Outcome {}

  /**
   * A request could not be computed, and none was.
   *
   * @param sentence which source and which field is at fault, and why
   */
  public record Refused(String sentence) implements Outcome {}

  public Outcome over(List<Source> sources) {
    List<CalculationAnswer> answers = new ArrayList<>();
    boolean lone = sources.size() == 1;
    for (Source source : sources) {
      try {
        CalculationRequest.Document document = CalculationRequest.parse(source.text());
        lone &= !document.array();
        for (int i = 0; i < document.requests().size(); i++) {
          answers.add(calculations.answer(document.requests().get(i)));
        }
      } catch (RequestException e) {
        return new Refused(source.name() + ": " + e.sentence());
      }
    }
    return new Computed(lone ? answers.get(0).print() : CalculationAnswer.print(answers));
  }
}
