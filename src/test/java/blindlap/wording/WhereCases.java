package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.review.Masks;
import blindlap.review.RecordedTimes;
import blindlap.review.WhereDays;
import blindlap.session.MasksRead;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Invented days for every sentence of where on the trail, by what they show. */
final class WhereCases {
  private static final Rule SIXTEEN = Rule.blocks(2, 16, 4);
  private static final Rule FEW = new Rule(2, 12, 4, List.of("ABBA", "BAAB"), null, null);
  private static final String ORDER = "ABBABAABABBABAAB";
  private static final long SEED = 6;
  private static final double NOISE = 0.03;

  private WhereCases() {}

  static Map<String, Finding> all() {
    Map<String, Finding> cases = new LinkedHashMap<>();
    DayRecord rocks = day(plan(true), gain(195, 690, 2));
    put(cases, "two neighbouring sectors gain", rocks);
    put(cases, "nothing shown", day(plan(true), gain(0, 690, 0)));
    put(cases, "all of it in one sector", day(plan(true), gain(195, 420, 2)));
    put(cases, "all the way", day(plan(true), gain(0, 690, 3)));
    put(cases, "gains here, loses there", day(plan(true), opposite()));
    put(cases, "the other setup gains", day(plan(true), gain(420, 690, -2)));
    put(cases, "no trail at commit", day(plan(false), gain(195, 420, 2)));
    put(cases, "masked stints", WhereDays.with(rocks, 3, WhereDays.gap(rocks, 3, 7)));
    put(cases, "a void sector", WhereDays.with(rocks, 5, WhereDays.voided(rocks, 5, 0)));
    put(
        cases,
        "too few orders for a band",
        WhereDays.day(
            WhereDays.plan(FEW, true), "ABBABAABABBA", gain(195, 420, 2), NOISE, new Random(SEED)));
    put(
        cases,
        "orders drawn, too many to walk",
        WhereDays.day(
            WhereDays.plan(Rule.blocks(2, 36, 4), true),
            "ABBABAAB".repeat(4) + "ABBA",
            gain(195, 420, 1),
            0.06,
            new Random(SEED)));
    put(cases, "no split", withoutSplits(day(plan(false), gain(195, 420, 2))));
    put(cases, "no line", withoutLine(rocks));
    put(cases, "one setup on throughout", WhereDays.nullRun(day(plan(true), gain(0, 690, 0))));
    put(cases, "one setup on throughout, told apart by chance", WhereDays.nullRun(rocks));
    put(cases, "open", day(at(BlindLevel.OPEN), gain(195, 420, 2)));
    put(
        cases,
        "open, ended by choice",
        WhereDays.ended(day(at(BlindLevel.OPEN), gain(195, 420, 2)), 14));
    put(cases, "masked labels, not read", masked(List.of(), Optional.empty()));
    put(cases, "masked labels, read", masked(List.of(1, 0), Optional.of(MasksRead.From.PHRASE)));
    put(
        cases,
        "three setups",
        WhereDays.day(
            WhereDays.plan(Rule.blocks(3, 9, 3), true),
            "ABCBCACAB",
            gain(195, 420, 2),
            NOISE,
            new Random(SEED)));
    return cases;
  }

  private static void put(Map<String, Finding> cases, String name, DayRecord day) {
    cases.put(name, Analysis.of(day));
  }

  private static double[] gain(double from, double to, double whole) {
    return WhereDays.gain(from, to, whole);
  }

  private static double[] opposite() {
    double[] both = gain(195, 420, 2.5);
    double[] loss = gain(420, 690, -1);
    for (int i = 0; i < both.length; i++) {
      both[i] += loss[i];
    }
    return both;
  }

  private static Plan plan(boolean declared) {
    return WhereDays.plan(SIXTEEN, declared);
  }

  private static Plan at(BlindLevel level) {
    return WhereDays.of(Days.at(level, Days.plan(SIXTEEN, List.of(Days.lapTime()))), true);
  }

  private static DayRecord day(Plan plan, double[] gain) {
    return WhereDays.day(plan, ORDER, gain, NOISE, new Random(SEED));
  }

  private static DayRecord masked(List<Integer> read, Optional<MasksRead.From> from) {
    DayRecord day = day(at(BlindLevel.MASKED), gain(195, 420, 2));
    return day.with(new Masks(day.plan(), List.of(), read, from));
  }

  private static DayRecord withoutSplits(DayRecord day) {
    TreeMap<blindlap.session.day.LapId, RecordedTimes.Lap> laps = new TreeMap<>();
    day.recorded()
        .laps()
        .forEach(
            (id, lap) -> {
              BigDecimal whole = BigDecimal.ZERO;
              for (@Nullable BigDecimal sector : lap.sectors()) {
                whole = sector == null ? whole : whole.add(sector);
              }
              laps.put(
                  id,
                  new RecordedTimes.Lap(
                      List.of(whole),
                      lap.uncertainties().subList(0, 1),
                      lap.pieces(),
                      lap.voided()));
            });
    return day.with(new RecordedTimes(day.recorded().borders(), laps));
  }

  private static DayRecord withoutLine(DayRecord day) {
    TreeMap<blindlap.session.day.LapId, RecordedTimes.Lap> laps = new TreeMap<>();
    day.recorded()
        .laps()
        .forEach(
            (id, lap) ->
                laps.put(
                    id,
                    new RecordedTimes.Lap(
                        lap.sectors(), lap.uncertainties(), List.of(), lap.voided())));
    return day.with(new RecordedTimes(List.of(), laps));
  }

  /** The section of the table of all sentences. */
  static void write(StringBuilder out) {
    out.append("\n## Where on the trail\n\nEvery line of it, of invented days.\n\n");
    out.append("| day | sentences |\n| --- | --- |\n");
    all()
        .forEach(
            (name, finding) -> {
              WhereWords words = WhereWords.of(finding).orElseThrow();
              out.append("| ")
                  .append(name)
                  .append(" | ")
                  .append(String.join("<br>", words.lines()).replace("|", "\\|"));
              words
                  .notes()
                  .forEach(note -> out.append("<br>On the picture: ").append(note.words()));
              finding
                  .where()
                  .flatMap(w -> w.line())
                  .ifPresent(line -> out.append("<br>At the finish: ").append(words.end()));
              out.append(" |\n");
            });
  }
}
