package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.TrailVersion;
import blindlap.session.Recorded;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.SectorVoided;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Which recordings a day has, which laps they lack, and which sectors are void. Nothing in it tells
 * of the time of day, of the time between laps, or of setups, so that it may be read before
 * unsealing.
 */
public final class RecordingsWords {
  private final SessionState state;
  private final Plan plan;
  private final Recorded recorded;

  private RecordingsWords(SessionState state) {
    this.state = state;
    this.plan = state.plan();
    this.recorded = state.recorded();
  }

  /** A sentence a recording, then what is missing and what is void; nothing without recordings. */
  public static List<String> lines(SessionState state) {
    return new RecordingsWords(state).all();
  }

  /** What a plan takes from a recording that no lap has yet; nothing where every measure has. */
  public static List<String> awaited(SessionState state) {
    List<String> names = awaitedNames(state).stream().map(name -> '"' + name + '"').toList();
    return names.isEmpty() ? List.of() : List.of(TimingWords.say("awaited", StintList.and(names)));
  }

  /** The names of such measures. */
  public static List<String> awaitedNames(SessionState state) {
    Recorded recorded = state.recorded();
    return state.plan().measures().stream()
        .filter(
            m ->
                m.recorded()
                    && recorded.laps().keySet().stream()
                        .noneMatch(lap -> recorded.time(state.plan(), m, lap).isPresent()))
        .map(Measure::name)
        .toList();
  }

  private List<String> all() {
    List<String> lines = new ArrayList<>();
    for (RecordingBroughtIn file : recorded.files()) {
      lines.add(file(file));
    }
    if (!recorded.files().isEmpty()) {
      without(lines);
      recorded.laps().values().forEach(lap -> passes(lap, lines));
    }
    recorded.sectorVoids().forEach((lap, voids) -> voids.values().forEach(v -> voided(v, lines)));
    return lines;
  }

  private String file(RecordingBroughtIn file) {
    List<String> laps = new ArrayList<>();
    for (RecordedLap.Settled how : RecordedLap.Settled.values()) {
      long count = file.laps().stream().filter(lap -> lap.settled() == how).count();
      if (count > 0) {
        laps.add(TimingWords.say("settled." + how.name(), count));
      }
    }
    long counting =
        file.laps().stream().filter(lap -> lap.equals(recorded.laps().get(lap.lap()))).count();
    String counts =
        counting < file.laps().size() ? " " + TimingWords.say("file.counts", counting) : "";
    return TimingWords.say(
            "file",
            file.file(),
            file.sha256(),
            laps.isEmpty() ? TimingWords.say("settled.none") : String.join(", ", laps),
            offset(file.offset()))
        + counts;
  }

  private static String offset(@Nullable BigDecimal offset) {
    if (offset == null) {
      return TimingWords.say("offset.none");
    }
    String key =
        offset.signum() == 0
            ? "offset.same"
            : offset.signum() > 0 ? "offset.ahead" : "offset.behind";
    return TimingWords.say(key, SettlingWords.span(offset.abs().doubleValue()));
  }

  /** Scored laps that were ridden and no recording has. */
  private void without(List<String> lines) {
    TreeSet<Integer> laps = new TreeSet<>();
    for (LapState lap : state.laps()) {
      boolean scored = lap.id().lap() > plan.laps().settling();
      if (lap.ridden() && scored && !recorded.laps().containsKey(lap.id())) {
        laps.add(number(lap.id()));
      }
    }
    if (!laps.isEmpty()) {
      lines.add(TimingWords.say("laps.without", laps.size(), numbers(laps)));
    }
  }

  private void passes(RecordedLap lap, List<String> lines) {
    for (int gate = 0; gate < lap.passes().size(); gate++) {
      RecordedPass pass = lap.passes().get(gate);
      RecordedPass.Doubt doubt = pass.doubtful();
      if (pass.seconds() == null || doubt != null) {
        String why = doubt == null ? "missed" : doubt.name();
        lines.add(
            TimingWords.say(
                pass.seconds() == null ? "pass.missing" : "pass.kept",
                number(lap.lap()),
                gate(gate),
                TimingWords.say("doubt." + why)));
      }
    }
  }

  private String gate(int gate) {
    TrailVersion trail = plan.trailVersion();
    return trail == null || gate >= trail.gates().size()
        ? String.valueOf(gate + 1)
        : trail.gates().get(gate).name();
  }

  private void voided(SectorVoided v, List<String> lines) {
    String event = v.event().text();
    lines.add(
        TimingWords.say(
            v.afterValuesSeen() ? "sector.void.seen" : "sector.void",
            number(v.lap()),
            v.sector().from(),
            v.sector().to(),
            v.words().isBlank() ? event : event + ": " + v.words()));
  }

  private int number(LapId lap) {
    return lap.ofDay(plan.laps().perStint());
  }

  private static String numbers(TreeSet<Integer> laps) {
    return String.join(", ", laps.stream().map(String::valueOf).toList());
  }
}
