package blindlap.screen.model;

import blindlap.desk.Desk;
import blindlap.session.SessionId;
import blindlap.session.SessionState;
import blindlap.session.Step;
import blindlap.wording.NotebookWords;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** The Notebook page: where was I, and what has been found so far. */
public final class NotebookModel {
  private final Desk desk;
  private final Shell shell;
  private final Background background;
  private final ObservableList<Row> rows = FXCollections.observableArrayList();
  private final ReadOnlyObjectWrapper<Answer> answer = new ReadOnlyObjectWrapper<>(Answer.EMPTY);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");

  /**
   * One session in the list. Holds nothing of a key that is still sealed.
   *
   * @param id which session
   * @param day its day
   * @param title the setups
   * @param facts rider, trail, stints, worthwhile difference
   * @param outcome verdict phrase once unsealed, else where the session stands
   * @param detail difference with its interval once unsealed; may be empty
   * @param step where it stands
   */
  public record Row(
      SessionId id,
      LocalDate day,
      String title,
      String facts,
      String outcome,
      String detail,
      Step step) {}

  /**
   * The answer of the page: the session in progress, else the latest finding.
   *
   * @param before words before the marked ones
   * @param marked words with the stroke
   * @param after words after them
   * @param lead what it means
   * @param about the session it is about, if any
   */
  public record Answer(
      String before, String marked, String after, String lead, Optional<Row> about) {
    static final Answer EMPTY = new Answer("", "", "", "", Optional.empty());
  }

  public NotebookModel(Desk desk, Shell shell, Background background) {
    this.desk = desk;
    this.shell = shell;
    this.background = background;
  }

  /** Sessions, latest first. */
  public ObservableList<Row> rows() {
    return rows;
  }

  /** The answer of the page. */
  public ReadOnlyObjectProperty<Answer> answerProperty() {
    return answer.getReadOnlyProperty();
  }

  /** One sentence if the notebook cannot be read; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Reads the list anew. */
  public void refresh() {
    background.run(
        () -> desk.sessions().all().stream().map(this::row).toList(), this::show, this::fail);
  }

  /** Opens a session on the page that fits its step. */
  public void open(Row row) {
    Shell.Page page = row.step().day() ? Shell.Page.RIDE : Shell.Page.REVIEW;
    shell.open(page, row.id());
  }

  private Row row(SessionState state) {
    return new Row(
        state.id(),
        state.plan().day(),
        state.plan().title(),
        NotebookWords.facts(state.plan()),
        desk.reviews().verdict(state).orElse(NotebookWords.step(state.step())),
        desk.reviews().headline(state).orElse(""),
        state.step());
  }

  private void show(List<Row> list) {
    trouble.set("");
    rows.setAll(list);
    answer.set(answer(list));
  }

  private void fail(Exception problem) {
    trouble.set(String.valueOf(problem.getMessage()));
  }

  private static Answer answer(List<Row> list) {
    if (list.isEmpty()) {
      return new Answer(
          "", NotebookWords.say("empty"), "", NotebookWords.say("empty.lead"), Optional.empty());
    }
    Optional<Row> open =
        list.stream().filter(r -> r.step().ordinal() < Step.UNSEALED.ordinal()).findFirst();
    if (open.isPresent()) {
      Row row = open.get();
      return new Answer(row.title() + ": ", row.outcome(), ".", row.facts(), open);
    }
    Row latest = list.get(0);
    return new Answer(
        latest.title() + ": ", latest.outcome(), ".", latest.detail(), Optional.of(latest));
  }
}
