package blindlap.plot;

import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import com.google.zxing.qrcode.encoder.QRCode;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * A QR code (ISO/IEC 18004), error correction M, with the quiet zone of four modules. Dark on light
 * in every palette, because readers need it so.
 */
public final class Qr implements Drawing {
  private static final int QUIET = 4;

  private final boolean[][] modules;
  private final Spoken spoken;

  private Qr(boolean[][] modules, Spoken spoken) {
    this.modules = modules;
    this.spoken = spoken;
  }

  /**
   * The code of these words.
   *
   * @param content what a reader gets, in UTF-8; 1 byte or more
   * @param spoken what the code says, for those who cannot scan it; must not hold a secret
   * @throws IllegalArgumentException when the content is empty or longer than a code can hold (2331
   *     bytes)
   */
  public static Qr of(String content, Spoken spoken) {
    if (content.isEmpty()) {
      throw new IllegalArgumentException("A code needs something to say");
    }
    try {
      QRCode code =
          Encoder.encode(
              content,
              ErrorCorrectionLevel.M,
              Map.of(EncodeHintType.CHARACTER_SET, StandardCharsets.UTF_8.name()));
      return new Qr(dark(code.getMatrix()), spoken);
    } catch (WriterException e) {
      throw new IllegalArgumentException(
          content.getBytes(StandardCharsets.UTF_8).length + " bytes are too long for one code", e);
    }
  }

  private static boolean[][] dark(ByteMatrix matrix) {
    boolean[][] modules = new boolean[matrix.getHeight()][matrix.getWidth()];
    for (int y = 0; y < matrix.getHeight(); y++) {
      for (int x = 0; x < matrix.getWidth(); x++) {
        modules[y][x] = matrix.get(x, y) == 1;
      }
    }
    return modules;
  }

  /** Modules along a side, without the quiet zone. */
  public int size() {
    return modules.length;
  }

  /** Whether a module is dark; column and row from the upper left, from 0. */
  public boolean dark(int column, int row) {
    return modules[row][column];
  }

  @Override
  public Spoken spoken() {
    return spoken;
  }

  @Override
  public double heightFor(double width, double textScale) {
    return width;
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    double side = width / (size() + 2 * QUIET);
    surface.rectangle(new Box(0, 0, width, width), Ink.CODE_LIGHT);
    surface.cells(QUIET * side, QUIET * side, side, modules, Ink.CODE_DARK);
  }
}
