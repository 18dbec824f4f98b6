package blindlap.seal;

import java.util.ArrayList;
import java.util.List;

/**
 * The stints' code numbers: distinct, 100 to 999, from a source that knows nothing of the order.
 */
final class Codes {
  static final int FIRST = 100;
  static final int COUNT = 900;
  private static final int RANGE = 1 << Short.SIZE;

  private Codes() {}

  /**
   * Draws codes: two bytes, big-endian, are a number v; v at or above 64 800 is rejected; the code
   * is 100 + v mod 900, rejected if another stint has it.
   *
   * @param stints how many, at most 900
   */
  static List<Integer> draw(int stints, SecureBytes source) {
    if (stints < 1 || stints > COUNT) {
      throw new IllegalArgumentException("there are codes for 1 to 900 stints, not " + stints);
    }
    List<Integer> codes = new ArrayList<>(stints);
    while (codes.size() < stints) {
      byte[] two = source.exactly(2);
      int value = (two[0] & 0xff) << 8 | (two[1] & 0xff);
      int code = FIRST + value % COUNT;
      if (value < RANGE - RANGE % COUNT && !codes.contains(code)) {
        codes.add(code);
      }
    }
    return List.copyOf(codes);
  }
}
