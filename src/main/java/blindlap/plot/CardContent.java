package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import java.util.List;

/**
 * Everything that a card shows; none of it can be left out.
 *
 * @param question what was asked, as typed
 * @param before of the answer, what stands before the phrase
 * @param phrase the marked words; may be empty
 * @param after what stands after them
 * @param mark what makes this less than a whole blind day, as the largest caption; may be empty
 * @param pictures one or two drawings with every stint; none where nothing could be compared
 * @param paragraphs what stands beside them, the most important first
 * @param caution with its title
 * @param fingerprints one line each
 * @param brand the program's name
 * @param spoken the card in words
 */
public record CardContent(
    String question,
    String before,
    String phrase,
    String after,
    String mark,
    List<Drawing> pictures,
    List<Paragraph> paragraphs,
    Paragraph caution,
    List<String> fingerprints,
    String brand,
    Spoken spoken) {
  /** Copies the lists. */
  public CardContent {
    pictures = List.copyOf(pictures);
    paragraphs = List.copyOf(paragraphs);
    fingerprints = List.copyOf(fingerprints);
    if (pictures.size() > 2) {
      throw new IllegalArgumentException("A card holds two pictures at most");
    }
  }

  /**
   * Running words whose beginning is strong.
   *
   * @param strong the beginning; may be empty
   * @param plain the rest; may be empty
   */
  public record Paragraph(String strong, String plain) {}
}
