package blindlap.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Spoken;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What met on one day is solid, what only follows open and dashed; rows keep their order. */
class FieldRowsTest {
  @Test
  void onlyWhatFollowsIsDashedAndOpen() {
    RecordingSurface drawn = RecordingSurface.of(FieldSamples.whole(), 900, 1);
    assertThat(drawn.lines).filteredOn(line -> line.pen().dash() == Dash.FOLLOWS).hasSize(1);
    List<RecordingSurface.Disc> open =
        drawn.discs.stream().filter(disc -> disc.ink() == Ink.PAPER).toList();
    assertThat(open).hasSize(1);
    // Reference, two that were ridden, and the ring that is then opened.
    assertThat(drawn.discs).filteredOn(disc -> disc.ink() == Ink.INK).hasSize(4);
    RecordingSurface.Line dashed =
        drawn.lines.stream().filter(l -> l.pen().dash() == Dash.FOLLOWS).findFirst().orElseThrow();
    assertThat(dashed.y1()).isEqualTo(open.get(0).y());
  }

  @Test
  void rowsStandInTheOrderTheyAreGivenWhateverTheirResults() {
    RecordingSurface drawn = RecordingSurface.of(FieldSamples.whole(), 900, 1);
    assertThat(drawn.words.stream().map(RecordingSurface.Words::words))
        .containsSubsequence("Shock K", "Shock L", "Shock N", "Shock P");
    assertThat(drawn.discs.stream().map(RecordingSurface.Disc::ink).distinct())
        .containsOnly(Ink.INK, Ink.PAPER);
  }

  @Test
  void aSetupThatNoDaysLeadToHasWordsAndNoMark() {
    RecordingSurface drawn = RecordingSurface.of(FieldSamples.farAndApart(), 900, 1);
    assertThat(drawn.words.stream().map(RecordingSurface.Words::words)).contains("Shock Q");
    assertThat(drawn.discs).hasSize(3);
  }

  @Test
  void nothingToDrawAndNoNumberAreRefused() {
    assertThatThrownBy(
            () ->
                FieldRows.of(
                    new FieldRows.Content(
                        List.of(),
                        Optional.empty(),
                        new Axis("s", Axis.Counting.DECIMAL, Samples::plain),
                        "",
                        "",
                        new Spoken("", ""))))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () ->
                new FieldRows.Row(
                    FieldRows.Kind.RIDDEN, "Shock L", "", Double.NaN, new Limits(0, 0), ""))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("Shock L");
  }
}
