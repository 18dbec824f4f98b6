package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.review.FileFingerprints;
import blindlap.review.FileFingerprints.Held;
import blindlap.seal.Fingerprint;
import blindlap.seal.SealParameters;
import blindlap.seal.SealedKey;
import blindlap.session.CausalOrder;
import blindlap.session.Chains;
import blindlap.session.Entry;
import blindlap.session.EntryMeaning;
import blindlap.session.Fact;
import blindlap.session.MeaningFault;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Whether a session that comes from elsewhere can be what it says: hashes only show that nobody
 * changed it without making them anew. Codes and key against the plan, laps and values against the
 * plan, the opened key and the closed review against their fingerprints.
 */
public final class SessionMeaning {
  /** No plan that can be committed has more of either. */
  private static final int MOST = 1_000;

  private static final int FIRST_CODE = 100;
  private static final int LAST_CODE = 999;

  private final SealParameters weakest;
  private final List<Problem> problems = new ArrayList<>();

  private SessionMeaning(SealParameters weakest) {
    this.weakest = weakest;
  }

  /**
   * What cannot be in the entries of a session.
   *
   * @param entries all of it, as it would be here; their chains are whole
   * @param fresh those to be looked at, of these
   * @param weakest the least work a guess at the phrase may cost
   * @return nothing if all can be; the places are those of {@link Chains#place}
   */
  public static List<Problem> problems(
      List<StoredEntry> entries, List<StoredEntry> fresh, SealParameters weakest) {
    SessionMeaning meaning = new SessionMeaning(weakest);
    List<StoredEntry> sorted = CausalOrder.sort(entries);
    fresh.stream()
        .map(StoredEntry::entry)
        .filter(entry -> entry.fact() instanceof Fact.PlanCommitted)
        .forEach(entry -> meaning.commit(entry, (Fact.PlanCommitted) entry.fact()));
    if (meaning.problems.isEmpty()) {
      meaning.problems.addAll(EntryMeaning.problems(sorted, fresh));
    }
    if (meaning.problems.isEmpty()) {
      meaning.fingerprints(SessionState.of(sorted), new HashSet<>(fresh));
    }
    return List.copyOf(meaning.problems);
  }

  private void wrong(Entry entry, MeaningFault fault, Object... details) {
    problems.add(Problem.of(fault, Chains.place(entry), details));
  }

  private void commit(Entry entry, Fact.PlanCommitted commit) {
    Plan plan = commit.plan();
    long perStint = (long) plan.laps().settling() + plan.laps().scored();
    if (plan.stints() < 1 || plan.stints() > MOST || perStint < 1 || perStint > MOST) {
      wrong(entry, MeaningFault.PLAN_TOO_LARGE, plan.stints(), perStint);
      return;
    }
    if (!trials(plan)) {
      wrong(entry, MeaningFault.NOT_TRIALS, plan.stints());
      return;
    }
    codes(entry, commit);
    SealedKey key = commit.key();
    if (key == null) {
      if (plan.kind().drawn() && !commit.covered()) {
        wrong(entry, MeaningFault.KEY_MISSING);
      }
      return;
    }
    if (plan.kind() == Plan.Kind.NOISE_RUN) {
      wrong(entry, MeaningFault.KEY_NOT_WANTED);
    }
    byte[] bytes = commit.planText().getBytes(StandardCharsets.UTF_8);
    if (!key.sessionId().equals(entry.session().text())
        || !key.planHash().equals(Fingerprint.sha256(bytes))) {
      wrong(entry, MeaningFault.KEY_OF_ANOTHER);
    }
    int least = Math.min(SealParameters.LEAST_ROUNDS, weakest.rounds());
    if (key.rounds() < least || key.rounds() > SealParameters.MOST_ROUNDS) {
      wrong(entry, MeaningFault.ROUNDS, key.rounds(), least, SealParameters.MOST_ROUNDS);
    }
  }

  /** True unless a telling run's stints are not one for every lap of its trials. */
  private static boolean trials(Plan plan) {
    TellingRun run = plan.telling();
    return plan.kind() == Plan.Kind.TELLING_RUN
        ? run != null
            && run.trials() >= 1
            && run.trials() <= TellingRun.MOST_TRIALS
            && plan.stints() == run.stints()
            && plan.laps().perStint() == 1
        : run == null;
  }

  private void codes(Entry entry, Fact.PlanCommitted commit) {
    int stints = commit.plan().stints();
    List<Integer> codes = commit.codes();
    if (codes.size() != stints) {
      wrong(entry, MeaningFault.CODES_COUNT, codes.size(), stints);
      return;
    }
    Set<Integer> seen = new HashSet<>();
    for (int i = 0; i < codes.size(); i++) {
      int code = codes.get(i);
      boolean drawn =
          commit.key() == null && !commit.covered()
              ? code == i + 1
              : code >= FIRST_CODE && code <= LAST_CODE;
      if (!drawn) {
        wrong(entry, MeaningFault.NOT_A_CODE, code);
      } else if (!seen.add(code)) {
        wrong(entry, MeaningFault.CODE_TWICE, code);
      }
    }
  }

  private void fingerprints(SessionState state, Set<StoredEntry> fresh) {
    FileFingerprints found = FileFingerprints.of(state);
    for (StoredEntry stored : fresh) {
      Fact fact = stored.entry().fact();
      boolean opened =
          fact instanceof Fact.SealOpened now
              && state.openKey().filter(key -> key == now.key()).isPresent();
      if (found.ofPlan() == Held.DIFFERS && (opened || fact instanceof Fact.PlanCommitted)) {
        wrong(stored.entry(), MeaningFault.OPENED_KEY);
        return;
      }
      if (found.ofReview() == Held.DIFFERS && fact instanceof Fact.ReviewClosed) {
        wrong(stored.entry(), MeaningFault.CLOSED_REVIEW);
        return;
      }
    }
    keyFits(state, fresh);
  }

  /** A key can give its fingerprint and still not be one for this plan's stints and codes. */
  private void keyFits(SessionState state, Set<StoredEntry> fresh) {
    boolean fits =
        state
            .openKey()
            .filter(
                key -> !key.codes().equals(state.codes()) || key.stints() != state.codes().size())
            .isEmpty();
    if (!fits) {
      fresh.stream()
          .map(StoredEntry::entry)
          .filter(entry -> entry.fact() instanceof Fact.SealOpened)
          .findFirst()
          .ifPresent(entry -> wrong(entry, MeaningFault.OPENED_KEY));
    }
  }
}
