package blindlap.screen.review;

import blindlap.desk.AfterSteps;
import blindlap.desk.AnotherDay;
import blindlap.desk.Keys;
import blindlap.desk.MaskKeeping;
import blindlap.desk.Reviews;
import blindlap.desk.Sessions;
import blindlap.review.Analysis;
import blindlap.review.Beside;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.TellingAnalysis;
import blindlap.screen.part.Background;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import blindlap.wording.Headline;
import blindlap.wording.NoiseRunWords;
import blindlap.wording.NullRunWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * The Review page: the blind review while the key is sealed, the finding once it is open. The
 * verdict comes first; everything beside it is computed while it is read.
 */
public final class ReviewModel {
  private static final Words WORDS = Words.of("review");

  /** What the page is. */
  public enum Stage {
    /** Nothing to review yet; the notice says why. */
    NOTICE,
    BLIND,
    OPEN
  }

  private final Sessions sessions;
  private final Reviews reviews;
  private final AnotherDay another;
  private final Consumer<String> openDraft;
  private final Background background;
  private final BlindReviewModel blind;
  private final MasksModel masks;
  private final AfterStepsModel after;
  private final ReviewFiles files;
  private final ReadOnlyObjectWrapper<Stage> stage = new ReadOnlyObjectWrapper<>(Stage.NOTICE);
  private final ReadOnlyStringWrapper notice = new ReadOnlyStringWrapper(WORDS.say("no.session"));
  private final ReadOnlyStringWrapper progress = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<Optional<Headline>> early =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<ReviewView>> view =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<TellingReview>> telling =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<SessionState> state = Optional.empty();
  private String written = "";
  private long version = -1;
  private Optional<Cached> cached = Optional.empty();

  private record Cached(SessionId id, Finding finding) {}

  private record Whole(Finding finding, Beside beside) {}

  /** How many sessions a series declared from here on has until the tester types another number. */
  private static final int SERIES_OF = 3;

  /**
   * @param openDraft goes to the Plan page with the draft of this name
   */
  public ReviewModel(
      Sessions sessions,
      Keys keys,
      MaskKeeping masks,
      Reviews reviews,
      AnotherDay another,
      AfterSteps steps,
      Consumer<String> openDraft,
      Background background) {
    this.sessions = sessions;
    this.reviews = reviews;
    this.another = another;
    this.openDraft = openDraft;
    this.background = background;
    this.after = new AfterStepsModel(steps, another, openDraft, trouble::set, background);
    this.files = new ReviewFiles(reviews, background, this::written, this::fail);
    this.masks = new MasksModel(masks, background, this::again);
    this.blind =
        new BlindReviewModel(
            sessions,
            keys,
            this.masks,
            background,
            () -> state.ifPresent(s -> open(s.id())),
            why -> state.ifPresent(s -> follow(s.id(), why)));
  }

  /** What is asked of masked labels. */
  public MasksModel masks() {
    return masks;
  }

  /** From a steps day into new plans. */
  public AfterStepsModel afterSteps() {
    return after;
  }

  /** The session on the page; empty before one was chosen. */
  public Optional<SessionState> session() {
    return state;
  }

  /** The labels were guessed or read: the finding says so. */
  private void again() {
    cached = Optional.empty();
    state.ifPresent(shown -> open(shown.id()));
  }

  /** Looks whether another process has written; called about every second while in view. */
  public void look() {
    background.run(
        sessions::version,
        now -> {
          if (now != version) {
            version = now;
            state.ifPresent(shown -> follow(shown.id(), ""));
          }
        },
        this::fail);
  }

  /**
   * Shows the session as it stands, if it stands otherwise than it is shown.
   *
   * @param refused why a press on the old page did nothing, to be said on the page that follows if
   *     that is another; empty if nothing was pressed
   */
  private void follow(SessionId id, String refused) {
    background.run(
        () -> sessions.state(id).map(now -> new Seen(now, waitsFor(now))),
        found ->
            found
                .filter(seen -> onPage().filter(old -> same(old, seen.state())).isEmpty())
                .ifPresent(
                    seen -> {
                      boolean files =
                          refused.isEmpty()
                              && !trouble.get().isEmpty()
                              && trouble.get().equals(written)
                              && state.filter(old -> old.id().equals(id)).isPresent();
                      String said = files ? written : refused;
                      cached = Optional.empty();
                      show(seen);
                      // What was said of files just written: the entry that tells it comes now.
                      trouble.set(stage.get() == Stage.BLIND ? "" : said);
                    }),
        this::fail);
  }

  /**
   * The session as the page shows it. What was written on the blind review it shows already: built
   * anew a moment later, it would take away the focus, a question and what is half typed.
   */
  private Optional<SessionState> onPage() {
    return stage.get() == Stage.BLIND ? Optional.of(blind.session()) : state;
  }

  /** The blind review of the same session. */
  public BlindReviewModel blind() {
    return blind;
  }

  public ReadOnlyObjectProperty<Stage> stageProperty() {
    return stage.getReadOnlyProperty();
  }

  /** Why there is nothing to review yet. */
  public ReadOnlyStringProperty noticeProperty() {
    return notice.getReadOnlyProperty();
  }

  /** What is being computed; empty when everything is there. */
  public ReadOnlyStringProperty progressProperty() {
    return progress.getReadOnlyProperty();
  }

  /** Why the last wish was not granted; empty if it was. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** The verdict, before everything else is there. */
  public ReadOnlyObjectProperty<Optional<Headline>> earlyProperty() {
    return early.getReadOnlyProperty();
  }

  /** The whole page, once computed. */
  public ReadOnlyObjectProperty<Optional<ReviewView>> viewProperty() {
    return view.getReadOnlyProperty();
  }

