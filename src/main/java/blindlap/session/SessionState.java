package blindlap.session;

import blindlap.fault.Unreadable;
import blindlap.plan.Plan;
import blindlap.seal.Fingerprint;
import blindlap.seal.HelperRecord;
import blindlap.seal.OpenKey;
import blindlap.seal.SealedKey;
import blindlap.session.day.Day;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;

/** A session as its entries tell it. Made only by {@link #of}; it changes in no other way. */
public final class SessionState {
  private final List<StoredEntry> entries;
  private final List<Head> heads;
  private final Folded folded;
  private final Fact.PlanCommitted committed;
  private final Day day;

  private SessionState(List<StoredEntry> entries, List<Head> heads, Folded folded) {
    SessionId id = entries.get(0).entry().session();
    Fact.PlanCommitted plan = folded.committed;
    if (plan == null) {
      throw new Unreadable(EntryFault.NO_COMMIT);
    }
    this.entries = List.copyOf(entries);
    this.heads = heads;
    this.folded = folded;
    this.committed = plan;
    this.day = folded.day(id, plan);
  }

  /**
   * Folds entries.
   *
   * @param entries all entries of one session in causal order, the commit first
   * @throws Unreadable if there are none, or the first is not a commit
   */
  public static SessionState of(List<StoredEntry> entries) {
    if (entries.isEmpty()) {
      throw new Unreadable(EntryFault.NO_COMMIT);
    }
    return new SessionState(
        entries, LastEntries.after(List.of(), entries), folded(new Folded(), entries));
  }

  /**
   * The state when these entries have followed, all of which have seen every entry before them.
   * What came before is not folded again: this is on the way from a rider's score to "saved".
   */
  public SessionState after(List<StoredEntry> more) {
    List<StoredEntry> all = new ArrayList<>(entries.size() + more.size());
    all.addAll(entries);
    all.addAll(more);
    return new SessionState(all, LastEntries.after(heads, more), folded(folded.copy(), more));
  }

  private static Folded folded(Folded folded, List<StoredEntry> more) {
    Folding folding = new Folding(folded);
    more.forEach(folding::apply);
    return folded;
  }

  /** The day as rider and starter may know it; everything below that is theirs comes from it. */
  public Day day() {
    return day;
  }

  /** Which session. */
  public SessionId id() {
    return day.id();
  }

  /** All its entries in causal order. */
  public List<StoredEntry> entries() {
    return entries;
  }

  /** Where it stands. */
  public Step step() {
    return day.step();
  }

  /** The committed plan. */
  public Plan plan() {
    return day.plan();
  }

  /** The plan's canonical text as hashed. */
  public String planText() {
    return committed.planText();
  }

  /** True if an order was drawn, sealed or covered; false for an open noise run. */
  public boolean hasKey() {
    return committed.key() != null || committed.covered();
  }

  /** True if the order is covered, not sealed: it opens stint by stint without a phrase. */
  public boolean covered() {
    return committed.covered();
  }

  /** What a rider who swaps alone was shown, by stint, 0 = the warm-up; setups from 0. */
  public SortedMap<Integer, Integer> shown() {
    return Collections.unmodifiableSortedMap(folded.shown);
  }

  /** What such a rider mounted, by stint, in the form of a helper's record. */
  public SortedMap<Integer, String> mounted() {
    return Collections.unmodifiableSortedMap(folded.mounted);
  }

  /** To whom what to set for one stint was shown, by stint. */
  public SortedMap<Integer, OneStint> oneStint() {
    return Collections.unmodifiableSortedMap(folded.oneStint);
  }

  /** The sealed mapping of masked labels, if a friend sealed one. */
  public Optional<SealedKey> masks() {
    return Optional.ofNullable(folded.masks);
  }

  /** The rider's guess of the mapping, if it was asked. */
  public Optional<MasksGuessed> masksGuessed() {
    return Optional.ofNullable(folded.masksGuessed);
  }

  /** Which label is on which setup, once it was read. */
  public Optional<MasksRead> masksRead() {
    return Optional.ofNullable(folded.masksRead);
  }

  /** What recordings say of the day. */
  public Recorded recorded() {
    return new Recorded(folded.recordings, folded.recorded, folded.sectorVoids);
  }

  /** What phones said so far. */
  public PhonesHeard phones() {
    return PhonesHeard.of(folded.phones, entries);
  }

  /** The sealed key; an IllegalStateException if there is none, see {@link #hasKey}. */
  public SealedKey sealedKey() {
    SealedKey key = committed.key();
    if (key == null) {
      throw new IllegalStateException("an open noise run and a covered order have no sealed key");
    }
    return key;
  }

  /** The laps of an old day that was brought in for its noise, if it is one. */
  public Optional<Fact.PlainDayImported> plainDay() {
    return Optional.ofNullable(folded.plainDay);
  }

  /** Fingerprint of plan, order and everything sealed. */
  public Fingerprint planFingerprint() {
    return committed.fingerprint();
  }

  /** Who signed the plan. */
  public List<String> signedBy() {
    return committed.signedBy();
  }

  /**
   * The code of a stint.
   *
   * @param stint from 1
   */
  public int code(int stint) {
    return day.code(stint);
  }

  /** The codes of all stints in ridden order. */
  public List<Integer> codes() {
    return day.codes();
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
    return day.laps().values();
  }

  /** What is known of a lap, if anything is. */
  public Optional<LapState> lap(LapId id) {
    return day.lap(id);
  }

