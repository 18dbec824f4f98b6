package blindlap.desk;

import blindlap.exchange.SessionFile;
import blindlap.exchange.SessionFileFault;
import blindlap.exchange.SessionMeaning;
import blindlap.fault.Fault;
import blindlap.fault.Problem;
import blindlap.seal.SealParameters;
import blindlap.session.Addition;
import blindlap.session.Chains;
import blindlap.session.Hash;
import blindlap.session.Head;
import blindlap.session.Notebook;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookFault;
import blindlap.session.NotebookTrouble;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapState;
import blindlap.session.day.SessionId;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Sessions on their way from one notebook to another, whole and as they are: sealed if sealed. */
public final class SessionExchange {
  private static final String SQLITE = "SQLite format 3\0";

  /** Far above any session; what is larger is not read into memory to find out. */
  private static final long LARGEST_SESSION_FILE = 256L << 20;

  private static final Set<Fault> STRANGERS =
      Set.of(SessionFileFault.NOT_UTF8, SessionFileFault.NOT_A_SESSION, SessionFileFault.TOO_NEW);

  private static final int SESSIONS_AT_ONCE = 100;

  private final Notebook notebook;
  private final Sessions sessions;
  private final SafeKeeping keeping;
  private final SealParameters weakest;

  SessionExchange(
      Notebook notebook, Sessions sessions, SafeKeeping keeping, SealParameters weakest) {
    this.weakest = weakest;
    this.notebook = notebook;
    this.sessions = sessions;
    this.keeping = keeping;
  }

  /**
   * A session that fits into this notebook.
   *
   * @param summary the session as it stands here now
   * @param added number of entries that were new
   * @param known number of entries that were here already
   * @param late number of entries, of either notebook, that thereby turned out to have come too
   *     late to change anything: kept and shown
   * @param apart measures by lap of the day that thereby have different values, which machines
   *     recorded without knowing of one another
   */
  public record Arrived(
      SessionSummary summary,
      int added,
      int known,
      int late,
      SortedMap<Integer, List<String>> apart) {}

  /**
   * A session of which nothing was added.
   *
   * @param session which, if the file says so; else empty
   * @param why in one word
   * @param problems at least one
   */
  public record Refused(String session, Why why, List<Problem> problems) {
    public Refused {
      problems = List.copyOf(problems);
    }
  }

  /** Why nothing was added. */
  public enum Why {
    /** The file is not one that this program can bring in. */
    NOT_FOR_HERE,
    /** It was changed or cut off, or does not fit to what is here. */
    DOES_NOT_VERIFY
  }

  /**
   * What became of one file.
   *
   * @param notebook true for a whole notebook, false for the file of a session
   * @param arrived sessions that fit, with what was new of each
   * @param refused sessions of which nothing was added
   * @param trails versions of trails that were new
   * @param profiles versions of profiles that were new
   */
  public record Brought(
      boolean notebook, List<Arrived> arrived, List<Refused> refused, int trails, int profiles) {
    Brought(boolean notebook, List<Arrived> arrived, List<Refused> refused) {
      this(notebook, arrived, refused, 0, 0);
    }

    public Brought {
      arrived = List.copyOf(arrived);
      refused = List.copyOf(refused);
    }

    /** Number of entries that were new. */
    public int added() {
      return arrived.stream().mapToInt(Arrived::added).sum();
    }
  }

  /**
   * Writes a session as one file that another notebook can bring in, whole or not at all.
   *
   * @param target is written over only if it is the file of a session
   * @return number of its entries
   * @throws NotebookException if it cannot be written
   */
  public int write(SessionId session, Path target) {
    List<StoredEntry> entries = notebook.entries(session);
    String text = SessionFile.text(session, entries);
    try {
      if (!mayReplace(target)) {
        throw new NotebookException(Kind.OTHER, NotebookTrouble.SESSION_PLACE_TAKEN, null, target);
      }
      WholeFiles.write(target, text.getBytes(StandardCharsets.UTF_8));
      return entries.size();
    } catch (IOException e) {
      throw new NotebookException(Kind.OTHER, NotebookTrouble.SESSION_NOT_WRITTEN, e, target);
    }
  }

