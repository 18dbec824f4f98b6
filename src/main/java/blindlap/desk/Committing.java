package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.fault.TypedText;
import blindlap.fault.Unusable;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.PlanCheck;
import blindlap.plan.PlanJson;
import blindlap.seal.CoveredOrder;
import blindlap.seal.Fingerprint;
import blindlap.seal.HelperPhrase;
import blindlap.seal.PhraseAsked;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SecureBytes;
import blindlap.seal.SessionKind;
import blindlap.session.AloneCommands;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.SetupShown;
import blindlap.session.day.SessionId;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Fixes a plan, draws the order, seals the key: first a phrase, then, once that is out, all the
 * rest in one step. A commit that is interrupted between the two leaves nothing behind and begins
 * again with another phrase.
 */
public final class Committing {
  private final Sessions sessions;
  private final Sealing sealing;
  private final SecureBytes ids;
  private final SeriesPlans series;

  /**
   * @param ids source of session ids, apart from everything sealed
   * @param series refuses what its series would not pool
   */
  Committing(Sessions sessions, Sealing sealing, SecureBytes ids, SeriesPlans series) {
    this.sessions = sessions;
    this.sealing = sealing;
    this.ids = ids;
    this.series = series;
  }

  /** What a commit begins with. Nothing was drawn but a phrase, and nothing was written. */
  public sealed interface Begun {
    /** The phrase is to be out, and two of its words typed back, before anything is sealed. */
    record Phrase(PhraseAsked asked) implements Begun {}

    /** The rider swaps alone: the order is covered, not sealed, and there is no phrase. */
    record Alone() implements Begun {}

    /** An open noise run has no key, so there is no phrase. */
    record Keyless() implements Begun {}

    /** The plan cannot be committed. */
    record Refused(List<Problem> problems) implements Begun {}
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

    /**
     * Committed with a covered order and on disk.
     *
     * @param state the session
     */
    record Covered(SessionState state) implements Result {}

    /** Nothing was drawn or written. */
    record Refused(List<Problem> problems) implements Result {}
  }

  /** Judges a plan and draws the phrase of its session; nothing else is drawn. */
  public Begun begin(Plan plan) {
    return begin(plan, List.of());
  }

  /**
   * Judges a plan and the names of those who read it, and draws the phrase of its session; nothing
   * else is drawn.
   */
  public Begun begin(Plan plan, List<String> signedBy) {
    List<Problem> problems = new ArrayList<>(PlanCheck.problems(plan));
    problems.addAll(series.refusals(plan));
    problems.addAll(unfit(signedBy));
    if (!problems.isEmpty()) {
      return new Begun.Refused(problems);
    }
    if (plan.kind() == Plan.Kind.NOISE_RUN) {
      return new Begun.Keyless();
    }
    return plan.blinding().level().shown() ? new Begun.Alone() : beginSealed(plan);
  }

  /**
   * Draws the phrase of a session whose order will be sealed, whatever its level: so sessions that
   * anyone could look into were committed before version 5, and invented ones still are.
   */
  public Begun beginSealed(Plan plan) {
    try {
      return new Begun.Phrase(sealing.drawPhrase(plan.rule()));
    } catch (Unusable e) {
      return new Begun.Refused(List.of(e.problem()));
    }
  }

  /**
   * Draws the order, seals it under a phrase that is out, and writes both in one step.
   *
   * @param plan as it was begun with
   * @param kind ordinary comparison or concealed null run; sealed
   * @param signedBy names of those who read the plan
   * @param phrase as the beginning gave it out
   */
  public Result seal(Plan plan, SessionKind kind, List<String> signedBy, HelperPhrase phrase) {
    List<Problem> problems = new ArrayList<>(series.refusals(plan));
    problems.addAll(unfit(signedBy));
    if (kind.isNullRun()) {
      series.refuseNullRun(plan).ifPresent(problems::add);
    }
    if (!problems.isEmpty()) {
      return new Result.Refused(problems);
    }
    SessionId id = SessionId.of(ids.exactly(16));
    byte[] bytes = PlanJson.bytes(plan);
    Sealed sealed;
    try {
      sealed = sealing.seal(bytes, plan.rule(), id.text(), kind, phrase);
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

  /**
   * Draws the order and covers it, for a rider who swaps alone, and writes both in one step. Where
   * the rider may know the whole order, all of it is shown from then on.
   *
   * @param plan as it was begun with
   * @param signedBy names of those who read the plan
   */
  public Result cover(Plan plan, List<String> signedBy) {
    List<Problem> problems = new ArrayList<>(PlanCheck.problems(plan));
    problems.addAll(series.refusals(plan));
    problems.addAll(unfit(signedBy));
    if (!problems.isEmpty()) {
      return new Result.Refused(problems);
    }
    SessionId id = SessionId.of(ids.exactly(16));
    byte[] bytes = PlanJson.bytes(plan);
    CoveredOrder order;
    try {
      order = sealing.cover(bytes, plan.rule(), id.text());
    } catch (Unusable e) {
      return new Result.Refused(List.of(e.problem()));
    }
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact.PlanCommitted(
            plan,
            new String(bytes, StandardCharsets.UTF_8),
            null,
            true,
            order.fingerprint(),
            order.codes(),
            signedBy));
    if (plan.blinding().level() == BlindLevel.OPEN) {
      IntStream.rangeClosed(AloneCommands.firstStint(plan), plan.stints())
          .forEach(stint -> facts.add(new SetupShown(stint, order.setup(stint))));
    }
    return new Result.Covered(SessionState.of(sessions.commit(id, facts, order)));
  }

  private static List<Problem> unfit(List<String> names) {
    return names.stream()
        .flatMap(name -> TypedText.problem(name, TypedText.Form.LINE, "signed by").stream())
        .toList();
  }

  /** Commits a noise run openly: without rule, order and key. */
  public Result.Open fix(Plan plan, List<String> signedBy) {
    return new Result.Open(open(plan, signedBy, List.of()));
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
