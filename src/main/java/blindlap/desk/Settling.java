package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.recording.Run;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.wording.SettlingRow;
import blindlap.wording.SettlingRow.Match;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A recording beside the laps of its day, as it is settled: which pass is which lap, and what waits
 * for a person. It does not change: an answer gives another one.
 */
public final class Settling {
  /** What a person may say of a pass. */
  public enum Said {
    /** The pass is the lap beside it, whatever is doubtful. */
    KEEP,
    /** The pass is the lap beside it, but its times are not to be used. */
    LEAVE_OUT,
    /** The pass is no lap of the day. */
    NO_LAP,
    /** The pass is a lap that is named. */
    LAP
  }

  /**
   * What a person said of a pass.
   *
   * @param lap number over the day; 0 unless a lap is named
   */
  public record Answer(Said said, int lap) {
    public static final Answer KEEP = new Answer(Said.KEEP, 0);
    public static final Answer LEAVE_OUT = new Answer(Said.LEAVE_OUT, 0);
    public static final Answer NO_LAP = new Answer(Said.NO_LAP, 0);

    /** It is that lap. */
    public static Answer lap(int number) {
      return new Answer(Said.LAP, number);
    }
  }

  /** What was said of a run, and which ride of the day it then is, from 0; −1 for none. */
  record Held(Said said, int ofDay) {}

  private final SessionState state;
  private final BroughtFile file;
  private final RidesOfDay rides;
  private final Map<Integer, Held> answers;
  private final RideMatching matching;

  /** Runs by the number of their pass: the first is number 1. */
  private final List<Integer> passes;

  private Settling(
      SessionState state,
      BroughtFile file,
      RidesOfDay rides,
      Map<Integer, Held> answers,
      List<Integer> before) {
    this.state = state;
    this.file = file;
    this.rides = rides;
    this.answers = answers;
    int[] said = new int[runs().size()];
    Arrays.fill(said, RideMatching.FREE);
    answers.forEach((run, held) -> said[run] = held.ofDay() < 0 ? RideMatching.NONE : held.ofDay());
    this.matching = RideMatching.of(runs(), file.clock(), rides.entered(), said);
    this.passes = numbered(before);
  }

  static Settling of(SessionState state, BroughtFile file) {
    return new Settling(state, file, RidesOfDay.of(state), Map.of(), List.of());
  }

  private List<Run> runs() {
    return file.runs().runs();
  }

  /** A pass keeps its number whatever is said; one that nobody is shown has none. */
  private List<Integer> numbered(List<Integer> before) {
    List<Integer> numbered = new ArrayList<>(before);
    for (int run = 0; run < runs().size(); run++) {
      if (!numbered.contains(run) && shown(run)) {
        numbered.add(run);
      }
    }
    return Collections.unmodifiableList(numbered);
  }

  private boolean shown(int run) {
    int ofDay = matching.ofDay(run);
    boolean warmUp = ofDay >= 0 && rides.laps().get(ofDay) == null;
    return !matching.aside(run) && !(warmUp && !matching.open(run));
  }

  /** The lap that a run is; null if it is none, or a warm-up lap. */
  private @org.jspecify.annotations.Nullable LapId lap(int run) {
    int ofDay = matching.ofDay(run);
    return ofDay < 0 ? null : rides.laps().get(ofDay);
  }

  private Match match(int run) {
    Held held = answers.get(run);
    boolean clear = runs().get(run).clear();
    if (held != null) {
      return switch (held.said()) {
        case KEEP -> clear ? Match.CHOSEN : Match.KEPT;
        case LEAVE_OUT -> Match.LEFT_OUT;
        case NO_LAP -> Match.NO_LAP;
        case LAP -> Match.CHOSEN;
      };
    }
    if (lap(run) == null) {
      return Match.FITS_NONE;
    }
    return matching.open(run) ? Match.PROPOSED : clear ? Match.FITS : Match.DOUBTFUL;
  }

  /** Laps in the order of the day, with passes that fit none where they were ridden. */
  public List<SettlingRow> rows() {
    List<SettlingRow> rows = new ArrayList<>();
    int next = 0;
    for (LapId lap : rides.laps()) {
      if (lap == null) {
        continue;
      }
      int run = run(lap);
      for (; run >= 0 && next < run; next++) {
        extra(next).ifPresent(rows::add);
      }
      next = Math.max(next, run + 1);
      rows.add(row(run, lap));
    }
    for (; next < runs().size(); next++) {
      extra(next).ifPresent(rows::add);
    }
    return rows;
  }

  private int run(LapId lap) {
    for (int run = 0; run < runs().size(); run++) {
      if (lap.equals(lap(run))) {
        return run;
      }
    }
    return -1;
  }

  private Optional<SettlingRow> extra(int run) {
    return passes.contains(run) && lap(run) == null && shown(run)
        ? Optional.of(row(run, null))
        : Optional.empty();
  }

  private SettlingRow row(int run, @org.jspecify.annotations.Nullable LapId lap) {
    Match match = run < 0 ? Match.NO_PASS : match(run);
    SettledRun told = run < 0 ? SettledRun.NONE : SettledRun.of(runs().get(run), file.gates());
    return new SettlingRow(
        lap == null ? null : lap.ofDay(state.plan().laps().perStint()),
        lap == null ? null : state.code(lap.stint()),
        run < 0 ? 0 : passes.indexOf(run) + 1,
        told.seconds(),
        told.uncertainty(),
        match,
        told.doubts(),
        lap != null && state.lap(lap).flatMap(known -> known.voided()).isPresent(),
        lap == null || !match.taken() ? "" : replaced(lap));
  }

