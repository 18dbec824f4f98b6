package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/** What a finding says of one measure: its sentence, its harm, its caveats, what stands beside. */
final class MeasureText {
  private static final Words WORDS = FindingWords.WORDS;

  private final Finding finding;
  private final DayRecord day;

  MeasureText(Finding finding) {
    this.finding = finding;
    this.day = finding.day();
  }

  private FindingWords words(Comparison comparison) {
    return FindingWords.of(day, comparison);
  }

  private ManyWords words(ManyComparison comparison) {
    return new ManyWords(day.plan(), comparison, day.nullRun());
  }

  /** Every measure beside the primary, then what could not be compared. */
  List<String> others() {
    List<String> lines = new ArrayList<>();
    finding.others().forEach(other -> lines.addAll(lines(other)));
    finding.many().stream()
        .filter(many -> many.measure().role() != Measure.Role.PRIMARY)
        .forEach(many -> lines.addAll(lines(many)));
    finding.refusals().forEach(refusal -> lines.add(refused(refusal)));
    return lines;
  }

  private List<String> lines(Comparison other) {
    FindingWords words = words(other);
    List<String> lines = new ArrayList<>();
    lines.add(NullRunWords.plain(day, words, other.measure().name()));
    words.ratio().ifPresent(lines::add);
    lines.addAll(words.harm());
    lines.addAll(words.caveats());
    lines.addAll(new AsideWords(finding).of(other, words));
    lines.addAll(new RemarkWords(day).beside(other.measure()));
    return lines;
  }

  private List<String> lines(ManyComparison many) {
    ManyWords words = words(many);
    List<String> lines = new ArrayList<>();
    lines.add(words.omnibus());
    lines.addAll(words.pairs());
    lines.addAll(words.harm());
    lines.addAll(words.caveats());
    lines.addAll(new AsideWords(finding).of(many, this::words));
    lines.addAll(new RemarkWords(day).beside(many.measure()));
    return lines;
  }

  /** The sentence of the primary measure says at which blind level it was ridden. */
  private List<String> withVerdict(ManyComparison many, String verdict) {
    List<String> lines = new ArrayList<>(lines(many));
    lines.set(0, verdict);
    return lines;
  }

  private static String refused(Finding.Refusal refusal) {
    return WORDS.say("plain.refused", refusal.measure().name(), Problems.sentence(refusal.why()));
  }

  /**
   * Everything that is said of the result of one measure of the plan.
   *
   * @param verdict the sentence of the primary measure with its verdict
   */
  List<String> of(Measure measure, String verdict) {
    List<String> lines = new ArrayList<>();
    finding
        .primary()
        .filter(primary -> primary.measure().equals(measure))
        .ifPresent(
            primary -> {
              lines.add(WORDS.say("primary.named", measure.name(), verdict));
              lines.addAll(words(primary).caveats());
            });
    finding.others().stream()
        .filter(other -> other.measure().equals(measure))
        .forEach(other -> lines.addAll(lines(other)));
    finding.many().stream()
        .filter(many -> many.measure().equals(measure))
        .forEach(
            many -> {
              boolean primary = measure.role() == Measure.Role.PRIMARY;
              lines.addAll(words(many).worse());
              lines.addAll(primary ? withVerdict(many, verdict) : lines(many));
            });
    finding.refusals().stream()
        .filter(refusal -> refusal.measure().equals(measure))
        .forEach(refusal -> lines.add(refused(refusal)));
    return lines;
  }
}
