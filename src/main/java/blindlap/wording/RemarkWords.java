package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Setup;
import blindlap.review.DayRecord;
import blindlap.review.Remark;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.LapState;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;

/** What was said and done on a day: what belongs beside a verdict, and all the rest. */
final class RemarkWords {
  private static final Words WORDS = Words.of("remarks");
  private static final Words REPORT = Words.of("report");
  private static final Words RIDE = Words.of("ride");
  private static final String TIMEKEEPER = DeviationKind.TIMEKEEPER_KNOWS_KEY.name();
  private static final String SCORER = DeviationKind.SCORER_KNOWS_KEY.name();

  private final DayRecord day;
  private final HelperWords helper;

  RemarkWords(DayRecord day) {
    this.day = day;
    this.helper = new HelperWords(day);
  }

  /** What a reader of the verdict must know, each in a sentence. */
  List<String> besideTheVerdict() {
    List<String> lines = new ArrayList<>();
    day.remarks(Remark.Kind.CUT_SHORT).forEach(r -> lines.add(cutShort(r)));
    seen(lines);
    day.plan()
        .primary()
        .ifPresent(m -> knowing(m.kind().timed() ? "timekeeper" : "scorer", m, lines));
    day.remarks(Remark.Kind.REPLACED).forEach(r -> lines.add(changed("replaced", r)));
    day.remarks(Remark.Kind.CORRECTED).forEach(r -> lines.add(changed("corrected", r)));
    lines.addAll(setAside());
    lines.addAll(helper.besideTheVerdict());
    day.remarks(Remark.Kind.OUTSIDE).forEach(r -> lines.add(outside(r)));
    day.remarks(Remark.Kind.DEVIATION).stream()
        .filter(r -> r.stint() == 0)
        .forEach(r -> lines.add(deviation(r)));
    return lines;
  }

  /** What a reader of a measure that is not the primary must know. */
  List<String> beside(Measure measure) {
    List<String> lines = new ArrayList<>();
    knowing(measure.kind().timed() ? "timekeeper.measure" : "scorer.measure", measure, lines);
    return lines;
  }

  /** Wrong fits that were noticed later. */
  List<String> correctedFits() {
    return helper.corrected();
  }

  /** Who timed what. */
  List<String> timed() {
    List<String> lines = new ArrayList<>();
    day.remarks(Remark.Kind.TIMED).forEach(r -> lines.add(timed(r)));
    String declared = day.plan().blinding().timedBy();
    if (!lines.isEmpty() && !declared.isBlank()) {
      lines.add(WORDS.say("timed.declared", declared));
    }
    return lines;
  }

  /** Guesses and notes that others took the place of: what stood, what stands now, and when. */
  List<String> saidAgain() {
    List<String> lines = new ArrayList<>();
    for (Remark remark : day.remarks()) {
      switch (remark.kind()) {
        case NOTE_REPLACED ->
            lines.add(again("note", remark, quoted(remark.before()), quoted(remark.value())));
        case GUESS_REPLACED ->
            lines.add(again("guess", remark, guess(remark.before()), guess(remark.value())));
        case SURENESS_REPLACED ->
            lines.add(again("sureness", remark, sure(remark.before()), sure(remark.value())));
        case CUE_REPLACED ->
            lines.add(again("cue", remark, quoted(remark.before()), quoted(remark.value())));
        case CUT_SHORT,
            TIMED,
            DEVIATION,
            REPLACED,
            CORRECTED,
            COUNTS,
            SET_ASIDE,
            CHOSEN,
            VOID_WITHDRAWN,
            CONDITION,
            OUTSIDE,
            HANDLED,
            FIT_CORRECTED,
            ON_PAPER,
            HELPER_CLOSED,
            HELPER_NOT_CLOSED,
            NOT_MOUNTED,
            REPRINTED,
            LATE -> {} // said elsewhere
      }
    }
    return lines;
  }

  private String again(String about, Remark remark, String before, String now) {
    String when = remark.at().map(DayWords::zoned).orElse("");
    return WORDS.say(
        now.isEmpty() ? "again.out" : "again",
        RemarkPlace.words(remark),
        WORDS.say("again." + about),
        before,
        now,
        when.isEmpty() ? "" : " " + WORDS.say("again.at", when));
  }

  private static String quoted(String words) {
    return words.isBlank() ? "" : WORDS.say("quoted", words);
  }

  private String guess(String letter) {
    List<String> names = day.plan().setups().stream().map(Setup::name).toList();
    int setup = letter.length() == 1 ? letter.charAt(0) - 'A' : -1;
    if (setup >= 0 && setup < names.size()) {
      return names.get(setup);
    }
    return letter.equals(Remark.DONT_KNOW) ? REPORT.say("dont.know") : letter;
  }

  private static String sure(String name) {
    return name.isEmpty() ? "" : named(RIDE, "sure.", name.toUpperCase(Locale.ROOT));
  }

