package blindlap.screen.ride;

import static blindlap.ride.RideSheet.Stage.SCORED;

import blindlap.ride.RideQuestions;
import blindlap.ride.RideSheet;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Counter;
import blindlap.screen.part.Fields;
import blindlap.screen.part.LineScale;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.session.day.LapInput;
import blindlap.wording.day.RideWords;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.binding.DoubleBinding;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/**
 * The score sheet of one lap, in the order of the plan. Made anew for every lap; what another
 * window or the command line changes of the lap is redrawn.
 */
final class RideScoreView extends VBox {
  private static final int STEPS_OF_CONDITION = 3;
  private static final int DECIMALS = 2;

  /** Most characters of a setup's name on a box of a third of a column. */
  private static final int LONGEST_SETUP = 10;

  /** Most characters of a measure's name above a column. */
  private static final int LONGEST_NAME = 32;

  /** How high what is touched is where the window is low, at 100 %. */
  static final double LOW = 56;

  private final Look look;
  private final RideModel model;
  private final boolean low;
  private final DoubleBinding touch;
  private final List<Consumer<RideSheet>> redraws = new ArrayList<>();

  /**
   * @param wide true where there is room for two columns, so that the whole sheet is in view
   * @param low true where these must also make do with little height
   */
  RideScoreView(Look look, RideModel model, RideSheet now, boolean wide, boolean low) {
    super(low ? 6 : wide ? 8 : 18);
    this.look = look;
    this.low = low;
    this.touch = low ? look.touch(LOW) : look.touch();
    this.model = model;
    Label question = new Label(model.questions().title(now));
    question.getStyleClass().add("question");
    question.setWrapText(true);
    boolean bare = model.questions().questions().isEmpty();
    // Of a trial the question is seen with its answers, however large the text is.
    boolean asked = bare && now.guessAsked() && model.questions().forced();
    if (!asked) {
      getChildren().add(question);
    }
    boolean columns = wide && !bare && shortWords();
    double gap = columns ? getSpacing() : 18;
    VBox left = new VBox(gap);
    VBox right = new VBox(gap);
    scores(now, left, columns);
    if (now.guessAsked()) {
      guess(right, asked ? List.of(question) : List.of());
    }
    right.getChildren().add(field(RideWords.say("note"), RideSheet::note, model::note));
    getChildren().add(columns ? beside(left, right) : bare ? right : new VBox(18, left, right));
    conditions(now, wide);
    if (!model.questions().questions().isEmpty() && !model.questions().riderKnows()) {
      (columns ? left : this).getChildren().add(scorer());
    }
    model.sheetProperty().addListener(new WeakChangeListener<>(changed));
    model.savingProperty().addListener(new WeakChangeListener<>(saved));
  }

  private void scores(RideSheet now, VBox left, boolean columns) {
    FlowPane counters = new FlowPane(40, 16);
    for (RideQuestions.Question each : model.questions().questions()) {
      switch (each.kind()) {
        case COUNT -> (columns ? left : counters).getChildren().add(counter(each, now));
        case LINE -> left.getChildren().add(line(each, now));
        case CATEGORY -> (columns ? this : left).getChildren().add(category(each, now));
      }
    }
    if (!counters.getChildren().isEmpty()) {
      left.getChildren().add(counters);
    }
  }

  /**
   * @param above what is asked; nothing where it stands above the sheet
   */
  private void guess(VBox into, List<Node> above) {
    RideGuessView guess = new RideGuessView(look, model, touch);
    List<Node> parts = guess.parts();
    VBox first = new VBox(8);
    first.getChildren().addAll(above);
    first.getChildren().add(parts.get(0));
    into.getChildren().add(WholeInView.together(first));
    into.getChildren().addAll(parts.subList(1, parts.size()));
    Node cue = field(RideWords.say("cue"), to -> model.guess().cue(), model.guess()::cue);
    into.getChildren().add(guess.cue(cue));
    redraws.add(to -> guess.show());
    guess.show();
  }

