package blindlap.screen.part;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TypedFormTest {
  private int changes;
  private final TypedForm form = new TypedForm(() -> changes++);

  @Test
  void whatIsFilledInComesOutAsItWas() {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("question", "  with spaces and\ta tab");
    tree.put("laps", Map.of("scored", "one"));
    tree.put(
        "setups",
        List.of(
            Map.of("name", "K", "steps", List.of("lift", "swap")),
            Map.of("name", "L", "odd", "x")));

    form.fill(tree);

    assertThat(form.tree()).isEqualTo(tree);
  }

  @Test
  void aFieldThatWasLookedAtBeforeIsFilledInPlace() {
    TypedForm.Entry trail = form.field("trail");

    form.fill(Map.of("trail", "Mill track"));

    assertThat(trail.get()).isEqualTo("Mill track");
  }

  /**
   * A field of one line loses the breaks of a list: levels 3, 6 and 12 would stand there as 3612.
   */
  @Test
  void numbersOfAListStandInOneLineAndTextsInOneEach() {
    form.fill(Map.of("levels", List.of("3", "6", "12"), "steps", List.of("lift", "swap")));

    assertThat(form.field("levels").get()).isEqualTo("3, 6, 12");
    assertThat(form.field("steps").get()).isEqualTo("lift\nswap");
    assertThat(form.tree())
        .isEqualTo(Map.of("levels", "3, 6, 12", "steps", List.of("lift", "swap")));
  }

  @Test
  void fillingAnewForgetsWhatWasThere() {
    form.fill(Map.of("trail", "Mill track", "setups", List.of(Map.of("name", "K"))));

    form.fill(Map.of("rider", "R. Lind"));

    assertThat(form.tree()).isEqualTo(Map.of("rider", "R. Lind"));
  }

  @Test
  void sentencesGoToTheirFieldsAndTheRestIsLeft() {
    form.add("setups").add("settings").field("value").set("x");
    Map<String, String> sentences = new LinkedHashMap<>();
    sentences.put("setups[1].settings[1].value", "wrong");
    sentences.put("setups", "too few");

    form.tell("", sentences);

    assertThat(form.list("setups").get(0).list("settings").get(0).field("value").errorProperty())
        .extracting(p -> p.get())
        .isEqualTo("wrong");
    assertThat(sentences).containsOnlyKeys("setups");
  }

  @Test
  void everyChangeIsTold() {
    form.field("trail").set("M");
    form.add("setups");
    form.list("setups").remove(0);

    assertThat(changes).isEqualTo(3);
  }
}
