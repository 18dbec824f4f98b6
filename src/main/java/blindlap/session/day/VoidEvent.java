package blindlap.session.day;

import java.util.Locale;
import java.util.Optional;

/** Events that may spoil a lap. A score is never a reason. */
public enum VoidEvent {
  TRAFFIC,
  CRASH,
  PUNCTURE,
  MECHANICAL,
  WRONG_LINE,
  STOPPED;

  /** The word used in files. */
  public String text() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** The event of a word, spaces, hyphens and capitals forgiven. */
  public static Optional<VoidEvent> parse(String word) {
    String plain = word.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
    for (VoidEvent event : values()) {
      if (event.text().equals(plain)) {
        return Optional.of(event);
      }
    }
    return Optional.empty();
  }
}
