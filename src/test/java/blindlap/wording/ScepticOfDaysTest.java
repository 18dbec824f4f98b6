package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.review.QuestionHistory;
import blindlap.session.day.LapState;
import blindlap.session.day.Step;
import blindlap.session.day.VoidEvent;
import blindlap.stats.compare.Verdict;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Voids, stints used, caveats and history, counted again from the data by one who believes none.
 */
class ScepticOfDaysTest {
  private static final int DAYS = 80;

  /** Void laps of every stint of a day on which each lap was ridden. */
  private static int[] voidLaps(DayRecord day) {
    int[] laps = new int[day.plan().stints()];
    for (DayRecord.Lap lap : day.laps()) {
      laps[lap.id().stint() - 1] += lap.voided().isPresent() ? 1 : 0;
    }
    return laps;
  }

  private static int[] whole(DayRecord day) {
    int all = day.plan().laps().scored();
    return IntStream.of(voidLaps(day)).map(laps -> laps == all ? 1 : 0).toArray();
  }

  private static int[] perSetup(int[] stints, int[] order, int setups) {
    int[] each = new int[setups];
    for (int i = 0; i < stints.length; i++) {
      each[order[i]] += stints[i];
    }
    return each;
  }

  /** Share of orders at least as uneven, gone through one by one. */
  private static double share(DayRecord day, int[] stints) {
    var set = day.plan().rule().assignments();
    int setups = day.plan().setups().size();
    int seen = squares(perSetup(stints, day.key().setups(), setups));
    int hits = 0;
    int count = set.count().intValueExact();
    for (int i = 0; i < count; i++) {
      int[] order = set.order(BigInteger.valueOf(i));
      hits += squares(perSetup(stints, order, setups)) >= seen ? 1 : 0;
    }
    return (double) hits / count;
  }

  private static int squares(int[] each) {
    return IntStream.of(each).map(n -> n * n).sum();
  }

  /** What is wrong with the sentences on voids; empty if nothing is. */
  private static List<String> voids(String text, DayRecord day) {
    List<String> wrong = new ArrayList<>();
    int[] laps = voidLaps(day);
    int[] stints = whole(day);
    if (text.contains("No stint is void") && IntStream.of(laps).sum() > 0) {
      wrong.add("none");
    }
    if (text.contains("No whole stint is void") && IntStream.of(stints).sum() > 0) {
      wrong.add("none");
    }
    for (String sentence : text.split("(?<=[.]) (?=[NVS])")) {
      Matcher said =
          Pattern.compile("(Void stints|Void laps|Stints void as a whole): (\\d+) \\((.*?)\\)")
              .matcher(sentence);
      if (said.find()) {
        int[] counted = said.group(1).equals("Void laps") ? laps : stints;
        if (Integer.parseInt(said.group(2)) != IntStream.of(counted).sum()) {
          wrong.add("total");
        }
        int[] each = perSetup(counted, day.key().setups(), day.plan().setups().size());
        List<String> parts = new ArrayList<>();
        for (int i = 0; i < each.length; i++) {
          parts.add(day.plan().setups().get(i).name() + " " + each[i]);
        }
        if (!said.group(3).equals(String.join(", ", parts))) {
          wrong.add("setups");
        }
        uneven(sentence, share(day, counted), wrong);
      }
    }
    return wrong;
  }

  private static void uneven(String sentence, double p, List<String> wrong) {
    Matcher said =
        Pattern.compile("a share of (only )?(1|\\.\\d+) of the orders").matcher(sentence);
    if (!said.find()) {
      wrong.add("no share");
      return;
    }
    double number = Double.parseDouble(said.group(2));
    if (Math.abs(number - p) > 0.05 * p + 1e-9) {
      wrong.add("share");
    }
    if ((said.group(1) != null) != p < 0.1) {
      wrong.add("only");
    }
  }

