package blindlap.session;

import blindlap.plan.Blinding;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Step;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Applies entries to what is {@link Folded}, one kind of fact at a time, in the order of {@link
 * CausalOrder}; the step follows by {@link StepAfter}. Conflict rules for entries that two
 * notebooks wrote without seeing each other (docs/file-format.md): whatever the closing of the
 * review had not seen is kept and shown but not applied; of two closings, cuts or helper's records
 * of a stint the first counts; of two notes or guesses the last; of two values {@link LapValues}.
 */
final class Folding implements FactVisitor<Boolean> {
  private final Folded folded;
  private @Nullable Entry entry;
  private @Nullable StoredEntry stored;

  Folding(Folded folded) {
    this.folded = folded;
  }

  void apply(StoredEntry stored) {
    Fact fact = stored.entry().fact();
    entry = stored.entry();
    this.stored = stored;
    folded.values.take(stored.entry());
    folded.phones.take(stored);
    if (canBe(fact) && fact.accept(this)) {
      folded.step = StepAfter.of(folded.step, fact);
    } else {
      folded.notApplied.add(stored);
    }
  }

  /** What the plan has no place for is kept and shown, wherever it came from, and not applied. */
  private boolean canBe(Fact fact) {
    return folded.committed == null
        || EntryMeaning.problem(folded.committed.plan(), fact).isEmpty();
  }

  private boolean reviewOpen() {
    return folded.step.ordinal() < Step.REVIEW_CLOSED.ordinal();
  }

  private boolean onlyWhileReviewOpen(Runnable change) {
    if (reviewOpen()) {
      change.run();
      return true;
    }
    return false;
  }

  /** The same of an answer that a phone may have given earlier than what stands. */
  private boolean onlyNewest(Object of, Runnable change) {
    return onlyWhileReviewOpen(
        () -> {
          if (folded.phones.newest(Objects.requireNonNull(stored), of)) {
            change.run();
          }
        });
  }

  private Entry now() {
    return Objects.requireNonNull(entry);
  }

  /**
   * Something about a value of a lap.
   *
   * @param change what becomes of the lap if nothing else is said of the value
   */
  private boolean onValue(LapId lap, String measure, UnaryOperator<LapState> change, Said said) {
    Fact.PlanCommitted plan = folded.committed;
    NotebookId home = folded.home;
    if (plan == null || home == null) {
      return onLap(lap, change);
    }
    return onLap(
        lap,
        known -> folded.values.recorded(plan.plan(), home, change.apply(known), measure, said));
  }

  private boolean onLap(LapId lap, UnaryOperator<LapState> change) {
    return onlyWhileReviewOpen(() -> folded.lap(lap, change));
  }

  @Override
  public Boolean planCommitted(Fact.PlanCommitted fact) {
    if (folded.committed != null) {
      return false;
    }
    folded.committed = fact;
    folded.home = now().notebook();
    return true;
  }

  @Override
  public Boolean fingerprintGiven(Fact.FingerprintGiven fact) {
    return folded.given.add(fact);
  }

  @Override
  public Boolean expectationGiven(Fact.ExpectationGiven fact) {
    return onlyWhileReviewOpen(() -> folded.expectations.add(fact));
  }

  @Override
  public Boolean sheetReprinted(Fact.SheetReprinted fact) {
    return true;
  }

  @Override
  public Boolean stintHandled(Fact.StintHandled fact) {
    // One record a stint: a second one, written without seeing the first, is not applied.
    return reviewOpen() && folded.handled.putIfAbsent(fact.stint(), fact.record()) == null;
  }

  @Override
  public Boolean bikeHandedOver(Fact.BikeHandedOver fact) {
    return onlyWhileReviewOpen(
        () -> {
          folded.handedOver.add(fact.stint());
          // What was ridden before was kept on paper: the bike is not out for it.
          if (!folded.allRidden(fact.stint()) && folded.phones.moves(now())) {
            folded.bikeOut = fact.stint();
          }
        });
  }

  @Override
  public Boolean plateRead(PlateRead fact) {
    return bikeHandedOver(new Fact.BikeHandedOver(fact.stint()));
  }

