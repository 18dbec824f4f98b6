package blindlap.wording;

import blindlap.plan.Setup;
import blindlap.review.SeriesFinding;
import blindlap.review.SeriesMeasure;
import blindlap.stats.compare.HarmTest;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/** The measures of a series beside its primary one, in sentences: never a verdict. */
public final class SeriesMeasureWords {
  private static final Words WORDS = Words.of("series");

  private final SeriesFinding finding;
  private final List<String> setups;

  public SeriesMeasureWords(SeriesFinding finding) {
    this.finding = finding;
    this.setups = finding.setups().stream().map(Setup::name).toList();
  }

  /** A sentence a measure, and two of harm for one that is watched; none without other measures. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    for (SeriesMeasure each : finding.others()) {
      lines.add(line(each));
      each.harm()
          .ifPresent(
              harm -> {
                lines.add(harm(each, harm, harm.bAgainstA(), 1));
                lines.add(harm(each, harm, harm.aAgainstB(), 0));
              });
    }
    return lines;
  }

  private String line(SeriesMeasure each) {
    DifferenceWords words =
        new DifferenceWords(
            setups,
            each.measure(),
            each.estimate(),
            List.of(each.interval95(), each.interval90()),
            0);
    String about = WORDS.say(finding.riders().size() == 1 ? "other.one" : "other.riders");
    String sessions =
        each.sessions() == finding.pooled()
            ? ""
            : WORDS.say("other.sessions", each.sessions(), finding.pooled());
    if (each.p().isEmpty()) {
      return WORDS.say("other.few", each.measure().name(), words.difference(), about, sessions);
    }
    boolean adjusted = each.adjusted().isPresent();
    String p = DifferenceWords.p(each.adjusted().orElse(each.p().getAsDouble()));
    return WORDS.say(
        adjusted ? "other.adjusted" : "other",
        each.measure().name(),
        words.careful(each.shown()),
        about,
        sessions,
        words.interval(each.interval95()),
        p);
  }

  private String harm(SeriesMeasure each, HarmTest test, HarmTest.Finding found, int looked) {
    return WORDS.say(
        "other.harm." + found.name(),
        setups.get(looked),
        setups.get(1 - looked),
        each.measure().name(),
        Sizes.worthwhile(each.measure()),
        DifferenceWords.p(test.adjusted()));
  }

  /** ", but Shock L did harm in grip: …" for the headline's end; empty if no harm is shown. */
  String harmed() {
    StringBuilder harmed = new StringBuilder();
    for (SeriesMeasure each : finding.others()) {
      HarmTest harm = each.harm().filter(HarmTest::shown).orElse(null);
      if (harm != null) {
        int setup = harm.bAgainstA() == HarmTest.Finding.SHOWN ? 1 : 0;
        harmed.append(HarmWords.did(each.measure(), setups.get(setup)));
      }
    }
    return harmed.toString();
  }
}
