package blindlap.session;

import blindlap.timing.TimeRecord;
import java.math.BigDecimal;

/**
 * Applies entries to a state, one kind of fact at a time, in the order of {@link CausalOrder}; the
 * step follows by {@link Step#after}. Conflict rules for entries that two notebooks wrote without
 * seeing each other (docs/file-format.md): whatever the closing of the review had not seen is kept
 * and shown but not applied; of two closings, cuts or helper's records of a stint the first counts;
 * of two values, notes or guesses the last.
 */
final class Folding implements FactVisitor<Boolean> {
  private final SessionState state;

  Folding(SessionState state) {
    this.state = state;
  }

  void apply(StoredEntry stored) {
    Fact fact = stored.entry().fact();
    if (fact.accept(this)) {
      state.step = state.step.after(fact);
    } else {
      state.notApplied.add(stored);
    }
  }

  private boolean reviewOpen() {
    return state.step.ordinal() < Step.REVIEW_CLOSED.ordinal();
  }

  private boolean onlyWhileReviewOpen(Runnable change) {
    if (reviewOpen()) {
      change.run();
      return true;
    }
    return false;
  }

  @Override
  public Boolean planCommitted(Fact.PlanCommitted fact) {
    if (state.committed != null) {
      return false;
    }
    state.committed = fact;
    return true;
  }

  @Override
  public Boolean fingerprintGiven(Fact.FingerprintGiven fact) {
    return state.given.add(fact);
  }

  @Override
  public Boolean expectationGiven(Fact.ExpectationGiven fact) {
    return onlyWhileReviewOpen(() -> state.expectations.add(fact));
  }

  @Override
  public Boolean sheetReprinted(Fact.SheetReprinted fact) {
    return true;
  }

  @Override
  public Boolean stintHandled(Fact.StintHandled fact) {
    // One record a stint: a second one, written where the first was not seen, is shown, not
    // applied.
    return reviewOpen() && state.handled.putIfAbsent(fact.stint(), fact.record()) == null;
  }

  @Override
  public Boolean bikeHandedOver(Fact.BikeHandedOver fact) {
    return onlyWhileReviewOpen(() -> state.handedOver.add(fact.stint()));
  }

  @Override
  public Boolean warmUpRidden(Fact.WarmUpRidden fact) {
    return onlyWhileReviewOpen(() -> state.warmUps = Math.max(state.warmUps, fact.number()));
  }

  @Override
  public Boolean lapRidden(Fact.LapRidden fact) {
    return onlyWhileReviewOpen(() -> state.lapForWriting(fact.lap()).ridden = true);
  }

  @Override
  public Boolean scoreGiven(Fact.ScoreGiven fact) {
    return onlyWhileReviewOpen(
        () -> state.lapForWriting(fact.lap()).values.put(fact.measure(), fact.value()));
  }

  @Override
  public Boolean watchStarted(Fact.WatchStarted fact) {
    return onlyWhileReviewOpen(
        () -> {
          LapState lap = state.lapForWriting(fact.lap());
          lap.running.put(fact.measure(), fact.started());
          lap.times.remove(fact.measure());
          lap.values.remove(fact.measure());
        });
  }

  @Override
  public Boolean watchReset(Fact.WatchReset fact) {
    return onlyWhileReviewOpen(
        () -> {
          LapState lap = state.lapForWriting(fact.lap());
          lap.running.remove(fact.measure());
          lap.times.remove(fact.measure());
          lap.values.remove(fact.measure());
        });
  }

  @Override
  public Boolean timeTaken(Fact.TimeTaken fact) {
    return onlyWhileReviewOpen(
        () -> {
          LapState lap = state.lapForWriting(fact.lap());
          TimeRecord time = fact.time();
          lap.running.remove(fact.measure());
          lap.times.put(fact.measure(), time);
          BigDecimal seconds = time.seconds();
          if (seconds == null) {
            lap.values.remove(fact.measure());
          } else {
            lap.values.put(fact.measure(), seconds);
          }
        });
  }

  @Override
  public Boolean scoreCorrected(Fact.ScoreCorrected fact) {
    return onlyWhileReviewOpen(
        () -> {
          LapState lap = state.lapForWriting(fact.lap());
          BigDecimal value = fact.value();
          if (value == null) {
            lap.values.remove(fact.measure());
          } else {
            lap.values.put(fact.measure(), value);
          }
          state.corrections.add(fact);
        });
  }

  @Override
  public Boolean noteWritten(Fact.NoteWritten fact) {
    return onlyWhileReviewOpen(() -> state.lapForWriting(fact.lap()).note = fact.text());
  }

  @Override
  public Boolean guessGiven(Fact.GuessGiven fact) {
    return onlyWhileReviewOpen(() -> state.guesses.put(fact.stint(), fact.guess()));
  }

  @Override
  public Boolean conditionsNoted(Fact.ConditionsNoted fact) {
    return onlyWhileReviewOpen(
        () -> state.lapForWriting(fact.lap()).conditions.putAll(fact.conditions()));
  }

  @Override
  public Boolean lapVoided(Fact.LapVoided fact) {
    return onlyWhileReviewOpen(
        () ->
            state.lapForWriting(fact.lap()).voided =
                new LapState.Voided(fact.event(), fact.words(), fact.afterValuesSeen()));
  }

  @Override
  public Boolean voidWithdrawn(Fact.VoidWithdrawn fact) {
    return onlyWhileReviewOpen(() -> state.lapForWriting(fact.lap()).voided = null);
  }

  @Override
  public Boolean blindBroken(Fact.BlindBroken fact) {
    return onlyWhileReviewOpen(() -> state.blindBroken.add(fact));
  }

  @Override
  public Boolean deviationNoted(Fact.DeviationNoted fact) {
    return state.deviations.add(fact);
  }

  @Override
  public Boolean dayCutShort(Fact.DayCutShort fact) {
    if (!state.step.day() || state.cutShort != null) {
      return false;
    }
    state.cutShort = fact;
    return true;
  }

  @Override
  public Boolean dayClosed(Fact.DayClosed fact) {
    return state.step.day();
  }

  @Override
  public Boolean reviewClosed(Fact.ReviewClosed fact) {
    if (state.step != Step.DAY_CLOSED) {
      return false;
    }
    state.reviewClosed = fact;
    return true;
  }

  @Override
  public Boolean sealOpened(Fact.SealOpened fact) {
    if (state.step != Step.REVIEW_CLOSED) {
      return false;
    }
    state.opened = fact;
    return true;
  }

  @Override
  public Boolean reportWritten(Fact.ReportWritten fact) {
    return true;
  }

  @Override
  public Boolean sessionAbandoned(Fact.SessionAbandoned fact) {
    if (state.step == Step.ABANDONED) {
      return false;
    }
    state.abandonedBecause = fact.reason();
    return true;
  }

  @Override
  public Boolean plainDayImported(Fact.PlainDayImported fact) {
    if (state.step != Step.COMMITTED || state.hasKey() || state.plainDay != null) {
      return false;
    }
    state.plainDay = fact;
    return true;
  }

  @Override
  public Boolean amendmentMade(Fact.AmendmentMade fact) {
    return state.opened != null && state.amendments.add(fact);
  }
}
