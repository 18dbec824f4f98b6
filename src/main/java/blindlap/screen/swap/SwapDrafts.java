package blindlap.screen.swap;

import blindlap.desk.HelperDay;
import blindlap.desk.HelperDraft;
import blindlap.screen.part.Background;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * When what is unfinished of a handling is written. The notebook file counts its changes, and real
 * and dummy swaps differ in what there is to type and to tick. So it is written every few seconds
 * for as long as a stint is in hand, changed or not and in view or not, and never at a touch.
 */
final class SwapDrafts {
  /** How often; what a crash can lose. */
  static final Duration EVERY = Duration.ofSeconds(5);

  /**
   * What is in hand.
   *
   * @param covered true while the page is closed over it
   */
  record InHand(HelperDay day, HelperDraft draft, boolean covered) {
    /** Where the page is closed, what another window has kept meanwhile stands. */
    void keep() {
      if (!covered || !day.keptElsewhere()) {
        day.keep(draft);
      }
    }

    /** Says which stint only. */
    @Override
    public String toString() {
      return "InHand[stint " + draft.entry().stint() + "]";
    }
  }

  private final Background background;
  private final LongSupplier monotonic;
  private final Supplier<Optional<InHand>> hand;
  private final Runnable kept;
  private final Consumer<Exception> failed;
  private long last;

  /**
   * @param monotonic nanoseconds that only ever grow
   * @param hand what is in hand as it stands now; empty while nothing is
   * @param kept told when the disk has it
   */
  SwapDrafts(
      Background background,
      LongSupplier monotonic,
      Supplier<Optional<InHand>> hand,
      Runnable kept,
      Consumer<Exception> failed) {
    this.background = background;
    this.monotonic = monotonic;
    this.hand = hand;
    this.kept = kept;
    this.failed = failed;
  }

  /** A stint is taken in hand; its first draft is due in a while. */
  void begin() {
    last = monotonic.getAsLong();
  }

  /** Once a second. */
  void beat() {
    if (monotonic.getAsLong() - last >= EVERY.toNanos()) {
      now();
    }
  }

  /** At what everyone can see anyway: a beginning, an event of the day, a window that closes. */
  void now() {
    hand.get()
        .ifPresent(
            now -> {
              last = monotonic.getAsLong();
              background.run(
                  () -> {
                    now.keep();
                    return true;
                  },
                  written -> kept.run(),
                  failed);
            });
  }
}
