package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.SeriesShows;
import blindlap.review.QuestionHistory;
import blindlap.review.SeriesAbandoned;
import blindlap.review.SeriesAnalysis;
import blindlap.review.SeriesDeclaration;
import blindlap.review.SeriesFinding;
import blindlap.session.Fact;
import blindlap.session.Notebook;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import blindlap.wording.DeclaredWords;
import blindlap.wording.SeriesWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Plans held against what their series declared: what would not be pooled is refused before it is
 * ridden, and the next session of a series begins with what was declared.
 */
public final class SeriesPlans {
  private final Notebook notebook;
  private final SeriesBook book;

  /** What was looked up last; a page asks at every letter that is typed. */
  private volatile @Nullable Standing last;

  SeriesPlans(Notebook notebook, SeriesBook book) {
    this.notebook = notebook;
    this.book = book;
  }

  /**
   * A series as it stands.
   *
   * @param version of the notebook
   * @param sessions of the series, in the order of their commits
   * @param declaration empty while no session of it has a key
   */
  private record Standing(
      String series,
      long version,
      List<SessionState> sessions,
      Optional<SeriesDeclaration> declaration,
      Optional<SessionState> unsealed,
      boolean ended,
      int counted) {
    boolean declared() {
      return declaration.filter(d -> d.plan().seriesSessions() != null).isPresent();
    }
  }

  /**
   * The next session of a series.
   *
   * @param number of it, from 1
   * @param declared number of sessions declared; empty if none was
   * @param base the plan that it begins with
   * @param replaces short id of the abandoned session whose place it takes, if it takes one
   */
  record Next(
      int number, Optional<Integer> declared, SessionState base, Optional<String> replaces) {}

  /** Why a plan would not be pooled in the series that it names, a field each; none if it would. */
  public List<Problem> refusals(Plan plan) {
    String series = plan.series();
    Optional<Standing> found = series == null ? Optional.empty() : standing(series);
    if (found.isEmpty() || found.get().declaration().isEmpty()) {
      return List.of();
    }
    Standing standing = found.get();
    List<Problem> problems = new ArrayList<>(over(standing));
    SeriesDeclaration declaration = standing.declaration().get();
    for (SeriesDeclaration.Difference difference : declaration.differences(plan)) {
      problems.add(
          Problem.of(
              DeskFault.SERIES_DIFFERS,
              difference.where(),
              DeclaredWords.value(difference.field(), plan),
              DeclaredWords.value(difference.field(), declaration.plan()),
              new SessionId(declaration.session()).brief(),
              standing.series()));
    }
    return problems;
  }

  /** Why nothing at all can be added to a series: it is complete, ended, or a result is known. */
  private static List<Problem> over(Standing standing) {
    if (!standing.declared()) {
      return List.of();
    }
    int declared = declared(standing).orElseThrow();
    if (standing.ended()) {
      return List.of(Problem.of(DeskFault.SERIES_IS_ENDED, "series", standing.series()));
    }
    if (standing.unsealed().isPresent()) {
      return List.of(
          Problem.of(
              DeskFault.SERIES_RESULT_KNOWN,
              "series",
              standing.unsealed().get().id().brief(),
              standing.series()));
    }
    return standing.counted() < declared
        ? List.of()
        : List.of(Problem.of(DeskFault.SERIES_FULL, "series", standing.series(), declared));
  }

  /**
   * Why a plan may not conceal a null run, if so: below "prepared" nobody is deceived, and in a
   * series it could never be pooled.
   */
  public Optional<Problem> refuseNullRun(Plan plan) {
    if (!plan.blinding().level().blind()) {
      return Optional.of(Problem.of(DeskFault.NULL_RUN_KNOWING, ""));
    }
    if (plan.kind() == Plan.Kind.STEPS_DAY) {
      return Optional.of(Problem.of(DeskFault.NULL_RUN_STEPS, ""));
    }
    return plan.series() == null
        ? Optional.empty()
        : Optional.of(Problem.of(DeskFault.SERIES_NULL_RUN, "", plan.series()));
  }

  /** Which number the next session of a series has, from 1; empty while none names it. */
  public Optional<Integer> number(String series) {
    return standing(series).map(standing -> standing.counted() + 1);
  }

