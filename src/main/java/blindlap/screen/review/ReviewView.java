package blindlap.screen.review;

import blindlap.desk.Reviews;
import blindlap.picture.FindingPictures;
import blindlap.picture.GuessPicture;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plot.surface.Drawing;
import blindlap.review.Beside;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.session.SessionState;
import blindlap.wording.AmendmentWords;
import blindlap.wording.CovariateWords;
import blindlap.wording.EditionWords;
import blindlap.wording.EndNames;
import blindlap.wording.ExpectedWords;
import blindlap.wording.FindingText;
import blindlap.wording.FindingWords;
import blindlap.wording.FingerprintWords;
import blindlap.wording.FormulaWords;
import blindlap.wording.Headline;
import blindlap.wording.HistoryWords;
import blindlap.wording.ProfilesFoundWords;
import blindlap.wording.TrendWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Everything the Review page shows, in words and drawings.
 *
 * @param running setups, trail, rider and day
 * @param headline the answer
 * @param lead what it means
 * @param circumstances what must be known first: null run, unblinded, cut short, blind broken
 * @param difference every stint and the difference
 * @param levels what is said of the levels of a steps day; empty otherwise
 * @param order in ridden order
 * @param curve the confidence curve
 * @param others the other measures, a row each
 * @param columns heads of their table
 * @param sentences sentences of the other measures, with harm
 * @param profiles who should look at what; empty where no profile is beside the finding
 * @param beside results beside the one as planned
 * @param where where on the trail the difference arises; empty where nothing was recorded
 * @param guesses did the blind hold
 * @param guessed the strip of guesses
 * @param events voids, deviations, parity
 * @param expected expectations against the result
 * @param next what next
 * @param method evidence and formulas
 * @param requests how each number was computed
 * @param history other sessions of the question
 * @param amendments what was added after unsealing
 * @param seal both fingerprints and that they match
 */
public record ReviewView(
    String running,
    Headline headline,
    String lead,
    List<String> circumstances,
    Optional<Drawing> difference,
    Optional<TrendWords> levels,
    Optional<Drawing> order,
    Optional<Drawing> curve,
    List<Other> others,
    List<String> columns,
    List<String> sentences,
    Optional<ProfilesFoundWords> profiles,
    List<String> beside,
    Optional<WhereReview> where,
    String guesses,
    List<String> waits,
    Optional<Drawing> guessed,
    List<String> events,
    List<String> expected,
    List<String> next,
    List<String> method,
    List<How> requests,
    List<String> history,
    List<String> amendments,
    List<String> seal) {
  private static final Words WORDS = Words.of("review");

  /** How a number was computed: which number, and the request that gives it again. */
  public record How(String about, String request) {}

  /** A row of the table of other measures. */
  public record Other(
      String name,
      String role,
      Optional<Drawing> stints,
      Optional<Drawing> interval,
      String difference,
      String limits,
      String p) {}

  static ReviewView of(SessionState state, Finding finding, Beside beside) {
    Plan plan = finding.day().plan();
    FindingText text = new FindingText(finding);
    FindingPictures pictures = new FindingPictures(finding);
    return new ReviewView(
        running(plan),
        text.headline(),
        text.lead(),
        circumstances(state, text, beside),
        pictures.difference(),
        TrendWords.of(finding),
        pictures.riddenOrder(),
        pictures.curve(),
        others(finding, text, pictures),
        columns(plan),
        text.others(),
        ProfilesFoundWords.of(finding, beside.profiles()),
        besidePicture(finding, text),
        WhereReview.of(finding),
        text.guesses(),
        text.waits(),
        GuessPicture.of(finding),
        events(text),
        expected(state, text),
        text.next(),
        method(finding, text, beside),
        Reviews.how(finding).stream().map(h -> new How(h.about(), h.request())).toList(),
        HistoryWords.lines(beside.history()),
        AmendmentWords.lines(state),
        seal(state));
  }

  private static String running(Plan plan) {
    return String.join(" · ", plan.title(), plan.trail(), plan.rider(), plan.day().toString());
  }

  private static List<String> circumstances(SessionState state, FindingText text, Beside beside) {
    List<String> lines = new ArrayList<>(text.underVerdict(beside));
    lines.addAll(text.circumstances());
    AmendmentWords.mark(state).ifPresent(lines::add);
    return lines;
  }

  private static List<Other> others(Finding finding, FindingText text, FindingPictures pictures) {
    List<Other> rows = new ArrayList<>();
    for (Comparison other : finding.others()) {
      FindingWords words = text.words(other);
      rows.add(
          new Other(
              other.measure().name(),
              FindingWords.role(other.measure()),
              pictures.small(other.measure(), other.stints()),
              Optional.of(pictures.small(other)),
              words.signed(),
              words.signedInterval(0.95),
              other.tested() ? Figures.p(other.adjusted().orElse(other.p())) : "–"));
    }
    for (ManyComparison other : finding.many()) {
      if (other.measure().role() != Measure.Role.PRIMARY) {
        rows.add(
            new Other(
                other.measure().name(),
                FindingWords.role(other.measure()),
                pictures.small(other.measure(), other.stints()),
                Optional.empty(),
                "",
                String.join("\n", text.words(other).cells()),
                other.tested() ? Figures.p(other.adjusted().orElse(other.result().p())) : "–"));
      }
    }
    return rows;
  }

  private static List<String> columns(Plan plan) {
    if (!plan.oneDifference()) {
      return List.of(
          WORDS.say("col.measure"),
          WORDS.say("col.stints"),
          WORDS.say("col.pairs"),
          WORDS.say("col.p.any"));
    }
    return List.of(
        WORDS.say("col.measure"),
        WORDS.say("col.stints"),
        WORDS.say("col.difference"),
        WORDS.say("col.less", plan.ends().get(1), EndNames.of(plan).bare().get(0)),
        WORDS.say("col.p"));
  }

  private static List<String> besidePicture(Finding finding, FindingText text) {
    List<String> lines = new ArrayList<>(text.sensitivities());
    CovariateWords.pictured(finding).ifPresent(lines::add);
    return lines;
  }

  private static List<String> events(FindingText text) {
    List<String> lines = new ArrayList<>();
    lines.add(text.voids());
    lines.addAll(text.deviations());
    lines.addAll(text.parity());
    lines.addAll(text.record());
    return lines;
  }

  private static List<String> expected(SessionState state, FindingText text) {
    return text.expected(
        state.expectations().stream()
            .map(e -> new ExpectedWords.Expectation(e.who().name(), e.text()))
            .toList());
  }

  private static List<String> method(Finding finding, FindingText text, Beside beside) {
    List<String> lines = new ArrayList<>(text.evidence());
    lines.add(FindingText.limits(finding.day().plan()));
    lines.add(EditionWords.both(beside.edition()));
    EditionWords.look(beside).ifPresent(lines::add);
    lines.addAll(FormulaWords.of(finding));
    return lines;
  }

  /** Both fingerprints, and that they match this file. */
  static List<String> seal(SessionState state) {
    List<String> lines = new ArrayList<>();
    lines.add(state.planFingerprint().grouped());
    state.reviewFingerprint().ifPresent(f -> lines.add(f.grouped()));
    lines.add(FingerprintWords.beside(state));
    return lines;
  }
}
