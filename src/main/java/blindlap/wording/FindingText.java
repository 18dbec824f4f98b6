package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.review.Beside;
import blindlap.review.Caveat;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.KnownStints;
import blindlap.review.ManyComparison;
import blindlap.review.RecordedFinding;
import blindlap.review.Remark;
import blindlap.review.Sensitivity;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A whole finding in sentences: verdict first, then the evidence. */
public final class FindingText {
  private static final Words WORDS = FindingWords.WORDS;

  private final Finding finding;
  private final DayRecord day;
  private final Plan plan;
  private final List<String> setups;
  private final Optional<FindingWords> primary;

  public FindingText(Finding finding) {
    this.finding = finding;
    this.day = finding.day();
    this.plan = day.plan();
    this.setups =
        plan.steps() == null ? plan.setups().stream().map(Setup::name).toList() : plan.ends();
    this.primary = finding.primary().map(p -> FindingWords.of(day, p));
  }

  /** The words of the primary comparison of two setups. */
  public Optional<FindingWords> primary() {
    return primary;
  }

  /** The words of another comparison. */
  public FindingWords words(Comparison comparison) {
    return FindingWords.of(day, comparison);
  }

  /** The words of a comparison of three and more setups. */
  public ManyWords words(ManyComparison comparison) {
    return new ManyWords(plan, comparison, day.nullRun());
  }

  /** The answer of the page; what came of watched harms as a whole stands in the same sentence. */
  public Headline headline() {
    Headline plain = plainHeadline();
    String harm = harm();
    if (!harm.isEmpty()) {
      plain = plain.continued(harm);
    }
    int wrong = day.wrongFits().size();
    String last = wrong > 1 ? " " + WORDS.say("headline.wrong", wrong) : "";
    return plain.with(label(), last);
  }

  private String label() {
    return LevelWords.label(plan.level()) + NullRunWords.label(day);
  }

  private Headline plainHeadline() {
    if (primary.isPresent()) {
      return finding.primary().orElseThrow().verdict().isPresent()
          ? NullRunWords.headline(day, primary.get())
          : new Headline(WORDS.say(untested(), "", setups.get(0), setups.get(1)), "", "");
    }
    Optional<ManyComparison> many = firstOfMany();
    if (many.isPresent()) {
      Headline plain = new Headline(words(many.get()).headline(), "", "");
      return VerdictWords.capped(plan.level())
          ? plain.continued(VerdictWords.tailOfMany(plan.level()))
          : plain;
    }
    return new Headline(WORDS.say("headline.refused", "", setups.get(0), setups.get(1)), "", "");
  }

  private String untested() {
    return finding.primary().filter(FindingText::endedFreely).isPresent()
        ? "headline.ended"
        : "headline.untested";
  }

  private static boolean endedFreely(Comparison primary) {
    return primary.caveats().contains(Caveat.ENDED_FREELY)
        && !primary.caveats().contains(Caveat.MISSING);
  }

  private Optional<ManyComparison> firstOfMany() {
    return finding.many().stream()
        .filter(m -> m.measure().role() == Measure.Role.PRIMARY)
        .findFirst();
  }

  private String harm() {
    StringBuilder harm = new StringBuilder();
    finding.harms().forEach(c -> harm.append(words(c).harmInHeadline(Finding.harmful(c))));
    if (finding.everyWatchedHarmRuledOut()) {
      harm.append(WORDS.say("headline.harm.none"));
    }
    return harm.isEmpty() ? "" : harm + ".";
  }

  /** The sentence of the primary measure with all its numbers. */
  public String sentence() {
    return label() + plainSentence();
  }

  private String plainSentence() {
    if (primary.isPresent()) {
      return finding.primary().orElseThrow().verdict().isPresent()
          ? NullRunWords.sentence(day, primary.get())
          : primary.get().plain();
    }
    return firstOfMany().map(m -> words(m).omnibus()).orElse(plainHeadline().text());
  }

  /** What the answer means, under it. */
  public String lead() {
    if (finding.primary().filter(p -> p.verdict().isPresent()).isPresent()) {
      return NullRunWords.lead(day, primary.orElseThrow());
    }
    return firstOfMany().map(m -> words(m).omnibus()).orElseGet(this::plainSentence);
  }

  /** What must be known before anything else: null run, unblinded, override, day cut short. */
  public List<String> circumstances() {
    List<String> lines =
        new ArrayList<>(new CircumstanceWords(finding).lines(plainHeadline().text()));
    finding.many().forEach(m -> lines.addAll(words(m).worse()));
    return lines;
  }

  /** Interval, p, noise, stints used. */
  public List<String> evidence() {
    List<String> lines = new ArrayList<>();
    String orders = Figures.count(finding.orders().count());
    primary.ifPresent(p -> lines.addAll(p.evidence(orders)));
    firstOfMany()
        .ifPresent(
            m -> {
              lines.addAll(words(m).pairs());
              if (m.tested()) {
                lines.add(WORDS.say("many.intervals"));
              }
              lines.add(words(m).noise(day));
              lines.add(words(m).used());
              lines.add(WORDS.say("many.no.order"));
              lines.addAll(words(m).caveats());
            });
    lines.addAll(new RemarkWords(day).timed());
    lines.addAll(RecorderWords.lines(finding));
    return lines;
  }