  private boolean mayReplace(Path file) throws IOException {
    return !Files.exists(file)
        || !isOwn(file) && Files.isRegularFile(file) && begins(file, SessionFile.BEGINNING);
  }

  /** A handle of our own on the open notebook would, when closed, drop the locks held on it. */
  private boolean isOwn(Path file) throws IOException {
    return Files.exists(keeping.notebook()) && Files.isSameFile(file, keeping.notebook());
  }

  private static boolean begins(Path file, String beginning) throws IOException {
    byte[] wanted = beginning.getBytes(StandardCharsets.US_ASCII);
    try (InputStream in = Files.newInputStream(file)) {
      return Arrays.equals(in.readNBytes(wanted.length), wanted);
    }
  }

  /**
   * Brings in the file of a session, or every session of another notebook. Each session is verified
   * first and added whole or not at all; what is here already is left alone.
   *
   * @throws NotebookException if the file or this notebook cannot be used
   */
  public Brought bringIn(Path file) {
    try {
      if (!Files.isRegularFile(file)) {
        throw new NotebookException(
            Kind.NOT_FOUND, NotebookTrouble.NOTHING_TO_BRING_IN, null, file);
      }
      if (isOwn(file)) {
        return new Brought(
            true,
            List.of(),
            List.of(new Refused("", Why.NOT_FOR_HERE, List.of(Problem.of(DeskFault.ITSELF, "")))));
      }
      if (begins(file, SQLITE)) {
        return keeping.read(file, this::notebook);
      }
      boolean small = Files.size(file) <= LARGEST_SESSION_FILE;
      return sessionFile(small ? Files.readAllBytes(file) : new byte[0]);
    } catch (IOException e) {
      throw new NotebookException(Kind.OTHER, NotebookTrouble.SESSION_NOT_READ, e, file);
    }
  }

  private Brought sessionFile(byte[] bytes) {
    SessionFile.Reading reading = SessionFile.read(bytes);
    if (!reading.problems().isEmpty()) {
      String session = reading.session().map(SessionId::brief).orElse("");
      boolean stranger = reading.problems().stream().anyMatch(p -> STRANGERS.contains(p.fault()));
      Why why = stranger ? Why.NOT_FOR_HERE : Why.DOES_NOT_VERIFY;
      return new Brought(false, List.of(), List.of(new Refused(session, why, reading.problems())));
    }
    Incoming incoming = new Incoming(reading.session().orElseThrow(), reading.entries());
    return new Arrival().check(List.of(incoming)).brought(false);
  }

  /** All of it is verified before anything is added. */
  private Brought notebook(Notebook other) {
    List<Problem> problems =
        other.verify().problems().stream()
            // The list is not part of the record, and is made anew here.
            .filter(problem -> problem.fault() != NotebookFault.LIST_DIFFERS)
            .toList();
    if (!problems.isEmpty()) {
      return new Brought(true, List.of(), List.of(new Refused("", Why.DOES_NOT_VERIFY, problems)));
    }
    List<SessionId> oldestFirst = new ArrayList<>(other.sessions());
    Collections.reverse(oldestFirst);
    Arrival arrival = new Arrival();
    for (int from = 0; from < oldestFirst.size(); from += SESSIONS_AT_ONCE) {
      int to = Math.min(from + SESSIONS_AT_ONCE, oldestFirst.size());
      arrival.check(
          oldestFirst.subList(from, to).stream()
              .map(session -> new Incoming(session, other.entries(session)))
              .toList());
    }
    Beside.Came came = Beside.bring(other, notebook);
    Brought brought = arrival.brought(true);
    return new Brought(true, brought.arrived(), brought.refused(), came.trails(), came.profiles());
  }

  private record Incoming(SessionId session, List<StoredEntry> entries) {}

  private record Counts(int added, int known, int late, SortedMap<Integer, List<String>> apart) {}

