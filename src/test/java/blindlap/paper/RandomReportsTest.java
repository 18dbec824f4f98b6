package blindlap.paper;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Reviews;
import blindlap.plan.BlindLevel;
import blindlap.plan.Labels;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.RandomPlans;
import blindlap.review.Analysis;
import blindlap.review.Beside;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.review.QuestionHistory;
import blindlap.seal.SessionKind;
import blindlap.session.Fact;
import blindlap.session.OpenedWith;
import blindlap.session.SessionState;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.LapState;
import blindlap.session.day.Source;
import blindlap.session.day.Step;
import blindlap.session.day.VoidEvent;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Words;
import java.awt.Color;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** What stands in the report of any day that was ridden, argued about and opened. */
class RandomReportsTest {
  private static final QuestionHistory HISTORY =
      new QuestionHistory(
          List.of(
              new QuestionHistory.Past(
                  "116a8205-dc02-453f-8766-4417c3052ead",
                  LocalDate.of(2026, 11, 7),
                  "R. Lind",
                  "Quarry loop",
                  Step.ABANDONED,
                  "another day",
                  "lap time",
                  QuestionHistory.Told.SEALED,
                  Optional.empty(),
                  true,
                  false,
                  BlindLevel.HELPER,
                  false,
                  Optional.empty())));

  /** Days in every build; more with {@code -Dreports=200} (DEVELOPERS.md). */
  /** Seeds that lie side by side begin alike, unless they are spread first. */
  private static final long MIXED = 0x9E3779B97F4A7C15L;

  private static final int DAYS = Integer.getInteger("reports", 8);

  private static final String ODD = " <b>&amp; \"p = 1\" — Ä]]>";

  private static final List<Reported> KEPT = new ArrayList<>();

  /** A ridden day with its finding and its report in colour. */
  private record Reported(long seed, SessionState state, Finding finding, ReportDocument report) {
    Plan plan() {
      return state.plan();
    }

    ReportDocument inBlack() {
      return RandomReportsTest.report(state, finding, ReportInput.Ink.BLACK);
    }

    Document body() {
      return parsed("<report>" + report.body() + "</report>");
    }

    @Override
    public String toString() {
      return "report of seed " + seed;
    }
  }

  private static Stream<Reported> all() {
    if (Integer.getInteger("reports") != null) {
      return LongStream.rangeClosed(1, DAYS).mapToObj(RandomReportsTest::reported);
    }
    if (KEPT.isEmpty()) {
      LongStream.rangeClosed(1, DAYS).mapToObj(RandomReportsTest::reported).forEach(KEPT::add);
    }
    return KEPT.stream();
  }

  private static Reported reported(long seed) {
    SessionState state = opened(seed);
    Finding finding = Analysis.of(Reviews.day(state));
    return new Reported(seed, state, finding, report(state, finding, ReportInput.Ink.COLOUR));
  }

  /** A random day that was ridden, argued about, opened and amended. */
  static SessionState opened(long seed) {
    Random random = new Random(seed * MIXED);
    int setups = 2 + (int) (seed % 3);
    int stints = (setups == 3 ? 3 : 4) * (2 + random.nextInt(3));
    Plan plan = RandomPlans.comparison(random, setups, stints, 2);
    SessionKind kind = seed % 5 == 0 ? SessionKind.nullRun(0) : SessionKind.comparison();
    SealedDay day = new SealedDay(plan, kind, seed);
    ride(day, plan, random);
    return day.state();
  }

  private static ReportDocument report(SessionState state, Finding finding, ReportInput.Ink ink) {
    return Report.of(
        new ReportInput(
            state, finding, "0.1", new Beside(HISTORY, Optional.empty(), Optional.empty()), ink));
  }

