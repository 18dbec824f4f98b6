package blindlap.screen.book;

import blindlap.desk.FieldBook;
import blindlap.desk.WholeFiles;
import blindlap.review.FieldFinding;
import blindlap.screen.part.Background;
import blindlap.wording.FieldWords;
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

/** The room of fields: whose, against which setup, and how the others stand to it. */
public final class FieldModel {
  private final FieldBook book;
  private final Background background;
  private final ObservableList<Choice> fields = FXCollections.observableArrayList();
  private final ObservableList<Reference> references = FXCollections.observableArrayList();
  private final ObjectProperty<@Nullable Choice> chosen = new SimpleObjectProperty<>();
  private final ObjectProperty<@Nullable Reference> reference = new SimpleObjectProperty<>();
  private final ReadOnlyObjectWrapper<FieldView> view =
      new ReadOnlyObjectWrapper<>(FieldView.WAITING);
  private final ReadOnlyStringWrapper notice = new ReadOnlyStringWrapper("");
  private int asked;

  /** What is in view; null while nothing is. */
  private FieldBook.Result.@Nullable Found shown;

  /** True while the model itself sets what is chosen. */
  private boolean setting;

  /** A field, in words. */
  public record Choice(FieldFinding.Asked asked, String words) {}

  /** A setup that others can be compared with. */
  public record Reference(String id, String words) {}

  public FieldModel(FieldBook book, Background background) {
    this.book = book;
    this.background = background;
    chosen.addListener((o, before, now) -> choose(now));
    reference.addListener((o, before, now) -> turn(now));
  }

  /** Every field, the one with the latest day first. */
  public ObservableList<Choice> fields() {
    return fields;
  }

  /** The setups of the chosen field. */
  public ObservableList<Reference> references() {
    return references;
  }

  /** The chosen field. */
  public ObjectProperty<@Nullable Choice> chosenProperty() {
    return chosen;
  }

  /** The chosen reference. */
  public ObjectProperty<@Nullable Reference> referenceProperty() {
    return reference;
  }

  /** What is said of it. */
  public ReadOnlyObjectProperty<FieldView> viewProperty() {
    return view.getReadOnlyProperty();
  }

  /** What became of the report, in a sentence; empty if none was asked for. */
  public ReadOnlyStringProperty noticeProperty() {
    return notice.getReadOnlyProperty();
  }

  /** Reads the fields anew and stays with the one that is chosen. */
  public void refresh() {
    background.aside(book::all, this::show, this::fail);
  }

  private void show(List<FieldFinding.Asked> all) {
    Choice before = chosen.get();
    Reference against = reference.get();
    setting = true;
    fields.setAll(all.stream().map(each -> new Choice(each, FieldWords.named(each))).toList());
    Choice same = before != null && fields.contains(before) ? before : null;
    Choice now = same != null ? same : fields.isEmpty() ? null : fields.get(0);
    chosen.set(now);
    setting = false;
    if (now == null) {
      shown = null;
      references.clear();
      view.set(FieldView.NONE);
    } else {
      read(now, same != null && against != null ? against.id() : null);
    }
  }

  private void choose(@Nullable Choice now) {
    if (!setting && now != null) {
      view.set(FieldView.WAITING);
      read(now, null);
    }
  }

  private void turn(@Nullable Reference now) {
    Choice of = chosen.get();
    if (!setting && now != null && of != null) {
      read(of, now.id());
    }
  }

  private void read(Choice choice, @Nullable String against) {
    int mine = ++asked;
    background.aside(
        () -> book.of(choice.asked(), against),
        result -> {
          if (mine == asked) {
            answer(result);
          }
        },
        this::fail);
  }

  private void answer(FieldBook.Result result) {
    if (result instanceof FieldBook.Result.Refused refused) {
      view.set(
          FieldView.told(FieldWords.say("page.failed"), Problems.sentences(refused.problems())));
      return;
    }
    FieldBook.Result.Found found = (FieldBook.Result.Found) result;
    FieldFinding finding = found.finding();
    shown = found;
    notice.set("");
    setting = true;
    references.setAll(
        finding.setups().stream()
            .map(setup -> new Reference(setup.id(), setup.name()))
            .sorted(java.util.Comparator.comparing(Reference::words))
            .toList());
    Optional<String> id = finding.reference().map(setup -> setup.id());
    reference.set(
        references.stream()
            .filter(r -> id.filter(r.id()::equals).isPresent())
            .findFirst()
            .orElse(null));
    setting = false;
    view.set(FieldView.of(finding, found.beside()));
  }

  /** Writes the report of what is in view to a folder. */
  public void report(Path folder) {
    FieldBook.Result.Found found = shown;
    if (found != null) {
      background.aside(
          () -> {
            Map<String, byte[]> files = book.report(found, false);
            return WrittenWords.said(WholeFiles.written(folder, files), folder, files.keySet());
          },
          notice::set,
          problem -> notice.set(FieldWords.say("page.trouble", Trouble.sentence(problem))));
    }
  }

  private void fail(Exception problem) {
    view.set(
        FieldView.told(
            FieldWords.say("page.failed"),
            List.of(FieldWords.say("page.trouble", Trouble.sentence(problem)))));
  }
}
