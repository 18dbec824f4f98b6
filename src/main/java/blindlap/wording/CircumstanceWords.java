package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.review.StintValues;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What must be known of a finding before anything else. */
public final class CircumstanceWords {
  private static final Words WORDS = Words.of("finding");

  private final Finding finding;
  private final DayRecord day;
  private final Plan plan;

  CircumstanceWords(Finding finding) {
    this.finding = finding;
    this.day = finding.day();
    this.plan = day.plan();
  }

  /**
   * Null run, unblinded, override, day cut short.
   *
   * @param headline that of the finding, which a null run repeats
   */
  List<String> lines(String headline) {
    List<String> lines = new ArrayList<>(LooksFoundWords.lines(finding));
    day.ridden()
        .ifPresent(s -> lines.add(WORDS.say("null.run", plan.setups().get(s).name(), headline)));
    lines.addAll(new KnownWords(finding).lines());
    if (!plan.override().isBlank()) {
      lines.add(WORDS.say("override", plan.override()));
    }
    finding.left().ifPresent(left -> lines.add(lost(Figures.p(left.smallestP()))));
    day.blindBroken().forEach((stint, what) -> lines.add(broken(plan, stint, what)));
    if (!day.wrongFits().isEmpty()) {
      lines.add(WORDS.say("wrong", StintList.words(day.wrongFits())));
    }
    lines.addAll(new RemarkWords(day).besideTheVerdict());
    return lines;
  }

  /** Where the blind was broken, or where it came out which part bears which label. */
  public static String broken(Plan plan, int stint, String what) {
    String key = plan.level() == BlindLevel.MASKED ? "broken.labels" : "broken";
    return WORDS.say(key, StintList.words(List.of(stint)), what);
  }

  private String lost(String smallestP) {
    if (day.cutShort()) {
      return WORDS.say("cut.short", day.lastStint(), plan.stints(), smallestP);
    }
    Optional<StintValues> stints =
        finding
            .primary()
            .map(Comparison::stints)
            .or(() -> finding.many().stream().findFirst().map(ManyComparison::stints));
    int used = stints.map(StintValues::used).orElse(0);
    int ridden = stints.map(StintValues::riddenStints).orElse(plan.stints());
    String key = ridden < plan.stints() ? "lost.ridden" : "lost";
    return WORDS.say(key, used, plan.stints(), smallestP, ridden);
  }
}