  @Override
  public Boolean bikeReturned(Fact.BikeReturned fact) {
    return onlyWhileReviewOpen(
        () -> {
          Integer out = folded.bikeOut;
          if (out != null && out == fact.stint() && folded.phones.moves(now())) {
            folded.bikeOut = null;
          }
        });
  }

  @Override
  public Boolean warmUpRidden(Fact.WarmUpRidden fact) {
    return onlyWhileReviewOpen(() -> folded.warmUps = Math.max(folded.warmUps, fact.number()));
  }

  @Override
  public Boolean lapRidden(Fact.LapRidden fact) {
    return onlyWhileReviewOpen(() -> folded.ridden(fact.lap()));
  }

  @Override
  public Boolean scoreGiven(Fact.ScoreGiven fact) {
    Fact.PlanCommitted plan = folded.committed;
    Blinding.RecordOf whose = plan == null ? null : LapValues.whose(plan.plan(), fact.measure());
    return onValue(
        fact.lap(),
        fact.measure(),
        lap -> lap.withValue(fact.measure(), fact.value()),
        Said.recorded(now(), fact.value(), null, whose, fact.source()));
  }

  @Override
  public Boolean watchStarted(Fact.WatchStarted fact) {
    return onValue(
        fact.lap(),
        fact.measure(),
        lap -> lap.withWatchStarted(fact.measure(), fact.started()),
        Said.nothing(now()));
  }

  @Override
  public Boolean watchReset(Fact.WatchReset fact) {
    return onValue(
        fact.lap(), fact.measure(), lap -> lap.withWatchReset(fact.measure()), Said.nothing(now()));
  }

  @Override
  public Boolean timeTaken(Fact.TimeTaken fact) {
    return onValue(
        fact.lap(),
        fact.measure(),
        lap -> lap.withTime(fact.measure(), fact.time()),
        LapValues.time(now(), fact));
  }

  @Override
  public Boolean scoreCorrected(Fact.ScoreCorrected fact) {
    Fact.PlanCommitted plan = folded.committed;
    NotebookId home = folded.home;
    Said said =
        plan == null || home == null
            ? Said.nothing(now())
            : folded.values.corrected(plan.plan(), home, fact, now());
    return onValue(
            fact.lap(), fact.measure(), lap -> lap.withValue(fact.measure(), fact.value()), said)
        && folded.corrections.add(fact);
  }

  @Override
  public Boolean valueChosen(ValueChosen fact) {
    Fact.PlanCommitted plan = folded.committed;
    NotebookId home = folded.home;
    LapState lap = folded.laps.get(fact.lap());
    if (!reviewOpen() || plan == null || home == null || lap == null) {
      return false;
    }
    LapState chosen = folded.values.chosen(plan.plan(), home, lap, fact, now());
    if (chosen == null) {
      return false;
    }
    folded.lap(fact.lap(), any -> chosen);
    return true;
  }

  @Override
  public Boolean covariateSaid(CovariateSaid fact) {
    BigDecimal value = fact.value();
    return onlyNewest(
        fact.at(),
        () -> {
          if (value == null) {
            folded.covariates.remove(fact.at());
          } else {
            folded.covariates.put(fact.at(), value);
          }
          if (!fact.reason().isBlank()) {
            folded.covariatesCorrected.add(fact);
          }
        });
  }

  @Override
  public Boolean lookTaken(LookTaken fact) {
    // Each look is taken once: a second one, taken where the first was not seen, is shown.
    return reviewOpen() && folded.looks.putIfAbsent(fact.stint(), fact) == null;
  }

  @Override
  public Boolean ofOnePerson(Fact.OfOnePerson fact) {
    return fact.accept(new OnePersonFolding(folded, reviewOpen()));
  }

  @Override
  public Boolean ofRecordings(RecordingFact fact) {
    return fact.accept(new RecordingFolding(folded, reviewOpen()));
  }

