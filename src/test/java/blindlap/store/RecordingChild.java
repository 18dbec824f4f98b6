package blindlap.store;

import blindlap.plan.Plan;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.session.Fact;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A process that records test days of 24 stints until it is killed: helper's record, lap with six
 * measures, guess, each saved on its own. It prints a line for every entry once it is saved.
 */
final class RecordingChild {
  static final int STINTS = 24;
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", STINTS);

  private final SqliteNotebook notebook;
  private final PrintStream out;
  private final Random random;

  private RecordingChild(SqliteNotebook notebook, PrintStream out, Random random) {
    this.notebook = notebook;
    this.out = out;
    this.random = random;
  }

  /**
   * Records.
   *
   * @param args notebook file, seed, most days to record (none: until it is killed)
   */
  public static void main(String[] args) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    long seed = Long.parseLong(args[1]);
    out.println("started");
    SqliteNotebook notebook =
        SqliteNotebook.open(Path.of(args[0]), new SeededBytes(seed).next(16), Days.MORNING);
    out.println("ready");
    int days = args.length > 2 ? Integer.parseInt(args[2]) : Integer.MAX_VALUE;
    RecordingChild child = new RecordingChild(notebook, out, new Random(seed));
    for (int day = 0; day < days; day++) {
      child.day(seed * 1000 + day);
    }
    notebook.close();
    out.println("done");
  }

  private void day(long seed) {
    SessionId session = Days.session(seed);
    Sealing sealing = SeededBytes.sealing(seed);
    Sealed sealed = Days.seal(PLAN, session, sealing);
    save(session, List.of(Days.committed(PLAN, sealed)));
    for (int stint = 1; stint <= STINTS; stint++) {
      save(
          session,
          List.of(Days.handled(sealing, sealed.lock(), session, stint, "as planned, 21 clicks")));
      save(session, List.of(new Fact.BikeHandedOver(stint)));
      List<Fact> lap = new ArrayList<>(Days.lap(PLAN, stint, random));
      save(session, lap.subList(0, 1));
      for (Fact score : lap.subList(1, lap.size())) {
        save(session, List.of(score));
      }
      save(session, List.of(Days.guess(stint, random)));
    }
    save(session, List.of(new Fact.DayClosed()));
  }

  private void save(SessionId session, List<Fact> facts) {
    for (StoredEntry saved : Books.put(notebook, session, facts)) {
      out.println("saved " + session.text() + " " + saved.hash().hex());
    }
  }
}
