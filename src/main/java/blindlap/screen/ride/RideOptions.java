package blindlap.screen.ride;

import blindlap.ride.RideQuestions;
import blindlap.screen.part.ChoiceRow;
import java.util.List;

/** Choices of the rider's day as a row of buttons takes them. */
final class RideOptions {
  private RideOptions() {}

  static List<ChoiceRow.Option<String>> of(List<RideQuestions.Choice> choices) {
    return choices.stream().map(c -> new ChoiceRow.Option<>(c.key(), c.words())).toList();
  }
}
