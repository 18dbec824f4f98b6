package blindlap.screen.book;

import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.RecordTable;
import blindlap.screen.part.RoomFrame;
import blindlap.screen.part.WholeChoice;
import blindlap.wording.NoiseWords;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.stream.Stream;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The room of rider noise: how steady a rider is on a trail, and how that went over the days. */
final class NoisePage extends BorderPane {
  private static final double[] SHARES = {17, 25, 22, 16, 11, 9};
  private static final double SHOWS = 420;

  private final Look look;
  private final NoiseModel model;
  private final PageGrid page;
  private final RoomFrame frame;

  NoisePage(Look look, NoiseModel model, Runnable away) {
    this.look = look;
    this.model = model;
    this.page = new PageGrid(look);
    ComboBox<NoiseModel.Place> place = new WholeChoice<>(model.places());
    place.valueProperty().bindBidirectional(model.placeProperty());
    ComboBox<NoiseModel.What> measure = new WholeChoice<>(model.measures());
    measure.valueProperty().bindBidirectional(model.measureProperty());
    this.frame =
        new RoomFrame(
            page,
            away,
            RoomFrame.choice(NoiseWords.say("page.choose"), place, NoiseModel.Place::words),
            RoomFrame.choice(NoiseWords.say("page.measure"), measure, NoiseModel.What::words));
    setCenter(frame);
    model.viewProperty().addListener((o, before, now) -> show(now));
    show(model.viewProperty().get());
  }

  void enter() {
    model.refresh();
    frame.enter();
  }

  private void show(NoiseView view) {
    page.clear();
    AnswerSentence answer = new AnswerSentence(look, NoiseWords.say("page.question"));
    answer.say(view.headline().before(), view.headline().phrase(), view.headline().after());
    Label trouble = words("", "strong");
    trouble.textProperty().bind(model.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    page.add(new VBox(16, answer, new Lead(view.lead()), trouble));
    view.picture()
        .ifPresent(
            drawing ->
                page.add(
                    new VBox(10, h2("page.picture"), new PlotView(look, drawing)),
                    new MarginNote(
                        NoiseWords.say("page.picture.title"),
                        NoiseWords.say("page.picture.note"))));
    if (!view.facts().isEmpty()) {
      page.add(
          new VBox(10, h2("page.facts"), lines(view.facts())),
          new MarginNote(NoiseWords.say("page.normally.title"), NoiseWords.say("normally")));
    }
    if (!view.shows().isEmpty()) {
      page.add(shows(view.shows()));
    }
    if (!view.days().isEmpty()) {
      List<String> heads =
          Stream.of("day", "sort", "noise", "drift", "voids", "stints")
              .map(head -> NoiseWords.say("page.th." + head))
              .toList();
      page.addWide(
          new VBox(10, h2("page.days"), new RecordTable(look, SHARES, heads, view.days())));
    }
    page.add(new VBox(new Caution(Words.of("report").say("caution"), caution())));
  }

  private static String caution() {
    return Words.of("cautions").say("ride");
  }

  private static Label h2(String key) {
    return words(NoiseWords.say(key), "h2");
  }

  private VBox shows(List<NoiseNote.Shows> rows) {
    VBox box = new VBox(10, h2("shows"), words(NoiseWords.say("shows.note"), "note", "second"));
    VBox table = new VBox();
    table.maxWidthProperty().bind(look.px(SHOWS));
    for (NoiseNote.Shows row : rows) {
      Label difference = words(row.difference(), "strong");
      difference.setMinWidth(USE_PREF_SIZE);
      Region gap = new Region();
      HBox.setHgrow(gap, Priority.ALWAYS);
      HBox line = new HBox(words(row.stints()), gap, difference);
      line.getStyleClass().add("ruled");
      table.getChildren().add(line);
    }
    box.getChildren().add(table);
    return box;
  }
}