  /** What was taken out, and the primary looked at otherwise. */
  public List<String> sensitivities() {
    return new CovariateFindingWords(finding).before(finding.sensitivities(), this::sensitivity);
  }

  private String sensitivity(Sensitivity each) {
    Optional<String> two =
        each.result().map(r -> primary.orElseThrow().beside(r, each.estimateOnly()));
    String result =
        two.or(
                () ->
                    each.many()
                        .map(m -> words(firstOfMany().orElseThrow().with(m)))
                        .map(w -> w.beside(each.estimateOnly())))
            .orElse(WORDS.say("sensitivity.none"));
    boolean labels =
        each.kind() == Sensitivity.Kind.BLIND_BROKEN_MASKED
            && KnownStints.labelsOut(day).isPresent();
    String key = labels ? "sensitivity.labels.out" : "sensitivity." + each.kind().name();
    if (primary.isPresent()) {
      key = primary.get().key(key);
    }
    String sentence = WORDS.say(key, StintList.words(each.stints()), result);
    return each.why().map(why -> sentence + " " + Problems.sentence(why)).orElse(sentence);
  }

  /** One sentence a measure beside the primary, with its harm and its caveats. */
  public List<String> others() {
    return new MeasureText(finding).others();
  }

  /** What the watched harms come to. */
  public List<String> watchedHarms() {
    List<String> lines = new ArrayList<>();
    finding.others().forEach(c -> lines.addAll(words(c).harm()));
    finding.many().forEach(m -> lines.addAll(words(m).harm()));
    return lines;
  }

  /** Did the blind hold; for three and more setups counted, not tested. */
  public String guesses() {
    return new BlindWords(finding).guesses();
  }

  /** Did the waits tell, and every overrun; nothing where nobody timed a handling. */
  public List<String> waits() {
    return new WaitWords(finding).lines();
  }

  /** Void stints per setup, with the share of orders as uneven. */
  public String voids() {
    return new BlindWords(finding).voids();
  }

  /** What was expected, and what the day said. */
  public List<String> expected(List<ExpectedWords.Expectation> more) {
    return ExpectedWords.lines(plan, more);
  }

  /** What a finding of this plan cannot say, for every surface that asks to be trusted. */
  public static String limits(Plan plan) {
    if (plan.telling() != null) {
      return TellingText.limits();
    }
    List<String> lines = new ArrayList<>(List.of(WORDS.say("limits")));
    if (plan.measures().stream().anyMatch(m -> m.kind().rating())) {
      lines.add(WORDS.say("limits.rating"));
    }
    if (plan.measures().stream().anyMatch(m -> m.kind().counted())) {
      lines.add(WORDS.say("limits.count"));
    }
    if (plan.steps() != null) {
      lines.add(WORDS.say("limits.levels"));
    } else if (plan.setups().size() > 2) {
      lines.add(WORDS.say("limits.many"));
    }
    return String.join(" ", lines);
  }

  /** Settings as measured. */
  public List<String> parity() {
    return new BlindWords(finding).parity();
  }

  /** What else was said and done on the day, for the record. */
  public List<String> record() {
    return new RemarkWords(day).rest();
  }

  /** Departures from the plan. */
  public List<String> deviations() {
    return day.remarks(Remark.Kind.DEVIATION).stream().map(RemarkWords::deviation).toList();
  }

  /** Wrong fits that were noticed later. */
  public List<String> correctedFits() {
    return new RemarkWords(day).correctedFits();
  }

  /** What more riding could show, and what the better setup costs. */
  public List<String> next() {
    List<String> lines = new ArrayList<>(new NextWords(finding).lines());
    lines.addAll(new CostWords(finding).lines());
    return lines;
  }

  /** Everything as text, verdict first. */
  public List<String> lines() {
    return lines(Beside.NOTHING);
  }

  /** The same with what stands beside the finding: repeats and earlier methods, the history. */
  public List<String> lines(Beside beside) {
    List<String> lines = new ArrayList<>();
    lines.add(headline().text());
    if (!sentence().equals(headline().text())) {
      lines.add(sentence());
    }
    lines.addAll(underVerdict(beside));
    lines.addAll(circumstances());
    TrendWords.of(finding).ifPresent(trend -> lines.addAll(trend.lines()));
    lines.addAll(evidence());
    lines.addAll(sensitivities());
    lines.addAll(others());
    WhereWords.of(finding).ifPresent(where -> lines.addAll(where.lines()));
    lines.add(guesses());
    lines.addAll(waits());
    lines.add(voids());
    lines.addAll(new RemarkWords(day).saidAgain());
    lines.addAll(new RemarkWords(day).late());
    lines.addAll(parity());
    lines.addAll(next());
    lines.addAll(HistoryWords.titled(beside.history()));
    EditionWords.look(beside).ifPresent(lines::add);
    return lines;
  }

  /** What belongs in the next lines after the verdict: a repeat, another method's finding. */
  public List<String> underVerdict(Beside beside) {
    List<String> lines = new ArrayList<>();
    HistoryWords.repeat(beside.history()).ifPresent(lines::add);
    beside.series().map(place -> SeriesPlaceWords.line(plan, place)).ifPresent(lines::add);
    beside
        .unsealed()
        .flatMap(u -> new EditionWords(plan).beside(u, RecordedFinding.today(finding)))
        .ifPresent(lines::add);
    return lines;
  }
}
