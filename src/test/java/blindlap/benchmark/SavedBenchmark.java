package blindlap.benchmark;

import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.ride.RideModel;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Locale;

/**
 * From the release of a control to "saved", beside a bare SQLite commit of a row of the same size
 * with the same settings on the same disk. The two take turns, and each goes first every other
 * time, so that a busy machine and a busy disk meet both.
 *
 * <p>Run: {@code SavedBenchmark [folder] [answers]}. The session grows from a dozen entries to as
 * many as a long day has, as it does on the trail. Everything runs on one thread: the hop to the
 * interface thread and back is not in it.
 */
public final class SavedBenchmark {
  private static final String MEASURE = "grip in the rocks";
  private static final int WARM_UP = 60;

  private SavedBenchmark() {}

  /** Measures and prints. */
  public static void main(String[] arguments) throws IOException, SQLException {
    Path parent =
        arguments.length > 0
            ? Path.of(arguments[0])
            : Path.of(System.getProperty("java.io.tmpdir"));
    int answers = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 400;
    Path folder = Files.createTempDirectory(parent, "saved");
    try (TestDay day = new TestDay(folder, TestDay.SIXTEEN, 1);
        Connection bare = bare(folder.resolve("bare.sqlite"))) {
      RideModel ride = ride(day);
      int bytes = rowSize(day, ride);
      long[] saved = new long[answers];
      long[] commits = new long[answers];
      long[] processor = new long[answers];
      ThreadMXBean threads = ManagementFactory.getThreadMXBean();
      for (int i = -WARM_UP; i < answers; i++) {
        // What comes first waits longer for the disk, whichever it is.
        long before = i % 2 == 0 ? commit(bare, bytes, i) : 0;
        long used = threads.getCurrentThreadCpuTime();
        long nanos = answer(ride, i);
        used = threads.getCurrentThreadCpuTime() - used;
        long commit = i % 2 == 0 ? before : commit(bare, bytes, i);
        if (i >= 0) {
          processor[i] = used;
          commits[i] = commit;
          saved[i] = nanos;
        }
      }
      print(System.out, bytes, saved, commits);
      double[] own = percentiles(processor);
      System.out.printf(Locale.ROOT, "%-22s %8.2f %8.2f%n", "processor time", own[0], own[1]);
    }
  }

  private static RideModel ride(TestDay day) {
    RideModel ride = Models.ride(day);
    ride.handedOver();
    ride.warmUpRidden();
    ride.handedOver();
    return ride;
  }

  private static long answer(RideModel ride, int i) {
    BigDecimal value = BigDecimal.valueOf(i & 1).add(BigDecimal.valueOf(50));
    long begun = System.nanoTime();
    ride.answer(MEASURE, value);
    long nanos = System.nanoTime() - begun;
    if (!ride.troubleProperty().get().isEmpty()) {
      throw new IllegalStateException(ride.troubleProperty().get());
    }
    return nanos;
  }

  private static int rowSize(TestDay day, RideModel ride) {
    answer(ride, 0);
    var entries = day.desk().notebook().entries(day.id());
    return entries.get(entries.size() - 1).text().length();
  }

  private static Connection bare(Path file) throws SQLException {
    Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA journal_mode = TRUNCATE");
      statement.execute("PRAGMA synchronous = EXTRA");
      statement.execute("PRAGMA secure_delete = ON");
      statement.execute("CREATE TABLE row (number INTEGER PRIMARY KEY, text TEXT NOT NULL)");
    }
    return connection;
  }

  private static long commit(Connection connection, int bytes, int i) throws SQLException {
    String text = String.valueOf(i).concat("x".repeat(bytes)).substring(0, bytes);
    long begun = System.nanoTime();
    connection.setAutoCommit(false);
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO row (text) VALUES (?)")) {
      insert.setString(1, text);
      insert.executeUpdate();
    }
    connection.commit();
    return System.nanoTime() - begun;
  }

  private static void print(PrintStream out, int bytes, long[] saved, long[] commits) {
    out.printf(Locale.ROOT, "%d answers, rows of %d bytes, milliseconds%n", saved.length, bytes);
    out.printf(Locale.ROOT, "%-22s %8s %8s%n", "", "median", "99th");
    double[] mine = percentiles(saved);
    double[] theirs = percentiles(commits);
    out.printf(Locale.ROOT, "%-22s %8.2f %8.2f%n", "release to saved", mine[0], mine[1]);
    out.printf(Locale.ROOT, "%-22s %8.2f %8.2f%n", "bare commit", theirs[0], theirs[1]);
    out.printf(
        Locale.ROOT, "%-22s %8.2f %8.2f%n", "ratio", mine[0] / theirs[0], mine[1] / theirs[1]);
    long[] last = Arrays.copyOfRange(saved, saved.length * 3 / 4, saved.length);
    out.printf(Locale.ROOT, "%-22s %8.2f%n", "last quarter, median", percentiles(last)[0]);
  }

  private static double[] percentiles(long[] nanos) {
    long[] sorted = nanos.clone();
    Arrays.sort(sorted);
    return new double[] {
      sorted[sorted.length / 2] / 1e6, sorted[(int) Math.ceil(sorted.length * 0.99) - 1] / 1e6
    };
  }
}
