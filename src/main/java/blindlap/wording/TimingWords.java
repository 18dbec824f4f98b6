package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Sector;
import blindlap.plan.Timing;
import blindlap.plan.TrailGate;
import blindlap.plan.TrailVersion;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What times come from, in words. */
public final class TimingWords {
  private static final Words WORDS = Words.of("timing");

  private TimingWords() {}

  static String say(String key, Object... details) {
    return WORDS.say(key, details);
  }

  /** "timed by a recording, from Gate post to Bridge". */
  public static String by(Timing timing) {
    String by = WORDS.say("by." + timing.by().name());
    Sector sector = timing.sector();
    return sector == null ? by : WORDS.say("by.sector", by, sector.from(), sector.to());
  }

  /** "version 2 of the trail: Gate post, Bridge, Barn". */
  public static String gates(@Nullable TrailVersion trail) {
    return trail == null
        ? WORDS.say("gates.none")
        : WORDS.say(
            "gates",
            trail.number(),
            String.join(", ", trail.gates().stream().map(TrailGate::name).toList()));
  }

  /** What a recording times by a plan, and at which gates; nothing where none does. */
  public static List<String> declared(Plan plan) {
    List<String> lines = new ArrayList<>();
    for (Measure measure : plan.measures()) {
      if (measure.recorded()) {
        String key = measure.timing().sector() == null ? "declared.lap" : "declared";
        lines.add(WORDS.say(key, measure.name(), by(measure.timing())));
      }
    }
    TrailVersion trail = plan.trailVersion();
    if (trail != null) {
      lines.add(
          WORDS.say(
              "declared.gates",
              trail.number(),
              String.join(", ", trail.gates().stream().map(TrailGate::name).toList()),
              trail.sha256()));
    }
    return lines;
  }

  /** Which versions of a trail there are to choose, and the gates of the one that was chosen. */
  public static String offered(List<Integer> versions, List<String> gates) {
    String there =
        versions.isEmpty()
            ? ""
            : WORDS.say(
                "offered", String.join(", ", versions.stream().map(String::valueOf).toList()));
    String chosen = gates.isEmpty() ? "" : WORDS.say("offered.gates", String.join(", ", gates));
    return (there + " " + chosen).strip();
  }
}
