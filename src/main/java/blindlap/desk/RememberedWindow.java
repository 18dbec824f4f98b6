package blindlap.desk;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import java.util.Properties;

/**
 * How the window was left: size, place, theme and text size. It lies beside the log of mistakes in
 * the user's data folder, never in a notebook: it is of the machine, not of the rides.
 */
public final class RememberedWindow {
  private final Path file;

  /**
   * The window as it was left.
   *
   * @param x left edge in pixels of the screens
   * @param y upper edge
   * @param width width while it is not maximised
   * @param height height while it is not maximised
   * @param maximised true if it filled the screen
   * @param theme name of the theme
   * @param textScale 1 for 100 %
   */
  public record Left(
      double x,
      double y,
      double width,
      double height,
      boolean maximised,
      String theme,
      double textScale) {}

  /**
   * @param file where it is remembered; made when first needed
   */
  public RememberedWindow(Path file) {
    this.file = file;
  }

  /** The window as it was left; empty the first time, and where nothing of use is found. */
  public Optional<Left> left() {
    Properties kept = new Properties();
    try {
      kept.load(new StringReader(Files.readString(file)));
      Left left =
          new Left(
              number(kept, "x"),
              number(kept, "y"),
              number(kept, "width"),
              number(kept, "height"),
              Boolean.parseBoolean(kept.getProperty("maximised")),
              kept.getProperty("theme", ""),
              number(kept, "text"));
      return Optional.of(left);
    } catch (IOException | IllegalArgumentException unreadable) {
      return Optional.empty();
    }
  }

  private static double number(Properties kept, String name) {
    double number = Double.parseDouble(kept.getProperty(name, "none"));
    if (!Double.isFinite(number)) {
      throw new NumberFormatException(name);
    }
    return number;
  }

  /** Remembers the window; where that cannot be written it opens as the first time. */
  public void keep(Left left) {
    String text =
        "# How the window was left. Delete this file to open it as the first time.\n"
            + ("x=" + left.x() + "\ny=" + left.y() + "\n")
            + ("width=" + left.width() + "\nheight=" + left.height() + "\n")
            + ("maximised=" + left.maximised() + "\ntheme=" + left.theme() + "\n")
            + ("text=" + left.textScale() + "\n");
    try {
      Path folder = file.toAbsolutePath().getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      // Whole or not at all: another window may read it at this moment.
      Path fresh = file.resolveSibling(file.getFileName() + ".new");
      Files.writeString(fresh, text);
      Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException unwritable) {
      // Nothing of the rides is lost.
    }
  }
}
