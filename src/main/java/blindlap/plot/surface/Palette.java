package blindlap.plot.surface;

import java.util.EnumMap;
import java.util.HexFormat;
import java.util.Map;

/**
 * The colours of one theme. The same values stand in the style sheets; a test compares them.
 *
 * <p>The four setup inks keep a CIEDE2000 distance above 10 from one another under simulated colour
 * blindness (Machado, Oliveira and Fernandes 2009, full severity).
 */
public enum Palette {
  /** The light page. */
  PAPER(
      "F6F7F3 FFFFFF 15202B 46525D C7CEC9 E3E8E4 FFE788 15202B DFE5E3 7E8B8E"
          + " 1762B6 B0590C 571F5C 06281E"),
  /** The dark page. */
  DARK(
      "141A1F 1C242A E9ECE6 AAB4B8 3B464D 262F36 5C4F10 FFF3BF 2A343B 75828A"
          + " 3F93EA D67F2E F3C3EC 86EDC0"),
  /** Black on white, heavier, for a low sun. */
  SUNLIGHT(
      "FFFFFF FFFFFF 000000 000000 000000 ------ FFE788 000000 DFE5E3 000000"
          + " 0B4A94 7E3D00 4A1450 04231A"),
  /** For paper: shapes and dashes carry the setups, so black and white loses nothing. */
  PRINT(
      "FFFFFF FFFFFF 000000 333333 B5B5B5 E6E6E6 FFFFFF 000000 E4E4E4 777777"
          + " 000000 000000 000000 000000");

  private static final HexFormat HEX = HexFormat.of().withUpperCase();

  private final Map<Ink, Integer> colours = new EnumMap<>(Ink.class);

  Palette(String hex) {
    String[] words = hex.split(" ", -1);
    for (int i = 0; i < words.length; i++) {
      if (!words[i].startsWith("-")) {
        colours.put(ink(i), Integer.parseInt(words[i], 16));
      }
    }
    colours.put(Ink.CODE_DARK, 0x000000);
    colours.put(Ink.CODE_LIGHT, 0xFFFFFF);
  }

  // The colours above are listed in the order of the inks.
  private static Ink ink(int index) {
    return Ink.values()[index];
  }

  /** Whether this palette draws this ink at all; sunlight has no grid. */
  public boolean draws(Ink ink) {
    return colours.containsKey(ink);
  }

  /** The colour as 0xRRGGBB; an ink that is not drawn is the paper. */
  public int rgb(Ink ink) {
    Integer colour = colours.get(ink);
    return colour != null ? colour : colours.getOrDefault(Ink.PAPER, 0xFFFFFF);
  }

  /** The colour as {@code #RRGGBB}. */
  public String hex(Ink ink) {
    return "#" + HEX.toHexDigits(rgb(ink), 6);
  }

  /** The weight a face gets here: sunlight sets regular text in semi-bold. */
  public Weight weight(Weight asked) {
    return this == SUNLIGHT && asked == Weight.REGULAR ? Weight.SEMIBOLD : asked;
  }

  /**
   * Width of a line of this nominal width, in logical pixels; sunlight draws heavier, but not the
   * thinnest lines, which would fill the hatching.
   */
  public double lineWidth(double nominal) {
    return this == SUNLIGHT && nominal > 1 ? nominal * 1.5 : nominal;
  }

  /** Whether "look here" is a line below instead of a fill: paper copies lose a pale fill. */
  public boolean underlinesHighlight() {
    return this == PRINT;
  }

  /**
   * Contrast of two inks, 1 to 21.
   *
   * <p>Source: W3C, Web Content Accessibility Guidelines 2.2, "contrast ratio" and "relative
   * luminance" (with the corrected threshold 0.04045).
   */
  public double contrast(Ink one, Ink other) {
    double a = luminance(rgb(one));
    double b = luminance(rgb(other));
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(int rgb) {
    return 0.2126 * linear(rgb >> 16 & 255)
        + 0.7152 * linear(rgb >> 8 & 255)
        + 0.0722 * linear(rgb & 255);
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
