package blindlap.store;

import blindlap.exchange.EntryText;
import blindlap.plan.Plan;
import blindlap.seal.HelperRecord;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.Hash;
import blindlap.session.NotebookId;
import blindlap.session.SessionSummary;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;

/** Writes notebooks of many whole sessions: 16 stints, six measures, helper's records, guesses. */
final class ManySessions {
  private static final int STINTS = 16;
  private static final int AT_ONCE = 100;
  private static final int RECORD_BYTES = 8208;
  private static final String[] RIDERS = {
    "R. Lind", "J. Brand", "M. Oster", "Åse Øberg", "P. Novak", "L. Sato", "T. Okoye", "E. Marsh"
  };
  private static final String[] TRAILS = {
    "Quarry loop", "Mill track", "Beech descent", "Ridge line", "Old railway", "Fern gully"
  };

  private final Connection connection;
  private final NotebookId id;
  private final EntryTable entries;
  private final SummaryTable summaries;

  private ManySessions(Connection connection, NotebookId id) {
    this.connection = connection;
    this.id = id;
    this.entries = new EntryTable(connection);
    this.summaries = new SummaryTable(connection);
  }

  static SessionId session(int number) {
    return Days.session(1_000_000L + number);
  }

  /** Adds the sessions from one number to before another to a notebook. */
  static void add(Path file, int from, int to) throws SQLException {
    Books.open(file).close();
    try (Connection connection = Connections.open(file, 300)) {
      ManySessions many = new ManySessions(connection, OpeningCheck.id(connection, file));
      Transactions transactions = new Transactions(connection);
      for (int start = from; start < to; start += AT_ONCE) {
        int first = start;
        int end = Math.min(to, start + AT_ONCE);
        transactions.write(
            () -> {
              for (int number = first; number < end; number++) {
                many.write(number);
              }
              return true;
            });
      }
    }
  }

  private void write(int number) throws SQLException {
    Random random = new Random(number);
    SessionId session = session(number);
    Plan plan =
        Days.plan(
            RIDERS[number % RIDERS.length],
            TRAILS[number / RIDERS.length % TRAILS.length] + " " + number % 97,
            STINTS);
    List<Fact> facts = new ArrayList<>();
    facts.add(Days.committed(plan, session, number));
    for (int stint = 1; stint <= STINTS; stint++) {
      facts.add(new Fact.StintHandled(record(stint, random)));
      facts.add(new Fact.BikeHandedOver(stint));
      facts.addAll(Days.lap(plan, stint, random));
      facts.add(Days.guess(stint, random));
    }
    facts.add(new Fact.DayClosed());
    long place = 0;
    Hash previous = Hash.NONE;
    for (Fact fact : facts) {
      StoredEntry stored =
          EntryText.write(
              new Entry(
                  session,
                  id,
                  ++place,
                  previous,
                  List.of(),
                  Days.MORNING.plusSeconds(86_400L * number + 60 * place),
                  Days.ZONE,
                  fact));
      entries.insert(stored);
      previous = stored.hash();
    }
    summaries.put(SessionSummary.of(session, plan, Days.MORNING, Step.DAY_CLOSED));
  }

  /** A record of the right size; what it holds is noise, as it is to whoever lacks the phrase. */
  private static HelperRecord record(int stint, Random random) {
    byte[] iv = new byte[12];
    byte[] ciphertext = new byte[RECORD_BYTES];
    random.nextBytes(iv);
    random.nextBytes(ciphertext);
    return new HelperRecord(
        stint, HexFormat.of().formatHex(iv), Base64.getEncoder().encodeToString(ciphertext));
  }
}