  /** What is wrong with "15 of 16 stints used; …"; empty if nothing is. */
  private static List<String> used(String text, DayRecord day, Measure measure) {
    Matcher said =
        Pattern.compile(
                "(\\d+) of (\\d+) stints used; (\\d+) void(?: as a whole)?, (\\d+) not ridden"
                    + " or without a value(?:; (\\d+) scored laps? void in all)?\\.")
            .matcher(text);
    Matcher known =
        Pattern.compile(
                "(\\d+) of (\\d+) stints used, with (\\d+) void laps? that counts? all the same;"
                    + " (\\d+) not ridden or without a value\\.")
            .matcher(text);
    if (!said.matches() && !known.matches()) {
      return List.of("no numbers");
    }
    int valued = 0;
    for (int stint = 1; stint <= day.plan().stints(); stint++) {
      int at = stint;
      valued +=
          day.laps().stream()
                  .anyMatch(
                      l ->
                          l.id().stint() == at
                              && counts(day, l)
                              && l.values().containsKey(measure.name()))
              ? 1
              : 0;
    }
    int all = day.plan().stints();
    int voids = IntStream.of(whole(day)).sum();
    int laps = IntStream.of(voidLaps(day)).sum();
    List<String> wrong = new ArrayList<>();
    if (known.matches()) {
      number(known.group(1), valued, "used", wrong);
      number(known.group(2), all, "stints", wrong);
      number(known.group(3), laps, "void", wrong);
      number(known.group(4), all - valued, "without", wrong);
      if (day.plan().level().blind()) {
        wrong.add("knew");
      }
      return wrong;
    }
    number(said.group(1), valued, "used", wrong);
    number(said.group(2), all, "stints", wrong);
    number(said.group(3), voids, "void", wrong);
    number(said.group(4), all - valued - voids, "without", wrong);
    if (said.group(5) == null ? laps != voids : Integer.parseInt(said.group(5)) != laps) {
      wrong.add("laps");
    }
    return wrong;
  }

  private static void number(String said, int counted, String what, List<String> wrong) {
    if (Integer.parseInt(said) != counted) {
      wrong.add(what);
    }
  }

  /** Said without a cause, or a cause without being said. */
  private static List<String> caveats(String text, DayRecord day, Measure measure) {
    List<String> wrong = new ArrayList<>();
    int open = 0;
    int missing = 0;
    double sum = 0;
    int valued = 0;
    for (int stint = 1; stint <= day.plan().stints(); stint++) {
      List<Double> values = values(day, measure, stint);
      int at = stint;
      boolean kept =
          day.laps().stream().anyMatch(l -> l.id().stint() == at && l.voided().isEmpty());
      open += kept ? 1 : 0;
      missing += kept && values.isEmpty() ? 1 : 0;
      valued += values.isEmpty() ? 0 : 1;
      sum += values.stream().mapToDouble(v -> v).average().orElse(0);
    }
    List<Double> all = new ArrayList<>();
    for (int stint = 1; stint <= day.plan().stints(); stint++) {
      all.addAll(values(day, measure, stint));
    }
    long ends = all.stream().filter(v -> end(measure, v)).count();
    boolean two = day.plan().setups().size() == 2;
    pair(text, "values are missing", missing > 0.3 * open, wrong);
    pair(text, "near an end of the scale", ends > 0.3 * all.size(), wrong);
    pair(text, "lean on the lap before", measure.kind().rating(), wrong);
    boolean knew = !day.plan().blinding().blinded();
    pair(text, "knew what was fitted", measure.kind().rating() && knew, wrong);
    boolean few = two && measure.kind().counted() && sum / Math.max(1, valued) < 1;
    pair(text, "fewer than one a stint", few, wrong);
    return wrong;
  }

  /** Void laps count where whoever voided them knew what was on. */
  private static boolean counts(DayRecord day, DayRecord.Lap lap) {
    return lap.voided().isEmpty() || !day.plan().level().blind();
  }

  private static void pair(String text, String words, boolean cause, List<String> wrong) {
    if (text.contains(words) != cause) {
      wrong.add(words);
    }
  }

  private static List<Double> values(DayRecord day, Measure measure, int stint) {
    return day.laps().stream()
        .filter(l -> l.id().stint() == stint && counts(day, l))
        .filter(l -> l.values().containsKey(measure.name()))
        .map(l -> l.values().get(measure.name()).doubleValue())
        .toList();
  }

  private static boolean end(Measure measure, double value) {
    return switch (measure.kind()) {
      case LINE_SCALE -> value <= 5 || value >= 95;
      case CATEGORY_SCALE -> value <= 1 || value >= 9;
      case LAP_TIME, SECTOR_TIME, COUNT -> false;
    };
  }

