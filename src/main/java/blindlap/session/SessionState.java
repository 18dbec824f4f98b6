package blindlap.session;

import blindlap.plan.Plan;
import blindlap.plan.Timetable;
import blindlap.seal.Fingerprint;
import blindlap.seal.HelperRecord;
import blindlap.seal.OpenKey;
import blindlap.seal.SealedKey;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** A session as its entries tell it. Made only by {@link #of}; it changes in no other way. */
public final class SessionState {
  final SessionId id;
  final List<StoredEntry> entries;
  final SortedMap<LapId, LapState> laps = new TreeMap<>();
  final SortedMap<Integer, Guess> guesses = new TreeMap<>();
  final SortedMap<Integer, HelperRecord> handled = new TreeMap<>();
  final List<Fact.BlindBroken> blindBroken = new ArrayList<>();
  final List<Fact.DeviationNoted> deviations = new ArrayList<>();
  final List<Fact.FingerprintGiven> given = new ArrayList<>();
  final List<Fact.ExpectationGiven> expectations = new ArrayList<>();
  final List<Fact.AmendmentMade> amendments = new ArrayList<>();
  final List<StoredEntry> notApplied = new ArrayList<>();
  final List<Fact.ScoreCorrected> corrections = new ArrayList<>();
  Step step = Step.COMMITTED;
  final java.util.SortedSet<Integer> handedOver = new java.util.TreeSet<>();
  int warmUps;
  Fact.@Nullable PlanCommitted committed;
  Fact.@Nullable DayCutShort cutShort;
  Fact.@Nullable ReviewClosed reviewClosed;
  Fact.@Nullable SealOpened opened;
  Fact.@Nullable PlainDayImported plainDay;
  @Nullable String abandonedBecause;

  private final List<Head> heads;

  private SessionState(SessionId id, List<StoredEntry> entries, List<Head> heads) {
    this.id = id;
    this.entries = List.copyOf(entries);
    this.heads = heads;
  }

  /**
   * Folds entries.
   *
   * @param entries all entries of one session in causal order, the commit first
   * @throws IllegalArgumentException if there are none, or the first is not a commit
   */
  public static SessionState of(List<StoredEntry> entries) {
    if (entries.isEmpty()) {
      throw new IllegalArgumentException("a session without entries has no state");
    }
    SessionState state =
        new SessionState(entries.get(0).entry().session(), entries, headsAfter(List.of(), entries));
    state.fold(entries);
    if (state.committed == null) {
      throw new IllegalArgumentException("session " + state.id + " has no committed plan");
    }
    return state;
  }

  /**
   * The state when these entries have followed, all of which have seen every entry before them.
   * What came before is not folded again: this is on the way from a rider's score to "saved".
   */
  public SessionState after(List<StoredEntry> more) {
    List<StoredEntry> all = new ArrayList<>(entries.size() + more.size());
    all.addAll(entries);
    all.addAll(more);
    SessionState next = new SessionState(id, all, headsAfter(heads, more));
    laps.forEach((lap, state) -> next.laps.put(lap, new LapState(state)));
    next.guesses.putAll(guesses);
    next.handled.putAll(handled);
    next.blindBroken.addAll(blindBroken);
    next.deviations.addAll(deviations);
    next.given.addAll(given);
    next.expectations.addAll(expectations);
    next.amendments.addAll(amendments);
    next.notApplied.addAll(notApplied);
    next.corrections.addAll(corrections);
    next.handedOver.addAll(handedOver);
    next.step = step;
    next.warmUps = warmUps;
    next.committed = committed;
    next.cutShort = cutShort;
    next.reviewClosed = reviewClosed;
    next.opened = opened;
    next.plainDay = plainDay;
    next.abandonedBecause = abandonedBecause;
    next.fold(more);
    return next;
  }

  private void fold(List<StoredEntry> more) {
    Folding folding = new Folding(this);
    for (StoredEntry stored : more) {
      folding.apply(stored);
    }
  }

  /** Which session. */
  public SessionId id() {
    return id;
  }

  /** All its entries in causal order. */
  public List<StoredEntry> entries() {
    return entries;
  }

  /** Where it stands. */
  public Step step() {
    return step;
  }

  private Fact.PlanCommitted committed() {
    return java.util.Objects.requireNonNull(committed);
  }

  /** The committed plan. */
  public Plan plan() {
    return committed().plan();
  }

  /** The plan's canonical text as hashed. */
  public String planText() {
    return committed().planText();
  }

  /** True if an order was drawn and sealed; false for an open noise run. */
  public boolean hasKey() {
    return committed().key() != null;
  }

  /**
   * The sealed key.
   *
   * @throws IllegalStateException if there is none, see {@link #hasKey}
   */
  public SealedKey sealedKey() {
    SealedKey key = committed().key();
    if (key == null) {
      throw new IllegalStateException("an open noise run has no key");
    }
    return key;
  }

  /** The laps of an old day that was brought in for its noise, if it is one. */
  public Optional<Fact.PlainDayImported> plainDay() {
    return Optional.ofNullable(plainDay);
  }

  /** Fingerprint of plan, order and everything sealed. */
  public Fingerprint planFingerprint() {
    return committed().fingerprint();
  }

  /** Who signed the plan. */
  public List<String> signedBy() {
    return committed().signedBy();
  }

  /**
   * The code of a stint.
   *
   * @param stint from 1
   */
  public int code(int stint) {
    return committed().codes().get(stint - 1);
  }

  /** The codes of all stints in ridden order. */
  public List<Integer> codes() {
    return committed().codes();
  }

  /** When the plan was committed. */
  public Instant committedAt() {
    return entries.get(0).entry().at();
  }

  /** When the latest entry was written. */
  public Instant latestAt() {
    return entries.get(entries.size() - 1).entry().at();
  }

  /** Laps with anything recorded, in order. */
  public Collection<LapState> laps() {
    return Collections.unmodifiableCollection(laps.values());
  }

  /** What is known of a lap, if anything is. */
  public Optional<LapState> lap(LapId id) {
    return Optional.ofNullable(laps.get(id));
  }

  /** Guesses by stint. */
  public SortedMap<Integer, Guess> guesses() {
    return Collections.unmodifiableSortedMap(guesses);
  }

  /** The helper's encrypted records by stint. */
  public SortedMap<Integer, HelperRecord> helperRecords() {
    return Collections.unmodifiableSortedMap(handled);
  }

  /** Last stint whose bike was handed over; 0 for none. */
  public int handedOver() {
    return handedOver.isEmpty() ? 0 : handedOver.last();
  }

  /** True if the bike was handed over for a stint; 0 = the warm-up. */
  public boolean handedOver(int stint) {
    return handedOver.contains(stint);
  }

  /** Number of warm-up laps ridden. */
  public int warmUps() {
    return warmUps;
  }

  /** Moments at which the rider learned what was fitted. */
  public List<Fact.BlindBroken> blindBroken() {
    return Collections.unmodifiableList(blindBroken);
  }

  /** Departures from the plan. */
  public List<Fact.DeviationNoted> deviations() {
    return Collections.unmodifiableList(deviations);
  }

  /** Who received which fingerprint. */
  public List<Fact.FingerprintGiven> fingerprintsGiven() {
    return Collections.unmodifiableList(given);
  }

  /** Expectations written after the commit. */
  public List<Fact.ExpectationGiven> expectations() {
    return Collections.unmodifiableList(expectations);
  }

  /** Amendments after unsealing. */
  public List<Fact.AmendmentMade> amendments() {
    return Collections.unmodifiableList(amendments);
  }

  /** Corrections of values, in order. */
  public List<Fact.ScoreCorrected> corrections() {
    return Collections.unmodifiableList(corrections);
  }

  /** Entries that are kept but came too late to change anything. */
  public List<StoredEntry> notApplied() {
    return Collections.unmodifiableList(notApplied);
  }

  /** Most laps agreed to, warm-up included; empty if no cap was set. */
  public Optional<Integer> lapCap() {
    return Optional.ofNullable(plan().timetable()).map(Timetable::lapBudget);
  }

  /**
   * True if every lap agreed to is ridden and nobody has said why another is. Each reason is good
   * for one lap.
   */
  public boolean capReached() {
    long reasons = deviations.stream().filter(d -> d.kind() == Fact.DeviationKind.LAP_CAP).count();
    return lapCap().filter(most -> lapsSoFar() >= most + reasons).isPresent();
  }

  /** Number of laps ridden so far, warm-up included. */
  public int lapsSoFar() {
    return warmUps + lapsRidden();
  }

  /** How the day was cut short, if it was. */
  public Optional<Fact.DayCutShort> cutShort() {
    return Optional.ofNullable(cutShort);
  }

  /** Fingerprint of the closed review, if it is closed. */
  public Optional<Fingerprint> reviewFingerprint() {
    return Optional.ofNullable(reviewClosed).map(Fact.ReviewClosed::fingerprint);
  }

  /** True once the key has been opened. */
  public boolean unsealed() {
    return openKey().isPresent();
  }

  /** The opened key, once unsealed. */
  public Optional<OpenKey> openKey() {
    return Optional.ofNullable(opened).map(Fact.SealOpened::key);
  }

  /** What opened the seal. */
  public Optional<Fact.OpenedWith> openedWith() {
    return Optional.ofNullable(opened).map(Fact.SealOpened::with);
  }

  /** The helper's records in the clear by stint; empty while sealed. */
  public Map<Integer, String> openedHelperRecords() {
    return opened == null ? Map.of() : opened.helperRecords();
  }

  /** Why it was abandoned, if it was. */
  public Optional<String> abandonedBecause() {
    return Optional.ofNullable(abandonedBecause);
  }

  /** The last entry of each chain. */
  public List<Head> heads() {
    return heads;
  }

  /**
   * The heads that whoever closed the review had seen; all heads while it is open. Taken from the
   * closing entry itself, so that entries merged in later do not change it.
   */
  List<Head> headsBeforeReviewClosed() {
    for (StoredEntry stored : entries) {
      Entry entry = stored.entry();
      if (reviewClosed != null && entry.fact() == reviewClosed) {
        List<Head> heads = new ArrayList<>(entry.seen());
        if (entry.number() > 1) {
          heads.add(new Head(entry.notebook(), entry.number() - 1, entry.previous()));
        }
        return heads;
      }
    }
    return heads();
  }

  private static List<Head> headsAfter(List<Head> before, List<StoredEntry> more) {
    Map<NotebookId, Head> heads = new TreeMap<>();
    before.forEach(head -> heads.put(head.notebook(), head));
    for (StoredEntry entry : more) {
      heads.merge(
          entry.entry().notebook(), entry.head(), (a, b) -> a.number() > b.number() ? a : b);
    }
    return List.copyOf(heads.values());
  }

  /** The next lap to record, if any is left. */
  public Optional<LapId> nextLap() {
    int last = cutShort == null ? plan().stints() : cutShort.lastStint();
    for (int lap = 1; lap <= last * plan().laps().perStint(); lap++) {
      LapId at = LapId.ofDay(lap, plan().laps().perStint());
      LapState state = laps.get(at);
      if (state == null || !state.ridden) {
        return Optional.of(at);
      }
    }
    return Optional.empty();
  }

  /** Number of laps recorded as ridden. */
  public int lapsRidden() {
    return (int) laps.values().stream().filter(LapState::ridden).count();
  }

  LapState lapForWriting(LapId id) {
    return laps.computeIfAbsent(id, LapState::new);
  }
}
