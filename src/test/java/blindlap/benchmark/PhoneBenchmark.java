package blindlap.benchmark;

import blindlap.phone.PhoneRound;
import java.io.IOException;
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
 * From the request of a phone to "in the notebook" on loopback, beside a bare SQLite commit of a
 * row of the same size with the same settings on the same disk. The two take turns, and each goes
 * first every other time.
 *
 * <p>Run: {@code PhoneBenchmark [folder] [answers]}.
 */
public final class PhoneBenchmark {
  private static final int WARM_UP = 100;
  private static final int BYTES = 700;

  private PhoneBenchmark() {}

  /** Measures and prints. */
  public static void main(String[] arguments) throws IOException, SQLException {
    Path parent =
        Path.of(arguments.length > 0 ? arguments[0] : System.getProperty("java.io.tmpdir"));
    int answers = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 300;
    Path folder = Files.createTempDirectory(parent, "phone");
    double[] said = new double[answers];
    double[] bare = new double[answers];
    try (PhoneRound phone = new PhoneRound(folder);
        Connection connection = bare(folder.resolve("bare.sqlite"))) {
      for (int i = -WARM_UP; i < answers; i++) {
        double before = i % 2 == 0 ? commit(connection) : 0;
        long begun = System.nanoTime();
        phone.say(i & 1);
        double round = (System.nanoTime() - begun) / 1e6;
        double commit = i % 2 == 0 ? before : commit(connection);
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
        "bare commit",
        bare[middle],
        bare[high],
        "ratio",
        said[middle] / bare[middle],
        said[high] / bare[high]);
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

  private static double commit(Connection connection) throws SQLException {
    long begun = System.nanoTime();
    connection.setAutoCommit(false);
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO row (text) VALUES (?)")) {
      insert.setString(1, "x".repeat(BYTES));
      insert.executeUpdate();
    }
    connection.commit();
    return (System.nanoTime() - begun) / 1e6;
  }
}
