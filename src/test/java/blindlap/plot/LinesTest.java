package blindlap.plot;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plot.surface.Face;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Weight;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where words of a drawing may be broken. */
class LinesTest {
  private static final String PAIR =
      "Shock L − Shock K: 2.0 s faster; 95 % interval 1.6 to 2.4 s faster, p = .0017; real";

  /** At whatever width the line ends, a p keeps its value. */
  @Test
  void aValueStaysWithItsSignAtEveryWidth() {
    Face face = new Face(Weight.REGULAR, 14);
    int broken = 0;
    for (int width = 90; width < 700; width++) {
      List<String> lines = Lines.wrap(PAIR, face, width, 20);
      broken += lines.size() > 1 ? 1 : 0;
      assertThat(String.join(" ", lines)).as("width " + width).isEqualTo(PAIR);
      assertThat(lines).as("width " + width).anyMatch(line -> line.contains("p = .0017"));
    }
    assertThat(broken).isGreaterThan(100);
  }

  /** Where no number follows, it is a word like any other. */
  @Test
  void anEqualsSignInANameHoldsNothingTogether() {
    Face face = new Face(Weight.REGULAR, 14);
    String name = "green cartridge = softer one";
    assertThat(Lines.wrap(name, face, face.room("green cartridge"), 9))
        .startsWith("green cartridge");
  }
}
