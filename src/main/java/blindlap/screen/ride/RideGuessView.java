package blindlap.screen.ride;

import blindlap.ride.RideQuestions;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Look;
import blindlap.wording.day.RideWords;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.binding.DoubleBinding;
import javafx.scene.Node;

/**
 * What the rider thinks was on, or in a telling run which lap it was, and how sure. There a lap is
 * picked first: until then nothing else of the answer can be given, so that none stands without it.
 */
final class RideGuessView {
  private static final int BESIDE = 3;

  private final RideModel model;
  private final ChoiceRow<Integer> row;
  private final ChoiceRow<String> how;
  private final List<Node> later = new ArrayList<>();

  RideGuessView(Look look, RideModel model, DoubleBinding touch) {
    this.model = model;
    RideQuestions asked = model.questions();
    List<ChoiceRow.Option<Integer>> options = new ArrayList<>();
    List<String> answers = asked.setups();
    for (int i = asked.firstAnswer(); i < answers.size(); i++) {
      options.add(new ChoiceRow.Option<>(i, answers.get(i)));
    }
    if (!asked.forced()) {
      options.add(new ChoiceRow.Option<>(answers.size(), RideWords.say("guess.none")));
    }
    this.row =
        new ChoiceRow<>(
            look,
            RideWords.say(asked.forced() ? "trial.pick" : "guess"),
            options,
            Math.min(BESIDE, options.size()),
            this::chosen);
    row.atLeast(touch);
    this.how =
        new ChoiceRow<>(
            look,
            RideWords.say("sure"),
            RideOptions.of(RideQuestions.sureness()),
            BESIDE,
            model.guess()::sureness);
    how.atLeast(touch);
    later.add(how);
  }

  private void chosen(int index) {
    model.guess().choose(index);
    later.forEach(part -> part.setDisable(!model.guess().named()));
  }

  /** What is asked, in order. */
  List<Node> parts() {
    return List.of(row, how);
  }

  /** What gave it away stands beside an answer, too. */
  Node cue(Node field) {
    later.add(field);
    return field;
  }

  /** Shows what is on record. */
  void show() {
    row.show(model.guess().chosen());
    how.show(model.guess().sureness());
    later.forEach(part -> part.setDisable(!model.guess().named()));
  }
}
