package blindlap.desk;

import blindlap.plan.Plan;
import blindlap.seal.SessionKind;
import java.util.List;

/** Both steps of a commit in one, where a test has nobody to ask for the phrase. */
public final class Commits {
  private Commits() {}

  /** Commits a plan; fails if it is refused. */
  public static Committing.Result.Committed commit(
      Desk desk, Plan plan, SessionKind kind, List<String> signedBy) {
    if (!(desk.committing().begin(plan) instanceof Committing.Begun.Phrase begun)) {
      throw new AssertionError("refused, or without a key");
    }
    Committing.Result result =
        desk.committing().seal(plan, kind, signedBy, begun.asked().unasked());
    if (result instanceof Committing.Result.Refused refused) {
      throw new AssertionError("refused: " + refused.problems());
    }
    return (Committing.Result.Committed) result;
  }
}
