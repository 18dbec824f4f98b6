package blindlap.wording;

import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.TellingPower;
import blindlap.stats.tell.TellingTrials;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.IntStream;

/** What a run of trials can show, before it is ridden. */
public final class TellingPlanWords {
  private static final Words WORDS = Words.of("telling");
  private static final List<Integer> USUAL = List.of(6, 9, 12, 15, 18, 24, 30, 40, 60, 80, 100);

  private TellingPlanWords() {}

  /**
   * A row of the table: number of trials, least number right, runs in a hundred that show either,
   * minutes.
   */
  public record Row(String trials, String least, String can, String cannot, String minutes) {}

  /** The head of the table. */
  public static Row head(double matters) {
    return new Row(
        WORDS.say("plan.head.trials"),
        WORDS.say("plan.head.least"),
        WORDS.say("plan.head.can", share(matters)),
        WORDS.say("plan.head.cannot"),
        WORDS.say("plan.head.minutes"));
  }

  /**
   * The table: usual numbers of trials and the one that was chosen, in rising order.
   *
   * @param chosen the declared trials
   * @param minutes how long one trial takes, above 0
   */
  public static List<Row> table(TellingTrials chosen, int minutes) {
    return IntStream.concat(
            USUAL.stream().mapToInt(Integer::intValue), IntStream.of(chosen.number()))
        .distinct()
        .sorted()
        .mapToObj(n -> row(chosen.task(), n, chosen.matters(), minutes))
        .toList();
  }

  private static Row row(Discrimination task, int number, double matters, int minutes) {
    TellingPower power = TellingPower.of(TellingTrials.of(task, number, matters));
    boolean never = power.run().least().isEmpty();
    return new Row(
        Integer.toString(number),
        never ? WORDS.say("plan.never") : Integer.toString(power.run().least().getAsInt()),
        Figures.inHundred(power.power()),
        Figures.inHundred(power.cannot()),
        Figures.count(minutes * number));
  }

  /** What the declared trials can show, in a sentence or two. */
  public static String said(TellingTrials run) {
    TellingPower power = TellingPower.of(run);
    if (run.least().isEmpty()) {
      return WORDS.say("plan.said.never", run.number(), Figures.inHundred(run.allByGuessing()));
    }
    return WORDS.say(
        "plan.said",
        run.number(),
        run.least().getAsInt(),
        share(run.matters()),
        Figures.inHundred(power.power()),
        Figures.inHundred(power.cannot()));
  }

  private static String share(double matters) {
    if (matters == TellingTrials.USUAL_SHARE) {
      return WORDS.say("plan.share.half");
    }
    BigDecimal share = BigDecimal.valueOf(matters).movePointRight(2);
    return matters == 1
        ? WORDS.say("plan.share.all")
        : WORDS.say("plan.share.per.cent", share.stripTrailingZeros().toPlainString());
  }
}
