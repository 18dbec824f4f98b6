package blindlap.phone.browser;

import blindlap.screen.manual.Album;
import blindlap.screen.manual.ManualPicture;
import blindlap.screen.manual.Photograph;
import blindlap.session.day.PhoneRole;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The manual's pictures of phones, in a real browser: taken anew with {@code
 * -Dmanual.pictures=take}, else held against the pages. Not part of {@code mvn verify}, which holds
 * their words against those that are served.
 */
class PhonePictures {
  private static final int WIDTH = 390;
  private static final int HEIGHT = 844;

  /** Every text that is in view, a line each. */
  private static final String READ =
      """
      const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      const seen = [];
      while (walk.nextNode()) {
        const within = walk.currentNode.parentElement;
        if (within.checkVisibility() && within.tagName !== 'SCRIPT') {
          seen.push(walk.currentNode.data.replace(/\\s+/g, ' '));
        }
      }
      return seen.join('\\n');
      """;

  @TempDir Path folder;
  private final Album album = new Album();

  /** The day of the other pictures, without the recorder: a phone is not asked for its times. */
  private static String plan() throws IOException {
    return Files.readString(Album.FOLDER.resolve("plan.yaml"))
        .replaceAll("(?m)^trail_version:.*\n", "")
        .replaceAll("(?m)^  - .*kind: sector time.*\n", "")
        .replace(", timed_by: recording and watch", "");
  }

  @Test
  void riderAndStarterOnTheirPhones() throws IOException {
    try (DayOnLaptop day = new DayOnLaptop(folder.resolve("phones.blindlap"), plan());
        PhoneBrowser rider = PhoneBrowser.fresh(folder, "rider", WIDTH, HEIGHT);
        PhoneBrowser starter = PhoneBrowser.fresh(folder, "starter", WIDTH, HEIGHT)) {
      rider.open(day.link(PhoneRole.RIDER));
      starter.open(day.link(PhoneRole.STARTER));
      day.handOver(1);
      rider.sees("Stint 1 of 16");
      starter.touch("Start");
      rider.touchAt("[id='q-calm over stones'] .line", 0.62);
      rider.touchAt("[id='q-trust in the front-4']", 0.5);
      rider.sees("answers open");
      take(rider, ManualPicture.PHONE_RIDE);
      starter.sees("Stop");
      take(starter, ManualPicture.PHONE_START);
      rider.signal(false);
      rider.touchAt("[id='q-calm over stones'] .line", 0.55);
      rider.sees("Kept on this phone, not yet in the notebook.");
      take(rider, ManualPicture.PHONE_RIDE_KEPT);
    }
  }

  /** All of the page, however long it is. */
  private void take(PhoneBrowser phone, ManualPicture picture) throws IOException {
    Number whole = (Number) phone.script("return document.documentElement.scrollHeight");
    phone.size(WIDTH, Math.max(HEIGHT, whole.intValue()));
    phone.script("scrollTo(0, 0)");
    Path file = folder.resolve("phone.png");
    phone.picture(file);
    String words = (String) phone.script(READ);
    List<String> texts =
        words
            .lines()
            .map(line -> line.strip().replaceAll("\\d?\\d:\\d\\d(:\\d\\d)?", "hh:mm"))
            .filter(line -> !line.isEmpty())
            .toList();
    BufferedImage image = ImageIO.read(file.toFile());
    album.put(picture, new Photograph(image, texts));
    phone.size(WIDTH, HEIGHT);
  }
}
