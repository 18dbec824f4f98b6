package blindlap.screen.view;

import blindlap.screen.model.RideModel;
import blindlap.screen.model.RideQuestions;
import blindlap.screen.model.RideSheet;
import blindlap.wording.RideWords;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** The score sheet of one lap, in the order of the plan. Made anew for every lap. */
final class RideScoreView extends VBox {
  private static final List<String> CONDITIONS = List.of("wind", "surface", "light", "traffic");
  private static final int STEPS_OF_CONDITION = 3;
  private static final int DECIMALS = 2;

  private final Look look;
  private final RideModel model;

  RideScoreView(Look look, RideModel model, RideSheet now) {
    super(18);
    this.look = look;
    this.model = model;
    Label question = new Label(RideWords.say("question"));
    question.getStyleClass().add("question");
    getChildren().add(question);
    FlowPane counters = new FlowPane(40, 16);
    for (RideQuestions.Question asked : model.questions().questions()) {
      switch (asked.kind()) {
        case COUNT -> counters.getChildren().add(counter(asked, now));
        case LINE -> getChildren().add(line(asked, now));
        case CATEGORY -> getChildren().add(category(asked, now));
      }
    }
    if (!counters.getChildren().isEmpty()) {
      getChildren().add(counters);
    }
    if (now.guessAsked()) {
      guess();
    }
    getChildren().add(field(RideWords.say("note"), now.note(), model::note));
    conditions(now);
  }

  private static Optional<BigDecimal> given(RideQuestions.Question measure, RideSheet now) {
    return Optional.ofNullable(now.values().get(measure.name()));
  }

  private Node line(RideQuestions.Question measure, RideSheet now) {
    String left = measure.low();
    String right = measure.high();
    List<String> steps = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      steps.add(RideWords.say("scale.step." + i, left, right));
    }
    LineScale.Words words =
        new LineScale.Words(measure.name(), left, right, steps, RideWords.say("scale.untouched"));
    LineScale line =
        new LineScale(
            look,
            words,
            value ->
                model.answer(
                    measure.name(),
                    BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN)));
    line.show(given(measure, now).map(BigDecimal::doubleValue).orElse(null));
    return line;
  }

  private Node category(RideQuestions.Question measure, RideSheet now) {
    List<ChoiceRow.Option<Integer>> options = new ArrayList<>();
    for (int i = 1; i <= 9; i++) {
      options.add(new ChoiceRow.Option<>(i, String.valueOf(i)));
    }
    ChoiceRow<Integer> row =
        new ChoiceRow<>(
            look,
            measure.name() + ": " + RideWords.say("category.words", measure.low(), measure.high()),
            options,
            9,
            value -> model.answer(measure.name(), BigDecimal.valueOf(value)));
    row.show(given(measure, now).map(BigDecimal::intValue).orElse(null));
    return row;
  }

  private Node counter(RideQuestions.Question measure, RideSheet now) {
    Counter counter =
        new Counter(
            look,
            new Counter.Words(
                measure.name(),
                RideWords.say("count.fewer"),
                RideWords.say("count.more"),
                RideWords.say("count.none")),
            value -> model.answer(measure.name(), BigDecimal.valueOf(value)));
    counter.show(given(measure, now).map(BigDecimal::intValue).orElse(null));
    return counter;
  }

  private Node field(String title, String text, java.util.function.Consumer<String> left) {
    Label asked = new Label(title);
    asked.getStyleClass().add("field-title");
    TextField field = RidePage.wide(new TextField(text));
    field.setAccessibleText(title);
    field.minHeightProperty().bind(look.touch());
    asked.setLabelFor(field);
    String[] kept = {text};
    Runnable leave =
        () -> {
          if (!field.getText().equals(kept[0])) {
            kept[0] = field.getText();
            left.accept(field.getText().strip());
          }
        };
    field.setOnAction(e -> leave.run());
    field
        .focusedProperty()
        .addListener(
            (o, before, now) -> {
              if (!now) {
                leave.run();
              }
            });
    return new VBox(6, asked, field);
  }

  private void conditions(RideSheet now) {
    Label title = new Label(RideWords.say("conditions"));
    title.getStyleClass().add("field-title");
    getChildren().add(title);
    for (String name : CONDITIONS) {
      List<ChoiceRow.Option<String>> options = new ArrayList<>();
      for (int i = 0; i < STEPS_OF_CONDITION; i++) {
        String words = RideWords.say(name + "." + i);
        options.add(
            new ChoiceRow.Option<>(words, RideWords.say("condition." + name) + ": " + words));
      }
      ChoiceRow<String> row =
          new ChoiceRow<>(
              look, "", options, STEPS_OF_CONDITION, words -> model.condition(name, words));
      row.show(now.conditions().get(name));
      getChildren().add(row);
    }
  }

  private void guess() {
    List<ChoiceRow.Option<Integer>> options = new ArrayList<>();
    List<String> setups = model.questions().setups();
    for (int i = 0; i < setups.size(); i++) {
      options.add(new ChoiceRow.Option<>(i, setups.get(i)));
    }
    options.add(new ChoiceRow.Option<>(setups.size(), RideWords.say("guess.none")));
    ChoiceRow<Integer> row =
        new ChoiceRow<>(
            look, RideWords.say("guess"), options, Math.min(3, options.size()), model::guess);
    row.show(model.guessed());
    ChoiceRow<String> how =
        new ChoiceRow<>(
            look,
            RideWords.say("sure"),
            RidePage.options(RideQuestions.sureness()),
            3,
            model::sureness);
    how.show(model.sureness());
    getChildren().addAll(row, how, field(RideWords.say("cue"), model.cue(), model::cue));
  }
}
