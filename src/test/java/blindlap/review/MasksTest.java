package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.plan.Setup;
import blindlap.session.MasksRead;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The finding over labels is one and the same before and after it is read what they hid. */
class MasksTest {
  private static final Rule RULE = Rule.blocks(2, 12, 4);

  private static DayRecord labelled(List<Integer> read, List<Integer> guessed) {
    Random random = new Random(3);
    Plan plan = Days.at(BlindLevel.MASKED, Days.plan(RULE, List.of(Days.lapTime())));
    double[] times =
        Days.values(
            blindlap.stats.order.Orders.parse("ABBABAABABAB"),
            90,
            new double[] {0, 1.4},
            0.5,
            2,
            random);
    DayRecord day = Days.day(plan, "ABBABAABABAB", Map.of("lap time", times));
    Optional<MasksRead.From> from =
        read.isEmpty() ? Optional.empty() : Optional.of(MasksRead.From.PHRASE);
    return day.with(new Masks(plan, guessed, read, from));
  }

  private static List<String> names(DayRecord day) {
    return day.plan().setups().stream().map(Setup::name).toList();
  }

  @Test
  void theNumbersAreThoseOfTheLabelsWhateverTheyHide() {
    Comparison unread = Analysis.of(labelled(List.of(), List.of())).primary().orElseThrow();
    for (List<Integer> read : List.of(List.of(0, 1), List.of(1, 0))) {
      Comparison known = Analysis.of(labelled(read, List.of())).primary().orElseThrow();
      assertThat(known.estimate()).isEqualTo(unread.estimate());
      assertThat(known.p()).isEqualTo(unread.p());
      assertThat(known.curve().knots()).isEqualTo(unread.curve().knots());
      assertThat(known.verdict()).isEqualTo(unread.verdict());
    }
  }

  @Test
  void setupsStandInTheOrderOfTheLabelsAndBearThem() {
    assertThat(names(labelled(List.of(), List.of()))).containsExactly("X", "Y");
    assertThat(names(labelled(List.of(1, 0), List.of())))
        .containsExactly("Shock L (X)", "Shock K (Y)");
    DayRecord read = labelled(List.of(1, 0), List.of());
    assertThat(read.plan().setups().get(0).id()).isEqualTo("shock-l");
    assertThat(read.committedPlan().setups().get(0).name()).isEqualTo("Shock K");
  }

  @Test
  void aGuessIsRightByLotOnceInAllWaysToLayLabels() {
    Masks right = labelled(List.of(1, 0), List.of(1, 0)).masks().orElseThrow();
    assertThat(right.right()).isTrue();
    assertThat(right.chance()).isEqualTo(0.5);
    assertThat(labelled(List.of(0, 1), List.of(1, 0)).masks().orElseThrow().right()).isFalse();
    assertThat(labelled(List.of(), List.of(1, 0)).masks().orElseThrow().right()).isFalse();
  }

  @Test
  void aMappingThatIsNoneIsNotRead() {
    for (List<Integer> broken :
        Arrays.asList(List.of(0, 0), List.of(0), List.of(0, 2), List.of(0, 1, 1))) {
      Masks masks = labelled(broken, broken).masks().orElseThrow();
      assertThat(masks.isRead()).isFalse();
      assertThat(masks.isGuessed()).isFalse();
      assertThat(masks.analysed().setups().get(0).name()).isEqualTo("X");
    }
  }

  @Test
  void aSessionOfASeriesEntersOverHardwareAndOnlyOnceItsMasksAreRead() {
    List<String> ids = List.of("shock-k", "shock-l");
    double straight = SeriesNumbers.of(labelled(List.of(0, 1), List.of()), ids).estimate();
    double turned = SeriesNumbers.of(labelled(List.of(1, 0), List.of()), ids).estimate();
    assertThat(turned).isEqualTo(-straight);
    org.assertj.core.api.Assertions.assertThatThrownBy(
            () -> SeriesNumbers.of(labelled(List.of(), List.of()), ids))
        .isInstanceOf(blindlap.fault.Unusable.class);
  }
}
