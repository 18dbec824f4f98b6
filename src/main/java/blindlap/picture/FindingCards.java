package blindlap.picture;

import blindlap.plot.CardContent;
import blindlap.plot.CardFormat;
import blindlap.plot.FindingCard;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.Beside;
import blindlap.review.Finding;
import blindlap.review.TellingAnalysis;
import blindlap.session.SessionState;
import blindlap.wording.CardText;
import blindlap.wording.CardWords;
import blindlap.wording.TellingText;
import blindlap.wording.TellingWords;
import java.util.List;

/**
 * The card of an unsealed session: its finding as one picture that stands alone, in two sizes, and
 * in words.
 */
public final class FindingCards {
  private final CardText text;
  private final List<Drawing> pictures;

  private FindingCards(CardText text, List<Drawing> pictures) {
    this.text = text;
    this.pictures = pictures;
  }

  /** The card of a finding. */
  public static FindingCards of(SessionState state, Finding finding, Beside beside) {
    return new FindingCards(
        CardWords.of(state, finding, beside), new FindingPictures(finding).alone());
  }

  /** The card of a telling run. */
  public static FindingCards of(SessionState state, TellingAnalysis analysis, Beside beside) {
    TellingWords words = new TellingText(analysis).words();
    return new FindingCards(
        CardWords.of(state, analysis, beside),
        List.of(
            TellingPictures.strip(analysis.finding(), words),
            TellingPictures.axis(analysis.finding(), words)));
  }

  /** The card as a picture of this size. */
  public Drawing drawing(CardFormat format) {
    return FindingCard.of(content(), format);
  }

  CardContent content() {
    List<String> lines = lines();
    return new CardContent(
        text.question(),
        text.headline().before(),
        text.headline().phrase(),
        text.headline().after(),
        text.mark(),
        pictures,
        text.parts().stream().map(FindingCards::paragraph).toList(),
        text.left(),
        paragraph(text.caution()),
        text.fingerprints(),
        text.brand(),
        new Spoken(text.headline().text(), String.join(" ", lines)));
  }

  private static CardContent.Paragraph paragraph(CardText.Part part) {
    return new CardContent.Paragraph(part.strong(), part.plain(), part.leaves());
  }

  /** Everything the card says, whole, a line each. */
  public List<String> lines() {
    return text.lines(
        pictures.stream().map(p -> CardWords.picture(p.spoken().all())).distinct().toList());
  }
}
