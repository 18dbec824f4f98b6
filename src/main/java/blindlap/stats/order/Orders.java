package blindlap.stats.order;

import blindlap.fault.RuleFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

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
        throw new Unusable(
            argument,
            "is written with the letters A, B, …, but position "
                + (i + 1)
                + " of \""
                + letters
                + "\" is '"
                + letter
                + "'.",
            RuleFault.NOT_LETTERS,
            letters,
            i + 1);
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

  /**
   * The order under every renaming of its setups, itself first: what an order looks like if only
   * "which stints had the same setup" is known.
   *
   * @param order setup indices, one per stint
   * @param setups number of setups, 1 to 6
   * @return setups! orders as letters
   */
  public static List<String> renamings(int[] order, int setups) {
    List<int[]> names = new ArrayList<>();
    permute(new int[setups], 0, names);
    List<String> all = new ArrayList<>();
    for (int[] name : names) {
      all.add(letters(Arrays.stream(order).map(setup -> name[setup]).toArray()));
    }
    return all;
  }

  private static void permute(int[] names, int at, List<int[]> all) {
    if (at == names.length) {
      all.add(names.clone());
      return;
    }
    for (int name = 0; name < names.length; name++) {
      int each = name;
      if (Arrays.stream(names, 0, at).noneMatch(before -> before == each)) {
        names[at] = name;
        permute(names, at + 1, all);
      }
    }
  }

  /** The letter of a setup index (0 = A). */
  public static char letter(int setup) {
    return (char) ('A' + setup);
  }
}
