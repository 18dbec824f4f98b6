package blindlap.wording;

import blindlap.review.TellingFinding;
import blindlap.review.TellingTrial;
import blindlap.session.day.Guess.Sureness;
import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.Telling;
import blindlap.stats.tell.TellingTrials;
import blindlap.stats.tell.TellingVerdict;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A telling run in sentences. "Can tell" and "as often as would matter" are two statements; in a
 * null run nothing is ever said of telling a part.
 */
public final class TellingWords {
  private static final Words WORDS = Words.of("telling");
  private static final Words CAUTIONS = Words.of("cautions");

  private final TellingFinding finding;
  private final TellingNames names;
  private final Telling telling;
  private final TellingFigures figures;

  /** The words of a finding. */
  public TellingWords(TellingFinding finding, TellingNames names) {
    this.finding = finding;
    this.names = names;
    this.telling = finding.telling();
    this.figures = new TellingFigures(finding);
  }

  /** "Can the rider tell?" */
  public static String question() {
    return WORDS.say("question");
  }

  /** A verdict alone, in lower case. */
  public static String phrase(TellingVerdict verdict) {
    return WORDS.say("phrase." + verdict.name());
  }

  /** The verdict, in lower case. */
  public String phrase() {
    return WORDS.say(finding.tooFew() ? "phrase.too.few" : "phrase." + telling.verdict().name());
  }

  /** "11 of 15 trials". */
  String counted() {
    return figures.of();
  }

  /** How many guessing gives. */
  String guessed() {
    return figures.guessed();
  }

  /** The largest sentence, the trials marked in it. */
  public Headline headline() {
    String guessed = figures.guessed();
    String place = Headline.PLACE;
    String said;
    if (finding.nullRun()) {
      said = WORDS.say("headline.null", place, guessed);
    } else if (telling.verdict() == TellingVerdict.CAN_TELL) {
      said = WORDS.say("headline.can", names.rider(), names.apart(), place, guessed);
    } else {
      said = WORDS.say("headline.other", names.rider(), names.apart(), phrase(), place, guessed);
    }
    return Headline.of(said, figures.of());
  }

  /** What is below it: how often guessing gives as much, and how often the rider really told. */
  public String lead() {
    TellingVerdict verdict = telling.verdict();
    if (verdict == TellingVerdict.COULD_NOT_SHOW) {
      String key = finding.tooFew() ? "lead.too.few" : "lead.could.not";
      TellingTrials run = telling.run();
      return WORDS.say(key, run.number(), TellingFigures.p(run.allByGuessing()));
    }
    if (telling.fewer()) {
      String fewer = figures.fewer();
      return WORDS.say("lead.fewer", Character.toUpperCase(fewer.charAt(0)) + fewer.substring(1));
    }
    if (finding.nullRun()) {
      boolean can = verdict == TellingVerdict.CAN_TELL;
      String key = can ? "lead.null.can" : "lead.null.other";
      return WORDS.say(key, figures.chance(), figures.limits());
    }
    Optional<TellingVerdict.Often> often = telling.often();
    if (often.isPresent()) {
      String said = WORDS.say("often." + often.get(), figures.declared(), figures.limits());
      return WORDS.say("lead.can", names.rider(), figures.chance(), said);
    }
    return WORDS.say(
        verdict == TellingVerdict.CANNOT_AS_OFTEN ? "lead.cannot" : "lead.open",
        names.rider(),
        figures.chance(),
        figures.declared(),
        figures.limits());
  }

  /** "Why guessing gives 5". */
  public String whyTitle() {
    return WORDS.say("why.title", figures.guessed());
  }

  /** Its answer. */
  public String why() {
    TellingTrials run = telling.run();
    boolean three = run.task() == Discrimination.TRIANGLE;
    return WORDS.say(
        run.least().isPresent() ? "why.least" : "why.never",
        WORDS.say(three ? "one.in.three" : "one.in.two"),
        run.least().orElse(0),
        run.number());
  }

  /** "How sure". */
  public String sureTitle() {
    return WORDS.say("sure.title");
  }