  private static void ride(SealedDay day, Plan plan, Random random) {
    day.write(new Fact.FingerprintGiven(Fact.Which.PLAN, "a friend" + ODD, null));
    day.write(new Fact.ExpectationGiven(Fact.Person.STARTER, "it is quicker" + ODD));
    for (int number = 1; number <= plan.lapsOfDay(); number++) {
      LapId lap = LapId.ofDay(number, plan.laps().perStint());
      Map<String, BigDecimal> values = new HashMap<>();
      plan.measures().stream()
          .filter(m -> random.nextInt(20) > 0)
          .forEach(m -> values.put(m.name(), value(m, random)));
      String spoiled = random.nextInt(12) == 0 ? VoidEvent.CRASH.text() : null;
      String note = random.nextInt(6) == 0 ? "note " + number + ODD : "";
      LapInput input = new LapInput(lap, values, spoiled, note, null, "line " + number, Map.of());
      day.day(c -> c.record(List.of(input), Source.PAPER));
      if (plan.blinding().guesses() && random.nextInt(3) > 0) {
        Guess guess =
            new Guess(
                random.nextInt(5) == 0 ? null : random.nextInt(plan.setups().size()),
                Guess.Sureness.HUNCH,
                "cue " + number + ODD);
        day.day(c -> c.stint(lap.stint(), new Fact.GuessGiven(lap.stint(), guess)));
      }
    }
    for (DeviationKind kind : DeviationKind.values()) {
      day.day(c -> c.stint(1, new Fact.DeviationNoted(1, kind, "deviation " + kind + ODD)));
    }
    day.life(c -> c.blindBroken(2, "the cover fell" + ODD));
    if (random.nextBoolean()) {
      day.life(c -> c.cutShort(plan.stints(), "rain" + ODD, "the tester", random.nextBoolean()));
    }
    day.life(c -> c.closeDay());
    argue(day, plan, random);
  }

  private static void argue(SealedDay day, Plan plan, Random random) {
    LapId first = new LapId(1, 1);
    Measure measure = plan.measures().get(0);
    day.write(new Fact.ScoreCorrected(first, measure.name(), value(measure, random), "slip" + ODD));
    day.write(new Fact.ScoreCorrected(new LapId(2, 1), measure.name(), null, "misread" + ODD));
    if (day.state().lap(first).flatMap(LapState::voided).isEmpty()) {
      day.day(c -> c.voidLap(first, "traffic", "a walker" + ODD));
    }
    day.life(c -> c.closeReview());
    day.write(new Fact.LapVoided(new LapId(2, 1), VoidEvent.STOPPED, "too late", true));
    day.life(c -> c.unsealed(day.key(), OpenedWith.PHRASE, Map.of()));
    day.life(c -> c.amend("the fork was dry" + ODD, "seen later" + ODD));
  }

  private static BigDecimal value(Measure measure, Random random) {
    return switch (measure.kind()) {
      case LAP_TIME, SECTOR_TIME -> BigDecimal.valueOf(90_000 + random.nextInt(9000), 3);
      case LINE_SCALE -> BigDecimal.valueOf(random.nextInt(1001), 1);
      case CATEGORY_SCALE -> BigDecimal.valueOf(1 + random.nextInt(9));
      case COUNT -> BigDecimal.valueOf(random.nextInt(12));
    };
  }

  // Reading the page.

  private static Document parsed(String xml) {
    try {
      return DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .parse(new InputSource(new StringReader(xml)));
    } catch (SAXException | IOException | ParserConfigurationException e) {
      throw new AssertionError("not well-formed: " + e.getMessage(), e);
    }
  }

  private static List<Element> elements(Node in, String name) {
    NodeList found =
        in instanceof Document d
            ? d.getElementsByTagName(name)
            : ((Element) in).getElementsByTagName(name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      elements.add((Element) found.item(i));
    }
    return elements;
  }

  /** Elements of a name under a heading, up to the next heading. */
  private static List<Element> under(Document body, String id, String name) {
    List<Element> found = new ArrayList<>();
    boolean here = false;
    for (Element element : elements(body, "*")) {
      if (element.getTagName().matches("h[23]")) {
        here = element.getAttribute("id").equals(id);
      } else if (here && element.getTagName().equals(name)) {
        found.add(element);
      }
    }
    return found;
  }

  private static List<List<String>> rows(Element table) {
    return elements(elements(table, "tbody").get(0), "tr").stream()
        .map(row -> elements(row, "td").stream().map(Element::getTextContent).toList())
        .toList();
  }

  private static List<String> lines(Document body, String id) {
    return under(body, id, "li").stream().map(Element::getTextContent).toList();
  }

  /** As it stands on the page: around its sign a p-value is not broken. */
  private static String shown(String words) {
    return words.replace("p = ", "p\u00a0=\u00a0");
  }

