package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.QuarryTrail;
import blindlap.exchange.TrailFault;
import blindlap.exchange.TrailFile;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.wording.day.Problems;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Mangled files of trails: a sentence of a {@link TrailFault}, or a trail whose text is its own
 * reading. Three hundred of each kind in every build, more with {@code -Dmangled=5000}.
 */
class MangledTrailsTest {
  private static final int FILES = Math.max(300, Integer.getInteger("mangled", 300));
  private static final String GOOD = TrailFile.text(QuarryTrail.trail());
  private static final String[] ODD = {
    "1e999999999", "-1e999999999", "1e-999999999", "NaN", "null", "true", "\"11\"", "[]", "{}",
    "9007199254740993", "-0", "181", "91", "1e308", "0.00000005", "1E5", "[[[[1]]]]", ""
  };

  private int read;
  private int refused;

  private void judge(byte[] bytes) {
    try {
      Trail trail = TrailFile.read(bytes);
      read++;
      String text = TrailFile.text(trail);
      assertThat(TrailFile.trail(text)).isEqualTo(trail);
      assertThat(trail.gates()).hasSizeBetween(2, 41);
    } catch (Unreadable e) {
      refused++;
      assertThat(e.problem().fault()).isInstanceOf(TrailFault.class);
      assertThat(Problems.sentence(e.problem()))
          .doesNotContain("{0", "{1", "{2", "Exception")
          .endsWith(".")
          .hasSizeLessThan(400);
    }
  }

  @Test
  void noMangledFileOfATrailBreaksTheReader() throws IOException {
    for (int i = 0; i < FILES; i++) {
      judge(new MangledFile(i, false).of(GOOD));
    }
    assertThat(refused).isGreaterThan(FILES / 10);
  }

  /** One value changed at a time: what only reading numbers, lists and names can meet. */
  @Test
  void noOddValueBreaksTheReader() {
    Random random = new Random(20_261_128);
    for (int i = 0; i < FILES; i++) {
      int at = random.nextInt(GOOD.length());
      while (",:[".indexOf(GOOD.charAt(at)) < 0) {
        at = (at + 1) % GOOD.length();
      }
      int end = at + 1;
      while (end < GOOD.length() && ",]}".indexOf(GOOD.charAt(end)) < 0) {
        end++;
      }
      String odd = ODD[random.nextInt(ODD.length)];
      judge(
          (GOOD.substring(0, at + 1) + odd + GOOD.substring(end)).getBytes(StandardCharsets.UTF_8));
    }
    assertThat(refused).isGreaterThan(FILES / 2);
    assertThat(read).isPositive();
  }

  /** Files cut short, and files with nothing but brackets. */
  @Test
  void cutAndDeepFilesAreRefused() {
    for (int i = 1; i < 200; i++) {
      judge(GOOD.substring(0, GOOD.length() * i / 200).getBytes(StandardCharsets.UTF_8));
    }
    judge("[".repeat(200_000).getBytes(StandardCharsets.UTF_8));
    judge(("{\"a\":" + "[".repeat(100_000)).getBytes(StandardCharsets.UTF_8));
    judge(new byte[] {(byte) 0xff, (byte) 0xfe});
    assertThat(read).isZero();
  }
}
