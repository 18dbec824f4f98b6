package blindlap.screen.book;

import blindlap.desk.RiderHistory;
import blindlap.desk.SessionList;
import blindlap.desk.Sessions;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.session.SessionSummary;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import blindlap.wording.NotebookWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** The Notebook page: where was I, and what has been found so far. */
public final class NotebookModel {
  private static final int VERDICTS_AT_A_TIME = 3;
  private final RiderHistory history;
  private final SessionList list;
  private final NextSession next;
  private final Shell shell;
  private final Background background;
  private final ObservableList<Row> rows = FXCollections.observableArrayList();
  private final ReadOnlyObjectWrapper<Answer> answer = new ReadOnlyObjectWrapper<>(Answer.NONE);
  private final ReadOnlyObjectWrapper<NoiseNote> noise =
      new ReadOnlyObjectWrapper<>(NoiseNote.NONE);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper found = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper empty = new ReadOnlyBooleanWrapper(false);
  private final StringProperty search = new SimpleStringProperty("");
  private long seen = Long.MIN_VALUE;
  private int asked;
  private Optional<SessionId> inHand = Optional.empty();
  private Answer plain = Answer.NONE;
  private OfSeries ofSeries = new OfSeries("", "");

  /**
   * One session in the list. Holds nothing of a key that is still sealed.
   *
   * @param id which session
   * @param day its day
   * @param title the setups
   * @param facts rider and trail
   * @param outcome verdict phrase once unsealed, else where the session stands
   * @param detail difference with its interval once unsealed, or why it was abandoned; may be empty
   * @param step where it stands
   * @param series id of its series; empty for a session of its own
   */
  public record Row(
      SessionId id,
      LocalDate day,
      String title,
      String facts,
      String outcome,
      String detail,
      Step step,
      String series) {}

  /**
   * The answer of the page: the session in progress, else the latest finding.
   *
   * @param before words before the marked ones
   * @param marked words with the stroke
   * @param after words after them
   * @param lead what it means
   * @param about the session it is about, if any
   * @param next words of the next step; empty if there is none
   * @param stints stints of the session in hand; 0 if none is
   * @param ridden those that are ridden
   * @param behindCover words of the button to a page behind the cover; empty where there is none
   */
  public record Answer(
      String before,
      String marked,
      String after,
      String lead,
      Optional<Row> about,
      String next,
      int stints,
      int ridden,
      String behindCover) {
    /** With no session in hand. */
    Answer(
        String before, String marked, String after, String lead, Optional<Row> about, String next) {
      this(before, marked, after, lead, about, next, 0, 0, "");
    }

    /** The same with where its series stands, if that is the session's. */
    private Answer and(OfSeries told) {
      boolean own =
          about.filter(row -> !told.id().isEmpty() && row.series().equals(told.id())).isPresent();
      return own
          ? new Answer(
              before,
              marked,
              after,
              lead + " " + told.words(),
              about,
              next,
              stints,
              ridden,
              behindCover)
          : this;
    }

    static final Answer NONE = new Answer("", "", "", "", Optional.empty(), "");
  }

  private record OfSeries(String id, String words) {}

  public NotebookModel(
      SessionList list,
      RiderHistory history,
      NextSession next,
      Shell shell,
      Background background) {
    this.history = history;
    this.list = list;
    this.next = next;
    this.shell = shell;
    this.background = background;
    search.addListener((o, before, now) -> refresh());
  }

  /** Sessions that the search finds, latest first. */
  public ObservableList<Row> rows() {
    return rows;
  }

  /** What is searched for, as typed. */
  public StringProperty searchProperty() {
    return search;
  }

  /** How many sessions the search found; empty without a search. */
  public ReadOnlyStringProperty foundProperty() {
    return found.getReadOnlyProperty();
  }

  /** The answer of the page. */
  public ReadOnlyObjectProperty<Answer> answerProperty() {
    return answer.getReadOnlyProperty();
  }

  /** The rider's noise, for the margin. */
  public ReadOnlyObjectProperty<NoiseNote> noiseProperty() {
    return noise.getReadOnlyProperty();
  }

  /** True for a notebook without any session. */
  public ReadOnlyBooleanProperty emptyProperty() {
    return empty.getReadOnlyProperty();
  }

  /** One sentence if something went wrong; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Reads the list anew, off the interface thread. */
  public void refresh() {
    int mine = ++asked;
    String words = search.get();
    background.run(
        () -> {
          long version = list.version();
          List<SessionSummary> all = list.find("");
          List<SessionSummary> found = words.isBlank() ? all : list.find(words);
          return new NotebookRead(all, found, list.inHand(all), version, list.knownInSeries(all));
        },
        read -> {
          if (mine == asked) {
            show(read);
          }
        },
        this::fail);
  }

  /** Looks whether another window has written; called about every second while in view. */
  public void look() {
    background.run(
        list::version,
        now -> {
          if (now != seen) {
            refresh();
          }
        },
        this::fail);
  }

  private void show(NotebookRead read) {
    boolean changed = read.version() != seen;
    seen = read.version();
    trouble.set("");
    empty.set(read.all().isEmpty());
    inHand = read.inHand().map(hand -> hand.summary().id());
    List<Row> now =
        read.found().stream()
            .filter(s -> !search.get().isBlank() || !inHand.equals(Optional.of(s.id())))
            .map(each -> row(each, read))
            .toList();
    if (!now.equals(List.copyOf(rows))) {
      rows.setAll(now);
    }
    found.set(search.get().isBlank() ? "" : NotebookWords.found(now.size(), read.all().size()));
    plain = answer(read);
    answer.set(plain.and(ofSeries));
    if (changed) {
      margin(read);
      series();
      keepVerdicts();
    }
  }

