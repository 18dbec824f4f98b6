package blindlap.desk;

import blindlap.plan.Plan;
import blindlap.seal.SealParameters;
import blindlap.seal.SessionKind;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Both steps of a commit in one, where a test has nobody to ask for the phrase. */
public final class Commits {
  private Commits() {}

  /** Commits a plan; fails if it is refused. */
  public static Committing.Result.Committed commit(
      Desk desk, Plan plan, SessionKind kind, List<String> signedBy) {
    Committing.Begun first = desk.committing().begin(plan);
    Committing.Begun sealed =
        first instanceof Committing.Begun.Alone ? desk.committing().beginSealed(plan) : first;
    if (!(sealed instanceof Committing.Begun.Phrase begun)) {
      throw new AssertionError("refused, or without a key");
    }
    Committing.Result result =
        desk.committing().seal(plan, kind, signedBy, begun.asked().unasked());
    if (result instanceof Committing.Result.Refused refused) {
      throw new AssertionError("refused: " + refused.problems());
    }
    return (Committing.Result.Committed) result;
  }

  /**
   * Commits a plan in a notebook of its own, which knows nothing of this one, and brings the
   * session in: what the desk would refuse can arrive all the same.
   *
   * @param seed of everything drawn
   */
  public static Committing.Result.Committed elsewhere(Desk desk, Plan plan, long seed) {
    try {
      Path folder = Files.createTempDirectory("elsewhere");
      try (Desk other =
          new Desk(
              SqliteNotebook.open(
                  folder.resolve("other.blindlap"),
                  FixedSources.stream(500 + seed).exactly(16),
                  desk.clock().instant()),
              desk.clock(),
              FixedSources.of(FixedSources.stream(600 + seed)),
              new SealParameters(1),
              FixedSources.stream(700 + seed))) {
        Committing.Result.Committed committed =
            commit(other, plan, SessionKind.comparison(), List.of(plan.rider()));
        desk.notebook().addEntries(committed.state().entries());
        return committed;
      } finally {
        Files.deleteIfExists(folder.resolve("other.blindlap"));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
