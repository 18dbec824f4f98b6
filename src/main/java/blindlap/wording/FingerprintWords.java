package blindlap.wording;

import blindlap.review.FileFingerprints;
import blindlap.review.FileFingerprints.Held;
import blindlap.seal.Fingerprint;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** What the fingerprints of a file show, and no more: that they match it. */
public final class FingerprintWords {
  private static final Words WORDS = Words.of("fingerprints");
  private static final Pattern LABEL =
      Pattern.compile("^\\s*(?:plan|review)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern BETWEEN =
      Pattern.compile("[\\s\\p{Z}\\p{Cf}\\p{Pd}\\u2212:.,;\u2026]+");
  private static final int DIGITS = 64;

  private FingerprintWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** One sentence on the fingerprints of a session: whether they match its file, and in full. */
  public static String file(SessionState state) {
    FileFingerprints found = FileFingerprints.of(state);
    String plan = found.plan().grouped();
    String review = found.review().map(Fingerprint::grouped).orElse("");
    return WORDS.say(key(found, "file."), plan, review);
  }

  /** The same where the fingerprints themselves stand beside it. */
  public static String beside(SessionState state) {
    return WORDS.say(key(FileFingerprints.of(state), "beside."));
  }

  private static String key(FileFingerprints found, String family) {
    if (found.differ()) {
      return family + (found.ofPlan() == Held.DIFFERS ? "plan.differs" : "review.differs");
    }
    if (found.match()) {
      return family + "both";
    }
    return family + (found.review().isPresent() ? "sealed" : "plan");
  }

  /** Who was given which fingerprint and when, in the order it was written down. */
  public static List<String> given(SessionState state) {
    List<String> lines = new ArrayList<>();
    for (StoredEntry stored : state.entries()) {
      Entry entry = stored.entry();
      if (entry.fact() instanceof Fact.FingerprintGiven given) {
        Fingerprint value = given.value();
        lines.add(
            WORDS.say(
                "given." + given.which().name() + (value == null ? "" : ".value"),
                given.to(),
                DayWords.zoned(entry.at().atZone(entry.zone())),
                value == null ? "" : value.grouped()));
      }
    }
    return lines;
  }

  /**
   * Somebody's number as it was typed, scanned or copied.
   *
   * @param digits its hexadecimal digits in lower case; empty if it cannot be compared
   * @param complaint why not; empty if it can
   */
  public record Typed(String digits, String complaint) {}

  /** Reads a number that somebody holds: blanks, dashes, capitals and line breaks do not matter. */
  public static Typed typed(String text) {
    String bare = LABEL.matcher(text).replaceFirst("");
    String digits = BETWEEN.matcher(bare).replaceAll("").toLowerCase(Locale.ROOT);
    if (!digits.matches("[0-9a-f]*")) {
      return new Typed("", WORDS.say("compare.not.hex"));
    }
    if (digits.length() < FileFingerprints.LEAST_DIGITS) {
      return new Typed(
          "", WORDS.say("compare.few", digits.length(), FileFingerprints.LEAST_DIGITS));
    }
    if (digits.length() > DIGITS) {
      return new Typed("", WORDS.say("compare.many", digits.length()));
    }
    return new Typed(digits, "");
  }

  /** The answer to somebody's number, yes or no first. */
  public static String answer(FileFingerprints.Answer answer) {
    return WORDS.say("compare." + answer.name());
  }
}
