package blindlap.seal;

import blindlap.stats.order.Orders;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Which label is on which setup, as a friend who masks parts draws or types it. It prints nothing
 * of what it holds; its text has one length for one number of labels.
 */
public final class Masks {
  /** First line of the text form. */
  static final String VERSION = "blindlap-masks-1";

  private static final Pattern FORM = Pattern.compile(VERSION + "\nsetups=([A-Z]{2,26})\n");

  private final List<Integer> setups;

  private Masks(List<Integer> setups) {
    this.setups = setups;
  }

  /**
   * A mapping as it was typed.
   *
   * @param setups by label, 0 = A
   * @throws IllegalArgumentException if the labels are not each on a setup of its own
   */
  public static Masks of(List<Integer> setups) {
    if (setups.size() < 2 || !isMapping(setups, setups.size())) {
      throw new IllegalArgumentException("every label is on a setup of its own");
    }
    return new Masks(List.copyOf(setups));
  }

  /** True if every label is on a setup of its own. */
  public static boolean isMapping(List<Integer> setups, int count) {
    return setups.size() == count
        && setups.stream().distinct().count() == count
        && setups.stream().allMatch(setup -> setup >= 0 && setup < count);
  }

  /** Draws one of all mappings, each as likely: a shuffle, one byte a try. */
  static Masks drawn(int count, SecureBytes source) {
    List<Integer> setups = new ArrayList<>(IntStream.range(0, count).boxed().toList());
    for (int i = count - 1; i > 0; i--) {
      int value;
      do {
        value = source.exactly(1)[0] & 0xff;
      } while (value >= 256 - 256 % (i + 1));
      Collections.swap(setups, i, value % (i + 1));
    }
    return new Masks(List.copyOf(setups));
  }

  /** Reads the text form; empty if it is none. */
  static Optional<Masks> read(byte[] text) {
    Matcher form = FORM.matcher(new String(text, StandardCharsets.UTF_8));
    if (!form.matches()) {
      return Optional.empty();
    }
    List<Integer> setups = form.group(1).chars().mapToObj(c -> c - 'A').toList();
    return isMapping(setups, setups.size()) ? Optional.of(new Masks(setups)) : Optional.empty();
  }

  byte[] text() {
    StringBuilder letters = new StringBuilder();
    setups.forEach(setup -> letters.append(Orders.letter(setup)));
    return (VERSION + "\nsetups=" + letters + "\n").getBytes(StandardCharsets.UTF_8);
  }

  /** Setups by label, 0 = A. */
  public List<Integer> setups() {
    return setups;
  }

  /** Says nothing of what is inside. */
  @Override
  public String toString() {
    return "Masks[" + setups.size() + " labels]";
  }
}