  private String replaced(LapId lap) {
    String replaced = "";
    for (RecordingBroughtIn before : state.recorded().files()) {
      if (!before.sha256().equals(file.sha256())
          && before.laps().stream().anyMatch(known -> known.lap().equals(lap))) {
        replaced = before.file();
      }
    }
    return replaced;
  }

  /** Number of passes that wait for a person. */
  public int waiting() {
    return (int) rows().stream().filter(row -> row.match().waits()).count();
  }

  /** Number of warm-up passes that are left aside. */
  public int warmUps() {
    int count = 0;
    for (int run = 0; run < runs().size(); run++) {
      int ofDay = matching.ofDay(run);
      count += ofDay >= 0 && rides.laps().get(ofDay) == null && !matching.open(run) ? 1 : 0;
    }
    return count;
  }

  /** Why a person may not say that of a pass; empty if it may be said. */
  public List<Problem> problems(int pass, Answer answer) {
    if (pass < 1 || pass > passes.size()) {
      return List.of(Problem.of(RecordingFault.NO_SUCH_PASS, "", pass, passes.size()));
    }
    Settling without = without(pass);
    int run = passes.get(pass - 1);
    Match match = without.match(run);
    LapId lap = without.lap(run);
    return switch (answer.said()) {
      case KEEP -> lap == null ? refused(RecordingFault.PASS_IS_NO_LAP, pass) : List.of();
      case LEAVE_OUT ->
          lap == null
              ? refused(RecordingFault.PASS_IS_NO_LAP, pass)
              : runs().get(run).clear() ? refused(RecordingFault.PASS_IS_CLEAR, pass) : List.of();
      case NO_LAP ->
          match == Match.FITS
              ? refused(RecordingFault.PASS_IS_CLEAR, pass)
              : match == Match.DOUBTFUL
                  ? refused(RecordingFault.PASS_IS_A_LAP, pass, number(lap))
                  : List.of();
      case LAP -> without.laps(pass, run, answer.lap());
    };
  }

  private int number(@org.jspecify.annotations.Nullable LapId lap) {
    return lap == null ? 0 : lap.ofDay(state.plan().laps().perStint());
  }

  private static List<Problem> refused(RecordingFault fault, Object... details) {
    return List.of(Problem.of(fault, "", details));
  }

  private List<Problem> laps(int pass, int run, int number) {
    int perStint = state.plan().laps().perStint();
    int ride = number < 1 ? -1 : rides.index(LapId.ofDay(number, perStint));
    if (ride < 0) {
      return refused(RecordingFault.LAP_NOT_OF_DAY, number);
    }
    for (Map.Entry<Integer, Held> other : answers.entrySet()) {
      int its = other.getValue().ofDay();
      if (its >= 0 && Integer.signum(its - ride) != Integer.signum(other.getKey() - run)) {
        int otherPass = passes.indexOf(other.getKey()) + 1;
        return refused(
            RecordingFault.OUT_OF_ORDER, pass, number, otherPass, number(rides.laps().get(its)));
      }
    }
    return List.of();
  }

  /**
   * The same once a person said something of a pass.
   *
   * @throws IllegalArgumentException if that may not be said, see {@link #problems}
   */
  public Settling with(int pass, Answer answer) {
    if (!problems(pass, answer).isEmpty()) {
      throw new IllegalArgumentException("refused: " + problems(pass, answer));
    }
    Settling without = without(pass);
    int run = passes.get(pass - 1);
    int ofDay =
        switch (answer.said()) {
          case KEEP, LEAVE_OUT -> without.matching.ofDay(run);
          case NO_LAP -> -1;
          case LAP -> rides.index(LapId.ofDay(answer.lap(), state.plan().laps().perStint()));
        };
    Map<Integer, Held> more = new TreeMap<>(without.answers);
    more.put(run, new Held(answer.said(), ofDay));
    return new Settling(state, file, rides, more, passes);
  }

  /** The same without what was said of a pass. */
  public Settling without(int pass) {
    Map<Integer, Held> fewer = new TreeMap<>(answers);
    fewer.remove(passes.get(pass - 1));
    return new Settling(state, file, rides, fewer, passes);
  }

  /** True if a person said something of a pass. */
  public boolean answered(int pass) {
    return answers.containsKey(passes.get(pass - 1));
  }

  /** Seconds by which the day's clock is ahead of the recorder's; empty if no clock tells. */
  public Optional<Double> offset() {
    return Double.isNaN(matching.offset()) ? Optional.empty() : Optional.of(matching.offset());
  }

  /** The session. */
  public SessionState session() {
    return state;
  }

  /** Name of the file, without folders. */
  public String fileName() {
    return file.name();
  }

  /** True if the same file was brought in before: what it said is then taken back. */
  public boolean again() {
    return state.recorded().files().stream().anyMatch(f -> f.sha256().equals(file.sha256()));
  }

  /** Name of the trail by whose gates it was read. */
  public String trail() {
    return file.trail().name();
  }

  /** Number of the trail's version. */
  public int version() {
    return file.trail().version().number();
  }

  /** True if the plan fixes the trail; otherwise all that comes of the recording is exploratory. */
  public boolean planned() {
    return file.trail().planned();
  }

  /** True if the trail book has the line, so that it is told where on the trail time is lost. */
  public boolean line() {
    return file.trail().line() != null;
  }

  BroughtFile file() {
    return file;
  }

  /** Runs that are taken in, by lap, and how each was settled. */
  Map<LapId, Taken> taken() {
    Map<LapId, Taken> taken = new TreeMap<>();
    for (int run = 0; run < runs().size(); run++) {
      LapId lap = lap(run);
      if (lap != null && match(run).taken()) {
        taken.put(lap, new Taken(runs().get(run), match(run)));
      }
    }
    return taken;
  }

  /** A run that is taken in. */
  record Taken(Run run, Match match) {}
}
