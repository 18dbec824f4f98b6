package blindlap.screen.manual;

import java.awt.image.BufferedImage;
import java.util.List;

/**
 * A picture and what can be read on it.
 *
 * @param texts in the order in which the page holds them
 */
public record Photograph(BufferedImage image, List<String> texts) {
  public Photograph {
    texts = List.copyOf(texts);
  }
}
