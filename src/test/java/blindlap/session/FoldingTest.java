package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.AnyFact;
import blindlap.session.day.LapId;
import blindlap.session.day.Step;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What entries of several notebooks add up to. */
class FoldingTest {
  private final Histories history = new Histories(2);

  private SessionState state() {
    return SessionState.of(CausalOrder.sort(history.all()));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1})
  void a_void_that_had_not_seen_the_closing_is_kept_and_shown_and_not_applied(int late) {
    int closing = 1 - late;
    history.write(closing, Histories.COMMIT, Histories.LAP);
    history.meet(0, 1);
    history.write(late, Histories.VOID);
    history.write(closing, new Fact.DayClosed(), Histories.CLOSED);
    SessionState state = state();
    assertThat(state.step()).isEqualTo(Step.REVIEW_CLOSED);
    assertThat(state.lap(new LapId(1, 1)).orElseThrow().voided()).isEmpty();
    assertThat(state.notApplied())
        .extracting(stored -> stored.entry().fact())
        .containsExactly(Histories.VOID);
  }

  @Test
  void a_void_that_the_closing_had_seen_is_applied() {
    history.write(1, Histories.COMMIT, Histories.LAP);
    history.meet(0, 1);
    history.write(0, Histories.VOID);
    history.meet(0, 1);
    history.write(1, new Fact.DayClosed(), Histories.CLOSED);
    assertThat(state().lap(new LapId(1, 1)).orElseThrow().voided()).isPresent();
    assertThat(state().notApplied()).isEmpty();
  }

  @Test
  void a_lap_that_another_notebook_recorded_is_added_while_the_review_is_open() {
    history.write(1, Histories.COMMIT);
    history.meet(0, 1);
    history.write(0, Histories.LAP);
    history.write(1, new Fact.DayClosed());
    assertThat(state().lapsRidden()).isEqualTo(1);
    assertThat(state().step()).isEqualTo(Step.DAY_CLOSED);
  }

  @Test
  void of_two_records_of_one_stint_the_first_counts_and_the_other_is_shown() {
    history.write(0, Histories.COMMIT);
    history.meet(0, 1);
    Random random = new Random(1);
    Fact handled = null;
    while (!(handled instanceof Fact.StintHandled)) {
      handled = Histories.random(random, 1, 2).all().get(1).entry().fact();
    }
    history.write(0, handled);
    history.write(1, handled);
    assertThat(state().helperRecords()).hasSize(1);
    assertThat(state().notApplied())
        .extracting(stored -> stored.entry().notebook().text().charAt(0))
        .containsExactly('b');
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void the_step_alone_can_be_followed_from_the_kinds_of_facts(long seed) {
    List<StoredEntry> sorted = CausalOrder.sort(Histories.random(new Random(seed), 3, 60).all());
    Step step = Step.COMMITTED;
    for (StoredEntry stored : sorted) {
      step = StepAfter.of(step, stored.entry().fact());
    }
    assertThat(SessionState.of(sorted).step()).isEqualTo(step);
  }

  /** Of every kind of fact, first while all may still be said, then in any order. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void entries_that_follow_one_by_one_tell_the_same_as_all_at_once(long seed) {
    history.write(0, Histories.COMMIT);
    List<Fact> facts = new ArrayList<>(new AnyFact(seed).everyKind());
    for (int round = 0; round < 2; round++) {
      for (Fact fact : facts) {
        boolean ends =
            StepAfter.of(Step.COMMITTED, fact) != Step.COMMITTED
                || fact instanceof Fact.PlanCommitted;
        if (!ends || round == 1) {
          history.write(0, fact);
        }
      }
      history.write(0, new Fact.DayClosed(), Histories.CLOSED, Histories.opened());
      Collections.shuffle(facts, new Random(seed));
    }
    followOneByOne(CausalOrder.sort(history.all()));
  }

  @ParameterizedTest
  @ValueSource(longs = {4, 5, 6, 7})
  void so_do_random_histories(long seed) {
    followOneByOne(CausalOrder.sort(Histories.random(new Random(seed), 1, 60).all()));
  }

  private static void followOneByOne(List<StoredEntry> all) {
    SessionState state = SessionState.of(all.subList(0, 1));
    for (int i = 1; i < all.size(); i++) {
      SessionState before = state;
      state = before.after(all.subList(i, i + 1));
      if (i % 9 == 0) {
        assertThat(before)
            .as("the state before does not change")
            .usingRecursiveComparison()
            .isEqualTo(SessionState.of(all.subList(0, i)));
      }
    }
    assertThat(state).usingRecursiveComparison().isEqualTo(SessionState.of(all));
    assertThat(state.heads()).isEqualTo(SessionState.of(all).heads()).isNotEmpty();
  }
}
