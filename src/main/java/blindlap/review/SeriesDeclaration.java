package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.plan.TrailVersion;
import blindlap.session.SessionState;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * What the first session of a series declared for all of them, and in what another plan differs. A
 * plan that differs is never pooled (docs/method.md#series).
 *
 * @param session the first session with a key, by its id
 * @param plan of that session
 */
public record SeriesDeclaration(String session, Plan plan) {

  /** What every plan of a series has in common, in the order of a plan file. */
  public enum Field {
    QUESTION,
    KIND,
    SETUPS,
    PRIMARY,
    MEASURE_KIND,
    UNIT,
    BETTER,
    WORTHWHILE,
    DRIFT,
    SCALE,
    SUMMARY,
    TIMING,
    TRAIL,
    COVARIATES,
    RULE,
    LEVEL,
    SESSIONS
  }

  /**
   * A field in which a plan differs.
   *
   * @param where its place in the plan that differs, as in a plan file
   */
  public record Difference(Field field, String where) {}

  /** What sessions of one series declared; empty while none of them has a key. */
  public static Optional<SeriesDeclaration> of(List<SessionState> sessions) {
    return sessions.stream()
        .filter(SessionState::hasKey)
        .min(Comparator.comparing(SessionState::committedAt))
        .map(first -> new SeriesDeclaration(first.id().text(), first.plan()));
  }

  /** In what a plan differs; nothing for one that can be pooled. */
  public List<Difference> differences(Plan other) {
    List<Difference> found = new ArrayList<>();
    if (!plain(other.question()).equals(plain(plan.question()))) {
      found.add(new Difference(Field.QUESTION, "question"));
    }
    if (other.kind() != plan.kind()) {
      found.add(new Difference(Field.KIND, "kind"));
      return found;
    }
    if (!setups(other).equals(setups(plan))) {
      found.add(new Difference(Field.SETUPS, "setups"));
    }
    measure(other, found);
    differs(sameCovariates(other), Field.COVARIATES, "covariates", found);
    if (!other.protocol().sameFamily(plan.protocol())) {
      found.add(new Difference(Field.RULE, other.protocol().own() ? "rule" : "protocol"));
    }
    differs(other.level() == plan.level(), Field.LEVEL, "blinding.level", found);
    if (!Objects.equals(other.seriesSessions(), plan.seriesSessions())) {
      found.add(new Difference(Field.SESSIONS, "series_sessions"));
    }
    return found;
  }

  private static String plain(String words) {
    return words.strip().toLowerCase(Locale.ROOT);
  }

  /** Setups go by their ids, in whatever order. */
  private static List<String> setups(Plan plan) {
    return plan.setups().stream().map(Setup::id).sorted().toList();
  }

  /** The same numbers taken out; the reasons and what is expected may be said anew. */
  private boolean sameCovariates(Plan other) {
    return other.covariates().size() == plan.covariates().size()
        && other.covariates().stream()
            .allMatch(c -> plan.covariate(c.name()).filter(c::sameAs).isPresent());
  }

  /** Times at other gates are other times; a trail whose line alone was drawn anew is the same. */
  private boolean sameGates(Plan other) {
    TrailVersion own = other.trailVersion();
    TrailVersion wanted = plan.trailVersion();
    return own == null ? wanted == null : wanted != null && own.sameGates(wanted);
  }

  private void measure(Plan other, List<Difference> found) {
    Measure own = other.primary().orElse(null);
    Measure wanted = plan.primary().orElse(null);
    if (own == null || wanted == null) {
      return;
    }
    String at = "measures[" + (other.measures().indexOf(own) + 1) + "].";
    if (!own.name().equals(wanted.name())) {
      found.add(new Difference(Field.PRIMARY, at + "name"));
      return;
    }
    differs(own.kind() == wanted.kind(), Field.MEASURE_KIND, at + "kind", found);
    differs(own.unit().equals(wanted.unit()), Field.UNIT, at + "unit", found);
    differs(own.better() == wanted.better(), Field.BETTER, at + "better", found);
    differs(own.worthwhileAs(wanted), Field.WORTHWHILE, at + "worthwhile", found);
    differs(own.drift() == wanted.drift(), Field.DRIFT, at + "drift", found);
    differs(own.scale() == wanted.scale(), Field.SCALE, at + "scale", found);
    differs(own.summary() == wanted.summary(), Field.SUMMARY, at + "summary", found);
    differs(own.timing().equals(wanted.timing()), Field.TIMING, at + "timed_by", found);
    if (own.timing().by().recorded() && wanted.timing().by().recorded()) {
      differs(sameGates(other), Field.TRAIL, "trail_version.number", found);
    }
  }

  private static void differs(boolean same, Field field, String where, List<Difference> found) {
    if (!same) {
      found.add(new Difference(field, where));
    }
  }
}