  /** One sentence for every sureness that was said, and that no verdict hangs on it. */
  public List<String> sure() {
    List<String> rows = new ArrayList<>();
    for (TellingFinding.Sure row : finding.sureness()) {
      String key = row.sureness() == null ? "sure.none" : "sure." + row.sureness().name();
      rows.add(WORDS.say("sure.row", WORDS.say(key), row.said(), right(row)));
    }
    rows.add(WORDS.say("sure.note"));
    return rows;
  }

  private static String right(TellingFinding.Sure row) {
    if (row.right() == 0) {
      return WORDS.say("sure.no");
    }
    if (row.right() < row.said()) {
      return WORDS.say("sure.some", row.right());
    }
    return WORDS.say(row.said() == 1 ? "sure.one" : "sure.all");
  }

  /** "What it does not say". */
  public String notSaidTitle() {
    return WORDS.say("not.title");
  }

  /** Its answer. */
  public String notSaid() {
    return WORDS.say(finding.nullRun() ? "not.null" : "not.said");
  }

  /** "Voids". */
  public String voidsTitle() {
    return WORDS.say("voids.title");
  }

  /** How many trials are void. */
  public String voids() {
    return finding.voided() == 0 ? WORDS.say("voids.none") : WORDS.say("voids", finding.voided());
  }

  /** That the run ended before its time, if it did. */
  public Optional<String> early() {
    return finding.left() == 0
        ? Optional.empty()
        : Optional.of(
            WORDS.say(
                "early", finding.trials().size(), finding.voided(), finding.declared().number()));
  }

  /** d′ with its interval; empty in a null run, and where fewer are right than guessing gives. */
  public Optional<String> distance() {
    return figures.distance();
  }

  /** What stands wherever somebody may trust a finding. */
  public List<String> cautions() {
    return List.of(CAUTIONS.say("trust"), CAUTIONS.say("short"));
  }

  /** Everything as lines of text, the cautions last. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(headline().text());
    lines.add(lead());
    early().ifPresent(lines::add);
    lines.add(WORDS.say("line", whyTitle(), why()));
    lines.add(WORDS.say("line", sureTitle(), String.join(" ", sure())));
    distance().ifPresent(lines::add);
    lines.add(WORDS.say("line", voidsTitle(), voids()));
    lines.add(WORDS.say("line", notSaidTitle(), notSaid()));
    lines.addAll(cautions());
    return lines;
  }

  /** "Every trial, lap by lap". */
  public static String stripTitle() {
    return WORDS.say("strip.title");
  }

  /** Names of the laps of a trial. */
  public List<String> laps() {
    Discrimination task = telling.run().task();
    return IntStream.rangeClosed(1, TellingFinding.laps(task))
        .mapToObj(
            lap ->
                lap < TellingFinding.first(task)
                    ? WORDS.say("strip.reference")
                    : WORDS.say("strip.lap", lap))
        .toList();
  }

  /** What a filled lap is. */
  public String differed() {
    return WORDS.say("strip." + task(), names.attribute());
  }

  private String task() {
    return finding.nullRun() ? "null" : telling.run().task().name();
  }

  /** What a ringed lap is. */
  public String named() {
    return WORDS.say("strip.named", names.rider());
  }

  /** The word of a right answer or a wrong one. */
  public static String answer(boolean right) {
    return WORDS.say(right ? "strip.right" : "strip.wrong");
  }

  /** How sure an answer was, without quotation marks; a dash where it was not said. */
  public static String sureness(@Nullable Sureness sureness) {
    return sureness == null ? "\u2013" : Words.of("ride").say("sure." + sureness.name());
  }

  /** The word before the numbers of trials. */
  public static String trial() {
    return WORDS.say("strip.trial");
  }

  /** A trial, for who cannot see the strip. */
  public String spoken(TellingTrial trial) {
    return WORDS.say(
        "spoken." + task(),
        trial.number(),
        trial.differed(),
        trial.named(),
        answer(trial.right()),
        names.attribute());
  }

  /** The words of the picture of right answers. */
  public TellingAxisWords axis() {
    return new TellingAxisWords(telling, figures);
  }
}
