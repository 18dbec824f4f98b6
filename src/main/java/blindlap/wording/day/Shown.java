package blindlap.wording.day;

import blindlap.fault.TypedText;

/**
 * Texts as they are shown, wherever they come from: what a terminal, a page or a sheet would act on
 * is made visible. Notebooks of earlier programs may hold such characters, and nothing that was
 * typed vanishes.
 */
public final class Shown {
  private static final int PICTURES = 0x2400;
  private static final int DELETE = 0x7F;
  private static final int PICTURE_OF_DELETE = 0x2421;

  private Shown() {}

  /**
   * A text with control characters as their pictures (␇) and other codes without a shape by their
   * number (‹U+202E›). Tabs and line breaks stay.
   */
  public static String text(String text) {
    return shown(text, true);
  }

  /** The same for typefaces that lack those pictures: numbers throughout. */
  public static String inLetters(String text) {
    return shown(text, false);
  }

  private static String shown(String text, boolean pictures) {
    int first = first(text, pictures);
    if (first == text.length()) {
      return text;
    }
    StringBuilder out = new StringBuilder(text.length() + 16).append(text, 0, first);
    for (int i = first; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      int c = text.codePointAt(i);
      if (picture(c) && !pictures) {
        out.append('‹').append(TypedText.code(c == PICTURE_OF_DELETE ? DELETE : c - PICTURES));
        out.append('›');
      } else if (!odd(text, i)) {
        out.appendCodePoint(c);
      } else if (pictures && c < ' ') {
        out.appendCodePoint(PICTURES + c);
      } else if (pictures && c == DELETE) {
        out.appendCodePoint(PICTURE_OF_DELETE);
      } else {
        out.append('‹').append(TypedText.code(c)).append('›');
      }
    }
    return out.toString();
  }

  private static boolean picture(int c) {
    return c >= PICTURES && c <= PICTURE_OF_DELETE;
  }

  private static int first(String text, boolean pictures) {
    int i = 0;
    while (i < text.length() && !odd(text, i) && (pictures || !picture(text.charAt(i)))) {
      i += Character.charCount(text.codePointAt(i));
    }
    return i;
  }

  private static boolean odd(String text, int at) {
    int c = text.codePointAt(at);
    if (c == '\n' || c == '\t') {
      return false;
    }
    if (c == '\r') {
      return at + 1 == text.length() || text.charAt(at + 1) != '\n';
    }
    return c < ' '
        || c >= DELETE && (TypedText.control(c) || TypedText.noCharacter(c) || TypedText.turns(c));
  }
}
