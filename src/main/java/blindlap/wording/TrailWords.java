package blindlap.wording;

import blindlap.session.SessionSummary;
import blindlap.session.TrailTitle;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Words about trails and their gates. */
public final class TrailWords {
  private static final Words WORDS = Words.of("trail");
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Locale.UK);
  private static final double ALMOST_ALL = 1.96;

  private TrailWords() {}

  /**
   * A gate as it is said.
   *
   * @param along metres from the beginning of the line
   * @param width metres from end to end
   * @param seconds from the beginning on the lap that the line was recorded on; NaN if unknown
   * @param uncertainty standard deviation of a usual recorder's time at it; NaN if unknown
   */
  public record Said(String name, double along, double width, double seconds, double uncertainty) {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** Start, split or finish, by the place of a gate among all. */
  public static String role(int gate, int gates) {
    return WORDS.say(gate == 0 ? "role.start" : gate == gates - 1 ? "role.finish" : "role.split");
  }

  /** When a version was kept. */
  public static String kept(TrailTitle title, ZoneId zone) {
    return TIME.format(title.at().atZone(zone));
  }

  /** A distance in metres, a tenth where it has one. */
  public static String metres(double metres) {
    return Figures.number(metres, Math.rint(metres) == metres ? 0 : 1);
  }

  /** Where the clock starts and stops, and how exactly that is known. */
  public static String answer(List<Said> gates) {
    Said start = gates.get(0);
    Said finish = gates.get(gates.size() - 1);
    String about = about(start, finish);
    return about.isEmpty()
        ? WORDS.say("exact.unknown", start.name(), finish.name())
        : WORDS.say("exact", start.name(), finish.name(), about);
  }

  /** The ± of a time from one gate to another, in seconds; empty if it is not known. */
  public static String about(Said from, Said to) {
    double u = ALMOST_ALL * Math.hypot(from.uncertainty(), to.uncertainty());
    return Double.isFinite(u) ? Figures.number(u, u < 10 ? 1 : 0) : "";
  }

  /** Gates and the ways between them, a line each. */
  public static List<String> lines(List<Said> gates) {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < gates.size(); i++) {
      Said gate = gates.get(i);
      lines.add(
          WORDS.say(
              "gate",
              role(i, gates.size()),
              gate.name(),
              metres(gate.along()),
              metres(gate.width())));
    }
    for (int i = 1; i < gates.size(); i++) {
      lines.add(sector(gates.get(i - 1), gates.get(i)));
    }
    lines.add(answer(gates));
    lines.add(WORDS.say("usual"));
    return lines;
  }

  /** The way between two gates: its length and, where known, its time on the recorded lap. */
  public static String sector(Said from, Said to) {
    String metres = metres(Math.round(to.along() - from.along()));
    double seconds = to.seconds() - from.seconds();
    String about = about(from, to);
    return Double.isFinite(seconds) && !about.isEmpty()
        ? WORDS.say("sector.time", from.name(), to.name(), metres, Figures.time(seconds, 1), about)
        : WORDS.say("sector", from.name(), to.name(), metres);
  }

  /** Which sessions are timed on a version, or how a plan says so. */
  public static List<String> uses(TrailTitle title, List<SessionSummary> using) {
    if (using.isEmpty()) {
      return List.of(WORDS.say("unused", String.valueOf(title.number()), title.name()));
    }
    return using.stream()
        .map(session -> WORDS.say("used", session.id().brief(), NotebookWords.title(session)))
        .toList();
  }
}
