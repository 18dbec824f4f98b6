package blindlap.plot;

/** The three weights of the plot face, Source Sans 3; each is a font file of its own. */
public enum Weight {
  /** Running words and numbers. */
  REGULAR("SourceSans3_400Regular.ttf", 400),
  /** Names and results. */
  SEMIBOLD("SourceSans3_600SemiBold.ttf", 600),
  /** Codes and clocks. */
  BOLD("SourceSans3_700Bold.ttf", 700);

  /** Family name in style sheets and drawings. */
  public static final String FAMILY = "Source Sans 3";

  private final String file;
  private final int number;

  Weight(String file, int number) {
    this.file = file;
    this.number = number;
  }

  /** Name of the font file beside the other fonts. */
  String file() {
    return file;
  }

  /** Weight as style sheets count it, 100 to 900. */
  public int number() {
    return number;
  }
}
