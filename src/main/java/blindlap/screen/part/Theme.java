package blindlap.screen.part;

import blindlap.plot.surface.Palette;
import java.net.URL;
import java.util.ArrayList;
import java.util.List;

/** The three ways a window can look; nothing moves between them. */
public enum Theme {
  /** Light. */
  PAPER(Palette.PAPER, "paper.css"),
  /** Dark. */
  DARK(Palette.DARK, "paper.css", "dark.css"),
  /** Black on white, heavier, for a low sun. */
  SUNLIGHT(Palette.SUNLIGHT, "paper.css", "sunlight.css");

  private final Palette palette;
  private final List<String> files;

  Theme(Palette palette, String... files) {
    this.palette = palette;
    this.files = List.of(files);
  }

  /** Colours for drawings. */
  public Palette palette() {
    return palette;
  }

  /** Addresses of the style sheets, in the order they lie over one another. */
  public List<String> sheets() {
    List<String> sheets = new ArrayList<>();
    for (String file : files) {
      URL address = Theme.class.getResource("/blindlap/screen/" + file);
      if (address == null) {
        throw new IllegalStateException("The style sheet " + file + " is missing from the program");
      }
      sheets.add(address.toExternalForm());
    }
    return List.copyOf(sheets);
  }
}