  @Override
  public Boolean noteWritten(Fact.NoteWritten fact) {
    return onlyNewest(
        List.of("note", fact.lap()),
        () -> folded.lap(fact.lap(), lap -> lap.withNote(fact.text())));
  }

  @Override
  public Boolean guessGiven(Fact.GuessGiven fact) {
    return TrialFolding.answers(folded, fact.stint())
        && onlyNewest(
            List.of("guess", fact.stint()), () -> folded.guess(fact.stint(), fact.guess()));
  }

  @Override
  public Boolean guessTakenBack(Fact.GuessTakenBack fact) {
    return onlyNewest(List.of("guess", fact.stint()), () -> folded.guesses.remove(fact.stint()));
  }

  @Override
  public Boolean conditionsNoted(Fact.ConditionsNoted fact) {
    boolean applied = false;
    for (Map.Entry<String, String> one : fact.conditions().entrySet()) {
      applied |=
          onlyNewest(
              List.of(fact.lap(), one.getKey()),
              () ->
                  folded.lap(
                      fact.lap(), lap -> lap.withConditions(Map.of(one.getKey(), one.getValue()))));
    }
    return applied || fact.conditions().isEmpty() && reviewOpen();
  }

  @Override
  public Boolean lapVoided(Fact.LapVoided fact) {
    LapState.Voided why = new LapState.Voided(fact.event(), fact.words(), fact.afterValuesSeen());
    return TrialFolding.spoils(folded, fact.lap().stint())
        && onLap(fact.lap(), lap -> lap.withVoid(why));
  }

  @Override
  public Boolean voidWithdrawn(Fact.VoidWithdrawn fact) {
    return onLap(fact.lap(), LapState::withoutVoid);
  }

  @Override
  public Boolean blindBroken(Fact.BlindBroken fact) {
    return onlyWhileReviewOpen(() -> folded.blindBroken.add(fact));
  }

  @Override
  public Boolean deviationNoted(Fact.DeviationNoted fact) {
    return folded.deviations.add(fact);
  }

  @Override
  public Boolean dayCutShort(Fact.DayCutShort fact) {
    if (!folded.step.day() || folded.cutShort != null) {
      return false;
    }
    folded.cutShort = fact;
    return true;
  }

  @Override
  public Boolean dayClosed(Fact.DayClosed fact) {
    return folded.step.day();
  }

  @Override
  public Boolean reviewClosed(Fact.ReviewClosed fact) {
    if (folded.step != Step.DAY_CLOSED) {
      return false;
    }
    folded.reviewClosed = fact;
    return true;
  }

  @Override
  public Boolean sealOpened(Fact.SealOpened fact) {
    if (folded.step != Step.REVIEW_CLOSED) {
      return false;
    }
    folded.opened = fact;
    return true;
  }

  @Override
  public Boolean seriesEnded(SeriesEnded fact) {
    return true;
  }

  @Override
  public Boolean seriesStood(SeriesStood fact) {
    return true;
  }

  @Override
  public Boolean findingRecorded(Fact.FindingRecorded fact) {
    // The first one that had seen the opening: two machines may both have opened the seal.
    if (folded.opened == null || folded.finding != null) {
      return false;
    }
    folded.finding = fact;
    return true;
  }

  @Override
  public Boolean findingSeenAgain(FindingSeenAgain fact) {
    return folded.opened != null && folded.seenAgain.putIfAbsent(fact.edition(), fact) == null;
  }

  @Override
  public Boolean reportWritten(Fact.ReportWritten fact) {
    return true;
  }

  @Override
  public Boolean sessionAbandoned(Fact.SessionAbandoned fact) {
    if (folded.step == Step.ABANDONED) {
      return false;
    }
    folded.abandonedBecause = fact.reason();
    return true;
  }

  @Override
  public Boolean plainDayImported(Fact.PlainDayImported fact) {
    if (folded.step != Step.COMMITTED || folded.hasKey() || folded.plainDay != null) {
      return false;
    }
    folded.plainDay = fact;
    return true;
  }

  @Override
  public Boolean amendmentMade(Fact.AmendmentMade fact) {
    return folded.opened != null && folded.amendments.add(fact);
  }
}
