package blindlap.wording;

import blindlap.plan.DayLeft;
import blindlap.plan.Plan;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;

/** What is left of a day that is cut short. */
final class CutWords {
  private static final Words WORDS = Words.of("answer");

  private final Plan plan;
  private final DoubleFunction<String> amount;

  /**
   * @param amount a difference with its unit
   */
  CutWords(Plan plan, DoubleFunction<String> amount) {
    this.plan = plan;
    this.amount = amount;
  }

  /** Everything, a sentence each. */
  List<String> lines(DayLeft left) {
    if (left.fewestStints() == 0) {
      return List.of(WORDS.say("stop.never"));
    }
    List<String> lines = begun(left, this::cut);
    lines.add(WORDS.say("cut.lost.one", Figures.inHundred(left.losingOne().share())));
    lines.add(WORDS.say("cut.lost.two", Figures.inHundred(left.losingTwo().share())));
    lines.add(stop(left));
    return lines;
  }

  /** What a tester can use, without a p. */
  List<String> plain(DayLeft left) {
    if (left.fewestStints() == 0) {
      return List.of(WORDS.say("stop.never"));
    }
    List<String> lines = begun(left, this::plainCut);
    lines.add(WORDS.say("plain.cut.lost.one", Figures.inHundred(left.losingOne().share())));
    lines.add(stop(left));
    return lines;
  }

  /** What the plain sentences leave out. */
  List<String> statistician(DayLeft left) {
    if (left.fewestStints() == 0) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    told(left).forEach(cut -> lines.add(cut(cut)));
    lines.add(WORDS.say("plain.cut.lost.two", Figures.inHundred(left.losingTwo().share())));
    return lines;
  }

  private List<String> begun(DayLeft left, Function<DayLeft.Cut, String> say) {
    List<String> lines = new ArrayList<>();
    if (left.fewestStints() > 1) {
      lines.add(WORDS.say("cut.never", left.fewestStints() - 1));
    }
    told(left).forEach(cut -> lines.add(say.apply(cut)));
    if (!plan.level().blind()) {
      lines.add(WORDS.say("cut.reason"));
    }
    return lines;
  }

  private List<DayLeft.Cut> told(DayLeft left) {
    int fewest = left.fewestStints();
    int last = left.cuts().size();
    return left.cuts().stream()
        .filter(
            cut ->
                cut.stints() == fewest
                    || cut.stints() > fewest
                        && cut.stints() < last
                        && cut.stints() % toldEvery() == 0)
        .toList();
  }

  private String stop(DayLeft left) {
    int stop =
        plan.setups().size() > 2
            ? left.fewestForDifference().orElse(left.cuts().size())
            : left.fewestStints();
    return WORDS.say("stop", stop);
  }

  private String cut(DayLeft.Cut cut) {
    String p = Figures.p(cut.left().smallestP());
    if (Double.isNaN(cut.difference())) {
      boolean seldom = ofPairs() && plan.protocol().wholeBlocks(cut.stints());
      return WORDS.say(seldom ? "cut.seldom.pairs" : "cut.p", cut.stints(), p);
    }
    String key = ofPairs() ? "cut.from.pairs" : "cut.from";
    return WORDS.say(key, cut.stints(), p, amount.apply(cut.difference()));
  }

  private String plainCut(DayLeft.Cut cut) {
    if (Double.isNaN(cut.difference())) {
      return StepsAnswer.say(plan, "plain.cut.seldom", cut.stints());
    }
    String key = ofPairs() ? "plain.cut.from.pairs" : "plain.cut.from";
    return WORDS.say(key, cut.stints(), amount.apply(cut.difference()));
  }

  private boolean ofPairs() {
    return !plan.oneDifference();
  }

  /** Whole blocks of three setups and more, or of levels, else every fourth stint. */
  private int toldEvery() {
    Integer block = plan.protocol().block();
    return plan.setups().size() > 2 && block != null ? block : 4;
  }
}
