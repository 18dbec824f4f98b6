package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.review.SeriesFinding;
import blindlap.stats.noise.RankAgreement;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** How the riders of a series rank three and more setups, in sentences. */
final class RankingWords {
  private static final Words WORDS = Words.of("series");

  private RankingWords() {}

  /** The agreement, then each rider's ranking; empty where not measured. */
  static List<String> lines(SeriesFinding finding, List<String> setups) {
    List<String> lines = new ArrayList<>();
    finding.agreement().map(RankingWords::agreement).ifPresent(lines::add);
    if (setups.size() > 2) {
      finding.riders().forEach(rider -> lines.add(ranking(finding.measure(), rider, setups)));
    }
    return lines;
  }

  private static String agreement(RankAgreement agreement) {
    return WORDS.say(
        "agreement", Figures.number(agreement.kendallW(), 2), Figures.p(agreement.p()));
  }

  /** Setups from best to worst, or from large to small where no direction is better. */
  private static String ranking(Measure measure, SeriesFinding.Rider rider, List<String> setups) {
    boolean rising = measure.better() == Measure.Better.LOWER;
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < setups.size(); i++) {
      order.add(i);
    }
    order.sort(
        Comparator.comparingDouble(i -> rising ? rider.ranking().get(i) : -rider.ranking().get(i)));
    return WORDS.say(
        measure.better() == Measure.Better.NEITHER ? "ranking.neither" : "ranking",
        rider.name(),
        String.join(", ", order.stream().map(setups::get).toList()));
  }
}
