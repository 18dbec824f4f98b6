package blindlap.seal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;

/** The 2048 words of helper phrases, alphabetical, no two with the same first four letters. */
final class Words {
  static final int COUNT = 2048;
  private static final int TELLING_LETTERS = 4;
  private static final int SUGGESTIONS = 3;
  private static final int FARTHEST = 3;
  private static final List<String> ALL = load();

  private Words() {}

  static List<String> all() {
    return ALL;
  }

  static String word(int index) {
    return ALL.get(index);
  }

  /**
   * The word that was meant: typed in full, or its beginning from four letters on.
   *
   * @param typed lower case
   * @return its index, or −1 if there is none
   */
  static int find(String typed) {
    for (int i = 0; i < COUNT; i++) {
      String word = ALL.get(i);
      if (word.equals(typed) || (typed.length() >= TELLING_LETTERS && word.startsWith(typed))) {
        return i;
      }
    }
    return -1;
  }

  /** The words that look most like the one typed, the nearest first, at most three. */
  static List<String> near(String typed) {
    return ALL.stream()
        .filter(word -> distance(word, typed) <= FARTHEST)
        .sorted(
            Comparator.<String>comparingInt(word -> distance(word, typed))
                .thenComparing(Comparator.naturalOrder()))
        .limit(SUGGESTIONS)
        .toList();
  }

  /** Letters to add, drop, replace or swap with their neighbour (optimal string alignment). */
  private static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int replaced = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(d[i - 1][j - 1] + replaced, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }

  private static List<String> load() {
    try (InputStream in = Words.class.getResourceAsStream("words.txt")) {
      if (in == null) {
        throw new IllegalStateException("the list of phrase words is missing from the program");
      }
      return new String(in.readAllBytes(), StandardCharsets.US_ASCII).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException("the list of phrase words cannot be read", e);
    }
  }
}
