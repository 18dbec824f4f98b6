package blindlap.wording;

import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.review.Sensitivity;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Measures beside the primary with the values that were set aside, each in a sentence. */
final class AsideWords {
  private static final Words WORDS = Words.of("finding");

  private final Finding finding;

  AsideWords(Finding finding) {
    this.finding = finding;
  }

  /** Of a measure of two setups. */
  List<String> of(Comparison planned, FindingWords words) {
    return finding.aside(planned.measure()).stream()
        .map(
            each ->
                sentence(
                    planned.measure().name(),
                    each,
                    each.result().map(result -> words.beside(result, false))))
        .toList();
  }

  /** Of a measure of three and more setups. */
  List<String> of(ManyComparison planned, Function<ManyComparison, ManyWords> words) {
    return finding.aside(planned.measure()).stream()
        .map(
            each ->
                sentence(
                    planned.measure().name(),
                    each,
                    each.many().map(many -> words.apply(planned.with(many)).beside(false))))
        .toList();
  }

  private static String sentence(String measure, Sensitivity each, Optional<String> result) {
    String sentence =
        WORDS.say(
            "aside.measure",
            measure,
            StintList.words(each.stints()),
            result.orElse(WORDS.say("sensitivity.none")));
    return each.why().map(why -> sentence + " " + Problems.sentence(why)).orElse(sentence);
  }
}
