package blindlap.screen.book;

import blindlap.desk.SessionList;
import blindlap.session.OrderStands;
import blindlap.wording.NotebookWords;

/**
 * What the page says of the session in hand, and what is done next with it.
 *
 * @param marked words with the stroke
 * @param after words after them
 * @param next words of the next step
 * @param behindCover words of the button to a page behind the cover; empty where there is none
 */
record HandWords(String marked, String after, String next, String behindCover) {

  static HandWords of(SessionList.InHand hand) {
    String step = hand.summary().step().name();
    // The page behind the cover is of use while laps are recorded.
    String behind =
        hand.summary().step().day() ? NotebookWords.say("behind." + hand.behindCover().name()) : "";
    if (hand.next().isPresent()) {
      int stint = hand.next().get().stint();
      return new HandWords(
          NotebookWords.say("hand.stint", stint, hand.stints()),
          NotebookWords.say("hand.next"),
          NotebookWords.say("ride", stint),
          behind);
    }
    String over = "hand." + step;
    String next = "next." + step;
    String covered = next + "." + OrderStands.COVERED.name();
    boolean opens = hand.order() == OrderStands.COVERED && NotebookWords.has(covered);
    return new HandWords(
        NotebookWords.say(NotebookWords.has(over) ? over : "hand.ridden"),
        ".",
        NotebookWords.say(opens ? covered : next),
        behind);
  }
}
