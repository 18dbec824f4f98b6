package blindlap.screen.view;

import javafx.scene.Scene;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class GalleryTest {
  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void picturesOfAllPartsAreTakenInEveryTheme() {
    for (Theme theme : Theme.values()) {
      String name = theme.name().toLowerCase(java.util.Locale.ROOT);
      Window.run(
          () -> {
            Look look = new Look();
            look.themeProperty().set(theme);
            LineScale touched = Gallery.scale(look, "Grip in the rocks");
            touched.show(55.0);
            take(look, Gallery.review(look), 1280, 1750, "review-" + name);
            take(look, Gallery.ride(look, touched), 1280, 900, "ride-" + name);
            take(look, Gallery.helper(look, false), 1280, 900, "helper-" + name);
            take(look, Gallery.helper(look, true), 1280, 500, "helper-blank-" + name);
            take(look, Gallery.controls(look), 900, 950, "controls-" + name);
          });
    }
  }

  private static void take(
      Look look, javafx.scene.Parent root, double width, double height, String name) {
    Scene scene = new Scene(root, width, height);
    look.dress(scene);
    Window.picture(scene, name);
  }
}