  /** The same day with values left out, and ratings and counts pushed to an end of their scale. */
  private static DayRecord thinned(DayRecord day, Random random) {
    double gone = random.nextInt(3) == 0 ? 0.5 : 0.05;
    boolean pushed = random.nextInt(3) == 0;
    boolean biased = random.nextInt(4) == 0;
    List<DayRecord.Lap> laps = new ArrayList<>();
    for (DayRecord.Lap lap : day.laps()) {
      Map<String, BigDecimal> values = new HashMap<>();
      for (Measure measure : day.plan().measures()) {
        BigDecimal value = lap.values().get(measure.name());
        boolean primary = measure.role() == Measure.Role.PRIMARY;
        if (value != null && (primary || random.nextDouble() > gone)) {
          values.put(measure.name(), pushed && !primary ? pushed(measure, value) : value);
        }
      }
      boolean spoiled = biased && day.setup(lap.id().stint()) == 0 && random.nextInt(3) > 0;
      Optional<LapState.Voided> voided =
          spoiled ? Optional.of(new LapState.Voided(VoidEvent.TRAFFIC, "", false)) : lap.voided();
      laps.add(new DayRecord.Lap(lap.id(), lap.ridden(), values, voided, lap.note()));
    }
    return new DayRecord(
        day.session(),
        day.plan(),
        day.key(),
        laps,
        day.guesses(),
        day.blindBroken(),
        day.lastStint(),
        day.fits(),
        List.of());
  }

  private static BigDecimal pushed(Measure measure, BigDecimal value) {
    return switch (measure.kind()) {
      case LAP_TIME, SECTOR_TIME -> value;
      case LINE_SCALE -> value.add(BigDecimal.valueOf(45)).min(BigDecimal.valueOf(100));
      case CATEGORY_SCALE -> value.add(BigDecimal.valueOf(4)).min(BigDecimal.valueOf(9));
      case COUNT -> value.subtract(BigDecimal.valueOf(3)).max(BigDecimal.ZERO);
    };
  }

  @Test
  void voidsStintsUsedAndCaveatsAreThoseOfTheData() {
    int said = 0;
    int uneven = 0;
    for (int seed = 0; seed < DAYS; seed++) {
      Random random = new Random(32_452_843L * seed);
      DayRecord day = thinned(DoubtfulDays.day(random, 2 + seed % 2), random);
      Finding finding = Analysis.of(day);
      FindingText text = new FindingText(finding);
      assertThat(voids(text.voids(), day)).as(text.voids()).isEmpty();
      uneven += text.voids().contains("only") ? 1 : 0;
      List<Comparison> two = new ArrayList<>(finding.others());
      finding.primary().ifPresent(two::add);
      for (Comparison each : two) {
        FindingWords words = text.words(each);
        assertThat(used(words.used(), day, each.measure())).as(words.used()).isEmpty();
        String caveats = String.join(" ", words.caveats());
        assertThat(caveats(caveats, day, each.measure())).as("%s %s", seed, caveats).isEmpty();
        said += words.caveats().size();
      }
      for (ManyComparison each : finding.many()) {
        ManyWords words = text.words(each);
        assertThat(used(words.used(), day, each.measure())).as(words.used()).isEmpty();
        String caveats = String.join(" ", words.caveats());
        assertThat(caveats(caveats, day, each.measure())).as("%s %s", seed, caveats).isEmpty();
        said += words.caveats().size();
      }
    }
    assertThat(said).isGreaterThan(100);
    assertThat(uneven).isGreaterThan(0);
  }

  @Test
  void aPlantedSentenceOnVoidsStintsOrCaveatsIsFound() {
    DayRecord day =
        IntStream.range(0, 50)
            .mapToObj(seed -> DoubtfulDays.day(new Random(seed), 2))
            .filter(each -> IntStream.of(voidLaps(each)).sum() > 1)
            .findFirst()
            .orElseThrow();
    Finding finding = Analysis.of(day);
    FindingText text = new FindingText(finding);
    String honest = text.voids();
    assertThat(voids(honest, day)).isEmpty();
    assertThat(voids("No stint is void.", day)).contains("none");
    assertThat(voids(honest.replaceFirst("Shock K \\d+", "Shock K 99"), day)).contains("setups");
    assertThat(voids(honest.replaceFirst(": \\d+", ": 99"), day)).contains("total");
    assertThat(voids(honest.replaceFirst("of (only )?(1|\\.\\d+) of", "of .0003 of"), day))
        .contains("share");
    String plainly = honest.replace("of only ", "of ");
    String louder = plainly.replace("a share of ", "a share of only ");
    assertThat(voids(plainly.equals(honest) ? louder : plainly, day)).contains("only");
    Comparison primary = finding.primary().orElseThrow();
    String used = text.words(primary).used();
    assertThat(used(used.replaceFirst("^\\d+", "3"), day, primary.measure())).contains("used");
    assertThat(used(used.replaceFirst("(; |with )\\d+ void", "$19 void"), day, primary.measure()))
        .contains("void");
    for (Comparison other : finding.others()) {
      String said = String.join(" ", text.words(other).caveats());
      assertThat(caveats(said + " 30 % of the values are missing", day, other.measure()))
          .contains("values are missing");
      if (other.measure().kind().rating()) {
        assertThat(caveats("", day, other.measure())).contains("lean on the lap before");
      }
    }
  }

