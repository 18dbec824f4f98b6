package blindlap.wording;

import blindlap.wording.SettlingRow.Doubt;
import blindlap.wording.SettlingRow.Match;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the table says in which a recording is settled. */
public final class SettlingWords {
  private static final Words WORDS = Words.of("settling");
  private static final double CONFIDENT = 1.96;
  private static final int MINUTE = 60;
  private static final int HOUR = 3600;

  private SettlingWords() {}

  /** A sentence of the table's. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** Lap time with what the recorder leaves open. */
  public static String time(SettlingRow row) {
    return Double.isNaN(row.seconds())
        ? WORDS.say("time.none")
        : WORDS.say(
            "time",
            Figures.time(row.seconds(), 1),
            Figures.number(Math.max(CONFIDENT * row.uncertainty(), 0.1), 1));
  }

  /** How pass and lap fit, and what a person should know of them. */
  public static String match(SettlingRow row) {
    String doubts = doubts(row.doubts());
    String match = WORDS.say("match." + row.match(), doubts);
    boolean told =
        row.match() == Match.DOUBTFUL || row.match() == Match.KEPT || row.match() == Match.LEFT_OUT;
    String said = told || doubts.isEmpty() ? match : WORDS.say("with.doubts", match, doubts);
    said = row.voided() ? WORDS.say("voided", said) : said;
    return row.replaces().isEmpty() ? said : WORDS.say("replaces", said, row.replaces());
  }

  private static String doubts(List<Doubt> doubts) {
    String said = "";
    for (Doubt doubt : doubts) {
      String word = WORDS.say("doubt." + doubt.kind(), doubt.gate());
      said = said.isEmpty() ? word : WORDS.say("doubts", said, word);
    }
    return said;
  }

  /** What is asked about a row that waits. */
  public static String ask(SettlingRow row) {
    Integer lap = row.lap();
    return WORDS.say(
        "ask." + row.match(),
        row.pass(),
        lap == null || row.match() == Match.FITS_NONE ? time(row) : lap,
        doubts(row.doubts()));
  }

  /** How many laps have their pass, and how many passes wait. */
  public static String sum(List<SettlingRow> rows) {
    long laps = rows.stream().filter(row -> row.lap() != null).count();
    long found = rows.stream().filter(SettlingRow::found).count();
    long waiting = rows.stream().filter(row -> row.match().waits()).count();
    String sum = laps == found ? WORDS.say("all", laps) : WORDS.say("some", found, laps);
    return sum + (waiting == 0 ? WORDS.say("none.waits") : WORDS.say("waiting", waiting));
  }

  /** The one offset of a file. */
  public static String offset(Optional<Double> seconds) {
    if (seconds.isEmpty()) {
      return WORDS.say("offset.none");
    }
    return WORDS.say(
        seconds.get() < 0 ? "offset.behind" : "offset.ahead", span(Math.abs(seconds.get())));
  }

  /** Seconds as hours, minutes and seconds. */
  static String span(double seconds) {
    long whole = Math.round(seconds);
    return whole >= HOUR
        ? WORDS.say("offset.hours", whole / HOUR, whole % HOUR / MINUTE, whole % MINUTE)
        : whole >= MINUTE
            ? WORDS.say("offset.minutes", whole / MINUTE, whole % MINUTE)
            : WORDS.say("offset.seconds", whole);
  }

  /** The table in lines, columns one under the other. */
  public static List<String> lines(List<SettlingRow> rows) {
    List<List<String>> cells = new ArrayList<>();
    cells.add(
        List.of(
            WORDS.say("column.lap"),
            WORDS.say("column.code"),
            WORDS.say("column.time"),
            WORDS.say("column.pass"),
            WORDS.say("column.match")));
    for (SettlingRow row : rows) {
      Integer lap = row.lap();
      Integer code = row.code();
      cells.add(
          List.of(
              lap == null ? "?" : String.valueOf(lap),
              code == null ? "" : String.valueOf(code),
              time(row),
              row.pass() == 0 ? "" : String.valueOf(row.pass()),
              match(row)));
    }
    int[] widths = new int[cells.get(0).size()];
    cells.forEach(
        row -> {
          for (int i = 0; i < widths.length; i++) {
            widths[i] = Math.max(widths[i], row.get(i).length());
          }
        });
    return cells.stream().map(row -> line(row, widths)).toList();
  }

  /** Numbers end below each other; words begin below each other. */
  private static String line(List<String> row, int[] widths) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      String gap = " ".repeat(widths[i] - row.get(i).length());
      boolean last = i == widths.length - 1;
      line.append(last ? row.get(i) : gap + row.get(i) + "  ");
    }
    return line.toString().stripTrailing();
  }
}