  /** Measures by lap of the day that have different values. */
  private static SortedMap<Integer, List<String>> apart(SessionState state) {
    SortedMap<Integer, List<String>> apart = new TreeMap<>();
    for (LapState lap : state.laps()) {
      if (!lap.twice().isEmpty()) {
        apart.put(
            lap.id().ofDay(state.plan().laps().perStint()), List.copyOf(lap.twice().keySet()));
      }
    }
    return apart;
  }

  /** Sessions as they are added, and what became of each. */
  private final class Arrival {
    private final Map<SessionId, Counts> counts = new LinkedHashMap<>();
    private final List<Refused> refused = new ArrayList<>();

    /** Leaves out sessions that say what cannot be, and adds the others. */
    Arrival check(List<Incoming> all) {
      List<Incoming> sound = new ArrayList<>();
      for (Incoming one : all) {
        List<Problem> problems = cannotBe(one);
        if (problems.isEmpty()) {
          sound.add(one);
        } else {
          refused.add(new Refused(one.session().brief(), Why.DOES_NOT_VERIFY, problems));
        }
      }
      return sound.isEmpty() ? this : add(sound);
    }

    /** Only what would be new is looked at: what is here already is kept, and not applied. */
    private List<Problem> cannotBe(Incoming one) {
      List<StoredEntry> all = new ArrayList<>(notebook.entries(one.session()));
      Set<Hash> known = new HashSet<>();
      all.forEach(entry -> known.add(entry.hash()));
      List<StoredEntry> fresh =
          one.entries().stream().filter(entry -> !known.contains(entry.hash())).toList();
      all.addAll(fresh);
      // Chains that do not fit together are told of when they are added.
      return Chains.problems(one.session(), all).isEmpty()
          ? SessionMeaning.problems(all, fresh, weakest)
          : List.of();
    }

    /** Adds sessions in one go; where one does not fit, each on its own. */
    Arrival add(List<Incoming> all) {
      Map<SessionId, Counts> before = new LinkedHashMap<>();
      all.forEach(one -> before.put(one.session(), here(one.session())));
      Addition addition =
          notebook.addEntries(all.stream().flatMap(one -> one.entries().stream()).toList());
      if (addition instanceof Addition.Added) {
        all.forEach(one -> count(one, before.get(one.session())));
      } else if (all.size() == 1) {
        Addition.Refused no = (Addition.Refused) addition;
        refused.add(new Refused(no.session().brief(), Why.DOES_NOT_VERIFY, no.problems()));
      } else {
        all.forEach(one -> add(List.of(one)));
      }
      return this;
    }

    private void count(Incoming one, @Nullable Counts before) {
      Counts after = here(one.session());
      int known = before == null ? 0 : before.known();
      int added = after.known() - known;
      // Of a session that was not here nothing can have come too late.
      int late = known == 0 || added == 0 || before == null ? 0 : after.late() - before.late();
      SortedMap<Integer, List<String>> apart = new TreeMap<>(after.apart());
      if (before != null) {
        before.apart().forEach((lap, measures) -> apart.remove(lap, measures));
      }
      counts.put(one.session(), new Counts(added, one.entries().size() - added, late, apart));
    }

    private Counts here(SessionId session) {
      int entries = (int) notebook.heads(session).stream().mapToLong(Head::number).sum();
      Optional<SessionState> state = entries == 0 ? Optional.empty() : sessions.state(session);
      return new Counts(
          0,
          entries,
          state.map(known -> known.notApplied().size()).orElse(0),
          state.map(SessionExchange::apart).orElse(Collections.emptySortedMap()));
    }

    Brought brought(boolean whole) {
      List<Arrived> arrived = new ArrayList<>();
      for (SessionSummary summary : notebook.summaries()) {
        Counts of = counts.get(summary.id());
        if (of != null) {
          arrived.add(
              new Arrived(summary, of.added(), of.known(), Math.max(0, of.late()), of.apart()));
        }
      }
      return new Brought(whole, arrived, refused);
    }
  }
}
