package blindlap.session.day;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What the rider thinks was fitted in a stint, asked after its last scored lap and before any time.
 *
 * @param setup index of the guessed setup (0 = A); null for "don't know"
 * @param sureness how sure; null if not said
 * @param cue what gave it away; may be empty
 */
public record Guess(@Nullable Integer setup, @Nullable Sureness sureness, String cue) {
  /** How sure a guess is. */
  public enum Sureness {
    HUNCH,
    FAIRLY_SURE,
    CERTAIN;

    /** The sureness of a word or any beginning of it: hunch, fairly sure, certain. */
    public static Optional<Sureness> parse(String typed) {
      String plain = typed.strip().toLowerCase(Locale.ROOT).replaceFirst("^a ", "");
      return Arrays.stream(values())
          .filter(
              each -> {
                String name = each.name().toLowerCase(Locale.ROOT).replace('_', ' ');
                return !plain.isEmpty() && name.startsWith(plain);
              })
          .findFirst();
    }
  }
}
