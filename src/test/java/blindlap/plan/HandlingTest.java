package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class HandlingTest {
  static List<List<Integer>> levels() {
    return List.of(
        List.of(4, 7, 10, 13),
        List.of(0, 1, 2),
        List.of(1, 2, 3, 4, 5, 6),
        List.of(2, 4, 6, 8, 10),
        List.of(0, 9, 10),
        List.of(3, 17, 18, 40));
  }

  /**
   * Followed click by click along the dial: it ends where it should, and an ear counts the same.
   */
  @ParameterizedTest
  @MethodSource("levels")
  void everyHandlingHasAsManyClicksWhateverIsOnAndIsToBe(List<Integer> levels) {
    Plan plan = StepsDays.clicks(levels, levels.size() * 3);
    Set<Integer> heard = new TreeSet<>();
    int largest = levels.get(levels.size() - 1);
    for (int from = -1; from < levels.size(); from++) {
      for (int to = 0; to < levels.size(); to++) {
        Handling.Clicks clicks = clicks(plan, from < 0 ? null : from, to);
        int dial = from < 0 ? 0 : levels.get(from);
        int counted = 0;
        for (int move : new int[] {-clicks.in(), clicks.detour(), -clicks.detour(), clicks.out()}) {
          for (int click = 0; click < Math.abs(move); click++) {
            dial += Integer.signum(move);
            counted++;
            assertThat(dial).isBetween(0, largest);
          }
        }
        assertThat(dial).isEqualTo(levels.get(to));
        assertThat(clicks.beside()).isBetween(0, 1);
        assertThat(clicks.onTheDial()).isEqualTo(counted);
        assertThat(clicks.first()).isEqualTo(from < 0);
        heard.add(counted + clicks.beside());
      }
    }
    assertThat(heard).containsExactly(2 * largest);
    assertThat(Handling.clicks(plan)).contains(2 * largest);
  }

  private static Handling.Clicks clicks(Plan plan, @Nullable Integer from, int to) {
    return (Handling.Clicks) Handling.of(plan, from, to).orElseThrow();
  }

  /** Levels that are even alone leave no click over, so that none is made beside the bike. */
  @Test
  void noClickIsMadeBesideTheBikeWhereTheDialCanTakeAllOfThem() {
    Plan even = StepsDays.clicks(List.of(2, 4, 6, 8), 16);

    for (int from = 0; from < 4; from++) {
      for (int to = 0; to < 4; to++) {
        assertThat(clicks(even, from, to).beside()).isZero();
      }
    }
    assertThat(clicks(StepsDays.clicks(), 0, 1).beside()).isEqualTo(1);
  }

  @Test
  void aPressureGoesByTheSameLowAndHighWhateverWasIn() {
    Plan plan =
        Plans.with(StepsDays.text("way: pressure, levels: '1,5; 1.6; 1.7', low: 1.2, high: 2", 18));

    assertThat(PlanCheck.problems(plan)).isEmpty();
    for (Integer from : new Integer[] {null, 0, 2}) {
      assertThat(Handling.of(plan, from, 1))
          .get(InstanceOfAssertFactories.type(Handling.Pressure.class))
          .satisfies(
              way -> {
                assertThat(way.low()).isEqualByComparingTo("1.2");
                assertThat(way.high()).isEqualByComparingTo("2");
                assertThat(way.to()).isEqualByComparingTo("1.6");
              });
    }
    assertThat(Handling.clicks(plan)).isEmpty();
  }

  @Test
  void aSpringIsTakenOffWholeAndAComparisonHasNoHandlingOfItsOwn() {
    Plan springs = Plans.with(StepsDays.text("way: refit, levels: [400, 450, 500]", 18));

    assertThat(Handling.of(springs, 1, 1)).contains(new Handling.Refit());
    assertThat(Handling.of(Plans.with(""), 0, 1)).isEmpty();
  }
}
