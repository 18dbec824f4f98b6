package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.fault.StatsException;
import blindlap.fault.TextFault;
import blindlap.fault.Unreadable;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Sector;
import blindlap.plan.TrailVersion;
import blindlap.recording.Runs;
import blindlap.recording.TrackReader;
import blindlap.session.Contents;
import blindlap.session.Hash;
import blindlap.session.KeptTrail;
import blindlap.session.Outcome;
import blindlap.session.RecordedLap;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.RecordingCommands;
import blindlap.session.SessionState;
import blindlap.session.TrailTitle;
import blindlap.session.Trails;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Brings recordings in: a file is read by the gates of a trail, its passes are matched to the laps
 * of a day, a person settles what does not fit, and all of it becomes one entry or nothing.
 */
public final class Recordings {
  /** Far more rides than anyone takes on a day. */
  private static final int MOST_PASSES = 200;

  /** What is larger is no recording of a day. */
  private static final long LARGEST = 100_000_000;

  private final Sessions sessions;
  private final Trails trails;
  private final Contents contents;

  Recordings(Sessions sessions, Trails trails, Contents contents) {
    this.sessions = sessions;
    this.trails = trails;
    this.contents = contents;
  }

  /** What became of a file. */
  public sealed interface Read {
    /** To be settled. */
    record Table(Settling settling) implements Read {}

    /** Why it cannot be used; nothing was kept. */
    record Refused(List<Problem> problems) implements Read {
      public Refused {
        problems = List.copyOf(problems);
      }
    }
  }

  /** Versions of trails to choose from; none where the plan fixes one. */
  public List<TrailTitle> trails(SessionState state) {
    return state.plan().trailVersion() == null ? trails.titles() : List.of();
  }

  /** Why no recording may be brought in for a session now; empty if one may. */
  public List<Problem> problems(SessionState state) {
    return new RecordingCommands(state).problems();
  }

  /**
   * Reads a file by the gates of the plan's trail version, or where the plan fixes none, of the
   * latest version of the trail that bears its name.
   */
  public Read read(SessionState state, String file, byte[] bytes) {
    return read(state, file, bytes, null, null);
  }

  /**
   * Reads a file.
   *
   * @param file its name
   * @param trail name of a trail of the trail book; null for the plan's
   * @param number of its version; null for the latest
   */
  public Read read(
      SessionState state,
      String file,
      byte[] bytes,
      @Nullable String trail,
      @Nullable Integer number) {
    List<Problem> over = problems(state);
    if (!over.isEmpty()) {
      return new Read.Refused(over);
    }
    try {
      TimedTrail timed = trail(state.plan(), trail, number);
      String sha256 = Hash.of(bytes).hex();
      List<Problem> other = new RecordingCommands(state).problems(sha256, timed.version().sha256());
      if (!other.isEmpty()) {
        return new Read.Refused(other);
      }
      Runs runs = Runs.of(TrackReader.read(bytes), timed.course());
      return table(state, new BroughtFile(name(file), sha256, timed, runs));
    } catch (Unreadable e) {
      return new Read.Refused(List.of(e.problem()));
    } catch (StatsException e) {
      // Gates of a committed plan are checked; those of an entry that somebody made need not be.
      return new Read.Refused(List.of(Problem.of(RecordingFault.NO_PASS, "", e.argument())));
    }
  }

  /** The same for a file on disk. */
  public Read read(
      SessionState state, Path file, @Nullable String trail, @Nullable Integer number) {
    try {
      if (!Files.isRegularFile(file)) {
        return refused(RecordingFault.FILE_MISSING, file);
      }
      long size = Files.size(file);
      if (size > LARGEST) {
        return new Read.Refused(List.of(Problem.of(TextFault.FILE_TOO_LARGE, "", size, LARGEST)));
      }
      return read(state, file.toString(), Files.readAllBytes(file), trail, number);
    } catch (IOException e) {
      return refused(RecordingFault.FILE_UNREADABLE, file);
    }
  }

  private static Read table(SessionState state, BroughtFile file) {
    int runs = file.runs().runs().size();
    if (runs == 0) {
      return refused(RecordingFault.NO_PASS, file.trail().name());
    }
    if (runs > MOST_PASSES) {
      return refused(RecordingFault.TOO_MANY_PASSES, runs, MOST_PASSES);
    }
    return new Read.Table(Settling.of(state, file));
  }

