package blindlap.store;

import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.seal.CoveredOrder;
import blindlap.session.Fact;
import blindlap.session.SetupShown;
import blindlap.session.StintMounted;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;

/**
 * A process that commits covered orders, and shows, mounts and rides them stint by stint, until it
 * is killed. What it shows it reads from the cover as it lies in the file. It prints a line for
 * every entry once it is saved.
 */
final class CoveredChild {
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", 8);

  private final SqliteNotebook notebook;
  private final PrintStream out;
  private final Random random;

  private CoveredChild(SqliteNotebook notebook, PrintStream out, Random random) {
    this.notebook = notebook;
    this.out = out;
    this.random = random;
  }

  /** Records until it is killed; args: notebook file, seed. */
  public static void main(String[] args) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    long seed = Long.parseLong(args[1]);
    out.println("started");
    SqliteNotebook notebook =
        SqliteNotebook.open(Path.of(args[0]), new SeededBytes(seed).next(16), Days.MORNING);
    CoveredChild child = new CoveredChild(notebook, out, new Random(seed));
    for (long day = 0; day < Integer.MAX_VALUE; day++) {
      child.day(seed * 1000 + day);
    }
  }

  private void day(long seed) {
    SessionId session = Days.session(seed);
    CoveredOrder order =
        SeededBytes.sealing(seed).cover(PlanJson.bytes(PLAN), PLAN.rule(), session.text());
    Fact committed =
        new Fact.PlanCommitted(
            PLAN,
            new String(PlanJson.bytes(PLAN), StandardCharsets.UTF_8),
            null,
            true,
            order.fingerprint(),
            order.codes(),
            List.of("R. Lind"));
    saved(session, notebook.commit(session, List.of(committed), Days.MORNING, Days.ZONE, order));
    for (int stint = 1; stint <= PLAN.stints(); stint++) {
      int setup = notebook.cover(session).orElseThrow().setup(stint).orElseThrow();
      save(session, new SetupShown(stint, setup));
      save(session, new StintMounted(stint, "{}"));
      save(session, new Fact.BikeHandedOver(stint));
      for (Fact value : Days.lap(PLAN, stint, random)) {
        save(session, value);
      }
    }
    save(session, new Fact.DayClosed());
  }

  private void save(SessionId session, Fact fact) {
    saved(session, Books.put(notebook, session, fact));
  }

  private void saved(SessionId session, List<StoredEntry> entries) {
    for (StoredEntry saved : entries) {
      out.println("saved " + session.text() + " " + saved.hash().hex());
    }
  }
}
