package blindlap.plot.surface;

/**
 * The weights of the plot face, Source Sans 3, and two of Source Serif 4 for the answer of a
 * picture that stands alone; each is a font file of its own.
 */
public enum Weight {
  /** Running words and numbers. */
  REGULAR("SourceSans3_400Regular.ttf", 400),
  /** Names and results. */
  SEMIBOLD("SourceSans3_600SemiBold.ttf", 600),
  /** Codes and clocks. */
  BOLD("SourceSans3_700Bold.ttf", 700),
  /** The answer of a picture that stands alone. */
  SERIF("SourceSerif4_600SemiBold.ttf", 600),
  /** The question above it. */
  ITALIC("SourceSerif4_400Regular_Italic.ttf", 400);

  /** Family name in style sheets and drawings. */
  public static final String FAMILY = "Source Sans 3";

  private static final String SERIFS = "Source Serif 4";

  private final String file;
  private final int number;

  Weight(String file, int number) {
    this.file = file;
    this.number = number;
  }

  /** Name of the font file among the resources in {@code /blindlap/fonts/}. */
  public String file() {
    return file;
  }

  /**
   * Family name of this weight alone, which SVG pictures ask for first: renderers for paper pick by
   * family and mistake the weights of one family for one another. A page that embeds the fonts
   * declares them under these names.
   */
  public String family() {
    return switch (this) {
      case REGULAR -> FAMILY;
      case SEMIBOLD -> FAMILY + " SemiBold";
      case BOLD -> FAMILY + " Bold";
      case SERIF -> SERIFS + " SemiBold";
      case ITALIC -> SERIFS + " Italic";
    };
  }

  /** Weight as style sheets count it, 100 to 900. */
  public int number() {
    return number;
  }
}
