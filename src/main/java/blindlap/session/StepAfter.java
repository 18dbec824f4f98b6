package blindlap.session;

import blindlap.session.day.Step;

/**
 * What a fact does to the step of a session. It hangs on nothing but the step and the kind of fact,
 * so that a list of sessions can keep up without reading whole days again.
 */
public final class StepAfter implements FactVisitor<Step> {
  private final Step step;

  private StepAfter(Step step) {
    this.step = step;
  }

  /** The step after a fact; the same where the fact changes nothing or came too late. */
  public static Step of(Step step, Fact fact) {
    return fact.accept(new StepAfter(step));
  }

  private Step riding() {
    return step == Step.COMMITTED ? Step.RIDING : step;
  }

  private Step move(boolean allowed, Step to) {
    return allowed ? to : step;
  }

  @Override
  public Step planCommitted(Fact.PlanCommitted fact) {
    return step;
  }

  @Override
  public Step fingerprintGiven(Fact.FingerprintGiven fact) {
    return step;
  }

  @Override
  public Step expectationGiven(Fact.ExpectationGiven fact) {
    return step;
  }

  @Override
  public Step sheetReprinted(Fact.SheetReprinted fact) {
    return step;
  }

  @Override
  public Step stintHandled(Fact.StintHandled fact) {
    return step;
  }

  @Override
  public Step bikeHandedOver(Fact.BikeHandedOver fact) {
    return riding();
  }

  @Override
  public Step bikeReturned(Fact.BikeReturned fact) {
    return step;
  }

  @Override
  public Step warmUpRidden(Fact.WarmUpRidden fact) {
    return riding();
  }

  @Override
  public Step lapRidden(Fact.LapRidden fact) {
    return riding();
  }

  @Override
  public Step scoreGiven(Fact.ScoreGiven fact) {
    return riding();
  }

  @Override
  public Step watchStarted(Fact.WatchStarted fact) {
    return riding();
  }

  @Override
  public Step watchReset(Fact.WatchReset fact) {
    return step;
  }

  @Override
  public Step timeTaken(Fact.TimeTaken fact) {
    return riding();
  }

  @Override
  public Step scoreCorrected(Fact.ScoreCorrected fact) {
    return step;
  }

  @Override
  public Step valueChosen(ValueChosen fact) {
    return step;
  }

  @Override
  public Step covariateSaid(CovariateSaid fact) {
    return step;
  }

  @Override
  public Step lookTaken(LookTaken fact) {
    return step;
  }

  @Override
  public Step ofOnePerson(Fact.OfOnePerson fact) {
    return step;
  }

  @Override
  public Step plateRead(PlateRead fact) {
    return riding();
  }

  @Override
  public Step ofRecordings(RecordingFact fact) {
    return step;
  }

  @Override
  public Step noteWritten(Fact.NoteWritten fact) {
    return step;
  }

  @Override
  public Step guessGiven(Fact.GuessGiven fact) {
    return step;
  }

  @Override
  public Step guessTakenBack(Fact.GuessTakenBack fact) {
    return step;
  }

  @Override
  public Step conditionsNoted(Fact.ConditionsNoted fact) {
    return step;
  }

  @Override
  public Step lapVoided(Fact.LapVoided fact) {
    return step;
  }

  @Override
  public Step voidWithdrawn(Fact.VoidWithdrawn fact) {
    return step;
  }

  @Override
  public Step blindBroken(Fact.BlindBroken fact) {
    return step;
  }

  @Override
  public Step deviationNoted(Fact.DeviationNoted fact) {
    return step;
  }

  @Override
  public Step dayCutShort(Fact.DayCutShort fact) {
    return move(step.day(), Step.CUT_SHORT);
  }

  @Override
  public Step dayClosed(Fact.DayClosed fact) {
    return move(step.day(), Step.DAY_CLOSED);
  }

  @Override
  public Step reviewClosed(Fact.ReviewClosed fact) {
    return move(step == Step.DAY_CLOSED, Step.REVIEW_CLOSED);
  }

  @Override
  public Step sealOpened(Fact.SealOpened fact) {
    return move(step == Step.REVIEW_CLOSED, Step.UNSEALED);
  }

  @Override
  public Step seriesEnded(SeriesEnded fact) {
    return step;
  }

  @Override
  public Step seriesStood(SeriesStood fact) {
    return step;
  }

  @Override
  public Step findingRecorded(Fact.FindingRecorded fact) {
    return step;
  }

  @Override
  public Step findingSeenAgain(FindingSeenAgain fact) {
    return step;
  }

  @Override
  public Step reportWritten(Fact.ReportWritten fact) {
    return move(step == Step.UNSEALED, Step.REPORTED);
  }

  @Override
  public Step sessionAbandoned(Fact.SessionAbandoned fact) {
    return Step.ABANDONED;
  }

  @Override
  public Step plainDayImported(Fact.PlainDayImported fact) {
    return move(step == Step.COMMITTED, Step.REVIEW_CLOSED);
  }

  @Override
  public Step amendmentMade(Fact.AmendmentMade fact) {
    return step;
  }
}
