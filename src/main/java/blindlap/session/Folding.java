package blindlap.session;

import blindlap.timing.TimeRecord;
import java.math.BigDecimal;

/**
 * Applies entries to a state, one kind of fact at a time. Conflict rules for entries that two
 * notebooks wrote without seeing each other: recordings, voids and corrections that come after the
 * review was closed are kept and shown but not applied; of two closings the first in causal order
 * counts.
 */
final class Folding implements Fact.Visitor<Boolean> {
  private final SessionState state;

  Folding(SessionState state) {
    this.state = state;
  }

  void apply(StoredEntry stored) {
    if (!stored.entry().fact().accept(this)) {
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

  private void riding() {
    if (state.step == Step.COMMITTED) {
      state.step = Step.RIDING;
    }
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
    return onlyWhileReviewOpen(() -> state.handled.putIfAbsent(fact.stint(), fact.record()));
  }

  @Override
  public Boolean bikeHandedOver(Fact.BikeHandedOver fact) {
    return onlyWhileReviewOpen(
        () -> {
          riding();
          state.handedOver = Math.max(state.handedOver, fact.stint());
        });
  }

  @Override
  public Boolean warmUpRidden(Fact.WarmUpRidden fact) {
    return onlyWhileReviewOpen(
        () -> {
          riding();
          state.warmUps = Math.max(state.warmUps, fact.number());
        });
  }

  @Override
  public Boolean lapRidden(Fact.LapRidden fact) {
    return onlyWhileReviewOpen(
        () -> {
          riding();
          state.lapForWriting(fact.lap()).ridden = true;
        });
  }

  @Override
  public Boolean scoreGiven(Fact.ScoreGiven fact) {
    return onlyWhileReviewOpen(
        () -> {
          riding();
          state.lapForWriting(fact.lap()).values.put(fact.measure(), fact.value());
        });
  }

  @Override
  public Boolean timeTaken(Fact.TimeTaken fact) {
    return onlyWhileReviewOpen(
        () -> {
          riding();
          LapState lap = state.lapForWriting(fact.lap());
          TimeRecord time = fact.time();
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
    state.step = Step.CUT_SHORT;
    return true;
  }

  @Override
  public Boolean dayClosed(Fact.DayClosed fact) {
    if (!state.step.day()) {
      return false;
    }
    state.step = Step.DAY_CLOSED;
    return true;
  }

  @Override
  public Boolean reviewClosed(Fact.ReviewClosed fact) {
    if (state.step != Step.DAY_CLOSED) {
      return false;
    }
    state.step = Step.REVIEW_CLOSED;
    state.reviewClosed = fact;
    return true;
  }

  @Override
  public Boolean sealOpened(Fact.SealOpened fact) {
    if (state.step != Step.REVIEW_CLOSED) {
      return false;
    }
    state.step = Step.UNSEALED;
    state.opened = fact;
    return true;
  }

  @Override
  public Boolean reportWritten(Fact.ReportWritten fact) {
    if (state.step == Step.UNSEALED) {
      state.step = Step.REPORTED;
    }
    return true;
  }

  @Override
  public Boolean sessionAbandoned(Fact.SessionAbandoned fact) {
    if (state.step == Step.ABANDONED) {
      return false;
    }
    state.step = Step.ABANDONED;
    state.abandonedBecause = fact.reason();
    return true;
  }

  @Override
  public Boolean amendmentMade(Fact.AmendmentMade fact) {
    return state.opened != null && state.amendments.add(fact);
  }
}
