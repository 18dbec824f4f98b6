package blindlap.screen.trail;

import blindlap.desk.TrailBook;
import blindlap.desk.TrailDraft;
import blindlap.fault.TypedNumber;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.recording.Track;
import blindlap.screen.part.Background;
import blindlap.screen.part.TypedForm;
import blindlap.session.KeptTrail;
import blindlap.session.TrailTitle;
import blindlap.wording.TrailWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.jspecify.annotations.Nullable;

/**
 * The Trail page: a line, its gates, what is kept of them. Nothing is kept before {@link #keep};
 * every change of a gate can be taken back.
 */
public final class TrailModel {
  private final TrailBook book;
  private final Background background;
  private final TypedForm form = new TypedForm(() -> {});
  private final ObservableList<TrailTitle> titles = FXCollections.observableArrayList();
  private final ObjectProperty<@Nullable TrailTitle> title = new SimpleObjectProperty<>();
  private final ReadOnlyStringWrapper notice = new ReadOnlyStringWrapper("");
  private final TrailInHand hand = new TrailInHand(form, () -> notice.set(""));
  private final ReadOnlyBooleanWrapper recording = new ReadOnlyBooleanWrapper();
  private @Nullable Track track;

  public TrailModel(TrailBook book, Background background) {
    this.book = book;
    this.background = background;
    title.addListener((o, before, now) -> open(now));
  }

  /** The fields: name, gate, along, width, new, from, to. */
  public TypedForm form() {
    return form;
  }

  /** Every version of every trail, the latest of each first. */
  public ObservableList<TrailTitle> titles() {
    return titles;
  }

  /** The version that is open; null for a line that is not kept yet. */
  public ObjectProperty<@Nullable TrailTitle> titleProperty() {
    return title;
  }

  /** The line and gates in hand. */
  public TrailInHand hand() {
    return hand;
  }

  /** What became of the last request; empty if there was none. */
  public ReadOnlyStringProperty noticeProperty() {
    return notice.getReadOnlyProperty();
  }

  /** True while a recording is in hand, of which another lap can be taken. */
  public ReadOnlyBooleanProperty recordingProperty() {
    return recording.getReadOnlyProperty();
  }

  /** Reads the list of trails anew; what is in hand stays. */
  public void refresh() {
    background.run(book::titles, found -> listed(found, title.get()), this::fail);
  }

  private void listed(List<TrailTitle> found, @Nullable TrailTitle wanted) {
    List<TrailTitle> sorted = new ArrayList<>(found);
    sorted.sort(
        java.util.Comparator.comparing(TrailTitle::name)
            .thenComparing(java.util.Comparator.comparingInt(TrailTitle::number).reversed()));
    titles.setAll(sorted);
    TrailTitle next = wanted != null && sorted.contains(wanted) ? wanted : null;
    if (next == null && sight().draft().isEmpty() && !sorted.isEmpty()) {
      next = sorted.get(0);
    }
    title.set(next);
  }

  private void open(@Nullable TrailTitle now) {
    if (now == null || sight().kept().filter(now::equals).isPresent()) {
      return;
    }
    background.run(
        () -> book.find(now.name(), now.number()).orElseThrow(),
        kept -> {
          notice.set("");
          shown(kept);
        },
        this::fail);
  }

  private void shown(KeptTrail kept) {
    TrailDraft draft = TrailDraft.of(kept.trail());
    int chosen = sight().chosen() < draft.gates().size() ? Math.max(0, sight().chosen()) : 0;
    hand.open(TrailSight.of(draft, chosen, Optional.of(kept.title()), false));
    background.whenQuiet(
        () -> TrailWords.uses(kept.title(), book.uses(kept.title())),
        lines -> {
          if (sight().kept().filter(kept.title()::equals).isPresent()) {
            hand.uses(lines);
          }
        },
        this::fail);
  }

  private TrailSight sight() {
    return hand.sightProperty().get();
  }

  /** Reads a recording; the whole of it is taken for one lap. */
  public void readRecording(Path file) {
    notice.set("");
    background.run(
        () -> TrailFiles.recording(file),
        read -> {
          track = read;
          recording.set(true);
          form.field("from").set("0");
          form.field("to")
              .set(
                  TrailWords.metres(
                      Math.floor(read.fixes().get(read.fixes().size() - 1).seconds())));
          takeLap();
        },
        this::fail);
  }

  /** Takes the lap between two typed seconds of the recording in hand. */
  public void takeLap() {
    Track now = track;
    Optional<Double> from = number("from");
    Optional<Double> to = number("to");
    Map<String, String> wrong = new HashMap<>();
    for (String field : List.of("from", "to")) {
      if (number(field).isEmpty()) {
        wrong.put(field, TrailWords.say("page.no.seconds", form.field(field).get()));
      }
    }
    form.tell("", wrong);
    if (now == null || from.isEmpty() || to.isEmpty()) {
      return;
    }
    String name = form.field("name").get().strip();
    background.run(
        () -> TrailFiles.lap(name, now, from.get(), to.get() + 1),
        draft -> read(draft, ""),
        this::fail);
  }

  private Optional<Double> number(String field) {
    return TypedNumber.number(form.field(field).get().strip()).map(Number::doubleValue);
  }

  /** Reads a trail from GeoJSON. */
  public void readGeoJson(Path file) {
    notice.set("");
    background.run(
        () -> TrailDraft.of(TrailFiles.trail(file)),
        draft -> {
          track = null;
          recording.set(false);
          read(draft, draft.name());
        },
        this::fail);
  }

  private void read(TrailDraft draft, String name) {
    hand.open(TrailSight.of(draft, draft.gates().isEmpty() ? -1 : 0, Optional.empty(), true));
    title.set(null);
    notice.set(
        TrailWords.say(
            "page.read",
            name.isEmpty() ? TrailWords.say("page.map") : name,
            TrailWords.metres(Math.round(draft.length()))));
  }

  /** The trail in hand under the typed name; what is wrong with it is said. */
  private Optional<Trail> trail() {
    try {
      Optional<TrailDraft> draft = sight().draft();
      return draft.isEmpty()
          ? Optional.empty()
          : Optional.of(draft.get().named(form.field("name").get().strip()).trail());
    } catch (Unreadable e) {
      notice.set(Problems.sentence(e.problem()));
      return Optional.empty();
    }
  }

  /** Keeps what is in hand as a version. */
  public void keep() {
    hand.apply();
    trail().ifPresent(this::keep);
  }

  private void keep(Trail trail) {
    background.run(
        () -> {
          boolean fresh = book.find(trail.version(0, TrailBook.sha256(trail))).isEmpty();
          return new Kept(book.keep(trail), fresh, book.titles());
        },
        done -> {
          shown(done.kept());
          listed(done.titles(), done.kept().title());
          notice.set(
              TrailWords.say(
                  done.fresh() ? "page.kept" : "page.kept.before",
                  done.kept().title().name(),
                  String.valueOf(done.kept().title().number())));
        },
        this::fail);
  }

  private record Kept(KeptTrail kept, boolean fresh, List<TrailTitle> titles) {}

  /** Writes what is in hand as GeoJSON. */
  public void writeGeoJson(Path target) {
    trail()
        .ifPresent(
            trail ->
                background.run(
                    () -> TrailFiles.write(trail, target),
                    path -> notice.set(TrailWords.say("page.written", path)),
                    this::fail));
  }

  private void fail(Exception problem) {
    notice.set(
        problem instanceof TrailFiles.Unusable unusable
            ? unusable.sentence()
            : Trouble.sentence(problem));
  }
}