  /** True if nothing that is asked needs more than half of the sheet's width. */
  private boolean shortWords() {
    RideQuestions asked = model.questions();
    return asked.setups().stream().allMatch(name -> name.length() <= LONGEST_SETUP)
        && asked.questions().stream().allMatch(each -> each.name().length() <= LONGEST_NAME);
  }

  private static GridPane beside(Node... columns) {
    GridPane grid = new GridPane();
    grid.setHgap(24);
    for (Node column : columns) {
      ColumnConstraints equal = new ColumnConstraints();
      equal.setPercentWidth(100.0 / columns.length);
      grid.getColumnConstraints().add(equal);
      grid.addRow(0, column);
    }
    return grid;
  }

  private final ChangeListener<RideSheet> changed = (o, before, after) -> redraw();
  private final ChangeListener<Boolean> saved = (o, before, after) -> redraw();

  /** Shows what is on record, unless an answer given here is still on its way there. */
  private void redraw() {
    RideSheet now = model.sheetProperty().get();
    if (getScene() != null && !model.savingProperty().get() && now.stage() == SCORED) {
      redraws.forEach(each -> each.accept(now));
    }
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
    if (low) {
      line.zone(touch);
    }
    Consumer<RideSheet> redraw =
        to -> line.show(given(measure, to).map(BigDecimal::doubleValue).orElse(null));
    redraw.accept(now);
    redraws.add(redraw);
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
    row.atLeast(touch);
    Consumer<RideSheet> redraw =
        to -> row.show(given(measure, to).map(BigDecimal::intValue).orElse(null));
    redraw.accept(now);
    redraws.add(redraw);
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
    if (low) {
      counter.beside(touch);
    }
    Consumer<RideSheet> redraw =
        to -> counter.show(given(measure, to).map(BigDecimal::intValue).orElse(null));
    redraw.accept(now);
    redraws.add(redraw);
    return counter;
  }

  /** A field that saves when it is left, and follows what is on record while nobody types. */
  private Node field(String title, Function<RideSheet, String> shown, Consumer<String> left) {
    String text = shown.apply(model.sheetProperty().get());
    Label asked = new Label(title);
    asked.getStyleClass().add("field-title");
    asked.setWrapText(true);
    asked.setMinHeight(USE_PREF_SIZE);
    TextField field = Fields.wide(new TextField(text));
    field.setAccessibleText(title);
    field.minHeightProperty().bind(touch);
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
    redraws.add(
        to -> {
          String recorded = shown.apply(to);
          if (!recorded.equals(kept[0]) && field.getText().equals(kept[0])) {
            kept[0] = recorded;
            field.setText(recorded);
          }
        });
    return WholeInView.together(new VBox(6, asked, field));
  }

  private void conditions(RideSheet now, boolean wide) {
    List<Node> rows = new ArrayList<>();
    for (String name : LapInput.CONDITIONS) {
      List<ChoiceRow.Option<String>> options = new ArrayList<>();
      for (int i = 0; i < STEPS_OF_CONDITION; i++) {
        String words = RideWords.say(name + "." + i);
        options.add(new ChoiceRow.Option<>(words, words));
      }
      ChoiceRow<String> row =
          new ChoiceRow<>(
              look,
              RideWords.say("condition." + name),
              options,
              STEPS_OF_CONDITION,
              words -> model.condition(name, words));
      row.getStyleClass().add("condition");
      row.atLeast(touch);
      row.show(now.conditions().get(name));
      redraws.add(to -> row.show(to.conditions().get(name)));
      rows.add(row);
    }
    if (wide) {
      GridPane all = beside(rows.toArray(Node[]::new));
      all.setHgap(16);
      getChildren().add(all);
      return;
    }
    Label title = new Label(RideWords.say("conditions"));
    title.getStyleClass().add("field-title");
    getChildren().add(title);
    getChildren().addAll(rows);
  }

  /** Below the scores, since it is seldom ticked; it is said of what was scored above as well. */
  private Node scorer() {
    CheckBox knows = new CheckBox(RideWords.say("scorer"));
    knows.setWrapText(true);
    knows.minHeightProperty().bind(touch);
    knows.setSelected(model.scorer().knowsKey());
    knows.setOnAction(e -> model.scorer().knowsKey(knows.isSelected()));
    return knows;
  }
}