  /** The whole page of a telling run, once counted. */
  public ReadOnlyObjectProperty<Optional<TellingReview>> tellingProperty() {
    return telling.getReadOnlyProperty();
  }

  /** Shows a session, as far as it may be seen. */
  public void open(SessionId id) {
    background.run(
        () -> sessions.state(id).map(now -> new Seen(now, waitsFor(now))),
        found -> found.ifPresent(this::show),
        this::fail);
  }

  private static boolean same(SessionState old, SessionState now) {
    return old.id().equals(now.id()) && old.heads().equals(now.heads());
  }

  /** A session, and why nothing is told of it although its seal is open; empty for most. */
  private record Seen(SessionState state, String waits) {}

  private String waitsFor(SessionState now) {
    return now.unsealed() && reviews.waits(now)
        ? reviews.refuse(now).map(p -> String.join(" ", Problems.sentences(p))).orElse("")
        : "";
  }

  private void show(Seen seen) {
    SessionState now = seen.state();
    state = Optional.of(now);
    trouble.set("");
    if (!seen.waits().isEmpty()) {
      notice(seen.waits());
      return;
    }
    if (now.step() == Step.ABANDONED) {
      notice(WORDS.say("abandoned", now.abandonedBecause().orElse("")));
    } else if (now.step().ordinal() < Step.DAY_CLOSED.ordinal()) {
      notice(WORDS.say("day.open"));
    } else if (!now.hasKey() && now.step() != Step.DAY_CLOSED) {
      notice(String.join("\n", NoiseRunWords.lines(now)));
    } else if (!now.unsealed()) {
      blind.show(now);
      stage.set(Stage.BLIND);
    } else {
      finding(now);
    }
  }

  private void notice(String words) {
    notice.set(words);
    stage.set(Stage.NOTICE);
  }

  private void telling(SessionState now) {
    cached = Optional.empty();
    early.set(Optional.empty());
    view.set(Optional.empty());
    after.clear();
    background.run(
        () -> TellingReview.of(now, reviews.telling(now), reviews.beside(now)),
        review -> {
          telling.set(Optional.of(review));
          stage.set(Stage.OPEN);
        },
        this::fail);
  }

  private void finding(SessionState now) {
    telling.set(Optional.empty());
    if (TellingAnalysis.is(now.plan())) {
      telling(now);
      return;
    }
    Optional<Cached> known = cached.filter(c -> c.id().equals(now.id()));
    if (known.isPresent()) {
      background.run(
          () -> new Whole(known.get().finding(), reviews.beside(now)),
          whole -> done(now, whole),
          this::fail);
      return;
    }
    early.set(Optional.empty());
    view.set(Optional.empty());
    progress.set(WORDS.say("working", now.plan().primary().map(m -> m.name()).orElse("")));
    stage.set(Stage.OPEN);
    DayRecord day = Reviews.day(now);
    background.run(() -> Analysis.verdictOnly(day), found -> early(day, found), this::fail);
    background.run(
        () ->
            new Whole(
                Analysis.of(day, step -> background.onScreen(() -> progress.set(step(step)))),
                reviews.beside(now)),
        whole -> done(now, whole),
        this::fail);
  }

  private static String step(String measure) {
    return WORDS.say("working", measure.isEmpty() ? WORDS.say("working.rest") : measure);
  }

  private void early(DayRecord day, Optional<Comparison> found) {
    early.set(found.filter(c -> c.verdict().isPresent()).map(c -> NullRunWords.early(day, c)));
  }

  private void done(SessionState now, Whole whole) {
    cached = Optional.of(new Cached(now.id(), whole.finding()));
    progress.set("");
    after.show(now, whole.finding());
    view.set(Optional.of(ReviewView.of(now, whole.finding(), whole.beside())));
    stage.set(Stage.OPEN);
  }

  /** Adds an amendment; the original analysis stays as it is. */
  public void amend(String text, String reason) {
    SessionState now = state.orElseThrow();
    background.run(
        () -> sessions.act(now.id(), latest -> new LifeCommands(latest).amend(text, reason)),
        result -> {
          if (result instanceof Sessions.Result.Done done) {
            show(new Seen(done.state(), ""));
          } else {
            trouble.set(
                String.join(
                    " ", Problems.sentences(((Sessions.Result.Refused) result).problems())));
          }
        },
        this::fail);
  }

  /** True if days like this one can be pooled as a series. */
  public boolean poolable() {
    return state
        .map(SessionState::plan)
        .filter(plan -> plan.setups().size() == 2 && plan.telling() == null)
        .isPresent();
  }

  /** Makes a draft like the session on the page, and goes to the Plan page with it. */
  public void planAnother() {
    draft(another::like);
  }

  /** The same as the first session of a series, which this finding stays outside of. */
  public void declareSeries() {
    draft(id -> another.seriesFrom(id, SERIES_OF));
  }

  private void draft(Function<SessionId, Optional<AnotherDay.Made>> make) {
    SessionId id = state.orElseThrow().id();
    background.run(
        () -> make.apply(id).map(another::keep), name -> name.ifPresent(openDraft), this::fail);
  }

  /** Writes the report to a folder. */
  public void report(Path folder) {
    files.report(state.orElseThrow(), folder);
  }

  /** Writes the card to a folder. */
  public void card(Path folder) {
    files.card(state.orElseThrow(), folder);
  }

  /** Saves the data package to a folder. */
  public void export(Path folder) {
    files.export(state.orElseThrow(), folder);
  }

  private void written(String said) {
    written = said;
    trouble.set(said);
  }

  private void fail(Exception e) {
    progress.set("");
    trouble.set(WORDS.say("trouble", Trouble.sentence(e)));
  }
}
