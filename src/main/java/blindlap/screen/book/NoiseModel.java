package blindlap.screen.book;

import blindlap.desk.RiderHistory;
import blindlap.review.NoiseRecord;
import blindlap.screen.part.Background;
import blindlap.wording.NoiseWords;
import blindlap.wording.day.Trouble;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.jspecify.annotations.Nullable;

/** The room of rider noise: whose, where, in which measure, and how it went over the days. */
public final class NoiseModel {
  private final RiderHistory history;
  private final Background background;
  private final ObservableList<Place> places = FXCollections.observableArrayList();
  private final ObservableList<What> measures = FXCollections.observableArrayList();
  private final ObjectProperty<@Nullable Place> place = new SimpleObjectProperty<>();
  private final ObjectProperty<@Nullable What> measure = new SimpleObjectProperty<>();
  private final ReadOnlyObjectWrapper<NoiseView> view = new ReadOnlyObjectWrapper<>(NoiseView.NONE);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private int asked;

  /** A rider on a trail, in words. */
  public record Place(RiderHistory.Where where, String words) {}

  /** A measure, in words. */
  public record What(NoiseRecord record, String words) {}

  public NoiseModel(RiderHistory history, Background background) {
    this.history = history;
    this.background = background;
    place.addListener((o, before, now) -> records());
    measure.addListener((o, before, now) -> show());
  }

  /** Riders and trails, the latest first. */
  public ObservableList<Place> places() {
    return places;
  }

  /** Measures of the chosen rider and trail, primary ones first. */
  public ObservableList<What> measures() {
    return measures;
  }

  /** The chosen rider and trail. */
  public ObjectProperty<@Nullable Place> placeProperty() {
    return place;
  }

  /** The chosen measure. */
  public ObjectProperty<@Nullable What> measureProperty() {
    return measure;
  }

  /** What is said of it. */
  public ReadOnlyObjectProperty<NoiseView> viewProperty() {
    return view.getReadOnlyProperty();
  }

  /** One sentence if something went wrong; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Reads riders and trails anew and stays with the one that is chosen. */
  public void refresh() {
    background.run(history::everywhere, this::places, this::fail);
  }

  private void places(List<RiderHistory.Where> all) {
    Place before = place.get();
    List<Place> now =
        all.stream()
            .map(w -> new Place(w, NoiseWords.say("page.place", w.rider(), w.trail())))
            .toList();
    places.setAll(now);
    Optional<Place> same =
        before == null
            ? Optional.empty()
            : now.stream().filter(p -> p.words().equals(before.words())).findFirst();
    Place next = same.orElse(now.isEmpty() ? null : now.get(0));
    place.set(null);
    place.set(next);
  }

  private void records() {
    int mine = ++asked;
    Place now = place.get();
    if (now == null) {
      measures.clear();
      measure.set(null);
      view.set(NoiseView.NONE);
      return;
    }
    background.run(
        () -> history.records(now.where().rider(), now.where().trail()),
        found -> {
          if (mine == asked) {
            told(now, found);
          }
        },
        this::fail);
  }

  private void told(Place now, List<NoiseRecord> found) {
    What before = measure.get();
    List<What> words =
        found.stream().map(record -> new What(record, NoiseWords.what(record))).toList();
    measures.setAll(words);
    if (words.isEmpty()) {
      measure.set(null);
      view.set(NoiseView.nothing(now.where().rider(), now.where().trail()));
      return;
    }
    // The first one that has a noise at all speaks first.
    What first =
        words.stream()
            .filter(w -> w.record().pooled().isPresent())
            .findFirst()
            .orElse(words.get(0));
    What next =
        before == null
            ? first
            : words.stream()
                .filter(w -> w.words().equals(before.words()))
                .findFirst()
                .orElse(first);
    measure.set(null);
    measure.set(next);
  }

  private void show() {
    What now = measure.get();
    Place where = place.get();
    if (now == null || where == null) {
      return;
    }
    int mine = asked;
    background.run(
        () -> NoiseView.of(now.record(), where.where().sessions()),
        shown -> {
          if (mine == asked && now.equals(measure.get())) {
            trouble.set("");
            view.set(shown);
          }
        },
        this::fail);
  }

  private void fail(Exception problem) {
    trouble.set(Trouble.sentence(problem));
  }
}
