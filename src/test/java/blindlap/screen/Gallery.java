package blindlap.screen;

import blindlap.desk.TestDay;
import blindlap.plot.Samples;
import blindlap.plot.SetupMark;
import blindlap.screen.cover.HelperFrameView;
import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.AskedOnce;
import blindlap.screen.part.BigWords;
import blindlap.screen.part.Caution;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Counter;
import blindlap.screen.part.ErrorNote;
import blindlap.screen.part.HoldButton;
import blindlap.screen.part.Lead;
import blindlap.screen.part.LineScale;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.SavedLine;
import blindlap.screen.part.SetupName;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Pages of every part with invented content. */
final class Gallery {
  private Gallery() {}

  static Parent review(Look look) {
    PageGrid page = new PageGrid(look);
    AnswerSentence answer = new AnswerSentence(look, "Is it real, and does it matter?");
    answer.say("Shock L was 2.3 s a lap faster than Shock K: ", "real and worthwhile", ".");
    Lead lead =
        new Lead(
            "The gain is 1.7 to 3.0 s a lap (95 % interval), wholly beyond the 0.5 s you called"
                + " worthwhile. No other order of the 1,296 that could have been drawn speaks as"
                + " clearly for Shock L (p = .0015).");
    page.add(
        section(answer, lead),
        new MarginNote("You expected", "Shock K quicker by about 1 s, “fairly sure”."),
        new MarginNote("Seal", "Plan, order and nonce give the fingerprint of 19:08. It matches."));
    page.add(
        section(h2("Every stint, and the difference"), new PlotView(look, Samples.difference())),
        new MarginNote(
            "How to read it", "Both scales are the same: a second above is a second below."));
    page.add(
        section(h2("In ridden order"), new PlotView(look, Samples.riddenOrder())),
        new MarginNote("Voids", "None of 16."));
    page.add(
        section(
            h2("How far the day speaks for each difference"), new PlotView(look, Samples.curve())));
    page.add(
        section(
            new Caution(
                "Caution.",
                "Follow the maker’s manual, its torque and pressure limits and its list of approved"
                    + " parts. If in doubt a trained mechanic decides.")));
    page.add(section(new HBox(16, next("Print report"), new Button("Save data package"), off())));
    return framed(look, page);
  }

  static Parent framed(Look look, PageGrid page) {
    Map<Integer, String> names = new LinkedHashMap<>();
    List<String> words = List.of("Notebook", "Plan", "Swap", "Ride", "Review");
    for (int i = 0; i < words.size(); i++) {
      names.put(i, words.get(i));
    }
    PageNames<Integer> left = new PageNames<>(look, "Blindlap", names, each -> {});
    left.open(4);
    left.foot(List.of("quarry.blindlap", "Saved 17:20:55", "Seal opened 16:02"));
    BorderPane pane = new BorderPane(page);
    pane.setLeft(left);
    return pane;
  }

  static Region section(Node... parts) {
    VBox box = new VBox(parts);
    box.getStyleClass().add("section");
    return box;
  }

  static Label h2(String words) {
    Label label = new Label(words);
    label.getStyleClass().add("h2");
    label.setWrapText(true);
    return label;
  }

  static Button next(String words) {
    Button button = new Button(words);
    button.getStyleClass().add("next");
    return button;
  }

  private static Button off() {
    Button button = new Button("Plan the next day");
    button.setDisable(true);
    return button;
  }

