package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Everything that a card shows; nobody can switch any of it off. Where there is no room for all of
 * it in letters that can be read, paragraphs leave in the order that they declare.
 *
 * @param question what was asked, as typed
 * @param before of the answer, what stands before the phrase
 * @param phrase the marked words; may be empty
 * @param after what stands after them
 * @param mark what makes this less than a whole blind day, as the largest caption; may be empty
 * @param pictures one or two drawings with every stint; none where nothing could be compared
 * @param paragraphs what stands beside them, the most important first
 * @param left what is said where paragraphs left: of one, of two and so on, as many as may leave
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
    List<String> left,
    Paragraph caution,
    List<String> fingerprints,
    String brand,
    Spoken spoken) {
  /** Copies the lists. */
  public CardContent {
    pictures = List.copyOf(pictures);
    paragraphs = List.copyOf(paragraphs);
    left = List.copyOf(left);
    fingerprints = List.copyOf(fingerprints);
    if (pictures.size() > 2) {
      throw new IllegalArgumentException("A card holds two pictures at most");
    }
    if (left.size() != paragraphs.stream().filter(p -> p.leaves() > 0).count()) {
      throw new IllegalArgumentException("What leaves is said, and nothing else is");
    }
  }

  /** The paragraphs after so many have left, the first to leave first, and how many did. */
  List<Paragraph> without(int gone) {
    if (gone == 0) {
      return paragraphs;
    }
    List<Paragraph> kept = new ArrayList<>(paragraphs);
    paragraphs.stream()
        .filter(p -> p.leaves() > 0)
        .sorted(Comparator.comparingInt(Paragraph::leaves))
        .limit(gone)
        .forEach(kept::remove);
    kept.add(new Paragraph("", left.get(gone - 1), 0));
    return kept;
  }

  /**
   * Running words whose beginning is strong.
   *
   * @param strong the beginning; may be empty
   * @param plain the rest; may be empty
   * @param leaves its place among those that leave where there is no room, 1 the first; 0 for one
   *     that stays
   */
  public record Paragraph(String strong, String plain, int leaves) {}
}
