package blindlap.screen.manual;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;

/**
 * A picture in the 256 colours that it has most of; every other one becomes the one that is next to
 * it. A page has a dozen, and those of the edges of its letters: a third of the bytes is left.
 */
final class FewColours {
  private static final int MOST = 256;

  private FewColours() {}

  /** The picture as a PNG file. */
  static byte[] png(BufferedImage image) {
    Map<Integer, Integer> counts = new HashMap<>();
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        counts.merge(image.getRGB(x, y) & 0xffffff, 1, Integer::sum);
      }
    }
    List<Integer> kept =
        counts.entrySet().stream()
            .sorted(
                Map.Entry.<Integer, Integer>comparingByValue(Comparator.reverseOrder())
                    .thenComparing(Map.Entry.comparingByKey()))
            .limit(MOST)
            .map(Map.Entry::getKey)
            .toList();
    int[] colours = kept.stream().mapToInt(Integer::intValue).toArray();
    IndexColorModel model =
        new IndexColorModel(
            8, colours.length, colours, 0, false, -1, java.awt.image.DataBuffer.TYPE_BYTE);
    BufferedImage few =
        new BufferedImage(
            image.getWidth(), image.getHeight(), BufferedImage.TYPE_BYTE_INDEXED, model);
    Map<Integer, Integer> places = new LinkedHashMap<>();
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        int place = places.computeIfAbsent(image.getRGB(x, y) & 0xffffff, c -> nearest(colours, c));
        few.getRaster().setSample(x, y, 0, place);
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(few, "png", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private static int nearest(int[] colours, int wanted) {
    int best = 0;
    int least = Integer.MAX_VALUE;
    for (int i = 0; i < colours.length; i++) {
      int red = (colours[i] >> 16) - (wanted >> 16);
      int green = (colours[i] >> 8 & 255) - (wanted >> 8 & 255);
      int blue = (colours[i] & 255) - (wanted & 255);
      int far = red * red + green * green + blue * blue;
      if (far < least) {
        least = far;
        best = i;
      }
    }
    return best;
  }
}