  private static QuestionHistory.Past past(Random random, int index) {
    QuestionHistory.Told told =
        QuestionHistory.Told.values()[random.nextInt(QuestionHistory.Told.values().length)];
    boolean found = told == QuestionHistory.Told.FOUND;
    return new QuestionHistory.Past(
        "%08x".formatted(0x1000 + index) + "-0000",
        LocalDate.of(2026, 1 + random.nextInt(9), 1 + random.nextInt(28)),
        "R. Lind",
        "Quarry loop",
        found ? Step.UNSEALED : Step.REVIEW_CLOSED,
        "",
        "lap time",
        told,
        found && random.nextBoolean()
            ? Optional.of(Verdict.values()[random.nextInt(Verdict.values().length)])
            : Optional.empty(),
        random.nextBoolean(),
        found && random.nextInt(3) == 0,
        BlindLevel.HELPER,
        false,
        Optional.empty());
  }

  /** What is wrong with the lines of a history; empty if nothing is. */
  private static List<String> history(List<String> lines, QuestionHistory history) {
    List<String> wrong = new ArrayList<>();
    int n = history.past().size();
    if (lines.size() != (n == 0 ? 0 : n + 1)) {
      wrong.add("lines");
      return wrong;
    }
    if (n > 0 && !lines.get(0).endsWith(": " + n + ".")) {
      wrong.add("how many");
    }
    for (int i = 0; i < n; i++) {
      QuestionHistory.Past past = history.past().get(i);
      String line = lines.get(i + 1);
      if (!line.startsWith(past.day() + ", session " + past.session().substring(0, 8) + ":")) {
        wrong.add("which");
      }
      boolean names = false;
      for (Verdict verdict : Verdict.values()) {
        String phrase = "; " + FindingWords.phrase(verdict);
        boolean own = past.verdict().filter(verdict::equals).isPresent();
        names |= line.contains(phrase + ".") || line.contains(phrase + ";");
        if ((line.contains(phrase + ".") || line.contains(phrase + ";")) && !own) {
          wrong.add("verdict");
        }
      }
      if (names != past.verdict().isPresent()) {
        wrong.add("verdict");
      }
      if (line.contains("still sealed") != (past.told() == QuestionHistory.Told.SEALED)) {
        wrong.add("sealed");
      }
      if (line.contains("asked in the same words") == past.alike()) {
        wrong.add("alike");
      }
    }
    return wrong;
  }

  @Test
  void aHistoryListsEverySessionWithWhatMayBeToldOfItAndARepeatOnlyWhereThereIsOne() {
    for (int seed = 0; seed < DAYS; seed++) {
      Random random = new Random(49_979_687L * seed);
      int n = random.nextInt(5);
      QuestionHistory history =
          new QuestionHistory(IntStream.range(0, n).mapToObj(i -> past(random, i)).toList());
      List<String> lines = HistoryWords.titled(history);
      assertThat(history(lines, history)).as("%s", lines).isEmpty();
      Optional<String> repeat = HistoryWords.repeat(history);
      Optional<QuestionHistory.Past> cause =
          history.past().stream().filter(QuestionHistory.Past::knownBefore).findFirst();
      assertThat(repeat.isPresent()).isEqualTo(cause.isPresent());
      cause.ifPresent(
          past ->
              assertThat(repeat.orElseThrow())
                  .contains(past.session().substring(0, 8), past.day().toString()));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "still sealed, unsealed; real and worthwhile, verdict",
    "still sealed, not told, sealed",
    "1., 2., how many",
    "2026-, 2025-, which",
  })
  void aPlantedLineOfAHistoryIsFound(String honest, String planted, String complaint) {
    QuestionHistory.Past sealed =
        new QuestionHistory.Past(
            "00001000-0000",
            LocalDate.of(2026, 3, 4),
            "R. Lind",
            "Quarry loop",
            Step.REVIEW_CLOSED,
            "",
            "lap time",
            QuestionHistory.Told.SEALED,
            Optional.empty(),
            true,
            false,
            BlindLevel.HELPER,
            false,
            Optional.empty());
    QuestionHistory history = new QuestionHistory(List.of(sealed));
    List<String> lines = HistoryWords.titled(history);
    assertThat(history(lines, history)).isEmpty();
    assertThat(history(lines.stream().map(l -> l.replace(honest, planted)).toList(), history))
        .contains(complaint);
  }
}
