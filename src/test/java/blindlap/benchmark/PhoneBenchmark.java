package blindlap.benchmark;

import blindlap.desk.TestDay;
import blindlap.phone.PhoneRound;
import blindlap.session.Fact;
import blindlap.session.Head;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * From the request of a phone to "in the notebook" on loopback, beside one entry that is appended
 * to another notebook on the same disk, and committed. The two take turns, and each goes first
 * every other time.
 *
 * <p>Run: {@code PhoneBenchmark [folder] [answers]}.
 */
public final class PhoneBenchmark {
  private static final int WARM_UP = 100;

  private PhoneBenchmark() {}

  /** Measures and prints. */
  public static void main(String[] arguments) throws IOException {
    Path parent =
        Path.of(arguments.length > 0 ? arguments[0] : System.getProperty("java.io.tmpdir"));
    int answers = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 300;
    Path folder = Files.createTempDirectory(parent, "phone");
    double[] said = new double[answers];
    double[] bare = new double[answers];
    try (PhoneRound phone = new PhoneRound(folder);
        TestDay other =
            new TestDay(folder.resolve("other.blindlap"), TestDay.SIXTEEN, 1, Optional.empty())) {
      for (int i = -WARM_UP; i < answers; i++) {
        double before = i % 2 == 0 ? append(other, i) : 0;
        long begun = System.nanoTime();
        phone.say(i & 1);
        double round = (System.nanoTime() - begun) / 1e6;
        double commit = i % 2 == 0 ? before : append(other, i);
        if (i >= 0) {
          said[i] = round;
          bare[i] = commit;
        }
      }
    }
    Arrays.sort(said);
    Arrays.sort(bare);
    int middle = answers / 2;
    int high = (int) Math.ceil(answers * 0.99) - 1;
    System.out.printf(
        Locale.ROOT,
        "%d answers, milliseconds%n%-24s %8s %8s%n%-24s %8.2f %8.2f%n%-24s %8.2f %8.2f%n%-24s %8.2f"
            + " %8.2f%n",
        answers,
        "",
        "median",
        "99th",
        "request to answer",
        said[middle],
        said[high],
        "one entry appended",
        bare[middle],
        bare[high],
        "ratio",
        said[middle] / bare[middle],
        said[high] / bare[high]);
  }

  /** One entry beside, with no phone and no rider's day: the session's heads are known before. */
  private static double append(TestDay other, int i) {
    List<Head> known = other.state().heads();
    List<Fact> facts =
        List.of(
            new Fact.ScoreGiven(
                new LapId(1, 1),
                "grip in the rocks",
                BigDecimal.valueOf(50 + (i & 1)),
                Source.SCREEN));
    long begun = System.nanoTime();
    boolean written =
        other
            .desk()
            .notebook()
            .append(other.id(), known, facts, other.clock().instant(), ZoneOffset.UTC)
            .isPresent();
    double taken = (System.nanoTime() - begun) / 1e6;
    if (!written) {
      throw new IllegalStateException("nothing was appended");
    }
    return taken;
  }
}
