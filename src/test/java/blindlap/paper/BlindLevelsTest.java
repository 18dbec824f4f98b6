package blindlap.paper;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.picture.BlindPicture;
import blindlap.plan.Plan;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.SvgSurface;
import blindlap.review.StepsDays;
import blindlap.seal.SessionKind;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** While the key is sealed the picture of a steps day is the same whatever levels were on. */
class BlindLevelsTest {
  private static final Plan PLAN =
      StepsDays.plan("unit: clicks, levels: [3, 6, 9, 14], least: 1, most: 16", 4, 16, "lower");

  private static String picture(SealedDay day) {
    for (int stint = 1; stint <= PLAN.stints(); stint++) {
      BigDecimal time = BigDecimal.valueOf(930 + stint * stint % 17, 1);
      List<LapInput> lap = List.of(LapInput.of(new LapId(stint, 1), Map.of("lap time", time)));
      day.day(c -> c.record(lap, Source.PAPER));
    }
    day.life(c -> c.closeDay());
    return SvgSurface.svg(
        BlindPicture.of(day.state(), PLAN.measures().get(0), Set.of(2)).orElseThrow(),
        744,
        1,
        Palette.PAPER,
        "blind");
  }

  @Test
  void everyOrderHasTheSamePicture() {
    Set<String> orders = new HashSet<>();
    Set<String> pictures = new HashSet<>();
    for (long seed = 1; seed <= 20; seed++) {
      SealedDay day = new SealedDay(PLAN, SessionKind.comparison(), seed);
      pictures.add(picture(day));
      orders.add(day.key().order());
    }

    assertThat(orders).hasSizeGreaterThan(15);
    assertThat(pictures).hasSize(1);
    assertThat(pictures.iterator().next()).doesNotContain("clicks");
  }
}
