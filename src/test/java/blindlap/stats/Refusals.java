package blindlap.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.fault.StatsException;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;

/** Checks that a call is refused with one sentence about one argument. */
public final class Refusals {
  private Refusals() {}

  public static void refused(String argument, ThrowingCallable call) {
    assertThatThrownBy(call)
        .isInstanceOfSatisfying(
            StatsException.class,
            e -> {
              assertThat(e.argument()).isEqualTo(argument);
              assertThat(e.why()).endsWith(".").doesNotContain("\n");
            });
  }
}
