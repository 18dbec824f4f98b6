package blindlap.wording;

import blindlap.plan.Assessor;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Preparation;
import blindlap.review.Caveat;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import java.util.ArrayList;
import java.util.List;

/**
 * What the rider and others knew of a day without a helper, in the lines under its answer
 * (docs/method.md#blind-levels).
 */
final class KnownWords {
  private final Finding finding;
  private final DayRecord day;
  private final Plan plan;

  KnownWords(Finding finding) {
    this.finding = finding;
    this.day = finding.day();
    this.plan = day.plan();
  }

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    switch (plan.level()) {
      case OPEN, DRAWN -> lines.add(LevelWords.WORDS.say("under." + plan.level().name()));
      case MASKED -> lines.add(MaskWords.known(day));
      case PREPARED -> lines.add(prepared());
      case HELPER -> {}
    }
    day.masks().map(MaskWords::which).ifPresent(lines::add);
    if (ended()) {
      lines.add(FindingWords.WORDS.say("ended.freely", day.lastRidden(), plan.stints()));
    }
    plan.measures().forEach(measure -> assessor(measure, lines));
    return lines;
  }

  private boolean ended() {
    return finding.primary().filter(p -> p.caveats().contains(Caveat.ENDED_FREELY)).isPresent()
        || finding.many().stream().anyMatch(m -> m.caveats().contains(Caveat.ENDED_FREELY));
  }

  private String prepared() {
    Preparation friend = plan.blinding().preparation();
    return friend.on() == null
        ? LevelWords.WORDS.say("under.PREPARED", friend.by())
        : LevelWords.WORDS.say("under.PREPARED.dated", friend.by(), friend.on().toString());
  }

  private static void assessor(Measure measure, List<String> lines) {
    Assessor assessor = measure.assessor();
    if (assessor != null) {
      String key = assessor.knowsKey() ? "assessor.knew" : "assessor";
      lines.add(LevelWords.WORDS.say(key, measure.name(), assessor.name()));
    }
  }
}
