package blindlap.review;

import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import java.util.Optional;

/**
 * How much more riding would settle it, in the coarse classes of docs/method.md#more-days: n* =
 * N·(h/g)², h half the width of the 90 % interval, g = ||estimate| − D|. A single number would be
 * worth nothing, since g is noisy and the day was picked for being unsettled.
 */
public enum WhatNext {
  /** Up to three times the stints of this day in all. */
  ONE_OR_TWO_DAYS,
  /** More than that, though the best guess is that it would matter. */
  MANY_DAYS,
  /** More than that, and the best guess is that it would not matter. */
  NOT_WORTH_IT;

  private static final double MOST = 3;

  /** The class of an unsettled comparison; empty for a settled one, or without an interval. */
  public static Optional<WhatNext> of(Comparison comparison) {
    Verdict verdict = comparison.verdict().orElse(Verdict.NO_VARIATION);
    Optional<Interval> ninety = comparison.shifts(0.90);
    Optional<Interval> band = comparison.worthwhileBand();
    if (verdict.settled() || ninety.isEmpty() || band.isEmpty()) {
      return Optional.empty();
    }
    double size = Math.abs(comparison.result().estimate());
    double ratio = ninety.get().halfWidth() / Math.abs(size - band.get().high());
    if (ratio * ratio <= MOST) {
      return Optional.of(ONE_OR_TWO_DAYS);
    }
    return Optional.of(size >= band.get().high() ? MANY_DAYS : NOT_WORTH_IT);
  }
}
