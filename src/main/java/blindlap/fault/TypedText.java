package blindlap.fault;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * The one rule for texts that come in: in files, in the window and after options of commands
 * (docs/plan-file.md, "Texts"). Files are UTF-8. A text holds no control characters, no half
 * characters and no codes that Unicode keeps free of characters for ever; words of one's own may
 * hold tabs and line breaks, a line may not. Marks of direction are let in, since some languages
 * need them, and shown as what they are.
 *
 * <p>Source: The Unicode Standard, chapter 23 (controls, noncharacters, surrogates) and Annex 9
 * (directional formatting characters).
 */
public final class TypedText {
  /** Most characters of any text. */
  public static final int MOST = 2000;

  private static final char MARK = '\uFEFF';

  /** Whether a text may have more than one line. */
  public enum Form {
    LINE,
    WORDS
  }

  private TypedText() {}

  /** The text of a file, without its byte order mark; empty if the bytes are not UTF-8. */
  public static Optional<String> decoded(byte[] bytes) {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return Optional.of(!text.isEmpty() && text.charAt(0) == MARK ? text.substring(1) : text);
    } catch (CharacterCodingException e) {
      return Optional.empty();
    }
  }

  /**
   * What is wrong with the characters of a text: the first of its faults; empty if nothing is.
   *
   * @param where field, line or place, as the user knows it
   */
  public static Optional<Problem> flaw(String text, Form form, String where) {
    int place = 1;
    for (int i = 0; i < text.length(); place++) {
      int c = text.codePointAt(i);
      boolean wide = c == '\t' || lineBreak(c);
      if (control(c) && !(wide && form == Form.WORDS)) {
        return Optional.of(
            lineBreak(c)
                ? Problem.of(TextFault.LINE_BREAK, where, place)
                : Problem.of(TextFault.CONTROL, where, code(c), place));
      }
      if (noCharacter(c)) {
        return Optional.of(Problem.of(TextFault.NO_CHARACTER, where, code(c), place));
      }
      i += Character.charCount(c);
    }
    return Optional.empty();
  }

  /** As {@link #flaw}, and with the bound on its length. */
  public static Optional<Problem> problem(String text, Form form, String where) {
    return text.codePointCount(0, text.length()) > MOST
        ? Optional.of(Problem.of(TextFault.TOO_LONG, where, MOST))
        : flaw(text, form, where);
  }

  /** True for what a screen, a terminal or a page acts on in place of showing it. */
  public static boolean control(int c) {
    return Character.isISOControl(c) || c == 0x2028 || c == 0x2029;
  }

  private static boolean lineBreak(int c) {
    return c == '\n' || c == '\r';
  }

  /** True for half a character (a surrogate on its own) and for the codes that never are one. */
  public static boolean noCharacter(int c) {
    return Character.getType(c) == Character.SURROGATE
        || c >= 0xFDD0 && c <= 0xFDEF
        || (c & 0xFFFE) == 0xFFFE;
  }

  /** True for marks that turn the direction in which letters are set, their own or their rest's. */
  public static boolean turns(int c) {
    return c >= 0x202A && c <= 0x202E
        || c >= 0x2066 && c <= 0x2069
        || c == 0x200E
        || c == 0x200F
        || c == 0x061C;
  }

  /** How a code is written: U+0007. */
  public static String code(int c) {
    return "U+%04X".formatted(c);
  }
}