  static Parent ride(Look look, LineScale first) {
    VBox left = new VBox(12);
    Label stint = new Label("Stint 7 of 16");
    stint.getStyleClass().add("field-title");
    BigWords code = BigWords.code(look);
    code.say("482");
    left.getChildren()
        .addAll(
            stint,
            code,
            new Label("Is this the number on the plate?"),
            wide(new Button("Time it again")),
            wide(new Button("Type the time")),
            wide(new TextField("1:33.1")));
    left.setMinWidth(420);
    left.setPrefWidth(420);
    left.setMaxWidth(420);
    left.setStyle("-fx-padding: 30;");
    VBox right = new VBox(18);
    right.setStyle("-fx-padding: 30;");
    Label question = new Label("What was that lap like?");
    question.getStyleClass().add("question");
    Counter given =
        new Counter(
            look,
            new Counter.Words("Feet off the pedals", "one fewer", "one more", "not given"),
            value -> {});
    given.show(2);
    Counter open =
        new Counter(
            look,
            new Counter.Words("Hard bottom-outs", "one fewer", "one more", "not given"),
            value -> {});
    FlowPane counters = new FlowPane(40, 16, given, open);
    ChoiceRow<String> guess =
        new ChoiceRow<>(
            look,
            "Your guess",
            List.of(
                new ChoiceRow.Option<>("K", "Shock K"),
                new ChoiceRow.Option<>("L", "Shock L"),
                new ChoiceRow.Option<>("?", "don’t know")),
            3,
            value -> {});
    guess.show("L");
    SavedLine saved = new SavedLine();
    saved.say("Saved 11:44:07", "3 answers open");
    right
        .getChildren()
        .addAll(question, first, scale(look, "Harshness at the hands"), counters, guess, saved);
    right.setMinWidth(0);
    HBox.setHgrow(right, javafx.scene.layout.Priority.ALWAYS);
    HBox page = new HBox(left, right);
    page.getStyleClass().add("ride");
    return page;
  }

  static LineScale scale(Look look, String title) {
    return new LineScale(look, scaleWords(title), value -> {});
  }

  static LineScale.Words scaleWords(String title) {
    return new LineScale.Words(
        title,
        "none at all",
        "all I could ask for",
        List.of(
            "at or near none at all",
            "nearer to none at all",
            "about the middle",
            "nearer to all I could ask for",
            "at or near all I could ask for"),
        "not marked");
  }

  private static Button wide(Button button) {
    button.setMaxWidth(Double.MAX_VALUE);
    return button;
  }

  private static TextField wide(TextField field) {
    field.setMaxWidth(Double.MAX_VALUE);
    return field;
  }

  static Parent helper(Look look, boolean blank) {
    BigWords name = BigWords.setupName(look);
    name.say("Shock L");
    VBox steps = new VBox(step("1", "Bike in the stand, cover on", "done"));
    steps
        .getChildren()
        .addAll(
            step("2", "Fit Shock L; bolts to the torque you typed", "now"),
            step("3", "Set clicks, sag and pressures", "later"));
    steps.getStyleClass().add("steps");
    CheckBox firm = new CheckBox("Brakes firm");
    firm.setSelected(true);
    VBox page =
        new VBox(
            16,
            name,
            steps,
            firm,
            new CheckBox("Wheels straight, nothing loose"),
            new TextField("26.4"),
            new Caution("Caution.", "The maker’s manual and limits come first."));
    page.getStyleClass().add("swap");
    VBox reopen = new VBox(12, new Label("Type the day’s PIN to open"), new TextField());
    reopen.setAlignment(Pos.CENTER);
    reopen.setMaxWidth(320);
    HelperFrameView frame =
        new HelperFrameView(
            look,
            new HelperFrameView.Words("Helper", "Rider: look away", "Hide now"),
            page,
            reopen,
            () -> {});
    frame.idle("closes itself in 1:52");
    frame.blankProperty().set(blank);
    return frame;
  }

  /** The helper's page while the bike is out: the real page, on a day of its own. */
  static Parent safe(Look look, SwapModel handed) {
    return new SwapPage(look, handed, () -> {});
  }

  /** What the helper says later than at the stint itself, with what its first button opens. */
  static Scene later(Look look, SwapModel model) {
    model.bikeReturned();
    model.reopen("4711");
    SwapPage page = new SwapPage(look, model, () -> {});
    Scene scene = new Scene(page, 1366, 768);
    look.dress(scene);
    for (String words : List.of("Note, next", "Wrong fit", "A wrong setup")) {
      page.applyCss();
      page.layout();
      page.lookupAll(".button").stream()
          .filter(n -> n instanceof Button b && b.getText().startsWith(words))
          .forEach(n -> ((Button) n).fire());
    }
    return scene; // a page that leaves its scene closes itself
  }

