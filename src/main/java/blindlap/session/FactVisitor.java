package blindlap.session;

/** One method per kind of fact, so that a new kind does not compile until everyone handles it. */
public interface FactVisitor<R> {
  R planCommitted(Fact.PlanCommitted fact);

  R fingerprintGiven(Fact.FingerprintGiven fact);

  R expectationGiven(Fact.ExpectationGiven fact);

  R sheetReprinted(Fact.SheetReprinted fact);

  R stintHandled(Fact.StintHandled fact);

  R bikeHandedOver(Fact.BikeHandedOver fact);

  R bikeReturned(Fact.BikeReturned fact);

  R warmUpRidden(Fact.WarmUpRidden fact);

  R lapRidden(Fact.LapRidden fact);

  R scoreGiven(Fact.ScoreGiven fact);

  R watchStarted(Fact.WatchStarted fact);

  R watchReset(Fact.WatchReset fact);

  R timeTaken(Fact.TimeTaken fact);

  R scoreCorrected(Fact.ScoreCorrected fact);

  R valueChosen(ValueChosen fact);

  R covariateSaid(CovariateSaid fact);

  R lookTaken(LookTaken fact);

  R ofOnePerson(Fact.OfOnePerson fact);

  R ofRecordings(RecordingFact fact);

  R plateRead(PlateRead fact);

  R noteWritten(Fact.NoteWritten fact);

  R guessGiven(Fact.GuessGiven fact);

  R guessTakenBack(Fact.GuessTakenBack fact);

  R conditionsNoted(Fact.ConditionsNoted fact);

  R lapVoided(Fact.LapVoided fact);

  R voidWithdrawn(Fact.VoidWithdrawn fact);

  R blindBroken(Fact.BlindBroken fact);

  R deviationNoted(Fact.DeviationNoted fact);

  R dayCutShort(Fact.DayCutShort fact);

  R dayClosed(Fact.DayClosed fact);

  R reviewClosed(Fact.ReviewClosed fact);

  R sealOpened(Fact.SealOpened fact);

  R seriesEnded(SeriesEnded fact);

  R seriesStood(SeriesStood fact);

  R findingRecorded(Fact.FindingRecorded fact);

  R findingSeenAgain(FindingSeenAgain fact);

  R reportWritten(Fact.ReportWritten fact);

  R sessionAbandoned(Fact.SessionAbandoned fact);

  R amendmentMade(Fact.AmendmentMade fact);

  R plainDayImported(Fact.PlainDayImported fact);
}