  /** Everything else that was said and done. */
  List<String> rest() {
    List<String> lines = new ArrayList<>();
    lines.addAll(saidAgain());
    handled(lines);
    lines.addAll(helper.rest());
    day.remarks(Remark.Kind.VOID_WITHDRAWN)
        .forEach(
            r ->
                lines.add(
                    WORDS.say(
                        "withdrawn", RemarkPlace.words(r), blank(r.before()), blank(r.words()))));
    day.remarks(Remark.Kind.CONDITION)
        .forEach(
            r -> lines.add(WORDS.say("condition", RemarkPlace.words(r), r.about(), r.words())));
    day.remarks(Remark.Kind.REPRINTED).forEach(r -> lines.add(WORDS.say("reprinted", r.words())));
    lines.addAll(late());
    return lines;
  }

  /** What was kept and not applied. */
  List<String> late() {
    return TwoValuesWords.late(day.remarks(Remark.Kind.LATE));
  }

  /** Values that machines recorded apart: which counts, and which are set aside. */
  private List<String> setAside() {
    return TwoValuesWords.remarks(day.remarks());
  }

  private static String cutShort(Remark remark) {
    return WORDS.say(
        "cut.short",
        remark.who(),
        WORDS.say(remark.value().equals(Remark.KNEW) ? "cut.short.knew" : "cut.short.knew.not"),
        remark.words());
  }

  private void seen(List<String> lines) {
    int perStint = day.plan().laps().perStint();
    List<String> laps =
        day.laps().stream()
            .filter(lap -> lap.voided().filter(LapState.Voided::afterValuesSeen).isPresent())
            .map(lap -> String.valueOf(lap.id().ofDay(perStint)))
            .toList();
    if (laps.size() == 1) {
      lines.add(WORDS.say("void.seen.one", laps.get(0)));
    } else if (!laps.isEmpty()) {
      lines.add(WORDS.say("void.seen", WORDS.say("laps", StintList.and(laps))));
    }
  }

  private void knowing(String key, Measure measure, List<String> lines) {
    if (measure.recorded()) {
      return; // who read a watch beside a recording touched no value that counts
    }
    TreeSet<Integer> stints = new TreeSet<>();
    TreeSet<String> who = new TreeSet<>();
    for (Remark remark : day.remarks(Remark.Kind.DEVIATION)) {
      if (remark.about().equals(measure.kind().timed() ? TIMEKEEPER : SCORER)
          && concerns(remark.words(), measure)) {
        stints.add(remark.stint());
        who.add(remark.words());
      }
    }
    if (!stints.isEmpty()) {
      lines.add(WORDS.say(key, StintList.words(stints), String.join("; ", who), measure.name()));
    }
  }

  /** Words that name another measure of the same sort are about that one; others about each. */
  private boolean concerns(String words, Measure measure) {
    return words.equals(measure.name())
        || day.plan().measures().stream()
            .noneMatch(m -> m.kind().timed() == measure.kind().timed() && m.name().equals(words));
  }

  private String changed(String key, Remark remark) {
    return WORDS.say(
        remark.value().isEmpty() ? key + ".out" : key,
        RemarkPlace.words(remark),
        remark.about(),
        blank(remark.before()),
        remark.value(),
        blank(remark.words()));
  }

  private static String outside(Remark remark) {
    return WORDS.say(
        remark.words().isBlank() ? "outside.no.reason" : "outside",
        RemarkPlace.words(remark),
        remark.about(),
        remark.value(),
        remark.before(),
        remark.words());
  }

  /** "Stint 3, cover off: …"; the warm-up and the day have no number. */
  static String deviation(Remark remark) {
    return WORDS.say(
        "deviation",
        RemarkPlace.words(remark),
        named(REPORT, "kind.", remark.about()),
        remark.words());
  }

  private static String timed(Remark remark) {
    String key = remark.who().isEmpty() ? "timed.typed" : "timed";
    return WORDS.say(
        key,
        remark.about(),
        remark.who().isEmpty() ? "" : named(WORDS, "who.", remark.who()),
        remark.value());
  }

  private void handled(List<String> lines) {
    Map<String, Collection<Integer>> stints = new LinkedHashMap<>();
    day.remarks(Remark.Kind.HANDLED)
        .forEach(r -> stints.computeIfAbsent(r.who(), k -> new TreeSet<>()).add(r.stint()));
    stints.forEach((who, in) -> lines.add(WORDS.say("handled", who, StintList.words(in))));
  }

  /** The word of a name; the name itself where a package of another program has one of its own. */
  private static String named(Words words, String key, String name) {
    return words.has(key + name) ? words.say(key + name) : name;
  }

  private static String blank(String words) {
    return words.isBlank() ? WORDS.say("nothing") : words;
  }
}
