package blindlap.desk;

import blindlap.paper.HelperCard;
import blindlap.session.SessionState;

/** Cards for the people of the day. */
public final class Cards {
  /** The helper's card as HTML; holds the key. */
  public String helper(SessionState state, Keys.Result.Open open) {
    return HelperCard.html(state, open.schedule(), open.sheet());
  }
}
