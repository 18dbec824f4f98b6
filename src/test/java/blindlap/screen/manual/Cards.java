package blindlap.screen.manual;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;

/**
 * Cards among the pictures: the file that the key writes, and the words of the same card as SVG.
 */
final class Cards {
  private static final Pattern TEXT = Pattern.compile("<text[^>]*>([^<]*)</text>");

  private Cards() {}

  /**
   * Puts a card among the pictures.
   *
   * @param size of the card as its files are named
   */
  static void put(Album album, ManualPicture picture, Map<String, byte[]> files, String size) {
    String svg = new String(file(files, size + ".svg"), StandardCharsets.UTF_8);
    List<String> texts = TEXT.matcher(svg).results().map(found -> found.group(1).strip()).toList();
    album.put(picture, new Photograph(image(file(files, size + ".png")), texts));
  }

  private static byte[] file(Map<String, byte[]> files, String ending) {
    String name =
        files.keySet().stream().filter(each -> each.endsWith(ending)).findFirst().orElseThrow();
    return Objects.requireNonNull(files.get(name));
  }

  private static BufferedImage image(byte[] png) {
    try {
      return ImageIO.read(new ByteArrayInputStream(png));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