  private static double number(String cell) {
    String plain = cell.replace('−', '-');
    String[] time = plain.split(":");
    return time.length == 2
        ? 60 * Double.parseDouble(time[0]) + Double.parseDouble(time[1])
        : Double.parseDouble(plain);
  }

  // What must hold.

  @Test
  void thePageIsWellFormedAndNeedsNothingFromElsewhere() {
    all()
        .forEach(
            reported -> {
              String html = reported.report().html();
              assertThat(html).startsWith("<!DOCTYPE html>").doesNotContain("http");
              String xml =
                  html.substring(html.indexOf("<html"))
                      .replaceAll("(?s)<style>.*?</style>", "")
                      .replaceAll("<(meta|br)([^>]*)>", "<$1$2/>");
              Document page = parsed(xml);
              assertThat(elements(page, "title").get(0).getTextContent())
                  .contains(reported.plan().title());
              List<String> ids =
                  elements(page, "*").stream()
                      .map(e -> e.getAttribute("id"))
                      .filter(id -> !id.isEmpty())
                      .toList();
              assertThat(ids).as("%s", reported).doesNotHaveDuplicates().contains("laps-all");
              assertThat(elements(page, "b")).as("typed markup is text").isEmpty();
            });
  }

  @Test
  void everyLapStandsInTheTableWithItsValuesVoidAndNote() {
    all()
        .forEach(
            reported -> {
              List<List<String>> rows = rows(under(reported.body(), "laps-all", "table").get(0));
              List<LapState> laps = List.copyOf(reported.state().laps());
              assertThat(rows).as("%s", reported).hasSameSizeAs(laps);
              for (int i = 0; i < rows.size(); i++) {
                lap(reported, laps.get(i), rows.get(i));
              }
            });
  }

  private static void lap(Reported reported, LapState lap, List<String> row) {
    Plan plan = reported.plan();
    int stint = lap.id().stint();
    assertThat(row).hasSize(4 + plan.measures().size() + 2);
    assertThat(number(row.get(0))).isEqualTo((stint - 1) * plan.laps().perStint() + lap.id().lap());
    boolean settling = lap.id().lap() <= plan.laps().settling();
    assertThat(row.get(1)).isEqualTo(stint + (settling ? " (settling)" : ""));
    assertThat(row.get(2)).isEqualTo(String.valueOf(reported.state().codes().get(stint - 1)));
    int setup = reported.state().openKey().orElseThrow().order().charAt(stint - 1) - 'A';
    assertThat(row.get(3)).startsWith(RandomPlans.setupWord(setup));
    for (int i = 0; i < plan.measures().size(); i++) {
      BigDecimal value = lap.values().get(plan.measures().get(i).name());
      if (value == null) {
        assertThat(row.get(4 + i)).isEqualTo("–");
      } else {
        assertThat(Math.abs(number(row.get(4 + i)) - value.doubleValue()))
            .as("%s, %s: %s shown as %s", reported, lap.id(), value, row.get(4 + i))
            .isLessThanOrEqualTo(0.05 + 1e-9);
      }
    }
    String spoiled = row.get(row.size() - 2);
    Optional<LapState.Voided> voided = lap.voided();
    assertThat(spoiled.isEmpty()).isEqualTo(voided.isEmpty());
    voided.ifPresent(
        v -> assertThat(spoiled).startsWith(v.event().text()).contains(shown(v.words())));
    assertThat(spoiled.contains("after values could be seen"))
        .isEqualTo(voided.filter(LapState.Voided::afterValuesSeen).isPresent());
    assertThat(row.get(row.size() - 1)).isEqualTo(shown(lap.note()));
  }

  @Test
  void everyGuessStandsBesideWhatWasFittedWithWhatGaveItAway() {
    all()
        .filter(reported -> !reported.state().guesses().isEmpty())
        .forEach(
            reported -> {
              List<List<String>> rows = rows(under(reported.body(), "guesses", "table").get(0));
              assertThat(rows).as("%s", reported).hasSize(reported.state().guesses().size());
              int at = 0;
              for (Map.Entry<Integer, Guess> guess : reported.state().guesses().entrySet()) {
                List<String> row = rows.get(at++);
                char letter =
                    reported.state().openKey().orElseThrow().order().charAt(guess.getKey() - 1);
                Integer setup = guess.getValue().setup();
                assertThat(row.get(0)).isEqualTo(String.valueOf(guess.getKey()));
                assertThat(row.get(1)).startsWith(RandomPlans.setupWord(letter - 'A'));
                assertThat(row.get(2))
                    .startsWith(setup == null ? "don't know" : RandomPlans.setupWord(setup));
                assertThat(row.get(3)).isEqualTo(shown(guess.getValue().cue()));
              }
            });
  }