  /** A day on which the warm-up was handled. */
  static SwapModel handed(TestDay day) {
    SwapModel model = Models.swap(day);
    model.phrase(day.phrase());
    model.choosePin("4711");
    model.work().begin();
    day.helper().work(0).settings().forEach(s -> model.work().measured(s.name(), s.value()));
    for (SafetyCheck check : SafetyCheck.values()) {
      model.work().confirm(check.name(), true);
    }
    day.clock().move(Duration.ofMinutes(7));
    model.touch();
    model.tick();
    model.work().handOver();
    return model;
  }

  /** A day that looks after stint 16. */
  static final String LOOKS =
      TestDay.SIXTEEN
          .replace("stints: 16", "stints: 24\nlooks: [16]")
          .replace("16:38", "19:00")
          .replace("lap_budget: 20", "lap_budget: 40");

  /** A day on which a look is due, and setup B was quicker by far. */
  static SwapModel lookDue(TestDay day) {
    for (int stint = 1; stint <= 16; stint++) {
      LapId lap = new LapId(stint, 1);
      day.watched(lap, "lap time", 95 + stint % 3 - (day.order().charAt(stint - 1) == 'B' ? 9 : 0));
      Fact ridden = new Fact.LapRidden(lap, Source.SCREEN);
      day.desk().sessions().act(day.id(), latest -> new DayCommands(latest).note(lap, ridden));
    }
    SwapModel model = Models.swap(day);
    model.phrase(day.phrase());
    model.choosePin("4711");
    return model;
  }

  /** What is pressed with care: held, or asked once. */
  private static FlowPane presses(Look look) {
    HoldButton hold =
        new HoldButton(
            "Hold: the bike has been handed over",
            "Now let go",
            System::nanoTime,
            () -> {},
            () -> {});
    hold.minHeightProperty().bind(look.touch());
    AskedOnce.Words words =
        new AskedOnce.Words("Close the day", "From then on no lap can be recorded.", "Not yet");
    return new FlowPane(
        16,
        16,
        hold,
        new AskedOnce(look, words, () -> {}),
        AskedOnce.question(look, words, () -> {}, () -> {}));
  }

  private static HBox step(String number, String words, String state) {
    Label count = new Label(number);
    count.getStyleClass().add("number");
    Label text = new Label(words);
    text.setWrapText(true);
    HBox row = new HBox(count, text);
    row.getStyleClass().addAll("step", state);
    return row;
  }

  static Parent controls(Look look) {
    ListView<String> list =
        new ListView<>(FXCollections.observableArrayList("24 Oct 2026", "10 Oct 2026", "26 Sep"));
    list.setPrefHeight(150);
    list.getSelectionModel().select(1);
    ComboBox<String> combo =
        new ComboBox<>(FXCollections.observableArrayList("blocks of four", "pairs"));
    combo.getSelectionModel().select(0);
    RadioButton chosen = new RadioButton("Blocks of four");
    chosen.setSelected(true);
    CheckBox disabled = new CheckBox("not yet possible");
    disabled.setDisable(true);
    TextField prompt = new TextField();
    prompt.setPromptText("Find rider, trail or setup");
    TextArea area = new TextArea("Walker at the gate, braked hard, “a second or so”");
    area.setPrefRowCount(2);
    area.setWrapText(true);
    Label differs = new Label("9 clicks");
    differs.getStyleClass().add("differs");
    FlowPane buttons = new FlowPane(16, 16, next("Lock plan"), new Button("Save"), off());
    VBox all =
        new VBox(
            16,
            buttons,
            new HBox(24, new CheckBox("open"), chosen, new RadioButton("Pairs"), disabled),
            combo,
            prompt,
            area,
            list,
            Tables.settings(),
            differs,
            new SetupName(look, SetupMark.A, "Shock K"),
            new SetupName(look, SetupMark.B, "Shock L"),
            new ErrorNote(
                "Lap 12 has a time of 9:33.1, which is not a time of this trail.",
                List.of("laps.csv, line 14, column “lap time”.", "Nothing was recorded.")),
            new ProgressBar(0.4),
            presses(look));
    all.setStyle("-fx-padding: 30;");
    return new BorderPane(all);
  }
}
