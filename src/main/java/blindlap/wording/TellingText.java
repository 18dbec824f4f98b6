package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.review.Beside;
import blindlap.review.RecordedFinding;
import blindlap.review.Remark;
import blindlap.review.TellingAnalysis;
import blindlap.review.TellingFinding;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** A telling run in sentences, with what its day adds to the count of right answers. */
public final class TellingText {
  private static final Words WORDS = Words.of("telling");

  private final TellingAnalysis analysis;
  private final Plan plan;
  private final TellingNames names;
  private final TellingWords words;

  public TellingText(TellingAnalysis analysis) {
    this.analysis = analysis;
    this.plan = analysis.day().plan();
    this.names = TellingNames.of(plan);
    this.words = new TellingWords(analysis.finding(), names);
  }

  /** The words of the count. */
  public TellingWords words() {
    return words;
  }

  /** The largest sentence. */
  public Headline headline() {
    return words.headline();
  }

  /** What is below it. */
  public String lead() {
    return words.lead();
  }

  /** A repeat, and another method's finding, next to the verdict. */
  public List<String> underVerdict(Beside beside) {
    List<String> lines = new ArrayList<>();
    HistoryWords.repeat(beside.history()).ifPresent(lines::add);
    beside
        .unsealed()
        .flatMap(u -> new EditionWords(plan).beside(u, RecordedFinding.today(analysis.finding())))
        .ifPresent(lines::add);
    return lines;
  }

  /** What must be known before anything else: null run, override, early end, broken blind. */
  public List<String> circumstances() {
    List<String> lines = new ArrayList<>();
    analysis
        .day()
        .ridden()
        .map(plan.setups()::get)
        .map(Setup::name)
        .ifPresent(name -> lines.add(WORDS.say("null.run", name)));
    if (!plan.override().isBlank() && analysis.finding().declared().least().isEmpty()) {
      lines.add(FindingWords.WORDS.say("override", plan.override()));
    }
    words.early().ifPresent(lines::add);
    analysis
        .day()
        .blindBroken()
        .forEach((stint, what) -> lines.add(WORDS.say("broken", trial(stint), place(stint), what)));
    if (!analysis.wrongFits().isEmpty()) {
      lines.add(WORDS.say("wrong", trials(analysis.wrongFits()), analysis.wrongFits().size()));
    }
    analysis.without().map(this::without).ifPresent(lines::add);
    lines.addAll(remarks().besideTheVerdict());
    return lines;
  }

  private int trial(int stint) {
    return java.util.Objects.requireNonNull(plan.telling()).trial(stint);
  }

  private int place(int stint) {
    return java.util.Objects.requireNonNull(plan.telling()).place(stint);
  }

  private String without(TellingFinding rest) {
    TellingFigures figures = new TellingFigures(rest);
    TreeSet<Integer> out = new TreeSet<>(analysis.wrongFits());
    out.addAll(analysis.known());
    return WORDS.say(
        "without",
        trials(List.copyOf(out)),
        figures.of(),
        new TellingWords(rest, names).phrase(),
        figures.chance());
  }

  private static String trials(List<Integer> numbers) {
    return WORDS.say(
        "trials", numbers.size(), StintList.and(numbers.stream().map(String::valueOf).toList()));
  }

  private RemarkWords remarks() {
    return new RemarkWords(analysis.day());
  }

  /** What the people of the day expected, and said before the draw. */
  public List<String> expected(List<ExpectedWords.Expectation> more) {
    return ExpectedWords.lines(plan, more);
  }

  /** Did the waits tell, and every overrun; nothing where nobody timed a handling. */
  public List<String> waits() {
    return new WaitWords(plan, analysis.waits()).lines();
  }

  /** Settings as measured. */
  public List<String> parity() {
    return new ParityWords(analysis.day(), analysis.parity()).lines();
  }

  /** Departures from the plan. */
  public List<String> deviations() {
    return analysis.day().remarks(Remark.Kind.DEVIATION).stream()
        .map(RemarkWords::deviation)
        .toList();
  }

  /** Wrong fits that were noticed later. */
  public List<String> correctedFits() {
    return remarks().correctedFits();
  }

  /** What else was said and done, for the record. */
  public List<String> record() {
    return remarks().rest();
  }

  /** That measures beside the answers are kept and not compared; empty where none is planned. */
  public Optional<String> measures() {
    return plan.measures().isEmpty() ? Optional.empty() : Optional.of(WORDS.say("measures"));
  }

  /** What such a finding cannot say, for every surface that asks to be trusted. */
  public static String limits() {
    return WORDS.say("limits.text");
  }

  /** How the count is read. */
  public List<String> method() {
    List<String> lines = new ArrayList<>();
    lines.add(WORDS.say("line", words.whyTitle(), words.why()));
    words.distance().ifPresent(lines::add);
    lines.add(WORDS.say("method.p"));
    lines.add(WORDS.say("method.limits"));
    if (words.distance().isPresent()) {
      lines.add(WORDS.say("method.distance"));
    }
    return lines;
  }

  /** Everything as text, the answer first. */
  public List<String> lines(Beside beside) {
    List<String> lines = new ArrayList<>();
    lines.add(headline().text());
    lines.add(lead());
    lines.addAll(underVerdict(beside));
    lines.addAll(circumstances());
    lines.add(WORDS.say("line", words.whyTitle(), words.why()));
    lines.add(WORDS.say("line", words.sureTitle(), String.join(" ", words.sure())));
    words.distance().ifPresent(lines::add);
    lines.add(WORDS.say("line", words.voidsTitle(), words.voids()));
    lines.addAll(waits());
    measures().ifPresent(lines::add);
    lines.addAll(remarks().saidAgain());
    lines.addAll(remarks().late());
    lines.addAll(parity());
    lines.add(WORDS.say("line", words.notSaidTitle(), words.notSaid()));
    lines.addAll(HistoryWords.titled(beside.history()));
    EditionWords.look(beside).ifPresent(lines::add);
    return lines;
  }
}
