package blindlap.calibration;

import blindlap.stats.order.Assignments;
import blindlap.stats.tell.GuessTest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/** How often the guesses of a rider who knows some of the stints are flagged. */
final class GuessesTable {
  private static final long SEED = 20_261_130L;
  private static final List<Design> DESIGNS =
      List.of(Design.SHORT_8, Design.BLOCK4_12, Design.BLOCK4_16, Design.BLOCK4_24);

  private GuessesTable() {}

  /** Prints the table of docs/method.md#figures-of-guesses; argument: days a cell. */
  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  /** What the rider says of the stints that he does not know. */
  enum Others {
    COIN("half known, a coin for the others"),
    NO_ANSWER("half known, \"don't know\" for the others"),
    ALWAYS_B("half known, B for the others"),
    AS_BEFORE("half known, the others as the stint before");

    private final String text;

    Others(String text) {
      this.text = text;
    }

    private char of(int stint, char[] guesses, SplittableRandom random) {
      return switch (this) {
        case COIN -> random.nextBoolean() ? 'A' : 'B';
        case NO_ANSWER -> '-';
        case ALWAYS_B -> 'B';
        case AS_BEFORE -> stint == 0 ? 'A' : guesses[stint - 1];
      };
    }
  }

  static List<String> lines(int days) {
    List<String> lines = new ArrayList<>();
    StringBuilder head = new StringBuilder("| rule, stints | nothing known, a coin |");
    for (Others others : Others.values()) {
      head.append(' ').append(others.text).append(" |");
    }
    lines.add(head.toString());
    lines.add("| --- |" + " ---: |".repeat(Others.values().length + 1));
    for (Design design : DESIGNS) {
      StringBuilder row = new StringBuilder("| " + design.text() + " |");
      row.append(share(flagged(design, 0, Others.COIN, days)));
      for (Others others : Others.values()) {
        row.append(share(flagged(design, design.orders().stints() / 2, others, days)));
      }
      lines.add(row.toString());
    }
    return lines;
  }

  /** Share of days flagged, the stints known being drawn anew for each. */
  static double flagged(Design design, int known, Others others, int days) {
    long seed = SEED + 10L * design.ordinal() + others.ordinal() + 1_000L * known;
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    SplittableRandom random = new SplittableRandom(seed);
    Assignments set = design.orders();
    boolean[] all = new boolean[set.stints()];
    Arrays.fill(all, true);
    int flagged = 0;
    for (int day = 0; day < days; day++) {
      int[] order = set.random(source);
      char[] guesses = new char[order.length];
      int left = known;
      for (int i = 0; i < order.length; i++) {
        boolean knows = random.nextInt(order.length - i) < left;
        left -= knows ? 1 : 0;
        guesses[i] = knows ? "AB".charAt(order[i]) : others.of(i, guesses, random);
      }
      GuessTest test = GuessTest.of(set, order, new String(guesses), all, order.length);
      flagged += test.flagged() ? 1 : 0;
    }
    return (double) flagged / days;
  }

  private static String share(double share) {
    return String.format(Locale.ROOT, " %.2f |", share);
  }
}
