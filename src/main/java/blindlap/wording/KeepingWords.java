package blindlap.wording;

import blindlap.fault.Problem;
import blindlap.session.ChainFault;
import blindlap.session.NotebookReport;
import blindlap.session.RecoveryReport;
import blindlap.session.SessionSummary;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Words about sessions that move between notebooks, and about keeping notebooks safe. */
public final class KeepingWords {
  private static final Words WORDS = Words.of("keeping");
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM uuuu HH:mm:ss 'UTC'", Locale.UK).withZone(ZoneOffset.UTC);
  private static final int PROBLEMS_IN_BRIEF = 2;
  private static final int BYTES_A_MEGABYTE = 1_000_000;

  private KeepingWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** "1 entry", "57 entries"; of "entry", "session", "file" or "problem". */
  public static String counted(String what, long count) {
    return WORDS.say(count == 1 ? what + ".one" : what, Figures.count(count));
  }

  private static String which(SessionSummary session) {
    return WORDS.say(
        "which",
        session.id().brief(),
        NotebookWords.title(session),
        NotebookWords.facts(session),
        session.day());
  }

  private static String standing(SessionSummary session) {
    String step = NotebookWords.standing(session);
    boolean sealed = session.step().sealed() && session.kind() != blindlap.plan.Plan.Kind.NOISE_RUN;
    String key = session.level().shown() ? "standing.covered" : "standing.sealed";
    return sealed ? WORDS.say(key, step) : step;
  }

  /**
   * What became of a session that was brought in.
   *
   * @param added number of entries that were new
   * @param known number of entries that were here already
   * @param late number of entries, of either notebook, that thereby turned out to be too late
   */
  public static String arrived(SessionSummary session, int added, int known, int late) {
    String which = which(session);
    if (added == 0) {
      return WORDS.say("arrived.nothing", which, counted("entry", known));
    }
    String line =
        WORDS.say(
            known == 0 ? "arrived.new" : "arrived.more",
            which,
            counted("entry", added),
            Figures.count(known),
            standing(session));
    return late == 0 ? line : WORDS.say("arrived.late", line, counted("entry", late));
  }

  /** How many sessions of a notebook had nothing new; empty if all had. */
  public static Optional<String> unchanged(long unchanged, int all) {
    if (all == 0) {
      return Optional.of(WORDS.say("unchanged.empty"));
    }
    return unchanged == 0
        ? Optional.empty()
        : Optional.of(WORDS.say("unchanged", counted("session", unchanged)));
  }

  /** Why nothing of a file or a session in it was added. */
  public static String refused(String file, String session, String problem) {
    return session.isEmpty()
        ? WORDS.say("refused.file", file, problem)
        : WORDS.say("refused", file, session, problem);
  }

  /** A session that was written to a file. */
  public static String written(SessionSummary session, int entries, Path file) {
    return WORDS.say("written", which(session), counted("entry", entries), file, standing(session));
  }

  /** A backup in a list; its time is universal, as in its name. */
  public static String backup(Instant made, long bytes, Path file) {
    BigDecimal size =
        BigDecimal.valueOf(bytes).divide(BigDecimal.valueOf(BYTES_A_MEGABYTE), 1, RoundingMode.UP);
    return WORDS.say("backups.line", TIME.format(made), size.toPlainString(), file);
  }

  /** What a full check found, one line each. */
  public static List<String> verified(NotebookReport report, Path file) {
    String sessions = counted("session", report.sessions());
    String entries = counted("entry", report.entries());
    if (report.sound()) {
      return List.of(WORDS.say("verify.sound", sessions, entries));
    }
    List<String> lines = new ArrayList<>();
    report.problems().forEach(problem -> lines.add(checked(problem)));
    lines.add(
        WORDS.say(
            "verify.problems", counted("problem", report.problems().size()), sessions, entries));
    lines.add(WORDS.say("verify.how", file));
    return lines;
  }

  private static String checked(Problem problem) {
    if (!(problem.fault() instanceof ChainFault fault)) {
      return Problems.sentence(problem);
    }
    Object[] arguments = new Object[problem.details().size() + 1];
    arguments[0] = problem.where();
    for (int i = 1; i < arguments.length; i++) {
      arguments[i] = problem.details().get(i - 1);
    }
    return problem.where() + ": " + WORDS.say("checked." + fault.name(), arguments);
  }

  /** The same where there is little room: the first problems, and how many more there are. */
  public static List<String> verifiedInBrief(NotebookReport report, Path file) {
    List<String> lines = verified(report, file);
    int problems = report.problems().size();
    if (problems <= PROBLEMS_IN_BRIEF) {
      return lines;
    }
    List<String> brief = new ArrayList<>(lines.subList(0, PROBLEMS_IN_BRIEF));
    brief.add(WORDS.say("verify.more", problems - PROBLEMS_IN_BRIEF, file));
    brief.addAll(lines.subList(problems, lines.size()));
    return brief;
  }

  /** What could be saved of a damaged notebook, one line each. */
  public static List<String> recovered(RecoveryReport report, Path fresh) {
    List<String> lines = new ArrayList<>();
    lines.add(
        WORDS.say(
            "recover.done",
            counted("session", report.sessions()),
            counted("entry", report.entries()),
            fresh));
    if (report.losses().isEmpty()) {
      lines.add(WORDS.say("recover.whole"));
    } else {
      lines.add(WORDS.say("recover.losses"));
      Problems.sentences(report.losses()).forEach(loss -> lines.add("  " + loss));
    }
    return lines;
  }
}
