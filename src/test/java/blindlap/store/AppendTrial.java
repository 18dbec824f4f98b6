package blindlap.store;

import blindlap.plan.Plan;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.session.Fact;
import blindlap.session.Head;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * From the call of an append to its return, beside a bare commit of the same bytes with the same
 * settings on the same disk, turn by turn in one run: {@code mvn test -Dtest=AppendTrial}.
 */
class AppendTrial {
  private static final int WARM_UP = 1500;
  private static final int MEASURED = Integer.getInteger("appends", 1000);
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", 24);
  private static final SessionId SESSION = Days.session(1);

  @TempDir private Path folder;

  @Test
  void appends_beside_bare_commits() throws Exception {
    Sealing sealing = SeededBytes.sealing(1);
    Sealed sealed = Days.seal(PLAN, SESSION, sealing);
    Random random = new Random(1);
    compare(
        sealed,
        "one score",
        i ->
            List.of(
                new Fact.ScoreGiven(
                    new LapId(1 + i % 24, 1), "grip", BigDecimal.valueOf(i % 100), Source.SCREEN)));
    compare(sealed, "a lap with six measures", i -> Days.lap(PLAN, 1 + i % 24, random));
    compare(
        sealed,
        "a helper's record",
        i -> List.of(Days.handled(sealing, sealed.lock(), SESSION, 1 + i % 24, "21 clicks")));
  }

  private void compare(Sealed sealed, String what, IntFunction<List<Fact>> facts) throws Exception {
    List<Double> appends = new ArrayList<>();
    List<Double> bares = new ArrayList<>();
    String name = what.replace(' ', '-');
    try (SqliteNotebook notebook = Books.open(folder.resolve(name + ".blindlap"));
        Connection bare = bare(folder.resolve(name + ".bare"));
        PreparedStatement begin = bare.prepareStatement("BEGIN IMMEDIATE");
        PreparedStatement insert = bare.prepareStatement("INSERT INTO bare (bytes) VALUES (?)");
        PreparedStatement commit = bare.prepareStatement("COMMIT")) {
      List<StoredEntry> last = Books.put(notebook, SESSION, List.of(Days.committed(PLAN, sealed)));
      for (int i = 0; i < WARM_UP + MEASURED; i++) {
        List<Head> known = List.of(last.get(last.size() - 1).head());
        List<Fact> next = facts.apply(i);
        long start = System.nanoTime();
        last = notebook.append(SESSION, known, next, Days.MORNING, Days.ZONE).orElseThrow();
        long between = System.nanoTime();
        begin.execute();
        for (StoredEntry entry : last) {
          insert.setString(1, row(entry));
          insert.executeUpdate();
        }
        commit.execute();
        long end = System.nanoTime();
        if (i >= WARM_UP) {
          appends.add((between - start) / 1e6);
          bares.add((end - between) / 1e6);
        }
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%-24s append %6.2f ms, 99 %% %6.2f; bare commit %6.2f ms, 99 %% %6.2f; ratio %.2f, %.2f%n",
        what,
        at(appends, .5),
        at(appends, .99),
        at(bares, .5),
        at(bares, .99),
        at(appends, .5) / at(bares, .5),
        at(appends, .99) / at(bares, .99));
  }

  private static Connection bare(Path file) throws Exception {
    Connection connection = Books.plain(file);
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA journal_mode = TRUNCATE");
      statement.execute("PRAGMA synchronous = EXTRA");
      statement.execute("PRAGMA secure_delete = ON");
      statement.execute("CREATE TABLE bare (arrived INTEGER PRIMARY KEY, bytes TEXT NOT NULL)");
    }
    return connection;
  }

  /** What a row of the notebook holds. */
  private static String row(StoredEntry stored) {
    return stored.entry().session().text()
        + stored.entry().notebook().text()
        + stored.entry().previous().hex()
        + stored.hash().hex()
        + stored.entry().fact().getClass().getSimpleName()
        + stored.entry().at()
        + stored.text();
  }

  private static double at(List<Double> times, double share) {
    List<Double> sorted = new ArrayList<>(times);
    Collections.sort(sorted);
    return sorted.get((int) Math.min(sorted.size() - 1, Math.floor(share * sorted.size())));
  }
}
