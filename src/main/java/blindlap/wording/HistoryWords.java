package blindlap.wording;

import blindlap.review.QuestionHistory;
import blindlap.review.QuestionHistory.Past;
import blindlap.stats.compare.Verdict;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The history of a question in sentences. */
public final class HistoryWords {
  private static final Words WORDS = Words.of("finding");
  private static final int BRIEF = 8;

  private HistoryWords() {}

  /** Other sessions, a sentence each; none if there are none. */
  public static List<String> lines(QuestionHistory history) {
    return history.past().stream().map(HistoryWords::line).toList();
  }

  /** The same under a sentence that says what they are; nothing if there are none. */
  public static List<String> titled(QuestionHistory history) {
    List<String> lines = new ArrayList<>();
    if (!history.past().isEmpty()) {
      lines.add(WORDS.say("history.title", history.past().size()));
      lines.addAll(lines(history));
    }
    return lines;
  }

  /** For the commit, before anything is drawn: what was asked so far, and what this would be. */
  public static List<String> ahead(QuestionHistory history) {
    List<String> lines = new ArrayList<>();
    lines.addAll(history.past().isEmpty() ? List.of(WORDS.say("history.none")) : titled(history));
    history
        .repeats()
        .ifPresent(past -> lines.add(WORDS.say("history.repeat.ahead", brief(past), past.day())));
    return lines;
  }

  /** What stands in the next line after the verdict of a repeat; empty for any other session. */
  public static Optional<String> repeat(QuestionHistory history) {
    return history.repeats().map(past -> WORDS.say("history.repeat", brief(past), past.day()));
  }

  private static String brief(Past past) {
    return past.session().substring(0, BRIEF);
  }

  private static String line(Past past) {
    String step = NotebookWords.step(past.level(), past.step());
    return WORDS.say(
        past.telling().isPresent() ? "history.line.telling" : "history.line",
        past.day(),
        brief(past),
        past.reason().isEmpty() ? step : WORDS.say("history.reason", step, past.reason()),
        past.primary(),
        told(past),
        past.alike() ? "" : WORDS.say("history.elsewhere", past.rider(), past.trail()));
  }

  private static String said(Past past, Verdict verdict) {
    return past.trend()
        ? VerdictWords.ofTrend(verdict)
        : VerdictWords.phrase(past.level(), verdict);
  }

  private static String told(Past past) {
    return past.telling()
        .map(TellingWords::phrase)
        .or(() -> past.verdict().map(v -> NotebookWords.phrase(past.level(), false, said(past, v))))
        .orElseGet(
            () -> {
              String key = "history." + past.told().name();
              String alone = key + ".alone";
              return WORDS.say(past.level().shown() && WORDS.has(alone) ? alone : key);
            });
  }
}
