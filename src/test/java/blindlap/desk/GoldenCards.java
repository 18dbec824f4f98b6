package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What cards say, held against golden files: their text, and every line of words of both pictures.
 * With {@code -Dblindlap.pictures=FOLDER} the cards are written there, to be looked at.
 */
public final class GoldenCards {
  private static final Pattern TEXT = Pattern.compile("<text[^>]*>([^<]*)</text>");

  private GoldenCards() {}

  /** Holds a card against the golden file of this name. */
  public static void check(String name, Map<String, byte[]> card) {
    write(name, card);
    golden(
        name,
        part(card, ".txt")
            + "\nWide\n"
            + drawn(part(card, "-1600x900.svg"))
            + "\nTall\n"
            + drawn(part(card, "-1080x1350.svg")));
  }

  /** The file of a card whose name ends so, as text. */
  public static String part(Map<String, byte[]> card, String end) {
    return card.entrySet().stream()
        .filter(file -> file.getKey().endsWith(end))
        .map(file -> new String(file.getValue(), StandardCharsets.UTF_8))
        .findFirst()
        .orElseThrow();
  }

  /** Every line of words that the picture shows, in the order drawn. */
  private static String drawn(String svg) {
    return TEXT.matcher(svg)
        .results()
        .map(r -> r.group(1))
        .collect(Collectors.joining("\n", "", "\n"));
  }

  private static void write(String name, Map<String, byte[]> files) {
    String folder = System.getProperty("blindlap.pictures");
    if (folder == null) {
      return;
    }
    try {
      Files.createDirectories(Path.of(folder));
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        String end = file.getKey().replaceFirst("^card-\\d+-\\d+-\\d+-[^-.]*", "");
        Files.write(Path.of(folder, name + end), file.getValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void golden(String name, String text) {
    Path file = Path.of("src", "test", "resources", "blindlap", "golden", "cards", name + ".txt");
    try {
      if (Boolean.getBoolean("blindlap.write")) {
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
      }
      assertThat(text)
          .as("run with -Dblindlap.write=true and read the difference")
          .isEqualTo(Files.readString(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