  @Test
  void everyDeviationCorrectionAndLateEntryIsListedInItsWords() {
    all()
        .forEach(
            reported -> {
              SessionState state = reported.state();
              List<String> lines = lines(reported.body(), "events");
              for (Fact.DeviationNoted deviation : state.deviations()) {
                assertThat(lines)
                    .as("%s", reported)
                    .anyMatch(l -> l.startsWith("Stint 1") && l.endsWith(shown(deviation.what())));
              }
              for (Fact.BlindBroken broken : state.blindBroken()) {
                assertThat(lines).contains("Blind broken in stint 2: " + shown(broken.what()));
              }
              for (Fact.ScoreCorrected correction : state.corrections()) {
                BigDecimal value = correction.value();
                assertThat(lines)
                    .anyMatch(
                        l ->
                            l.contains(shown(correction.measure()))
                                && l.endsWith(
                                    " corrected to "
                                        + (value == null ? "–" : value.toPlainString())
                                        + ": "
                                        + shown(correction.reason())));
              }
              state
                  .cutShort()
                  .ifPresent(
                      cut ->
                          assertThat(lines)
                              .anyMatch(
                                  l ->
                                      l.contains(shown(cut.reason()))
                                          && l.contains(cut.decidedBy())
                                          && l.endsWith(
                                              cut.knowsKey()
                                                  ? "knew the key."
                                                  : "did not know the key.")));
              assertThat(state.notApplied()).hasSize(1);
              assertThat(lines)
                  .anyMatch(l -> l.contains("not applied, as it came too late: a void, written "));
              assertThat(lines)
                  .hasSize(
                      1
                          + state.deviations().size()
                          + state.blindBroken().size()
                          + state.corrections().size()
                          + (state.cutShort().isPresent() ? 1 : 0)
                          + 1);
              assertThat(lines(reported.body(), "amendments"))
                  .hasSameSizeAs(state.amendments())
                  .anyMatch(l -> l.contains(shown("the fork was dry" + ODD)))
                  .anyMatch(l -> l.contains(shown("seen later" + ODD)));
              assertThat(lines(reported.body(), "expectations"))
                  .contains("The starter expected: " + shown("it is quicker" + ODD));
            });
  }

  @Test
  void theExactFiguresAreThoseOfTheFindingDigitForDigit() {
    all()
        .forEach(
            reported -> {
              List<List<String>> rows = new ArrayList<>();
              under(reported.body(), "exact", "table").forEach(t -> rows.addAll(rows(t)));
              List<List<String>> expected = new ArrayList<>();
              List<Comparison> two = reported.finding().comparisons().toList();
              two.forEach(c -> expected.add(sizes(c)));
              two.forEach(c -> expected.add(tests(c)));
              reported.finding().many().forEach(m -> expected.addAll(pairs(m)));
              assertThat(rows).as("%s", reported).hasSameSizeAs(expected);
              for (int i = 0; i < rows.size(); i++) {
                same(rows.get(i), expected.get(i));
              }
            });
  }

  /** Cells that are numbers are compared as numbers, to the last digit. */
  private static void same(List<String> row, List<String> expected) {
    assertThat(row).hasSameSizeAs(expected);
    for (int i = 0; i < row.size(); i++) {
      List<String> parts = List.of(row.get(i).split(" to "));
      List<String> wanted = List.of(expected.get(i).split(" to "));
      assertThat(parts).hasSameSizeAs(wanted);
      for (int j = 0; j < parts.size(); j++) {
        if (wanted.get(j).matches("-?[\\d.]+(E-?\\d+)?")) {
          assertThat(number(parts.get(j))).isEqualTo(Double.parseDouble(wanted.get(j)));
        } else {
          assertThat(parts.get(j)).isEqualTo(shown(wanted.get(j)));
        }
      }
    }
  }

