package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.review.Beside;
import blindlap.review.DayRecord;
import blindlap.review.FileFingerprints;
import blindlap.review.FileFingerprints.Held;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.review.TellingAnalysis;
import blindlap.seal.Fingerprint;
import blindlap.session.SessionState;
import blindlap.stats.tell.GuessTest;
import blindlap.stats.tell.LevelGuessTest;
import blindlap.wording.CardText.Part;
import blindlap.wording.day.Shown;
import blindlap.wording.day.Words;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What a card says of a finding: the words of the review, in the order of their weight. */
public final class CardWords {
  private static final Words WORDS = Words.of("card");
  private static final Words CAUTIONS = Words.of("cautions");
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  /** More stints than these are counted, not listed. */
  private static final int MOST_LISTED = 6;

  /** "8d3f09aa 11c2d7e0", two groups of eight and the space between. */
  private static final int TWO_WORDS = 17;

  private final SessionState state;
  private final DayRecord day;
  private final Plan plan;
  private final Beside beside;
  private final FileFingerprints file;

  private CardWords(SessionState state, DayRecord day, Beside beside) {
    this.state = state;
    this.day = day;
    this.plan = day.plan();
    this.beside = beside;
    this.file = FileFingerprints.of(state);
  }

  /** The words of a finding. */
  public static CardText of(SessionState state, Finding finding, Beside beside) {
    return new CardWords(state, finding.day(), beside).of(finding);
  }

  /** The words of a telling run. */
  public static CardText of(SessionState state, TellingAnalysis analysis, Beside beside) {
    return new CardWords(state, analysis.day(), beside).of(analysis);
  }

  /** What a picture shows, as a line of its own. */
  public static String picture(String spoken) {
    return WORDS.say("text.pictures", spoken);
  }

  private CardText of(Finding finding) {
    FindingText text = new FindingText(finding);
    List<String> marks = marks(day.nullRun());
    stints(marks, day.blindBroken().keySet(), labels() ? "mark.broken.labels" : "mark.broken");
    stints(marks, day.wrongFits(), "mark.wrong");
    if (day.cutShort() || day.lastRidden() < plan.stints()) {
      int last = day.cutShort() ? day.lastStint() : day.lastRidden();
      marks.add(WORDS.say("mark.cut", last, plan.stints()));
    }
    if (finding.guesses().test().filter(GuessTest::flagged).isPresent()
        || finding.guesses().levelTest().filter(LevelGuessTest::flagged).isPresent()) {
      marks.add(WORDS.say("mark.guessed"));
    }
    String used =
        text.primary()
            .map(FindingWords::used)
            .or(() -> finding.many().stream().findFirst().map(m -> text.words(m).used()))
            .orElse("");
    boolean voids = IntStream.of(finding.voidLaps().voids()).sum() > 0;
    List<Part> parts = new ArrayList<>();
    // Which setup lost stints may be counted for elsewhere, but not where they count all the same.
    boolean counted = voids && !plan.level().blind();
    parts.add(day(used, counted ? text.voids() : ""));
    parts.add(new Part(statement(marks), text.guesses()));
    List<String> known = new ArrayList<>(text.underVerdict(beside));
    known.addAll(here(text.circumstances()));
    known(parts, known, voids && !counted ? text.voids() : "");
    String pairs =
        text.primary().isEmpty() && finding.many().stream().anyMatch(ManyComparison::tested)
            ? String.join(
                " ", "", WORDS.say("pairs.adjusted"), FindingWords.WORDS.say("many.intervals"))
            : "";
    parts.add(new Part("", text.lead() + pairs));
    return text(text.headline(), marks, parts);
  }

  private CardText of(TellingAnalysis analysis) {
    TellingText text = new TellingText(analysis);
    TellingWords words = text.words();
    List<String> marks = marks(analysis.finding().nullRun());
    trials(marks, analysis.known(), "mark.broken.trials");
    trials(marks, analysis.wrongFits(), "mark.wrong.trials");
    if (analysis.finding().left() > 0) {
      int answered = analysis.finding().trials().size();
      marks.add(WORDS.say("mark.cut.trials", answered, analysis.finding().declared().number()));
    }
    List<Part> parts = new ArrayList<>();
    parts.add(day(words.voids(), ""));
    parts.add(new Part(statement(marks), words.why()));
    List<String> known = new ArrayList<>(text.underVerdict(beside));
    known.addAll(text.circumstances());
    known(parts, known, "");
    parts.add(new Part("", words.lead()));
    parts.add(new Part("", words.notSaid()));
    return text(text.headline(), marks, parts);
  }

