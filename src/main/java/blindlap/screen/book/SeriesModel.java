package blindlap.screen.book;

import blindlap.desk.SeriesBook;
import blindlap.desk.SeriesReports;
import blindlap.desk.Sessions;
import blindlap.desk.WholeFiles;
import blindlap.screen.part.Background;
import blindlap.session.SeriesEnded;
import blindlap.wording.SeriesWords;
import blindlap.wording.WrittenWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
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

/** The room of series: which there are, how far each is, and at its end what it found. */
public final class SeriesModel {
  private final SeriesBook book;
  private final SeriesReports reports;
  private final NextSession next;
  private final Background background;
  private final ObservableList<Choice> series = FXCollections.observableArrayList();
  private final ObservableList<String> repeats = FXCollections.observableArrayList();
  private final ObjectProperty<@Nullable Choice> chosen = new SimpleObjectProperty<>();
  private final ReadOnlyObjectWrapper<SeriesView> view =
      new ReadOnlyObjectWrapper<>(SeriesView.WAITING);
  private final ReadOnlyStringWrapper notice = new ReadOnlyStringWrapper("");
  private int asked;

  /** The series that is in view; empty while none is. */
  private String shown = "";

  /** A series, in words. */
  public record Choice(String id, String words) {}

  private record Read(List<SeriesBook.Line> lines, List<SeriesBook.Repeat> repeats) {}

  public SeriesModel(
      SeriesBook book, SeriesReports reports, NextSession next, Background background) {
    this.next = next;
    this.book = book;
    this.reports = reports;
    this.background = background;
    chosen.addListener((o, before, now) -> show());
  }

  /** Every series, the latest first. */
  public ObservableList<Choice> series() {
    return series;
  }

  /** Repeats decided after seeing a result, outside any series, in words. */
  public ObservableList<String> repeats() {
    return repeats;
  }

  /** The chosen series. */
  public ObjectProperty<@Nullable Choice> chosenProperty() {
    return chosen;
  }

  /** What is said of it. */
  public ReadOnlyObjectProperty<SeriesView> viewProperty() {
    return view.getReadOnlyProperty();
  }

  /** What became of the last request, in a sentence; empty if there was none. */
  public ReadOnlyStringProperty noticeProperty() {
    return notice.getReadOnlyProperty();
  }

  /** Reads the series anew and stays with the one that is chosen. */
  public void refresh() {
    background.run(() -> new Read(book.all(), book.repeats()), this::show, this::failToShow);
  }

  private void show(Read read) {
    Choice before = chosen.get();
    series.setAll(
        read.lines().stream()
            .map(
                line ->
                    new Choice(
                        line.id(), SeriesWords.say("page.choice", line.id(), line.question())))
            .toList());
    repeats.setAll(SeriesView.some(read.repeats().stream().map(SeriesModel::repeat).toList()));
    Optional<Choice> same =
        before == null
            ? Optional.empty()
            : series.stream().filter(c -> c.id().equals(before.id())).findFirst();
    Choice next = same.orElse(series.isEmpty() ? null : series.get(0));
    chosen.set(null);
    chosen.set(next);
    if (next == null) {
      shown = "";
      view.set(SeriesView.NONE);
    }
  }

  private static String repeat(SeriesBook.Repeat repeat) {
    return SeriesWords.say(
        "repeat",
        repeat.later().id().brief(),
        repeat.later().day(),
        repeat.earlier().id().brief(),
        repeat.earlier().day());
  }

  private void show() {
    int mine = ++asked;
    Choice now = chosen.get();
    notice.set("");
    if (now == null) {
      return;
    }
    // Pooling takes its time: until then no other series' answer stands under this one's name.
    if (!now.id().equals(shown)) {
      shown = "";
      view.set(SeriesView.WAITING);
    }
    background.aside(
        () -> SeriesView.of(book, now.id()),
        found -> {
          if (mine == asked) {
            shown = now.id();
            view.set(found);
          }
        },
        this::failToShow);
  }

  /** Ends the chosen series early: it pools no verdict from then on. */
  public void end(String reason, String decidedBy) {
    Choice now = chosen.get();
    if (now == null) {
      return;
    }
    background.run(
        () -> book.end(now.id(), new SeriesEnded(reason.strip(), decidedBy.strip())),
        result -> {
          if (result instanceof Sessions.Result.Refused refused) {
            notice.set(String.join(" ", Problems.sentences(refused.problems())));
          } else {
            refresh();
          }
        },
        this::fail);
  }

  /** Makes a draft of the next session of the chosen series and goes there. */
  public void planNext() {
    Choice now = chosen.get();
    if (now != null) {
      next.plan(now.id(), notice::set);
    }
  }

  /** Writes the report of the chosen series; refused before its end. */
  public void report(Path folder) {
    Choice now = chosen.get();
    if (now == null) {
      return;
    }
    background.aside(() -> written(reports.of(now.id(), false), folder), notice::set, this::fail);
  }

  private static String written(SeriesReports.Result result, Path folder) {
    if (result instanceof SeriesReports.Result.Refused refused) {
      return String.join(" ", Problems.sentences(refused.problems()));
    }
    Map<String, byte[]> files = ((SeriesReports.Result.Made) result).files();
    return WrittenWords.said(WholeFiles.written(folder, files), folder, files.keySet());
  }

  private void failToShow(Exception problem) {
    fail(problem);
    if (shown.isEmpty()) {
      view.set(SeriesView.told(SeriesWords.say("page.failed"), List.of(notice.get())));
    }
  }

  private void fail(Exception problem) {
    notice.set(SeriesWords.say("page.trouble", Trouble.sentence(problem)));
  }
}
