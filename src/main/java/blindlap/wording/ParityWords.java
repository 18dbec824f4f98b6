package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.review.DayRecord;
import blindlap.review.HelperFit;
import blindlap.review.Parity;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Settings as the helper measured them, against what was planned. */
final class ParityWords {
  private static final Words WORDS = FindingWords.WORDS;

  private final DayRecord day;
  private final Plan plan;
  private final List<Parity> found;

  ParityWords(DayRecord day, List<Parity> found) {
    this.day = day;
    this.plan = day.plan();
    this.found = found;
  }

  /** One sentence a setting; nothing where nothing was measured. */
  List<String> lines() {
    List<String> lines = new ArrayList<>(found.stream().map(this::parity).toList());
    lines.addAll(words());
    return lines;
  }

  /** What the helper wrote down for settings without a number in it, each wording once. */
  private List<String> words() {
    Map<String, Map<String, List<Integer>>> stints = new LinkedHashMap<>();
    for (HelperFit fit : day.fits().values()) {
      fit.words()
          .forEach(
              (setting, words) ->
                  stints
                      .computeIfAbsent(setting, key -> new LinkedHashMap<>())
                      .computeIfAbsent(words, key -> new ArrayList<>())
                      .add(fit.stint()));
    }
    List<String> lines = new ArrayList<>();
    stints.forEach(
        (setting, each) ->
            each.forEach(
                (words, in) ->
                    lines.add(WORDS.say("parity.words", setting, words, StintList.words(in)))));
    return lines;
  }

  private String parity(Parity parity) {
    String of =
        parity.setup() < 0 ? WORDS.say("parity.bike") : plan.setups().get(parity.setup()).name();
    String unit = parity.setting().unit().isBlank() ? "" : " " + parity.setting().unit();
    String range =
        parity.least().compareTo(parity.most()) == 0
            ? parity.least().toPlainString() + unit
            : WORDS.say(
                "interval.one.side",
                parity.least().toPlainString(),
                parity.most().toPlainString() + unit);
    return WORDS.say(
        "parity",
        of,
        parity.setting().name(),
        parity.setting().value() + unit,
        range,
        state(parity));
  }

  private static String state(Parity parity) {
    if (parity.setting().tolerance() == null || parity.setting().number() == null) {
      return WORDS.say("parity.untold");
    }
    return parity.outside().isEmpty()
        ? WORDS.say("parity.within")
        : WORDS.say("parity.outside", StintList.words(parity.outside()));
  }
}
