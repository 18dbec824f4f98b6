package blindlap.plan;

import java.util.List;

/** The words that fields with options take, as in plan files. */
public final class PlanOptions {
  private PlanOptions() {}

  /**
   * The words of a field.
   *
   * @throws IllegalArgumentException if it is no field with options
   */
  public static List<String> of(String field) {
    return switch (field) {
      case "session" -> PlanJson.words(Plan.Kind.class);
      case "task" -> PlanJson.words(TellingTask.class);
      case "change" -> PlanJson.words(ChangeMethod.class);
      case "check" -> PlanJson.words(Setting.Check.class);
      case "covariate" -> PlanJson.words(Covariate.Kind.class);
      case "by" -> PlanJson.words(Covariate.By.class);
      case "per" -> PlanJson.words(Covariate.Per.class);
      case "kind" -> PlanJson.words(Measure.Kind.class);
      case "role" -> PlanJson.words(Measure.Role.class);
      case "better" -> PlanJson.words(Measure.Better.class);
      case "timed_by" -> PlanJson.words(TimedBy.class);
      case "drift" -> List.of("none", "line", "curve");
      case "scale" -> List.of("raw", "ratio");
      case "summary" -> List.of("mean", "median");
      case "level" -> PlanJson.words(BlindLevel.class);
      case "masks" -> PlanJson.words(Preparation.Masks.class);
      case "way" -> PlanJson.words(StepsDay.Way.class);
      case "times" -> PlanJson.words(Blinding.Times.class);
      case "record_of" -> PlanJson.words(Blinding.RecordOf.class);
      default -> throw new IllegalArgumentException("no options for " + field);
    };
  }
}
