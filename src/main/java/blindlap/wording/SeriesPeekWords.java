package blindlap.wording;

import blindlap.review.SeriesFinding;
import blindlap.review.SeriesPeeks;
import blindlap.wording.day.Words;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What could be known of a series before its end, in sentences: when, why and by whom. */
public final class SeriesPeekWords {
  private static final Words WORDS = Words.of("series");
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm 'UTC'", Locale.UK);

  private SeriesPeekWords() {}

  /** An early end, then sessions that were unsealed while others were open; none for most. */
  public static List<String> lines(SeriesFinding finding) {
    List<String> lines = new ArrayList<>();
    finding.end().map(SeriesPeekWords::ended).ifPresent(lines::add);
    finding.peeks().peeks().forEach(peek -> lines.add(peeked(peek)));
    if (finding.peeks().byClocks()) {
      lines.add(WORDS.say("by.clocks"));
    }
    return lines;
  }

  /** When a series was ended early, why and by whom. */
  static String ended(SeriesPeeks.Ended end) {
    return WORDS.say(
        end.decidedBy().isEmpty() ? "ended.when.unnamed" : "ended.when",
        time(end.at()),
        brief(end.session()),
        end.reason(),
        end.decidedBy());
  }

  private static String peeked(SeriesPeeks.Peek peek) {
    return WORDS.say(
        "peek", time(peek.at()), brief(peek.session()), brief(peek.notebook()), peek.open().size());
  }

  private static String brief(String id) {
    return id.substring(0, Math.min(8, id.length()));
  }

  private static String time(Instant at) {
    return TIME.format(at.atZone(ZoneOffset.UTC));
  }
}