  /** Guesses by stint. */
  public SortedMap<Integer, Guess> guesses() {
    return day.guesses();
  }

  /** True if a guess stood once the stint was ridden, even if it was taken back since. */
  boolean everAnswered(int stint) {
    return folded.answered.contains(stint);
  }

  /** The helper's encrypted records by stint. */
  public SortedMap<Integer, HelperRecord> helperRecords() {
    return Collections.unmodifiableSortedMap(folded.handled);
  }

  /** Last stint whose bike was handed over; 0 for none. */
  public int handedOver() {
    return day.handedOver();
  }

  /** True if the bike was handed over for a stint; 0 = the warm-up. */
  public boolean handedOver(int stint) {
    return day.handedOver(stint);
  }

  /** Number of warm-up laps ridden. */
  public int warmUps() {
    return day.warmUps();
  }

  /** Moments at which the rider learned what was fitted. */
  public List<Fact.BlindBroken> blindBroken() {
    return Collections.unmodifiableList(folded.blindBroken);
  }

  /** Departures from the plan. */
  public List<Fact.DeviationNoted> deviations() {
    return Collections.unmodifiableList(folded.deviations);
  }

  /** Who received which fingerprint. */
  public List<Fact.FingerprintGiven> fingerprintsGiven() {
    return Collections.unmodifiableList(folded.given);
  }

  /** Expectations written after the commit. */
  public List<Fact.ExpectationGiven> expectations() {
    return Collections.unmodifiableList(folded.expectations);
  }

  /** Amendments after unsealing. */
  public List<Fact.AmendmentMade> amendments() {
    return Collections.unmodifiableList(folded.amendments);
  }

  /** Corrections of values, in order. */
  public List<Fact.ScoreCorrected> corrections() {
    return Collections.unmodifiableList(folded.corrections);
  }

  /** Covariates that were corrected, with the reasons. */
  public List<CovariateSaid> covariatesCorrected() {
    return Collections.unmodifiableList(folded.covariatesCorrected);
  }

  /** Entries that are kept but came too late to change anything. */
  public List<StoredEntry> notApplied() {
    return Collections.unmodifiableList(folded.notApplied);
  }

  /** Most laps agreed to, warm-up included; empty if no cap was set. */
  public Optional<Integer> lapCap() {
    return day.lapCap();
  }

  /**
   * True if every lap agreed to is ridden and nobody has said why another is. Each reason is good
   * for one lap.
   */
  public boolean capReached() {
    return day.capReached();
  }

  /** Number of laps ridden so far, warm-up included. */
  public int lapsSoFar() {
    return day.lapsSoFar();
  }

  /** How the day was cut short, if it was. */
  public Optional<Fact.DayCutShort> cutShort() {
    return Optional.ofNullable(folded.cutShort);
  }

  /** Fingerprint of the closed review, if it is closed. */
  public Optional<Fingerprint> reviewFingerprint() {
    return Optional.ofNullable(folded.reviewClosed).map(Fact.ReviewClosed::fingerprint);
  }

  /** The entry that closed the review, if it is closed. */
  public Optional<StoredEntry> closing() {
    return holding(folded.reviewClosed);
  }

  /** The entry that opened the seal, if it is open. */
  public Optional<StoredEntry> opening() {
    return holding(folded.opened);
  }

  private Optional<StoredEntry> holding(@org.jspecify.annotations.Nullable Fact fact) {
    return fact == null
        ? Optional.empty()
        : entries.stream().filter(stored -> stored.entry().fact() == fact).findFirst();
  }

  /** True once the key has been opened. */
  public boolean unsealed() {
    return openKey().isPresent();
  }

  /** The opened key, once unsealed. */
  public Optional<OpenKey> openKey() {
    return Optional.ofNullable(folded.opened).map(Fact.SealOpened::key);
  }

  /** What the finding was at unsealing; empty while sealed, and where no record was kept. */
  public Optional<Fact.FindingRecorded> recordedFinding() {
    return Optional.ofNullable(folded.finding);
  }

  /** First looks under other editions of the method, by edition, the first look first. */
  public Map<Integer, FindingSeenAgain> seenAgain() {
    return java.util.Collections.unmodifiableMap(folded.seenAgain);
  }

  /** What opened the seal. */
  public Optional<OpenedWith> openedWith() {
    return Optional.ofNullable(folded.opened).map(Fact.SealOpened::with);
  }

  /** The helper's records in the clear by stint; empty while sealed. */
  public Map<Integer, String> openedHelperRecords() {
    return folded.opened == null ? Map.of() : folded.opened.helperRecords();
  }

  /** Looks that were taken, by their last stint. */
  public SortedMap<Integer, LookTaken> looks() {
    return Collections.unmodifiableSortedMap(folded.looks);
  }

  /** Why it was abandoned, if it was. */
  public Optional<String> abandonedBecause() {
    return Optional.ofNullable(folded.abandonedBecause);
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
      if (folded.reviewClosed != null && entry.fact() == folded.reviewClosed) {
        List<Head> heads = new ArrayList<>(entry.seen());
        if (entry.number() > 1) {
          heads.add(new Head(entry.notebook(), entry.number() - 1, entry.previous()));
        }
        return heads;
      }
    }
    return heads();
  }

  /** The next lap to record, if any is left. */
  public Optional<LapId> nextLap() {
    return day.nextLap();
  }

  /** Number of laps recorded as ridden. */
  public int lapsRidden() {
    return day.lapsRidden();
  }
}
