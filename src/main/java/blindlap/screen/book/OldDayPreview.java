package blindlap.screen.book;

import blindlap.desk.PlainDays;
import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.session.PlainDay;
import blindlap.session.PlainLap;
import blindlap.wording.Headline;
import blindlap.wording.SeriesWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * What of a file would be taken and what is refused, before anything is written.
 *
 * @param headline the answer of the page
 * @param taken a sentence a day that can be taken
 * @param refused a sentence a mistake, with its line; at most some
 * @param whole true if the mistakes hold up the whole file
 * @param heads names of the columns of the rows
 * @param rows first laps that would be taken
 * @param more number of laps beyond them
 * @param days number of days that can be taken
 */
public record OldDayPreview(
    Headline headline,
    List<String> taken,
    List<String> refused,
    boolean whole,
    List<String> heads,
    List<List<String>> rows,
    int more,
    int days) {
  private static final Words WORDS = Words.of("oldday");
  private static final int MOST_ROWS = 6;
  private static final int MOST_REFUSED = 12;

  /** Before a file is chosen. */
  static final OldDayPreview NONE =
      new OldDayPreview(
          new Headline(
              WORDS.say("answer.empty.before"),
              WORDS.say("answer.empty"),
              WORDS.say("answer.empty.after")),
          List.of(),
          List.of(),
          false,
          List.of(),
          List.of(),
          0,
          0);

  public OldDayPreview {
    taken = List.copyOf(taken);
    refused = List.copyOf(refused);
    heads = List.copyOf(heads);
    rows = List.copyOf(rows);
  }

  /** A file of which fields are still open. */
  static OldDayPreview open() {
    return of(new PlainDays.Reading(List.of(), List.of(), List.of()));
  }

  /** The preview of a reading. */
  static OldDayPreview of(PlainDays.Reading reading) {
    List<PlainDay> good = reading.good();
    int laps = good.stream().mapToInt(day -> day.laps().size()).sum();
    List<List<String>> rows = rows(good, reading.measures());
    return new OldDayPreview(
        headline(good.size(), laps),
        good.stream().map(OldDayPreview::sentence).toList(),
        refused(reading),
        !reading.problems().isEmpty(),
        heads(reading.measures()),
        rows,
        laps - rows.size(),
        good.size());
  }

  private static Headline headline(int days, int laps) {
    return days == 0
        ? new Headline(WORDS.say("answer.none"), "", "")
        : new Headline(
            "",
            WORDS.say(days == 1 ? "answer.day" : "answer.days", days, laps),
            WORDS.say("answer.after"));
  }

  private static String sentence(PlainDay day) {
    int first = day.lines().stream().mapToInt(Integer::intValue).min().orElse(0);
    int last = day.lines().stream().mapToInt(Integer::intValue).max().orElse(0);
    return WORDS.say(
        day.lapsPerStint() > 1 ? "preview.day.stints" : "preview.day",
        SeriesWords.date(day.day()),
        day.laps().size(),
        first,
        last,
        day.laps().stream().filter(PlainLap::voided).count(),
        day.lapsPerStint());
  }

  private static List<String> refused(PlainDays.Reading reading) {
    List<String> lines = new ArrayList<>(Problems.sentences(reading.problems()));
    for (PlainDay day : reading.days()) {
      for (Problem problem : day.problems()) {
        lines.add(
            WORDS.say("refused.day", SeriesWords.date(day.day()), Problems.sentence(problem)));
      }
    }
    int more = lines.size() - MOST_REFUSED;
    if (more <= 0) {
      return lines;
    }
    List<String> some = new ArrayList<>(lines.subList(0, MOST_REFUSED));
    some.add(WORDS.say("refused.more", more));
    return some;
  }

  private static List<String> heads(List<Measure> measures) {
    List<String> heads = new ArrayList<>();
    heads.add(WORDS.say("th.line"));
    heads.add(WORDS.say("th.day"));
    heads.add(WORDS.say("th.setup"));
    measures.forEach(measure -> heads.add(measure.name()));
    heads.add(WORDS.say("th.void"));
    return heads;
  }

  private static List<List<String>> rows(List<PlainDay> good, List<Measure> measures) {
    List<List<String>> rows = new ArrayList<>();
    for (PlainDay day : good) {
      for (int i = 0; i < day.laps().size() && rows.size() < MOST_ROWS; i++) {
        PlainLap lap = day.laps().get(i);
        List<String> cells = new ArrayList<>();
        cells.add(String.valueOf(day.lines().get(i)));
        cells.add(SeriesWords.date(day.day()));
        cells.add(lap.setup().isEmpty() ? "–" : lap.setup());
        for (Measure measure : measures) {
          BigDecimal value = lap.values().get(measure.name());
          cells.add(Figures.value(measure, value == null ? Double.NaN : value.doubleValue()));
        }
        cells.add(lap.voided() ? WORDS.say("void.yes") : "");
        rows.add(cells);
      }
    }
    return rows;
  }
}
