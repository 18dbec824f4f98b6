package blindlap.stats;

/** Orders as letters: setup 0 is A, setup 1 is B, and so on. */
public final class Orders {
  private Orders() {}

  /**
   * Reads an order.
   *
   * @param letters one capital letter per stint, A to Z
   * @return setup indices from 0, one per stint
   * @throws StatsException if another character occurs
   */
  public static int[] parse(String letters) {
    return parse("order", letters);
  }

  static int[] parse(String argument, String letters) {
    int[] order = new int[letters.length()];
    for (int i = 0; i < order.length; i++) {
      char letter = letters.charAt(i);
      if (letter < 'A' || letter > 'Z') {
        throw new StatsException(
            argument,
            "is written with the letters A, B, …, but position "
                + (i + 1)
                + " of \""
                + letters
                + "\" is '"
                + letter
                + "'.");
      }
      order[i] = letter - 'A';
    }
    return order;
  }

  /** Writes setup indices (0 = A) as letters. */
  public static String letters(int[] order) {
    StringBuilder text = new StringBuilder(order.length);
    for (int setup : order) {
      text.append(letter(setup));
    }
    return text.toString();
  }

  /** The letter of a setup index (0 = A). */
  public static char letter(int setup) {
    return (char) ('A' + setup);
  }
}
