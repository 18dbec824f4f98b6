package blindlap.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Spoken;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class DrawingsTest {
  private static final double[] WIDTHS = {380, 744, 1040};
  private static final double[] SCALES = {1, 1.3, 2};

  private interface Check {
    void of(String name, RecordingSurface surface, double width, double height);
  }

  private static Map<String, Drawing> drawings() {
    Map<String, Drawing> all = new TreeMap<>(Samples.all());
    all.putAll(MoreSamples.all());
    return all;
  }

  private static void everywhere(Check check) {
    drawings()
        .forEach(
            (name, drawing) -> {
              for (double width : WIDTHS) {
                // A window narrower than this in letters does not exist.
                for (double scale : width < 700 ? new double[] {1} : SCALES) {
                  String where = name + " at " + width + " x " + scale;
                  RecordingSurface surface = RecordingSurface.of(drawing, width, scale);
                  check.of(where, surface, width, drawing.heightFor(width, scale));
                }
              }
            });
  }

  @Test
  void wordsStayInsideThePictureAtEveryWidthAndTextScale() {
    everywhere(
        (name, surface, width, height) ->
            assertThat(surface.words)
                .allSatisfy(
                    words ->
                        assertThat(new Box(0, 0, width, height).grown(0.5).contains(words.box()))
                            .as(
                                "%s: “%s” %s in height %s",
                                name, words.words(), words.box(), height)
                            .isTrue()));
  }

  @Test
  void nothingDrawnLeavesThePicture() {
    everywhere(
        (name, surface, width, height) -> {
          if (surface.xs.isEmpty()) {
            return;
          }
          assertThat(Collections.min(surface.xs)).as(name).isGreaterThanOrEqualTo(-1);
          assertThat(Collections.max(surface.xs)).as(name).isLessThanOrEqualTo(width + 1);
          assertThat(Collections.min(surface.ys)).as(name).isGreaterThanOrEqualTo(-1);
          assertThat(Collections.max(surface.ys)).as(name).isLessThanOrEqualTo(height + 1);
        });
  }

  @Test
  void noTwoWordsOverlapAtOrdinaryWidths() {
    drawings()
        .forEach(
            (name, drawing) -> {
              for (double scale : SCALES) {
                RecordingSurface surface = RecordingSurface.of(drawing, 744, scale);
                assertThat(overlaps(surface)).as(name + " x " + scale).isEmpty();
              }
            });
  }

  private static List<String> overlaps(RecordingSurface surface) {
    List<String> pairs = new ArrayList<>();
    for (int i = 0; i < surface.words.size(); i++) {
      for (int j = i + 1; j < surface.words.size(); j++) {
        RecordingSurface.Words a = surface.words.get(i);
        RecordingSurface.Words b = surface.words.get(j);
        // Boxes leave room for accents and tails that hardly any word has.
        if (a.box().overlap(b.box()) > 0.12 * Math.min(area(a.box()), area(b.box()))) {
          pairs.add(a.words() + " / " + b.words());
        }
      }
    }
    return pairs;
  }

  private static double area(Box box) {
    return box.width() * box.height();
  }

  @Test
  void noLettersAreSmallerThanFourteenPixels() {
    everywhere(
        (name, surface, width, height) ->
            assertThat(surface.words).allMatch(words -> words.face().size() >= 14));
  }

  @Test
  void theWordsOfTheChosenStintsHideNoDotOfTheCurve() {
    for (int chosen : new int[] {12, 16, 20, 24, 32, 48}) {
      for (double scale : SCALES) {
        RecordingSurface surface =
            RecordingSurface.of(MoreSamples.detectable(chosen, 0.5), 744, scale);
        Box ground = surface.boxes.get(surface.fills.indexOf(Ink.HIGHLIGHT));
        assertThat(surface.discs).hasSize(8);
        assertThat(surface.discs)
            .allSatisfy(
                disc ->
                    assertThat(ground.overlap(Box.around(disc.x(), disc.y(), disc.radius())))
                        .as("%s at %s", chosen, scale)
                        .isZero());
      }
    }
  }

  @Test
  void aDayThatRunsOverKeepsItsEndMarkAndIsDarkBehindIt() {
    for (double left : new double[] {1, 19, 50, 190}) {
      RecordingSurface surface = RecordingSurface.of(MoreSamples.overrun(16, left), 744, 1);
      double perMinute = 742.0 / (40 + 16 * 19 + 30);
      double mark = 743 - left * perMinute;
      List<Box> dark = new ArrayList<>();
      for (int i = 0; i < surface.boxes.size(); i++) {
        if (surface.fills.get(i) == Ink.INK && surface.boxes.get(i).height() > 30) {
          dark.add(surface.boxes.get(i));
        }
      }

      assertThat(dark).isNotEmpty().allMatch(box -> box.x() > mark - 0.5);
      assertThat(dark.stream().mapToDouble(Box::width).sum())
          .isCloseTo(left * perMinute, within(0.5));
      assertThat(surface.find("sunset 16:38 CET").words()).isNotEmpty();
      assertThat(surface.find("16:38").words()).isNotEmpty();
      assertThat(surface.lines)
          .anyMatch(line -> line.pen().width() == 3 && Math.abs(line.x1() - mark) < 1);
    }
    assertThat(RecordingSurface.of(MoreSamples.day(16), 744, 1).lines)
        .noneMatch(line -> line.pen().width() == 3);
  }

  @Test
  void stintsAndDifferenceHaveTheSameUnitsPerPixel() {
    RecordingSurface surface = RecordingSurface.of(Samples.difference(), 744, 1);
    double above = middle(surface.find("1:36.0")) - middle(surface.find("1:34.0"));
    double below = middle(surface.find("+1.0")) - middle(surface.find("−1.0"));
    assertThat(above).isCloseTo(below, within(1.01));
    assertThat(above / 2).isCloseTo(Samples.difference().pixelsPerUnit(744, 1), within(0.6));
  }

  private static double middle(RecordingSurface.Words words) {
    return words.box().x() + words.box().width() / 2;
  }

  @Test
  void theEstimateHangsUnderTheOtherSetupsMeanAndZeroUnderTheReference() {
    RecordingSurface surface = RecordingSurface.of(Samples.difference(), 744, 1);
    List<Double> ticks =
        surface.lines.stream()
            .filter(line -> line.pen().width() == 2.4)
            .map(RecordingSurface.Line::x1)
            .toList();
    double estimate =
        surface.discs.stream()
            .filter(disc -> disc.ink() == Ink.INK)
            .map(RecordingSurface.Disc::x)
            .findFirst()
            .orElseThrow();
    assertThat(ticks).hasSize(2);
    assertThat(estimate).isCloseTo(ticks.get(1), within(1e-6));
    assertThat(middle(surface.find("0.0"))).isCloseTo(ticks.get(0), within(0.6));
  }

  @Test
  void theNinetyFiveIntervalIsThinAndTheNinetyIntervalThickAndShorter() {
    RecordingSurface surface = RecordingSurface.of(Samples.difference(), 744, 1);
    RecordingSurface.Line thin = level(surface, 2);
    RecordingSurface.Line thick = level(surface, 5);
    assertThat(thin.x1()).isLessThan(thick.x1());
    assertThat(thin.x2()).isGreaterThan(thick.x2());
  }

  private static RecordingSurface.Line level(RecordingSurface surface, double width) {
    return surface.lines.stream()
        .filter(line -> line.pen().width() == width && line.y1() == line.y2())
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theWorthwhileBandIsShorterThanTheNoiseBandSoThatBothShowWhenTheyCoincide() {
    RecordingSurface surface = RecordingSurface.of(Samples.nearZero(), 744, 1);
    Box noise = surface.boxes.get(surface.fills.indexOf(Ink.NOISE));
    double hatched =
        surface.lines.stream()
            .filter(line -> line.pen().ink() == Ink.HATCH)
            .mapToDouble(line -> Math.max(line.y1(), line.y2()))
            .max()
            .orElseThrow();
    assertThat(hatched).isLessThan(noise.bottom() - 15);
  }

  @Test
  void tickDistanceThatIsNotTheEstimateIsRefused() {
    StintsContent.Row a = new StintsContent.Row(SetupMark.A, "A", List.of(1.0), 1, "1");
    StintsContent.Row b = new StintsContent.Row(SetupMark.B, "B", List.of(2.0), 2, "2");
    Axis axis = new Axis("s", Axis.Counting.DECIMAL, Samples::plain);
    Limits limits = new Limits(-1, 1);
    StintsContent.Pair pair =
        new StintsContent.Pair(
            SetupMark.B, SetupMark.A, "D", "B less A", -1, limits, limits, "", "");
    assertThatThrownBy(
            () ->
                StintsAndDifference.of(
                    new StintsContent(
                        List.of(a, b),
                        axis,
                        List.of(pair),
                        axis,
                        Optional.empty(),
                        new Band(0.5, List.of("small")),
                        "left",
                        "right",
                        new Spoken("s", ""))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("estimate is -1");
  }

  @Test
  void aSealedDayIsDrawnInInkAloneAndRefusesAHalfOpenKey() {
    RecordingSurface surface = RecordingSurface.of(Samples.blind(16), 744, 1);
    assertThat(surface.discs).extracting(RecordingSurface.Disc::ink).containsOnly(Ink.INK);
    assertThat(surface.words).extracting(RecordingSurface.Words::words).contains("731", "312");
    RiddenContent.Stint open = stint(1, Optional.of(SetupMark.A));
    RiddenContent.Stint sealed = stint(2, Optional.empty());
    assertThatThrownBy(
            () ->
                RiddenOrder.of(
                    new RiddenContent(
                        List.of(open, sealed),
                        List.of(),
                        List.of(),
                        new Axis("s", Axis.Counting.DECIMAL, Samples::plain),
                        "",
                        "",
                        new Spoken("s", ""))))
        .hasMessageContaining("open for all stints or sealed for all");
  }

  private static RiddenContent.Stint stint(int number, Optional<SetupMark> setup) {
    return new RiddenContent.Stint(
        number, OptionalDouble.of(number), setup, "", RiddenContent.Standing.KEPT, "");
  }

  @Test
  void aVoidLapFarOutDoesNotFlattenTheOthers() {
    RecordingSurface surface = RecordingSurface.of(Samples.riddenOrderWithVoids(), 744, 1);
    double low = surface.discs.stream().mapToDouble(RecordingSurface.Disc::y).max().orElseThrow();
    double high = surface.discs.stream().mapToDouble(RecordingSurface.Disc::y).min().orElseThrow();
    assertThat(low - high).isGreaterThan(120);
  }

  @Test
  void anUnboundedIntervalEndsInArrowHeadsInsideThePicture() {
    String drawn = RecordingSurface.of(Samples.unbounded(), 744, 1).all.toString();
    assertThat(drawn.split("polygon ", -1).length - 1)
        .as("two heads of the 95 % line, one of the 90 % bar, open triangles")
        .isEqualTo(2 + 1 + 4);
  }

  @Test
  void aCurveOfMillionsOfOrdersIsDrawnFromItsHighestPoints() {
    int count = 2_704_156;
    double[] knots = new double[count];
    double[] heights = new double[count + 1];
    for (int i = 0; i < count; i++) {
      knots[i] = -5 + 10.0 * i / count;
      heights[i] = Math.min(1, 2.0 * Math.min(i + 1, count - i) / count);
    }
    heights[count] = 1.0 / count;
    ConfidenceCurvePlot plot =
        ConfidenceCurvePlot.of(
            new CurveContent(
                0.0,
                "best",
                new CurveContent.Named(new Limits(-4.7, 4.7), "95 %"),
                new CurveContent.Named(new Limits(-4.5, 4.5), "90 %"),
                1,
                List.of("no difference"),
                new Band(0.5, List.of("small")),
                new Axis("s", Axis.Counting.DECIMAL, Samples::plain),
                new Axis("p", Axis.Counting.DECIMAL, Samples::plain),
                new Spoken("s", "")),
            knots,
            heights);
    ThinnedCurve thinned = ThinnedCurve.of(knots, heights, -6, 6);
    assertThat(thinned.height(ThinnedCurve.COLUMNS / 2)).isCloseTo(1, within(0.01));
    RecordingSurface surface = RecordingSurface.of(plot, 744, 1);
    assertThat(surface.xs.size()).isLessThan(6000);
  }
}