  /**
   * Sessions of a plan's series that count already, to tell what all of it can show; empty where
   * other riders are among them, of whom the product of the orders tells nothing.
   */
  public Optional<List<SeriesShows.Session>> standing(Plan plan) {
    String series = plan.series();
    if (series == null || plan.seriesSessions() == null) {
      return Optional.empty();
    }
    Optional<Standing> found = standing(series).filter(s -> s.declaration().isPresent());
    if (found.isEmpty()) {
      return Optional.of(List.of());
    }
    SeriesDeclaration declaration = found.get().declaration().get();
    List<SessionState> counted =
        found.get().sessions().stream()
            .filter(state -> state.hasKey() && state.step() != Step.ABANDONED)
            .filter(state -> declaration.differences(state.plan()).isEmpty())
            .toList();
    boolean others = counted.stream().anyMatch(s -> !rider(s.plan()).equals(rider(plan)));
    return others
        ? Optional.empty()
        : Optional.of(
            counted.stream()
                .map(
                    s ->
                        new SeriesShows.Session(
                            s.plan(),
                            s.cutShort()
                                .map(Fact.DayCutShort::lastStint)
                                .orElse(s.plan().stints())))
                .toList());
  }

  private static String rider(Plan plan) {
    return QuestionHistory.plain(plan.rider());
  }

  /** True for a declared series to which sessions can still be added. */
  boolean running(String series) {
    return standing(series).filter(s -> s.declared() && over(s).isEmpty()).isPresent();
  }

  /** Why no session can be added to a series. */
  List<Problem> refuseNext(String series) {
    Optional<Standing> found = standing(series);
    return found.isEmpty() || found.get().declaration().isEmpty()
        ? List.of(Problem.of(DeskFault.NO_SUCH_SERIES, "", series))
        : over(found.get()).stream()
            .map(problem -> new Problem(problem.fault(), "", problem.details()))
            .toList();
  }

  /** The next session of a series to which one can be added. */
  Next next(String series) {
    Standing standing = standing(series).orElseThrow();
    SeriesDeclaration declaration = standing.declaration().orElseThrow();
    List<SessionState> alike =
        standing.sessions().stream()
            .filter(state -> declaration.differences(state.plan()).isEmpty())
            .toList();
    SessionState latest = alike.get(alike.size() - 1);
    // The place is free until another session of the series is committed.
    boolean free = latest.step() == Step.ABANDONED;
    return new Next(
        standing.counted() + 1,
        declared(standing),
        latest,
        free ? Optional.of(latest.id().brief()) : Optional.empty());
  }

  private static Optional<Integer> declared(Standing standing) {
    return standing.declaration().flatMap(d -> Optional.ofNullable(d.plan().seriesSessions()));
  }

  /** What a series answers as far as that may be told. */
  Optional<SeriesFinding> answer(String series) {
    return book.answer(series);
  }

  /** The same, but empty where it would have to be worked out and nobody has asked for it yet. */
  Optional<SeriesFinding> known(String series) {
    return book.known(series);
  }

  /** Where a series stands, or what it answers, in a sentence. */
  Optional<String> words(String series) {
    return book.answer(series)
        .map(found -> SeriesWords.say("where", series, new SeriesWords(found).headline().text()));
  }

  /** Why a session may not be abandoned, if so: it would keep its place in its series. */
  Optional<Problem> refuseAbandoning(SessionState state, String unawareBy) {
    String series = state.plan().series();
    if (series == null || !unawareBy.isBlank() || !SeriesAbandoned.scoredLap(state)) {
      return Optional.empty();
    }
    return standing(series)
        .filter(s -> s.declared() && s.unsealed().isEmpty() && !s.ended())
        .filter(s -> s.declaration().orElseThrow().differences(state.plan()).isEmpty())
        .map(s -> Problem.of(DeskFault.SERIES_KEEPS_PLACE, "", series));
  }

  /** Where the other sessions of a session's series stand; written when it is abandoned. */
  List<Fact> stood(SessionState state) {
    return book.standing(state);
  }

  private Optional<Standing> standing(String series) {
    long version = notebook.dataVersion();
    Standing kept = last;
    if (kept == null || kept.version() != version || !kept.series().equals(series)) {
      kept = look(series, version);
      last = kept;
    }
    return kept.sessions().isEmpty() ? Optional.empty() : Optional.of(kept);
  }

  private Standing look(String series, long version) {
    List<SessionState> sessions =
        book.of(series).stream().sorted(Comparator.comparing(SessionState::committedAt)).toList();
    Optional<SessionState> unsealed =
        sessions.stream().filter(s -> SeriesAnalysis.unsealedAt(s).isPresent()).findFirst();
    // With a seal open nothing can be added, so nobody asks how many there are.
    int counted = sessions.isEmpty() || unsealed.isPresent() ? sessions.size() : counted(sessions);
    return new Standing(
        series,
        version,
        sessions,
        SeriesDeclaration.of(sessions),
        unsealed,
        sessions.stream().anyMatch(SeriesAnalysis::isEnded),
        counted);
  }

  private static int counted(List<SessionState> sessions) {
    SeriesFinding.Progress progress = SeriesAnalysis.progress(sessions, OpenedDays::of);
    return progress.sessions();
  }
}
