package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.fault.TypedText;
import blindlap.fault.Unusable;
import blindlap.plan.Plan;
import blindlap.plan.PlanCheck;
import blindlap.plan.PlanJson;
import blindlap.seal.Fingerprint;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SecureBytes;
import blindlap.seal.SessionKind;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Fixes a plan, draws the order, seals the key. */
public final class Committing {
  private final Sessions sessions;
  private final Sealing sealing;
  private final SecureBytes ids;

  /**
   * @param ids source of session ids, apart from everything sealed
   */
  public Committing(Sessions sessions, Sealing sealing, SecureBytes ids) {
    this.sessions = sessions;
    this.sealing = sealing;
    this.ids = ids;
  }

  /** What became of a commit. */
  public sealed interface Result {
    /**
     * Committed and on disk.
     *
     * @param state the session
     * @param sealed what goes to the helper alone
     */
    record Committed(SessionState state, Sealed sealed) implements Result {
      @Override
      public String toString() {
        return "Committed[" + state.id() + "]";
      }
    }

    /**
     * An open noise run is fixed and on disk; nothing was drawn and nothing is sealed.
     *
     * @param state the session
     */
    record Open(SessionState state) implements Result {}

    /** Nothing was drawn or written. */
    record Refused(List<Problem> problems) implements Result {}
  }

  /**
   * Commits a plan. A noise run is committed openly: without rule, order and key.
   *
   * @param kind ordinary comparison or concealed null run; sealed
   * @param signedBy names of those who read the plan
   */
  public Result commit(Plan plan, SessionKind kind, List<String> signedBy) {
    List<Problem> problems = new ArrayList<>(PlanCheck.problems(plan));
    signedBy.forEach(
        name -> TypedText.problem(name, TypedText.Form.LINE, "signed by").ifPresent(problems::add));
    if (!problems.isEmpty()) {
      return new Result.Refused(problems);
    }
    if (plan.kind() == Plan.Kind.NOISE_RUN) {
      return new Result.Open(open(plan, signedBy, List.of()));
    }
    SessionId id = SessionId.of(ids.exactly(16));
    byte[] bytes = PlanJson.bytes(plan);
    Sealed sealed;
    try {
      sealed = sealing.seal(bytes, plan.rule(), id.text(), kind);
    } catch (Unusable e) {
      return new Result.Refused(List.of(e.problem()));
    }
    Fact fact =
        new Fact.PlanCommitted(
            plan,
            new String(bytes, StandardCharsets.UTF_8),
            sealed.key(),
            sealed.fingerprint(),
            sealed.codes(),
            signedBy);
    SessionState state =
        SessionState.of(sessions.write(id, List.of(), List.of(fact)).orElseThrow());
    return new Result.Committed(state, sealed);
  }

  /** Fixes a plan without a key, with what is known of it already. */
  SessionState open(Plan plan, List<String> signedBy, List<Fact> more) {
    byte[] bytes = PlanJson.bytes(plan);
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact.PlanCommitted(
            plan,
            new String(bytes, StandardCharsets.UTF_8),
            null,
            Fingerprint.sha256(bytes),
            IntStream.rangeClosed(1, plan.stints()).boxed().toList(),
            signedBy));
    facts.addAll(more);
    return SessionState.of(
        sessions.write(SessionId.of(ids.exactly(16)), List.of(), facts).orElseThrow());
  }
}
