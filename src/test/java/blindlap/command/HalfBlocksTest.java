package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plot.Qr;
import blindlap.plot.surface.Spoken;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A code in characters is scanned as a terminal shows it. */
class HalfBlocksTest {
  private static final String LINK =
      "http://192.168.43.117:8480/ride#0123456789abcdef0123456789abcdef";

  /** Dots along a side of a module. */
  private static final int DOTS = 6;

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aReaderFindsTheLinkOnATerminalOfEitherKind(boolean lightLetters) throws ReaderException {
    List<String> lines =
        HalfBlocks.of(Qr.of(LINK, new Spoken("a code", "")), lightLetters).lines().toList();
    int wide = lines.stream().mapToInt(String::length).max().orElseThrow();
    assertThat(wide).as("fits a terminal of 80 columns").isLessThan(80);
    int letters = lightLetters ? 0xffffff : 0x000000;
    int ground = lightLetters ? 0x000000 : 0xffffff;
    int width = wide * DOTS;
    int height = lines.size() * 2 * DOTS;
    int[] pixels = new int[width * height];
    for (int y = 0; y < height; y++) {
      String line = lines.get(y / (2 * DOTS));
      boolean upper = y % (2 * DOTS) < DOTS;
      for (int x = 0; x < width; x++) {
        char shown = x / DOTS < line.length() ? line.charAt(x / DOTS) : ' ';
        boolean written = shown == '\u2588' || shown == (upper ? '\u2580' : '\u2584');
        pixels[y * width + x] = written ? letters : ground;
      }
    }
    assertThat(
            new QRCodeReader()
                .decode(
                    new BinaryBitmap(
                        new HybridBinarizer(new RGBLuminanceSource(width, height, pixels))),
                    Map.of(DecodeHintType.TRY_HARDER, true))
                .getText())
        .isEqualTo(LINK);
  }
}