  private CardText text(Headline headline, List<String> marks, List<Part> parts) {
    Part caution =
        new Part(WORDS.say("caution"), CAUTIONS.say("trust") + " " + CAUTIONS.say("short"));
    return new CardText(
        line(plan.question()),
        new Headline(line(headline.before()), line(headline.phrase()), line(headline.after())),
        line(String.join(" ", marks)),
        parts.stream().map(p -> new Part(line(p.strong()), line(p.plain()), p.leaves())).toList(),
        IntStream.rangeClosed(1, (int) parts.stream().filter(p -> p.leaves() > 0).count())
            .mapToObj(gone -> WORDS.say("left", gone))
            .toList(),
        caution,
        prints(),
        WORDS.say("brand"));
  }

  private List<String> prints() {
    List<String> prints = new ArrayList<>();
    prints.add(print("print.plan", file.plan(), file.ofPlan()));
    file.review().ifPresent(f -> prints.add(print("print.review", f, file.ofReview())));
    return prints;
  }

  private static String print(String key, Fingerprint fingerprint, Held held) {
    return WORDS.say(held == Held.DIFFERS ? key + ".differs" : key, start(fingerprint));
  }

  /** Typed texts may hold line breaks and signs without a shape; a line of a picture holds none. */
  private static String line(String text) {
    return Shown.inLetters(text.replaceAll("[\\t\\r\\n]+", " "));
  }

  private static String start(Fingerprint fingerprint) {
    return fingerprint.grouped().substring(0, TWO_WORDS);
  }

  private boolean labels() {
    return plan.level() == BlindLevel.MASKED;
  }

  /** What every kind of session may have to say first. */
  private List<String> marks(boolean nullRun) {
    List<String> marks = new ArrayList<>();
    boolean ofPlan = file.ofPlan() == Held.DIFFERS;
    if (file.differ()) {
      boolean both = ofPlan && file.ofReview() == Held.DIFFERS;
      marks.add(WORDS.say("mark.differs." + (both ? "both" : ofPlan ? "plan" : "review")));
    }
    if (nullRun) {
      marks.add(WORDS.say("mark.null"));
    }
    if (!plan.level().blind()) {
      marks.add(WORDS.say("mark." + plan.level().name()));
    }
    if (beside.history().repeats().isPresent()) {
      marks.add(WORDS.say("mark.repeat"));
    }
    if (!plan.override().isBlank()) {
      marks.add(WORDS.say("mark.override"));
    }
    if (state.abandonedBecause().isPresent()) {
      marks.add(WORDS.say("mark.abandoned"));
    }
    if (!state.amendments().isEmpty()) {
      marks.add(WORDS.say("mark.amended"));
    }
    return marks;
  }

  private static void stints(List<String> marks, Collection<Integer> stints, String key) {
    if (stints.size() > MOST_LISTED) {
      marks.add(WORDS.say(key + ".many", stints.size()));
    } else if (!stints.isEmpty()) {
      marks.add(WORDS.say(key, StintList.words(stints)));
    }
  }

  private static void trials(List<String> marks, List<Integer> trials, String key) {
    if (!trials.isEmpty()) {
      String numbers = StintList.and(trials.stream().map(String::valueOf).toList());
      marks.add(WORDS.say(key, numbers, trials.size()));
    }
  }

  /** The blind level's own words; where a mark stands the mark says what the rider knew. */
  private String statement(List<String> marks) {
    if (file.differ()) {
      return WORDS.say("statement.differs");
    }
    if (state.covered()) {
      return WORDS.say("statement.covered");
    }
    boolean held = plan.level().blind() && marks.isEmpty();
    return WORDS.say(held ? "statement." + plan.level().name() : "statement.sealed");
  }

  private Part day(String used, String voids) {
    String key = plan.rider().isBlank() ? "day.no.rider" : "day";
    String strong = WORDS.say(key, plan.rider(), plan.trail(), DAY.format(plan.day()));
    String conditions =
        plan.conditions().isBlank() ? "" : WORDS.say("conditions", bare(plan.conditions()));
    return new Part(
        strong,
        Stream.of(used, voids, conditions)
            .filter(words -> !words.isEmpty())
            .collect(Collectors.joining(" ")));
  }

  /** Without the full stop that the sentence round it brings. */
  private static String bare(String typed) {
    String text = typed.strip();
    return text.endsWith(".") ? text.substring(0, text.length() - 1) : text;
  }

  /** A review says below what else could be said of wrong fits; a card says where that stands. */
  private List<String> here(List<String> circumstances) {
    List<String> lines = new ArrayList<>(circumstances);
    if (!day.wrongFits().isEmpty()) {
      String below = FindingWords.WORDS.say("wrong", StintList.words(day.wrongFits()));
      lines.replaceAll(each -> each.equals(below) ? WORDS.say("wrong.planned") : each);
    }
    return lines;
  }

  /** Adds what else is known; of it leaves first which setup lost stints, then the last line. */
  private static void known(List<Part> parts, List<String> lines, String voids) {
    int first = 1;
    if (!voids.isEmpty()) {
      parts.add(new Part("", voids, first));
      first++;
    }
    for (int i = 0; i < lines.size(); i++) {
      parts.add(new Part("", lines.get(i), first + lines.size() - 1 - i));
    }
  }
}
