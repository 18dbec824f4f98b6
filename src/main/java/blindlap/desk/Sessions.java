package blindlap.desk;

import blindlap.desk.day.DayResult;
import blindlap.exchange.TypedTexts;
import blindlap.fault.Problem;
import blindlap.seal.CoveredOrder;
import blindlap.session.Head;
import blindlap.session.Notebook;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.StoredEntry;
import blindlap.session.day.ByPhone;
import blindlap.session.day.SessionId;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Finds sessions and lets a decision on the latest state become entries. */
public final class Sessions {
  private static final int MOST_TRIES = 50;

  private final Notebook notebook;
  private final Clock clock;
  private volatile @Nullable SessionState last;

  public Sessions(Notebook notebook, Clock clock) {
    this.notebook = notebook;
    this.clock = clock;
  }

  /** What became of a command. */
  public sealed interface Result {
    /** The same as rider and starter may know it. */
    DayResult day();

    /**
     * Done and on disk.
     *
     * @param state the session afterwards
     * @param written the new entries
     */
    record Done(SessionState state, List<StoredEntry> written) implements Result {
      @Override
      public DayResult day() {
        return new DayResult.Done(state.day());
      }
    }

    /** Not done; nothing was written. */
    record Refused(List<Problem> problems) implements Result {
      @Override
      public DayResult day() {
        return new DayResult.Refused(problems);
      }
    }
  }

  /** Another number once another process has written to the notebook. */
  public long version() {
    return notebook.dataVersion();
  }

  /**
   * True if a session stands as someone has it before him: what is decided on another state is not
   * what was looked at.
   */
  public boolean asShown(SessionState shown) {
    return new HashSet<>(notebook.heads(shown.id())).equals(new HashSet<>(shown.heads()));
  }

  /** All sessions, latest first. */
  public List<SessionState> all() {
    return notebook.sessions().stream().map(id -> SessionState.of(notebook.entries(id))).toList();
  }

  /**
   * A session as it stands on disk. Its heads name all its entries by their hashes, so that a
   * session with the heads it was read with is not read and hashed again.
   */
  public Optional<SessionState> state(SessionId id) {
    SessionState kept = last;
    if (kept != null
        && kept.id().equals(id)
        && new HashSet<>(kept.heads()).equals(new HashSet<>(notebook.heads(id)))) {
      return Optional.of(kept);
    }
    List<StoredEntry> entries = notebook.entries(id);
    if (entries.isEmpty()) {
      return Optional.empty();
    }
    SessionState read = SessionState.of(entries);
    last = read;
    return Optional.of(read);
  }

  /** Either a session or the problem with what was typed. */
  public record Found(Optional<SessionState> state, List<Problem> problems) {}

  /**
   * Finds a session by its id or the beginning of it, or {@link #latest} by that word.
   *
   * @param typed at least one character
   */
  public Found find(String typed) {
    String begin = typed.strip().toLowerCase(Locale.ROOT);
    if (begin.equals("latest")) {
      Optional<SessionState> latest = latest();
      List<Problem> none = List.of(Problem.of(DeskFault.NO_LATEST_SESSION, ""));
      return new Found(latest, latest.isPresent() ? List.of() : none);
    }
    List<SessionId> matches =
        notebook.sessions().stream().filter(id -> id.text().startsWith(begin)).toList();
    if (matches.isEmpty() || begin.isEmpty()) {
      return new Found(Optional.empty(), List.of(Problem.of(DeskFault.NO_SUCH_SESSION, "", typed)));
    }
    if (matches.size() > 1) {
      return new Found(
          Optional.empty(),
          List.of(Problem.of(DeskFault.SEVERAL_SESSIONS, "", typed, matches.size())));
    }
    return new Found(state(matches.get(0)), List.of());
  }

  /**
   * The session last committed that is not an old day brought in. It goes by the time of the commit
   * and not by when it came here: a session of last year, brought in from another machine, is not
   * the one in hand. Of two committed in one instant it is the one that came later.
   */
  public Optional<SessionState> latest() {
    return notebook.summaries().stream()
        .sorted(Comparator.comparing(SessionSummary::committedAt).reversed())
        .map(summary -> state(summary.id()))
        .flatMap(Optional::stream)
        .filter(state -> state.plainDay().isEmpty())
        .findFirst();
  }

  /**
   * Decides on the latest state and writes what was decided; decides again if another window was
   * faster.
   */
  public Result act(SessionId id, Function<SessionState, Outcome> decision) {
    return act(id, decision, clock::instant);
  }

  /** The same for entries that carry another time than the clock's, as the helper's do. */
  Result act(SessionId id, Function<SessionState, Outcome> decision, Supplier<Instant> at) {
    return act(id, decision, at, null);
  }

  /** The same of what a phone said. */
  Result act(SessionId id, Function<SessionState, Outcome> decision, ByPhone phone) {
    return act(id, decision, clock::instant, phone);
  }

  private Result act(
      SessionId id,
      Function<SessionState, Outcome> decision,
      Supplier<Instant> at,
      @Nullable ByPhone phone) {
    for (int i = 0; i < MOST_TRIES; i++) {
      Optional<SessionState> found = state(id);
      if (found.isEmpty()) {
        return new Result.Refused(List.of(Problem.of(DeskFault.NO_SUCH_SESSION, "", id)));
      }
      SessionState state = found.get();
      Outcome outcome = decision.apply(state);
      if (outcome instanceof Outcome.Refused refused) {
        return new Result.Refused(refused.problems());
      }
      List<blindlap.session.Fact> facts = ((Outcome.Accepted) outcome).facts();
      if (facts.isEmpty()) {
        return new Result.Done(state, List.of());
      }
      List<Problem> unfit = facts.stream().flatMap(f -> TypedTexts.problems(f).stream()).toList();
      if (!unfit.isEmpty()) {
        return new Result.Refused(unfit);
      }
      Optional<List<StoredEntry>> written =
          notebook.append(id, state.heads(), facts, at.get(), clock.getZone(), phone);
      if (written.isPresent()) {
        if (facts.stream().anyMatch(fact -> fact instanceof blindlap.session.Fact.DayClosed)) {
          new DraftedPhones(notebook).forget(id); // no phone is let in to a day that is over
        }
        SessionState after = state.after(written.get());
        last = after;
        return new Result.Done(after, written.get());
      }
    }
    return new Result.Refused(List.of(Problem.of(DeskFault.MOVED_ON, "")));
  }

  Optional<List<StoredEntry>> write(
      SessionId id, List<Head> known, List<blindlap.session.Fact> facts) {
    return notebook.append(id, known, facts, clock.instant(), clock.getZone());
  }

  /** Begins a session whose order is covered. */
  List<StoredEntry> commit(SessionId id, List<blindlap.session.Fact> facts, CoveredOrder order) {
    return notebook.commit(id, facts, clock.instant(), clock.getZone(), order);
  }
}
