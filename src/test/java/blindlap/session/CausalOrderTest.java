package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.day.Step;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The order in which entries of several notebooks are folded. */
class CausalOrderTest {
  private final Histories history = new Histories(3);

  private List<String> names(List<StoredEntry> entries) {
    return entries.stream().map(history::name).toList();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void any_order_of_arrival_gives_the_same_list(long seed) {
    Random random = new Random(seed);
    Histories any = Histories.random(random, 3, 60);
    List<StoredEntry> first = CausalOrder.sort(any.all());
    assertThat(first).hasSameSizeAs(any.all());
    for (int i = 0; i < 10; i++) {
      List<StoredEntry> shuffled = new ArrayList<>(any.all());
      Collections.shuffle(shuffled, random);
      assertThat(CausalOrder.sort(shuffled)).isEqualTo(first);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23, 24, 25, 26, 27, 28, 29, 30})
  void every_entry_comes_after_all_that_its_writer_had_seen(long seed) {
    List<StoredEntry> sorted = CausalOrder.sort(Histories.random(new Random(seed), 3, 60).all());
    List<Head> before = new ArrayList<>();
    for (StoredEntry stored : sorted) {
      assertThat(before).containsAll(stored.entry().seen());
      if (stored.entry().number() > 1) {
        assertThat(before)
            .contains(
                new Head(
                    stored.entry().notebook(),
                    stored.entry().number() - 1,
                    stored.entry().previous()));
      }
      before.add(stored.head());
    }
  }

  @Test
  void what_was_written_without_seeing_one_another_stands_by_notebook_and_number() {
    history.write(1, Histories.COMMIT);
    history.meet(0, 1, 2);
    history.write(2, new Fact.WarmUpRidden(1));
    history.write(0, new Fact.WarmUpRidden(2));
    history.write(0, new Fact.WarmUpRidden(3));
    assertThat(names(CausalOrder.sort(history.all()))).containsExactly("b1", "a1", "a2", "c1");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 2})
  void an_entry_that_the_closing_had_not_seen_comes_after_it_whoever_wrote_it(int late) {
    history.write(1, Histories.COMMIT);
    history.meet(0, 1, 2);
    history.write(late, Histories.LAP);
    history.meet(0, 1, 2);
    history.write(late, Histories.VOID);
    history.write(1, new Fact.DayClosed());
    history.write(1, Histories.CLOSED);
    List<StoredEntry> sorted = CausalOrder.sort(history.all());
    assertThat(sorted.get(sorted.size() - 1).entry().fact()).isEqualTo(Histories.VOID);
    assertThat(sorted.get(sorted.size() - 2).entry().fact()).isEqualTo(Histories.CLOSED);
  }

  @Test
  void of_two_closings_the_one_that_was_unsealed_counts() {
    history.write(0, Histories.COMMIT, Histories.LAP, new Fact.DayClosed());
    history.meet(0, 1, 2);
    history.write(0, Histories.CLOSED);
    history.write(2, Histories.CLOSED);
    assertThat(names(CausalOrder.sort(history.all()))).endsWith("a4", "c1");
    history.write(2, Histories.opened());
    assertThat(names(CausalOrder.sort(history.all()))).endsWith("c1", "c2", "a4");
  }

  @Test
  void what_was_unsealed_stays_unsealed_when_an_abandoning_arrives_late() {
    history.write(1, Histories.COMMIT, Histories.LAP, new Fact.DayClosed());
    history.meet(0, 1);
    history.write(0, new Fact.SessionAbandoned("rain", ""));
    history.write(1, Histories.CLOSED, Histories.opened());
    assertThat(names(CausalOrder.sort(history.all()))).endsWith("b4", "b5", "a1");
    SessionState state = SessionState.of(CausalOrder.sort(history.all()));
    assertThat(state.openKey()).isPresent();
    assertThat(state.step()).isEqualTo(Step.ABANDONED);
  }
}
