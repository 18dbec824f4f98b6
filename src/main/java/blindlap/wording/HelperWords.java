package blindlap.wording;

import blindlap.plan.Setup;
import blindlap.review.DayRecord;
import blindlap.review.Remark;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Wrong fits noticed later, stints kept on paper, and the end of the helper's day. */
final class HelperWords {
  private static final Words WORDS = Words.of("remarks");
  private static final long MINUTE = 60;

  private final DayRecord day;

  HelperWords(DayRecord day) {
    this.day = day;
  }

  /** What a reader of the verdict must know. */
  List<String> besideTheVerdict() {
    List<String> lines = new ArrayList<>(corrected());
    day.remarks(Remark.Kind.HELPER_NOT_CLOSED).forEach(r -> lines.add(WORDS.say("not.closed")));
    List<Integer> unknown =
        day.remarks(Remark.Kind.NOT_MOUNTED).stream().map(Remark::stint).toList();
    if (!unknown.isEmpty()) {
      lines.add(WORDS.say("not.mounted", StintList.words(unknown)));
    }
    return lines;
  }

  /** Wrong fits that were noticed later. */
  List<String> corrected() {
    return day.remarks(Remark.Kind.FIT_CORRECTED).stream().map(this::corrected).toList();
  }

  /** The rest. */
  List<String> rest() {
    List<String> lines = new ArrayList<>();
    day.remarks(Remark.Kind.ON_PAPER).forEach(r -> lines.add(onPaper(r)));
    day.remarks(Remark.Kind.HELPER_CLOSED).forEach(r -> lines.add(closed(r)));
    return lines;
  }

  private String corrected(Remark remark) {
    String sentence =
        WORDS.say(
            remark.before().isEmpty() ? "fit.corrected.unknown" : "fit.corrected",
            RemarkPlace.words(remark),
            name(remark.value()),
            remark.before().isEmpty() ? "" : name(remark.before()),
            remark.at().map(DayWords::zoned).orElse(""),
            after(remark.about()),
            remark.who());
    return remark.words().isBlank()
        ? sentence
        : WORDS.say("fit.corrected.words", sentence, remark.words());
  }

  /** ", 24 min after the bike was ready"; whole minutes, seconds below one. */
  private static String after(String seconds) {
    if (!seconds.matches("\\d{1,9}")) {
      return "";
    }
    long all = Long.parseLong(seconds);
    return all < MINUTE
        ? WORDS.say("fit.corrected.seconds", all)
        : WORDS.say("fit.corrected.minutes", (all + MINUTE / 2) / MINUTE);
  }

  private String onPaper(Remark remark) {
    String fitted =
        remark.value().equals(remark.before())
            ? WORDS.say("on.paper.scheduled", name(remark.value()))
            : WORDS.say("on.paper.otherwise", name(remark.value()), name(remark.before()));
    return WORDS.say("on.paper", RemarkPlace.words(remark), fitted, ticked(remark));
  }

  private static String ticked(Remark remark) {
    if (remark.about().isEmpty()) {
      return WORDS.say("on.paper.ticked.none");
    }
    if (remark.about().equals(Remark.ALL)) {
      return WORDS.say("on.paper.ticked.all", remark.who());
    }
    List<String> points = Arrays.stream(remark.about().split(",")).map(HelperWords::point).toList();
    return WORDS.say("on.paper.ticked.some", remark.who(), StintList.and(points));
  }

  private static String point(String word) {
    String key = "point." + word.toUpperCase(Locale.ROOT).replace(' ', '_');
    return WORDS.has(key) ? WORDS.say(key) : word;
  }

  private static String closed(Remark remark) {
    String at = remark.at().map(DayWords::zoned).orElse("");
    return remark.words().isBlank()
        ? WORDS.say("closed", remark.who(), at)
        : WORDS.say("closed.words", remark.who(), at, remark.words());
  }

  private String name(String letter) {
    List<String> names = day.plan().setups().stream().map(Setup::name).toList();
    int setup = letter.length() == 1 ? letter.charAt(0) - 'A' : -1;
    return setup >= 0 && setup < names.size() ? names.get(setup) : letter;
  }
}
