package blindlap.command;

import blindlap.plot.Qr;

/** A code in characters, two rows a line. */
final class HalfBlocks {
  /** Modules of light around it; a code needs four. */
  private static final int QUIET = 4;

  private static final char BOTH = '\u2588';
  private static final char UPPER = '\u2580';
  private static final char LOWER = '\u2584';

  private HalfBlocks() {}

  /**
   * The code, with its quiet zone.
   *
   * @param lightLetters true where letters are lighter than what they stand on: what is written is
   *     what is light, then
   */
  static String of(Qr code, boolean lightLetters) {
    StringBuilder lines = new StringBuilder();
    int side = code.size() + 2 * QUIET;
    for (int row = 0; row < side; row += 2) {
      for (int column = 0; column < side; column++) {
        boolean upper = dark(code, column, row) != lightLetters;
        // Below the last row there is nothing to write.
        boolean lower = row + 1 < side && dark(code, column, row + 1) != lightLetters;
        lines.append(upper ? lower ? BOTH : UPPER : lower ? LOWER : ' ');
      }
      lines.append(System.lineSeparator());
    }
    return lines.toString().stripTrailing();
  }

  private static boolean dark(Qr code, int column, int row) {
    int x = column - QUIET;
    int y = row - QUIET;
    return x >= 0 && y >= 0 && x < code.size() && y < code.size() && code.dark(x, y);
  }
}
