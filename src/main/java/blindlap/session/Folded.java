package blindlap.session;

import blindlap.plan.Plan;
import blindlap.seal.HelperRecord;
import blindlap.seal.SealedKey;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.Day;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** What the entries so far add up to. Changed by {@link Folding} alone, then only read. */
final class Folded {
  final SortedMap<LapId, LapState> laps = new TreeMap<>();
  final SortedMap<Integer, Guess> guesses = new TreeMap<>();
  final SortedSet<Integer> answered = new TreeSet<>();
  final SortedMap<CovariateAt, BigDecimal> covariates = new TreeMap<>();
  final SortedMap<Integer, HelperRecord> handled = new TreeMap<>();
  final SortedSet<Integer> handedOver = new TreeSet<>();
  final List<Fact.BlindBroken> blindBroken = new ArrayList<>();
  final List<Fact.DeviationNoted> deviations = new ArrayList<>();
  final List<Fact.FingerprintGiven> given = new ArrayList<>();
  final List<Fact.ExpectationGiven> expectations = new ArrayList<>();
  final List<Fact.AmendmentMade> amendments = new ArrayList<>();
  final List<StoredEntry> notApplied = new ArrayList<>();
  final PhonesSaid phones = new PhonesSaid();
  final SortedMap<Integer, LookTaken> looks = new TreeMap<>();
  final SortedMap<Integer, Integer> shown = new TreeMap<>();
  final SortedMap<Integer, String> mounted = new TreeMap<>();
  final SortedMap<Integer, OneStint> oneStint = new TreeMap<>();
  final SortedMap<LapId, RecordedLap> recorded = new TreeMap<>();
  final List<RecordingBroughtIn> recordings = new ArrayList<>();
  final SortedMap<LapId, SortedMap<Integer, SectorVoided>> sectorVoids = new TreeMap<>();
  @Nullable SealedKey masks;
  @Nullable MasksGuessed masksGuessed;
  @Nullable MasksRead masksRead;
  final SortedMap<Integer, FindingSeenAgain> seenAgain = new TreeMap<>();
  final List<Fact.ScoreCorrected> corrections = new ArrayList<>();
  final List<CovariateSaid> covariatesCorrected = new ArrayList<>();
  LapValues values = new LapValues();
  @Nullable NotebookId home;
  Step step = Step.COMMITTED;
  int warmUps;
  @Nullable Integer bikeOut;
  Fact.@Nullable PlanCommitted committed;
  Fact.@Nullable DayCutShort cutShort;
  Fact.@Nullable ReviewClosed reviewClosed;
  Fact.@Nullable SealOpened opened;
  Fact.@Nullable FindingRecorded finding;
  Fact.@Nullable PlainDayImported plainDay;
  @Nullable String abandonedBecause;

  /** The same, to be folded on. */
  Folded copy() {
    Folded copy = new Folded();
    copy.laps.putAll(laps);
    copy.guesses.putAll(guesses);
    copy.answered.addAll(answered);
    copy.covariates.putAll(covariates);
    copy.handled.putAll(handled);
    copy.handedOver.addAll(handedOver);
    copy.blindBroken.addAll(blindBroken);
    copy.deviations.addAll(deviations);
    copy.given.addAll(given);
    copy.expectations.addAll(expectations);
    copy.amendments.addAll(amendments);
    copy.notApplied.addAll(notApplied);
    copy.phones.takeOver(phones);
    copy.corrections.addAll(corrections);
    copy.covariatesCorrected.addAll(covariatesCorrected);
    copy.values = values.copy();
    copy.home = home;
    copy.step = step;
    copy.warmUps = warmUps;
    copy.bikeOut = bikeOut;
    copy.committed = committed;
    copy.cutShort = cutShort;
    copy.reviewClosed = reviewClosed;
    copy.opened = opened;
    copy.finding = finding;
    copy.seenAgain.putAll(seenAgain);
    copy.looks.putAll(looks);
    copy.shown.putAll(shown);
    copy.mounted.putAll(mounted);
    copy.oneStint.putAll(oneStint);
    copy.recorded.putAll(recorded);
    copy.recordings.addAll(recordings);
    sectorVoids.forEach((lap, voids) -> copy.sectorVoids.put(lap, new TreeMap<>(voids)));
    copyMasks(copy);
    copy.plainDay = plainDay;
    copy.abandonedBecause = abandonedBecause;
    return copy;
  }

  private void copyMasks(Folded copy) {
    copy.masks = masks;
    copy.masksGuessed = masksGuessed;
    copy.masksRead = masksRead;
  }

  /** Puts a lap in place of what was known of it. */
  void lap(LapId id, UnaryOperator<LapState> change) {
    LapState known = laps.get(id);
    laps.put(id, change.apply(known == null ? LapState.untouched(id) : known));
  }

  /** A guess, or the answer of a trial. */
  void guess(int stint, Guess guess) {
    guesses.put(stint, guess);
    done(stint);
  }

  /** A lap is ridden. */
  void ridden(LapId id) {
    lap(id, LapState::asRidden);
    done(id.stint());
  }

  /** That a guess stood once all laps were ridden stays known if it is taken back. */
  private void done(int stint) {
    if (guesses.containsKey(stint) && allRidden(stint)) {
      answered.add(stint);
    }
  }

  /** True if every lap of a stint is ridden; 0 = the warm-up. */
  boolean allRidden(int stint) {
    if (committed == null) {
      return false;
    }
    Plan.Laps laps = committed.plan().laps();
    if (stint == 0) {
      return warmUps >= laps.warmUp();
    }
    return IntStream.rangeClosed(1, laps.perStint())
        .mapToObj(lap -> this.laps.get(new LapId(stint, lap)))
        .allMatch(lap -> lap != null && lap.ridden());
  }

  /** True if an order was drawn, sealed or covered. */
  boolean hasKey() {
    return committed != null && (committed.key() != null || committed.covered());
  }

  /**
   * The day as the rider may know it.
   *
   * @param plan what was committed
   */
  Day day(SessionId id, Fact.PlanCommitted plan) {
    long past = deviations.stream().filter(d -> d.kind() == DeviationKind.LAP_CAP).count();
    return new Day(
        id,
        plan.plan(),
        step,
        plan.codes(),
        laps,
        guesses,
        handedOver,
        !handled.isEmpty(),
        bikeOut,
        warmUps,
        (int) past,
        cutShort == null ? null : Integer.valueOf(cutShort.lastStint()),
        covariates);
  }
}