  private static List<String> sizes(Comparison c) {
    return List.of(
        c.measure().name(),
        String.valueOf(c.estimate()),
        interval(c.interval(0.95)),
        interval(c.interval(0.90)));
  }

  private static String interval(Optional<Interval> interval) {
    return interval.map(i -> i.low() + " to " + i.high()).orElse("–");
  }

  private static List<String> tests(Comparison c) {
    return List.of(
        c.measure().name(),
        String.valueOf(c.result().noiseSd()),
        String.valueOf(c.result().df()),
        c.tested() ? String.valueOf(c.p()) : "–",
        c.adjusted().isPresent() ? String.valueOf(c.adjusted().getAsDouble()) : "–",
        c.verdict().map(v -> v.text()).orElse("–"));
  }

  private static List<List<String>> pairs(ManyComparison many) {
    List<List<String>> rows = new ArrayList<>();
    for (ManySetups.Pair pair : many.result().pairs()) {
      rows.add(
          List.of(
              many.measure().name() + " " + pair.name(),
              String.valueOf(many.measure().scale().back(pair.estimate())),
              interval(many.interval(pair)),
              many.tested() ? String.valueOf(pair.p()) : "–",
              many.tested() ? String.valueOf(pair.pAdjusted()) : "–"));
    }
    return rows;
  }

  @Test
  void theKeyTheOrderAndBothFingerprintsStandInIt() {
    all()
        .forEach(
            reported -> {
              SessionState state = reported.state();
              String text = reported.body().getDocumentElement().getTextContent();
              String letters = state.openKey().orElseThrow().order();
              assertThat(text)
                  .as("%s", reported)
                  .contains("Order drawn: " + Labels.order(state.plan(), letters))
                  .contains(letters)
                  .contains(state.planFingerprint().grouped())
                  .contains(state.reviewFingerprint().orElseThrow().grouped())
                  .contains(shown("Fingerprint of the plan given to a friend" + ODD))
                  .contains(shown(state.planText()))
                  .contains("another day");
            });
  }

  @Test
  void theCautionsStandInItWhereItIsTrustedAndWhereSomeoneRides() {
    Words cautions = Words.of("cautions");
    all()
        .forEach(
            reported -> {
              List<String> words =
                  elements(reported.body(), "p").stream()
                      .filter(p -> p.getAttribute("class").equals("caution"))
                      .map(Element::getTextContent)
                      .toList();
              assertThat(words)
                  .as("%s", reported)
                  .containsExactly(
                      "Caution " + cautions.say("trust") + " " + cautions.say("short"),
                      "Caution " + cautions.say("ride"));
            });
  }

  @Test
  void inBlackAndWhiteNothingIsColoured() {
    Pattern hex = Pattern.compile("#([0-9a-fA-F]{2})([0-9a-fA-F]{2})([0-9a-fA-F]{2})\\b");
    all()
        .forEach(
            reported -> {
              ReportDocument black = reported.inBlack();
              assertThat(hex.matcher(black.body()).results())
                  .as("%s", reported)
                  .isNotEmpty()
                  .allMatch(m -> m.group(1).equals(m.group(2)) && m.group(2).equals(m.group(3)));
              assertThat(hex.matcher(reported.report().body()).results())
                  .anyMatch(m -> !m.group(1).equals(m.group(2)));
              assertThat(black.html()).contains("<body class=\"black\">");
              assertThat(reported.report().html()).contains("<body class=\"colour\">");
            });
  }

  @Test
  void norIsItOnPaper() throws IOException {
    Reported reported = all().findFirst().orElseThrow();
    PdfMarks black = PdfMarks.of(reported.inBlack().pdf());
    PdfMarks coloured = PdfMarks.of(reported.report().pdf());
    assertThat(black.colours).isNotEmpty().allMatch(RandomReportsTest::isGray);
    assertThat(coloured.colours).anyMatch(colour -> !RandomReportsTest.isGray(colour));
    assertThat(black.colours).contains(Color.BLACK);
    assertThat(black.text.toString()).contains("It approves no part and no setting.");
  }

  private static boolean isGray(Color colour) {
    return Math.abs(colour.getRed() - colour.getGreen()) <= 1
        && Math.abs(colour.getGreen() - colour.getBlue()) <= 1;
  }
}
