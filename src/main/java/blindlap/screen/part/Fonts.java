package blindlap.screen.part;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import javafx.scene.text.Font;

/** Loads the bundled fonts, which every page and plot is set in. */
public final class Fonts {
  private static final List<String> FILES =
      List.of(
          "SourceSans3_400Regular.ttf",
          "SourceSans3_600SemiBold.ttf",
          "SourceSans3_700Bold.ttf",
          "SourceSerif4_400Regular.ttf",
          "SourceSerif4_400Regular_Italic.ttf",
          "SourceSerif4_600SemiBold.ttf");

  private static boolean loaded;

  private Fonts() {}

  /**
   * Loads the fonts, once; call it before the first scene is made.
   *
   * @throws IllegalStateException when a font is missing from the program or cannot be used
   */
  public static synchronized void load() {
    if (!loaded) {
      FILES.forEach(Fonts::load);
      loaded = true;
    }
  }

  private static void load(String file) {
    String name = "/blindlap/fonts/" + file;
    try (InputStream in = Fonts.class.getResourceAsStream(name)) {
      if (in == null || Font.loadFont(in, 12) == null) {
        throw new IllegalStateException("The font " + name + " is missing or cannot be used");
      }
    } catch (IOException e) {
      throw new UncheckedIOException("The font " + name + " cannot be read", e);
    }
  }
}
