package blindlap.session;

import blindlap.plan.Plan;
import blindlap.seal.Fingerprint;
import blindlap.seal.HelperRecord;
import blindlap.seal.OpenKey;
import blindlap.seal.SealedKey;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.session.day.VoidEvent;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Something that happened, in the past tense: every {@link FactVisitor} handles every kind of it.
 */
public sealed interface Fact {
  /** Calls the visitor's method for this kind of fact. */
  <R> R accept(FactVisitor<R> visitor);

  /**
   * The plan was fixed, the order drawn and sealed. An open noise run has neither order nor key.
   *
   * @param planText its canonical bytes as text, exactly as hashed
   * @param key the sealed key; null for an open noise run and for a covered order
   * @param covered true where the order is covered (docs/sealing.md#covered); since version 5
   * @param fingerprint of the plan and everything sealed; of the plan alone for an open noise run
   * @param codes the random codes on everything the rider sees, one per stint; the stints' numbers
   *     for an open noise run
   * @param signedBy names of those who read and signed the plan
   */
  record PlanCommitted(
      Plan plan,
      String planText,
      @Nullable SealedKey key,
      boolean covered,
      Fingerprint fingerprint,
      List<Integer> codes,
      List<String> signedBy)
      implements Fact {
    /** A plan whose order is sealed, or an open noise run. */
    public PlanCommitted(
        Plan plan,
        String planText,
        @Nullable SealedKey key,
        Fingerprint fingerprint,
        List<Integer> codes,
        List<String> signedBy) {
      this(plan, planText, key, false, fingerprint, codes, signedBy);
    }

    public PlanCommitted {
      codes = List.copyOf(codes);
      signedBy = List.copyOf(signedBy);
    }

    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.planCommitted(this);
    }
  }

  enum Which {
    PLAN,
    REVIEW
  }

  /** A fingerprint was given to someone; its value is null in entries of versions before 4. */
  record FingerprintGiven(Which which, String to, @Nullable Fingerprint value) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.fingerprintGiven(this);
    }
  }

  enum Person {
    TESTER,
    RIDER,
    HELPER,
    STARTER,
    OTHER
  }

  /** Someone wrote down an expectation after the commit, before unsealing. */
  record ExpectationGiven(Person who, String text) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.expectationGiven(this);
    }
  }

  /** A sheet with the key was written again; needs the helper phrase. */
  record SheetReprinted(String sheet) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.sheetReprinted(this);
    }
  }

  /** The helper handled a stint: one encrypted and padded record per stint, all of one size. */
  record StintHandled(HelperRecord record) implements Fact {
    /** Which stint, from 1. */
    public int stint() {
      return record.stint();
    }

    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.stintHandled(this);
    }
  }

  /** The bike was handed over for a stint, with the safety list confirmed. */
  record BikeHandedOver(int stint) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.bikeHandedOver(this);
    }
  }

  /** The bike is back with the helper after a stint; 0 = the warm-up. Since version 4. */
  record BikeReturned(int stint) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.bikeReturned(this);
    }
  }

  /** A warm-up lap was ridden; never analysed. */
  record WarmUpRidden(int number) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.warmUpRidden(this);
    }
  }

  /** A lap was ridden. */
  record LapRidden(LapId lap, Source source) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.lapRidden(this);
    }
  }

  /** A value was given for a lap, times in seconds included. */
  record ScoreGiven(LapId lap, String measure, BigDecimal value, Source source) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.scoreGiven(this);
    }
  }

  /** A watch runs since the wall clock's {@code started}; started again, it drops its time. */
  record WatchStarted(LapId lap, String measure, Instant started) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.watchStarted(this);
    }
  }

  /** A watch was set to nought: a false start, or a time taken back. */
  record WatchReset(LapId lap, String measure) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.watchReset(this);
    }
  }

  /** A time was taken by a watch, or typed. */
  record TimeTaken(LapId lap, String measure, TimeRecord time) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.timeTaken(this);
    }
  }

  /** A value was corrected; null takes it out. */
  record ScoreCorrected(LapId lap, String measure, @Nullable BigDecimal value, String reason)
      implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.scoreCorrected(this);
    }
  }

  /** A note on a lap; the latest stands. */
  record NoteWritten(LapId lap, String text) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.noteWritten(this);
    }
  }

  /** The rider guessed after a stint; the latest stands. */
  record GuessGiven(int stint, Guess guess) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.guessGiven(this);
    }
  }

  /** The first guess on a stint was taken back: it is open again. Since version 4. */
  record GuessTakenBack(int stint) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.guessTakenBack(this);
    }
  }

  /** Conditions of a lap: names such as wind, surface, light, traffic with words. */
  record ConditionsNoted(LapId lap, Map<String, String> conditions) implements Fact {
    public ConditionsNoted {
      conditions = Map.copyOf(conditions);
    }

    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.conditionsNoted(this);
    }
  }

  /**
   * A lap was declared void because of an event.
   *
   * @param afterValuesSeen true if made once the values of the day could be seen
   */
  record LapVoided(LapId lap, VoidEvent event, String words, boolean afterValuesSeen)
      implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.lapVoided(this);
    }
  }

  /** A void was taken back. */
  record VoidWithdrawn(LapId lap, String reason) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.voidWithdrawn(this);
    }
  }

  /** The rider saw or was told what is fitted, from this stint on or in it alone. */
  record BlindBroken(int stint, String what) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.blindBroken(this);
    }
  }

  /** Something went otherwise than planned. */
  record DeviationNoted(int stint, DeviationKind kind, String what) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.deviationNoted(this);
    }
  }

  /**
   * The day ended early.
   *
   * @param lastStint last stint that was ridden, 0 if none
   * @param knowsKey whether who decided knows the key
   */
  record DayCutShort(int lastStint, String reason, String decidedBy, boolean knowsKey)
      implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.dayCutShort(this);
    }
  }

  /** The bike is covered or neutral, paper is keyed in, nothing has been looked at. */
  record DayClosed() implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.dayClosed(this);
    }
  }

  /** Voids and corrections are over, still blind. */
  record ReviewClosed(Fingerprint fingerprint) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.reviewClosed(this);
    }
  }

  /** Facts of a series. */
  sealed interface OfSeries extends Fact permits SeriesEnded, SeriesStood {}

  /** Facts of values: two that stand for one, and what a look used. */
  sealed interface OfValues extends Fact permits ValueChosen, LookTaken {}

  /** Facts of a day without a helper, or of one stint without. */
  sealed interface OfOnePerson extends Fact
      permits SetupShown, StintMounted, MasksSealed, MasksGuessed, MasksRead, OneStintFact {
    <R> R accept(OnePersonVisitor<R> visitor);

    @Override
    default <R> R accept(FactVisitor<R> visitor) {
      return visitor.ofOnePerson(this);
    }
  }

  sealed interface OfRecordings extends Fact permits RecordingFact {}

  sealed interface OfPhones extends Fact permits PlateRead {}

  sealed interface OfFindings extends Fact permits FindingSeenAgain {}

  sealed interface OfCovariates extends Fact permits CovariateSaid {}

  /**
   * The seal was opened and both fingerprints matched.
   *
   * @param helperRecords the helper's records in the clear, by stint
   */
  record SealOpened(OpenKey key, OpenedWith with, Map<Integer, String> helperRecords)
      implements Fact {
    public SealOpened {
      helperRecords = Map.copyOf(helperRecords);
    }

    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.sealOpened(this);
    }
  }

  /**
   * What the finding was when the seal was opened, so that a later method cannot change it unseen.
   *
   * @param edition of the method that computed it, from 1
   * @param verdict its fixed string; null without a verdict
   * @param figures of the primary measure by name; those that do not exist are missing
   */
  record FindingRecorded(int edition, @Nullable String verdict, Map<String, BigDecimal> figures)
      implements Fact {
    public FindingRecorded {
      figures = FindingSeenAgain.byName(figures);
    }

    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.findingRecorded(this);
    }
  }

  /** A report was written. */
  record ReportWritten(String name) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.reportWritten(this);
    }
  }

  /** The session ends; whoever is unaware declares to know neither key nor setups; may be empty. */
  record SessionAbandoned(String reason, String unawareBy) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.sessionAbandoned(this);
    }
  }

  /** Something was added after unsealing; the original analysis stands beside it. */
  record AmendmentMade(String text, String reason) implements Fact {
    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.amendmentMade(this);
    }
  }

  /**
   * An old day from a file: not blinded, for noise only, in an open noise run of its own.
   *
   * @param columns which column of the file gave what, by name of measure, "setup" or "void"
   * @param laps in ridden order
   */
  record PlainDayImported(String file, Map<String, String> columns, List<PlainLap> laps)
      implements Fact {
    public PlainDayImported {
      columns = Map.copyOf(columns);
      laps = List.copyOf(laps);
    }

    @Override
    public <R> R accept(FactVisitor<R> visitor) {
      return visitor.plainDayImported(this);
    }
  }
}
