package blindlap.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.picture.TellingPictures;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Spoken;
import blindlap.review.TellingFinding;
import blindlap.review.TellingRuns;
import blindlap.stats.tell.Discrimination;
import blindlap.wording.TellingNames;
import blindlap.wording.TellingWords;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TellingDrawingsTest {
  private static final Spoken SPOKEN = new Spoken("Said.", "");

  private static TrialStrip strip(boolean reference, TrialStrip.Trial... trials) {
    List<String> rows =
        reference ? List.of("reference", "lap 2", "lap 3") : List.of("lap 1", "lap 2");
    return TrialStrip.of(
        new TrialStrip.Content(List.of(trials), rows, reference, TellingSamples.SAID, SPOKEN));
  }

  private static long said(RecordingSurface surface, String word) {
    return surface.words.stream().filter(each -> each.words().equals(word)).count();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 15, 24, 100})
  void everyTrialIsDrawnOnceWithItsNumberAndWord(int number) {
    TrialStrip.Content content = TellingSamples.drawn(number, 3, false, 0.5);
    for (double width : new double[] {380, 744}) {
      RecordingSurface surface = RecordingSurface.of(TrialStrip.of(content), width, 1);
      long right = content.trials().stream().filter(TrialStrip.Trial::right).count();
      assertThat(said(surface, "right")).isEqualTo(right);
      assertThat(said(surface, "wrong")).isEqualTo(number - right);
      for (int i = 1; i <= number; i++) {
        assertThat(said(surface, Integer.toString(i))).isOne();
      }
      assertThat(surface.discs.stream().filter(d -> d.ink() == Ink.INK)).hasSize(number);
      assertThat(surface.discs.stream().filter(d -> d.ink() == Ink.PAPER)).hasSize(2 * number);
    }
  }

  @Test
  void theFilledLapStandsInItsRowAndTheRingRoundTheOneNamed() {
    RecordingSurface surface =
        RecordingSurface.of(
            strip(false, new TrialStrip.Trial(1, 0, 1), new TrialStrip.Trial(2, 1, 1)), 600, 1);
    List<RecordingSurface.Disc> filled =
        surface.discs.stream().filter(d -> d.ink() == Ink.INK).toList();
    double pitch = filled.get(1).y() - filled.get(0).y();
    assertThat(pitch).isGreaterThan(20);
    RecordingSurface.Disc open =
        surface.discs.stream().filter(d -> d.ink() == Ink.PAPER).findFirst().orElseThrow();
    // The ring of the first trial lies round its open lap, that of the second round its filled one.
    String ring = "ring " + open.x() + " " + open.y() + "Pen[ink=INK, width=2.4";
    String other = "ring " + filled.get(1).x() + " " + filled.get(1).y() + "Pen[ink=INK, width=2.4";
    assertThat(surface.all).contains(ring).contains(other);
    assertThat(surface.find("right").box().x()).isGreaterThan(surface.find("wrong").box().right());
  }

  @Test
  void aReferenceIsNoLapToChooseFrom() {
    RecordingSurface surface =
        RecordingSurface.of(strip(true, new TrialStrip.Trial(1, 1, 2)), 600, 1);
    assertThat(surface.discs).hasSize(2);
    assertThatThrownBy(() -> strip(true, new TrialStrip.Trial(7, 0, 1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("trial 7");
    assertThatThrownBy(() -> strip(false, new TrialStrip.Trial(8, 0, 2)))
        .hasMessageContaining("trial 8");
    assertThatThrownBy(() -> strip(false)).hasMessageContaining("needs a trial");
  }

  @Test
  void theDotAndTheBandStandWhereTheAxisSays() {
    ChanceAxis axis =
        TellingSamples.axis(15, 11, 5, 8, 10, new Limits(7.3, 13.6), new Limits(6.7, 13.8));
    RecordingSurface surface = RecordingSurface.of(axis, 744, 1);
    RecordingSurface.Disc dot =
        surface.discs.stream().filter(d -> d.ink() == Ink.INK).findFirst().orElseThrow();
    assertThat(dot.x()).isCloseTo(middle(surface, "11"), within(0.6));
    double count = (middle(surface, "15") - middle(surface, "0")) / 15;
    Box grey = surface.boxes.get(surface.fills.indexOf(Ink.NOISE));
    assertThat(grey.right()).isCloseTo(middle(surface, "0") + 8.5 * count, within(0.6));
    double hatchedTo =
        surface.lines.stream()
            .filter(line -> line.pen().ink() == Ink.HATCH)
            .mapToDouble(RecordingSurface.Line::x2)
            .max()
            .orElseThrow();
    assertThat(hatchedTo).isCloseTo(middle(surface, "0") + 10 * count, within(0.6));
    RecordingSurface.Line thick = level(surface, 5);
    RecordingSurface.Line thin = level(surface, 2);
    assertThat(thin.x1()).isLessThan(thick.x1());
    assertThat(thin.x2()).isGreaterThan(thick.x2());
    assertThat(dot.x()).isBetween(thick.x1(), thick.x2());
  }

  private static RecordingSurface.Line level(RecordingSurface surface, double width) {
    return surface.lines.stream()
        .filter(line -> line.pen().width() == width && line.y1() == line.y2())
        .findFirst()
        .orElseThrow();
  }

  private static double middle(RecordingSurface surface, String words) {
    Box box = surface.find(words).box();
    return box.x() + box.width() / 2;
  }

  /** With the words of the bundle, a long name, and every extreme of the count. */
  @Test
  void everyRunFitsItsPictures() {
    TellingNames names =
        new TellingNames(
            "A rider with a name that needs room", "4 clicks", "support under braking");
    for (Discrimination task :
        List.of(Discrimination.TRIANGLE, Discrimination.DUO_TRIO, Discrimination.TWO_CHOICE)) {
      for (int trials : new int[] {1, 2, 5, 15, 24, 100}) {
        for (int right : new int[] {0, trials / 3, trials / 2, trials}) {
          for (double matters : new double[] {0.01, 0.5, 1}) {
            TellingFinding finding =
                TellingRuns.run(task, trials, trials, right, matters, right % 2 == 1);
            TellingWords words = new TellingWords(finding, names);
            fits(TellingPictures.strip(finding, words));
            fits(TellingPictures.axis(finding, words));
          }
        }
      }
    }
  }

  private static void fits(Drawing drawing) {
    for (double[] each : new double[][] {{380, 1}, {744, 1}, {744, 2}, {1040, 1.3}}) {
      RecordingSurface surface = RecordingSurface.of(drawing, each[0], each[1]);
      Box page = new Box(0, 0, each[0], drawing.heightFor(each[0], each[1])).grown(1);
      assertThat(surface.words)
          .as(drawing.spoken().sentence())
          .allMatch(words -> page.contains(words.box()));
      for (int i = 0; i < surface.words.size(); i++) {
        Box one = surface.words.get(i).box();
        for (int j = i + 1; each[0] > 700 && j < surface.words.size(); j++) {
          Box other = surface.words.get(j).box();
          double least = Math.min(one.width() * one.height(), other.width() * other.height());
          assertThat(one.overlap(other))
              .as("%s: %s / %s", each[1], surface.words.get(i), surface.words.get(j))
              .isLessThanOrEqualTo(0.12 * least);
        }
      }
      assertThat(Collections.min(surface.xs)).isGreaterThanOrEqualTo(page.x());
      assertThat(Collections.max(surface.xs)).isLessThanOrEqualTo(page.right());
      assertThat(Collections.min(surface.ys)).isGreaterThanOrEqualTo(page.y());
      assertThat(Collections.max(surface.ys)).isLessThanOrEqualTo(page.bottom());
    }
  }

  @Test
  void numbersOffTheAxisAreRefused() {
    Limits limits = new Limits(1, 2);
    for (int[] each : new int[][] {{15, 16, 8}, {15, -1, 8}, {15, 5, 16}, {0, 0, 0}}) {
      assertThatThrownBy(
              () -> new ChanceAxis.Numbers(each[0], each[1], 5, each[2], 10, limits, limits))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("Not on an axis");
    }
    assertThatThrownBy(() -> new ChanceAxis.Numbers(15, 5, 5, 8, 4, limits, limits))
        .hasMessageContaining("Not on an axis");
  }
}