  /** Where series stand, or what they answer: worked out when nothing else is, and then shown. */
  private void series() {
    String id = plain.about().map(Row::series).orElse("");
    if (rows.stream().allMatch(row -> row.series().isEmpty()) && id.isEmpty()) {
      return;
    }
    background.asideWhenQuiet(
        () -> {
          list.inSeries(list.find(""));
          return new OfSeries(id, id.isEmpty() ? "" : list.series(id).orElse(""));
        },
        told -> {
          ofSeries = told;
          answer.set(plain.and(told));
          refresh();
        },
        this::fail);
  }

  private void margin(NotebookRead read) {
    Optional<SessionSummary> about =
        read.inHand().map(SessionList.InHand::summary).or(() -> read.all().stream().findFirst());
    if (about.isEmpty()) {
      noise.set(NoiseNote.NONE);
      return;
    }
    background.whenQuiet(() -> NoiseNote.of(history, about.get()), noise::set, this::fail);
  }

  private void keepVerdicts() {
    background.asideWhenQuiet(
        () -> list.keepVerdicts(VERDICTS_AT_A_TIME),
        kept -> {
          if (kept) {
            refresh();
          }
        },
        this::fail);
  }

  private void fail(Exception problem) {
    trouble.set(Trouble.sentence(problem));
  }

  /** Opens a session on the page that fits its step. */
  public void open(Row row) {
    Shell.Page page = row.step().day() ? Shell.Page.RIDE : Shell.Page.REVIEW;
    shell.open(page, row.id());
  }

  /** Opens the committed plan of a session, to be read. */
  public void readPlan(Row row) {
    shell.readPlan(row.id());
  }

  /** Goes to the helper's page of a session. */
  public void openAsHelper(Row row) {
    shell.open(Shell.Page.SWAP, row.id());
  }

  /** Goes to the Plan page. */
  public void plan() {
    shell.go(Shell.Page.PLAN);
  }

  /** Goes to the Plan page with a new plan. */
  public void begin(Shell.Beginning as) {
    shell.beginPlan(as);
  }

  /** Makes a draft of a session's plan, without its day and override, and goes there. */
  public void copyAsPlan(SessionId session) {
    next.copy(session, trouble::set);
  }

  /** Makes a draft of the next session of a series and goes there; else it says why not. */
  public void nextOfSeries(String series) {
    next.plan(series, trouble::set);
  }

  /**
   * What would be abandoned: the chosen session, else the one in hand, never a finding that only
   * happens to stand at the top.
   */
  Optional<Row> toAbandon(Optional<Row> chosen) {
    return chosen
        .or(() -> answer.get().about().filter(row -> inHand.equals(Optional.of(row.id()))))
        .filter(row -> row.step() != Step.ABANDONED);
  }

  /**
   * Ends a session without a finding; its entries are kept.
   *
   * @param unawareBy who declares not to know key or setups; empty if nobody does
   */
  public void abandon(Row row, String reason, String unawareBy) {
    background.run(
        () -> list.abandon(row.id(), reason, unawareBy),
        result -> {
          if (result instanceof Sessions.Result.Refused refused) {
            trouble.set(String.join(" ", Problems.sentences(refused.problems())));
          } else {
            refresh();
          }
        },
        this::fail);
  }

  private static Answer answer(NotebookRead read) {
    List<SessionSummary> all = read.all();
    if (all.isEmpty()) {
      return new Answer(
          "",
          NotebookWords.say("empty"),
          "",
          NotebookWords.say("empty.lead"),
          Optional.empty(),
          NotebookWords.say("empty.next"));
    }
    if (read.inHand().isPresent()) {
      return inHand(read.inHand().get(), read);
    }
    // Old days come in late and find nothing: the latest comparison speaks, if there is one.
    Row latest =
        row(all.stream().filter(s -> s.kind().drawn()).findFirst().orElse(all.get(0)), read);
    List<String> lead =
        new ArrayList<>(List.of(NotebookWords.sentence(latest.detail()), latest.facts()));
    lead.removeIf(String::isEmpty);
    return new Answer(
        latest.title() + ": ",
        latest.outcome(),
        ".",
        String.join(". ", lead) + ".",
        Optional.of(latest),
        NotebookWords.say("open"));
  }

  private static Answer inHand(SessionList.InHand hand, NotebookRead read) {
    Row row = row(hand.summary(), read);
    HandWords words = HandWords.of(hand);
    return new Answer(
        "",
        words.marked(),
        words.after(),
        NotebookWords.say("hand." + hand.order().name(), row.title(), row.facts(), row.day()),
        Optional.of(row),
        words.next(),
        hand.stints(),
        hand.ridden(),
        words.behindCover());
  }

  private static Row row(SessionSummary each, NotebookRead read) {
    List<String> outcome = NotebookWords.outcome(each);
    String facts = NotebookWords.facts(each);
    String said = read.series().getOrDefault(each.id(), "");
    return new Row(
        each.id(),
        each.day(),
        NotebookWords.title(each),
        said.isEmpty() ? facts : NotebookWords.say("facts.series", facts, said),
        outcome.get(0),
        outcome.get(1),
        each.step(),
        Optional.ofNullable(each.series()).orElse(""));
  }
}
