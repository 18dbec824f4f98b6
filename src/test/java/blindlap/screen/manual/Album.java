package blindlap.screen.manual;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.screen.ManualWindow;
import blindlap.screen.Window;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;

/**
 * The pictures of the manual with their tables of texts: taken anew with {@code
 * -Dmanual.pictures=take}, else held against the page as it is now.
 */
public final class Album {
  /** Where pictures and tables are. */
  public static final Path FOLDER = Path.of("docs/manual/pictures");

  /** No page of the manual is to take long to load. */
  static final int MOST_BYTES = 250_000;

  private static final Pattern IDLE = Pattern.compile("(closes itself in) \\d:\\d\\d");
  private static final boolean TAKE = "take".equals(System.getProperty("manual.pictures"));
  private final Set<ManualPicture> all = new TreeSet<>();

  /** True where pictures are made, not only looked at. */
  public static boolean takes() {
    return TAKE;
  }

  /** Takes the picture of what the window shows, or holds the one that is there against it. */
  void take(ManualWindow window, ManualPicture picture) {
    put(picture, Window.call(() -> new Camera(window).take(picture.promise(), TAKE)));
  }

  /** The same of a picture that was made in another way. */
  public void put(ManualPicture picture, Photograph taken) {
    Photograph now = new Photograph(taken.image(), masked(taken.texts()));
    assertThat(all.add(picture)).as("%s is taken once", picture).isTrue();
    assertThat(now.texts()).as("words on %s", picture).isNotEmpty();
    try {
      if (TAKE) {
        write(picture, now);
      }
      check(picture, now.texts());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** How long ago the window was touched hangs on the machine that takes the picture. */
  private static List<String> masked(List<String> texts) {
    return texts.stream().map(text -> IDLE.matcher(text).replaceAll("$1 m:ss")).toList();
  }

  private static void write(ManualPicture picture, Photograph now) throws IOException {
    byte[] png = FewColours.png(now.image());
    Files.createDirectories(FOLDER);
    Files.write(picture.file(".png"), png);
    String table =
        String.join("\n", head(picture, png)) + "\n\n" + String.join("\n", now.texts()) + "\n";
    Files.writeString(picture.file(".txt"), table);
  }

  /** What the table says of the picture itself. */
  private static List<String> head(ManualPicture picture, byte[] png) throws IOException {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    return List.of(
        "picture: " + picture.words(),
        "shows: " + picture.promise().words(),
        "size: " + image.getWidth() + " x " + image.getHeight(),
        "sha-256: " + sha256(png));
  }

  private static void check(ManualPicture picture, List<String> texts) throws IOException {
    byte[] png = Files.readAllBytes(picture.file(".png"));
    String table = Files.readString(picture.file(".txt"), StandardCharsets.UTF_8);
    int blank = table.indexOf("\n\n");
    assertThat(table.substring(0, blank).lines())
        .as("table of %s: %s", picture, ManualPicture.AGAIN)
        .containsExactlyElementsOf(head(picture, png));
    assertThat(png.length).as("bytes of %s", picture).isLessThan(MOST_BYTES);
    assertThat(texts)
        .as("what can be read where %s was taken: %s", picture, ManualPicture.AGAIN)
        .containsExactlyElementsOf(table.substring(blank + 2).lines().toList());
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
