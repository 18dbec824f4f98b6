package blindlap.wording;

import java.util.ArrayList;
import java.util.List;

/**
 * The words of a card, whole; a picture may have to cut their ends.
 *
 * @param question what was asked, as typed
 * @param headline the answer
 * @param mark what makes it less than a whole blind day; empty if nothing does
 * @param parts what stands beside the picture, the most important first
 * @param left what is said where parts left for want of room: of one, of two and so on
 * @param caution the cautions, under their title
 * @param fingerprints the start of each
 * @param brand the program's name
 */
public record CardText(
    String question,
    Headline headline,
    String mark,
    List<Part> parts,
    List<String> left,
    Part caution,
    List<String> fingerprints,
    String brand) {
  public CardText {
    parts = List.copyOf(parts);
    left = List.copyOf(left);
    fingerprints = List.copyOf(fingerprints);
  }

  /**
   * A paragraph whose beginning is strong.
   *
   * @param strong the beginning; may be empty
   * @param plain the rest; may be empty
   * @param leaves its place among those that leave where a picture has no room, 1 the first; 0 for
   *     one that stays
   */
  public record Part(String strong, String plain, int leaves) {
    /** A part that stays. */
    Part(String strong, String plain) {
      this(strong, plain, 0);
    }

    /** Both together. */
    public String text() {
      return (strong + " " + plain).strip();
    }
  }

  /**
   * Everything as lines, the answer first after the question.
   *
   * @param pictures lines that say what the pictures show
   */
  public List<String> lines(List<String> pictures) {
    List<String> lines = new ArrayList<>(List.of(question, headline.text()));
    if (!mark.isEmpty()) {
      lines.add(mark);
    }
    lines.addAll(pictures);
    parts.forEach(part -> lines.add(part.text()));
    lines.add(caution.text());
    lines.addAll(fingerprints);
    lines.add(brand);
    return lines;
  }
}