  private static Read refused(RecordingFault fault, Object... details) {
    return new Read.Refused(List.of(Problem.of(fault, "", details)));
  }

  private static String name(String file) {
    return file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
  }

  private TimedTrail trail(Plan plan, @Nullable String name, @Nullable Integer number) {
    TrailVersion planned = plan.trailVersion();
    String wanted = name == null ? plan.trail() : name;
    if (planned != null && name == null && number == null) {
      return TimedTrail.of(
          wanted, planned, true, trails.find(planned.sha256()).map(KeptTrail::trail).orElse(null));
    }
    Optional<KeptTrail> kept = number == null ? trails.latest(wanted) : trails.find(wanted, number);
    if (kept.isEmpty()) {
      throw missing(name, wanted, number);
    }
    KeptTrail found = kept.get();
    boolean same = planned != null && planned.sha256().equals(found.title().sha256());
    return TimedTrail.of(wanted, found.version(), same, found.trail());
  }

  private Unreadable missing(@Nullable String name, String wanted, @Nullable Integer number) {
    String names =
        String.join(", ", trails.titles().stream().map(t -> t.name()).distinct().toList());
    if (names.isEmpty()) {
      return new Unreadable(RecordingFault.NO_TRAIL_BOOK);
    }
    if (name == null && number == null) {
      return new Unreadable(RecordingFault.NO_TRAIL, wanted, names);
    }
    List<String> versions =
        trails.titles().stream()
            .filter(title -> title.name().equals(wanted))
            .map(title -> String.valueOf(title.number()))
            .toList();
    return number == null || versions.isEmpty()
        ? new Unreadable(RecordingFault.TRAIL_UNKNOWN, wanted, names)
        : new Unreadable(
            RecordingFault.TRAIL_VERSION_UNKNOWN, wanted, number, String.join(", ", versions));
  }

  /**
   * Takes a settled recording in: one entry, and positions beside it.
   *
   * @param positions false to keep none
   */
  public Sessions.Result take(Settling settling, boolean positions) {
    int waiting = settling.waiting();
    if (waiting > 0) {
      return new Sessions.Result.Refused(List.of(Problem.of(RecordingFault.WAITS, "", waiting)));
    }
    RecordedLaps laps = new RecordedLaps(settling);
    RecordingBroughtIn bare = laps.fact(bytes -> null);
    SessionState now = sessions.state(settling.session().id()).orElse(settling.session());
    if (new RecordingCommands(now).bringIn(bare) instanceof Outcome.Refused refused) {
      return new Sessions.Result.Refused(refused.problems());
    }
    RecordingBroughtIn fact = positions ? laps.fact(contents::put) : bare;
    return sessions.act(now.id(), latest -> new RecordingCommands(latest).bringIn(fact));
  }

  /**
   * A lap that a watch timed and a recording, too.
   *
   * @param watch seconds
   * @param recording seconds
   */
  public record Pair(LapId lap, double watch, double recording) {}

  /** Laps of which a measure has both times, in the order of the day. */
  public static List<Pair> pairs(SessionState state, Measure measure) {
    List<Pair> pairs = new ArrayList<>();
    for (LapState lap : state.laps()) {
      BigDecimal watch = lap.values().get(measure.name());
      RecordedLap recorded = state.recorded().laps().get(lap.id());
      Optional<BigDecimal> seconds =
          Optional.ofNullable(recorded).flatMap(known -> seconds(state.plan(), known, measure));
      if (watch != null && seconds.isPresent()) {
        pairs.add(new Pair(lap.id(), watch.doubleValue(), seconds.get().doubleValue()));
      }
    }
    return pairs;
  }

  private static Optional<BigDecimal> seconds(Plan plan, RecordedLap lap, Measure measure) {
    TrailVersion trail = plan.trailVersion();
    Sector sector = measure.timing().sector();
    int from = trail == null || sector == null ? 0 : trail.gate(sector.from());
    int to = trail == null || sector == null ? lap.passes().size() - 1 : trail.gate(sector.to());
    if (from < 0 || to < 0) {
      return Optional.empty();
    }
    BigDecimal early = lap.passes().get(from).seconds();
    BigDecimal late = lap.passes().get(to).seconds();
    return early == null || late == null ? Optional.empty() : Optional.of(late.subtract(early));
  }
}
