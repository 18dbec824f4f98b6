package blindlap.screen.plan;

import blindlap.plan.DayAnswer;
import blindlap.plan.DayDetail;
import blindlap.plan.Plan;
import blindlap.stats.compare.Verdict;
import blindlap.wording.AnswerWords;
import blindlap.wording.PlanWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The odds of how such a day ends, as a table and as sentences. */
record PlanOdds(List<String> heads, List<List<String>> rows, List<String> lines, String source) {
  private static final List<Verdict> VERDICTS =
      List.of(
          Verdict.REAL_AND_WORTHWHILE,
          Verdict.REAL_BUT_SMALL,
          Verdict.NO_WORTHWHILE_DIFFERENCE,
          Verdict.DIRECTION_KNOWN,
          Verdict.NOT_SETTLED);

  static PlanOdds of(
      Plan plan, AnswerWords words, Optional<DayAnswer> answer, Optional<DayDetail> detail) {
    List<DayDetail.PairEnding> pairs = detail.map(DayDetail::pairs).orElse(List.of());
    if (!pairs.isEmpty()) {
      return new PlanOdds(
          Stream.of("if", "DIFFER", "PAIR", "ANY", "ALL", "WRONG")
              .map(head -> PlanWords.say("odds.pairs." + head))
              .toList(),
          pairs.stream().map(words::pairCells).toList(),
          words.pairOdds(pairs),
          words.pairOddsSource(detail.orElseThrow()));
    }
    List<DayAnswer.Ending> odds =
        detail.map(DayDetail::odds).orElse(answer.map(DayAnswer::odds).orElse(List.of()));
    if (odds.isEmpty()) {
      return new PlanOdds(List.of(), List.of(), List.of(), "");
    }
    List<String> heads = new ArrayList<>();
    heads.add(PlanWords.say("odds.if"));
    String trend = plan.steps() == null ? "" : ".levels";
    VERDICTS.forEach(
        verdict ->
            heads.add(
                PlanWords.say(
                    "odds."
                        + verdict.name()
                        + (verdict == Verdict.NO_WORTHWHILE_DIFFERENCE ? trend : ""))));
    return new PlanOdds(
        heads,
        odds.stream().map(words::cells).toList(),
        words.odds(odds),
        words.oddsSource(odds, detail.map(DayDetail::days).orElse(0)));
  }
}
