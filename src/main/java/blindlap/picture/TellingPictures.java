package blindlap.picture;

import blindlap.plot.ChanceAxis;
import blindlap.plot.Limits;
import blindlap.plot.TrialStrip;
import blindlap.plot.surface.Spoken;
import blindlap.review.TellingFinding;
import blindlap.stats.distribution.Interval;
import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.Telling;
import blindlap.stats.tell.TellingTrials;
import blindlap.wording.TellingAxisWords;
import blindlap.wording.TellingWords;
import java.util.stream.Collectors;

/** The two pictures of a telling run: every trial, and right answers against chance. */
public final class TellingPictures {
  private TellingPictures() {}

  /** Every trial, lap by lap. */
  public static TrialStrip strip(TellingFinding finding, TellingWords words) {
    String table = finding.trials().stream().map(words::spoken).collect(Collectors.joining(" "));
    return TrialStrip.of(
        new TrialStrip.Content(
            finding.trials().stream()
                .map(t -> new TrialStrip.Trial(t.number(), t.differed() - 1, t.named() - 1))
                .toList(),
            words.laps(),
            finding.declared().task() == Discrimination.DUO_TRIO,
            new TrialStrip.Said(
                words.differed(),
                words.named(),
                TellingWords.answer(true),
                TellingWords.answer(false),
                TellingWords.trial()),
            new Spoken(words.headline().text(), table)));
  }

  /** Right answers against chance and against what would matter. */
  public static ChanceAxis axis(TellingFinding finding, TellingWords words) {
    Telling telling = finding.telling();
    TellingTrials run = telling.run();
    TellingAxisWords said = words.axis();
    return ChanceAxis.of(
        new ChanceAxis.Numbers(
            run.number(),
            telling.right(),
            run.guessed(),
            run.least().orElse(run.number() + 1) - 1,
            run.mattering(),
            limits(telling.rightLimits(Telling.CONFIDENCE)),
            limits(telling.rightLimits(0.95))),
        new ChanceAxis.Said(
            said.counted(),
            said.of(),
            said.guessing(),
            said.matters(),
            said.dot(),
            said.interval(),
            said.guessers()),
        new Spoken(said.spoken(), said.spokenMore()));
  }

  private static Limits limits(Interval interval) {
    return new Limits(interval.low(), interval.high());
  }
}
