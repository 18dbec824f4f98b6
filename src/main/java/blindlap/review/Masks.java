package blindlap.review;

import blindlap.plan.BlindLevel;
import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Setup;
import blindlap.session.MasksGuessed;
import blindlap.session.MasksRead;
import blindlap.session.SessionState;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;

/**
 * What is known of masked labels (docs/method.md#masked-labels). The order of such a day is over
 * labels, X first, so the letter A of an order is X.
 *
 * @param committed the plan as it was committed, its setups in the tester's order
 * @param guessed setups by label, 0 = A, as the rider guessed; empty if nobody did
 * @param read setups by label as they were read; empty while they are not
 * @param from how they were read
 */
public record Masks(
    Plan committed, List<Integer> guessed, List<Integer> read, Optional<MasksRead.From> from) {
  public Masks {
    guessed = List.copyOf(guessed);
    read = List.copyOf(read);
  }

  /** Of a session at the level of masked labels; empty for any other. */
  static Optional<Masks> of(SessionState state) {
    return state.plan().level() != BlindLevel.MASKED
        ? Optional.empty()
        : Optional.of(
            new Masks(
                state.plan(),
                state.masksGuessed().map(MasksGuessed::setups).orElse(List.of()),
                state.masksRead().map(MasksRead::setups).orElse(List.of()),
                state.masksRead().map(MasksRead::from)));
  }

  /** True once it is known which label was on which setup. */
  public boolean isRead() {
    return whole(read);
  }

  /** How they were read, as files say it; empty while they are not. */
  public Optional<String> source() {
    return from.map(PlanJson::word);
  }

  /** True if the rider guessed. */
  public boolean isGuessed() {
    return whole(guessed);
  }

  /** True if the guess named every label right. */
  public boolean right() {
    return isRead() && guessed.equals(read);
  }

  /** The chance of a right guess by lot: one of all ways to lay labels on setups. */
  public double chance() {
    int ways = 1;
    for (int i = 2; i <= committed.setups().size(); i++) {
      ways *= i;
    }
    return 1.0 / ways;
  }

  private boolean whole(List<Integer> setups) {
    int all = committed.setups().size();
    return setups.size() == all
        && new HashSet<>(setups).size() == all
        && setups.stream().allMatch(setup -> setup >= 0 && setup < all);
  }

  /**
   * The plan that the finding is over: its setups in the order of the labels, by their names and
   * labels once these are read, by labels alone before.
   */
  public Plan analysed() {
    List<Setup> labelled = new ArrayList<>();
    for (int place = 0; place < committed.setups().size(); place++) {
      labelled.add(
          isRead()
              ? named(committed.setups().get(read.get(place)), Labels.of(place))
              : Setup.named(Labels.of(place)));
    }
    return committed.with(labelled);
  }

  private static Setup named(Setup setup, String label) {
    return setup.called(setup.name() + " (" + label + ")");
  }
}
