package blindlap.screen.plan;

import blindlap.plan.BlindLevel;
import blindlap.seal.HelperPhrase;
import blindlap.seal.PhraseAsked;
import blindlap.wording.PhraseWords;
import blindlap.wording.PlanWords;
import java.util.Optional;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.jspecify.annotations.Nullable;

/**
 * The helper phrase of a commit under way: shown, two of its words typed back, and kept for the
 * sheet alone until the machine goes back. It is in memory only, never in a draft.
 */
public final class CommitPhrase {
  private final ReadOnlyStringWrapper shown = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper question = new ReadOnlyStringWrapper("");
  private final StringProperty typed = new SimpleStringProperty("");
  private @Nullable PhraseAsked asked;
  private String noted = "";
  private PhraseWords words = PhraseWords.of(BlindLevel.HELPER);

  CommitPhrase() {}

  /** A commit at a level begins, which says whose phrase it will be. */
  void heldAt(BlindLevel level) {
    words = PhraseWords.of(level);
  }

  /** Words to whoever holds the phrase. */
  PhraseWords words() {
    return words;
  }

  /** The phrase, for the helper alone; empty while it is not to be seen. */
  public ReadOnlyStringProperty shownProperty() {
    return shown.getReadOnlyProperty();
  }

  /** Which two words are to be typed back; empty without a phrase. */
  public ReadOnlyStringProperty questionProperty() {
    return question.getReadOnlyProperty();
  }

  /** The words as the helper types them back. */
  public StringProperty typedProperty() {
    return typed;
  }

  /** Another phrase, or the same once more. */
  void show(PhraseAsked phrase) {
    asked = phrase;
    typed.set("");
    question.set(PlanWords.askedWords(phrase.first(), phrase.second()));
    shown.set(phrase.text());
  }

  /** The helper has written it down. */
  void hide() {
    shown.set("");
  }

  /** The same phrase is shown again; nothing if there is none. */
  void again() {
    if (asked != null) {
      show(asked);
    }
  }

  /** What became of the words typed back; empty without a phrase. */
  Optional<PhraseAsked.Back> back() {
    return Optional.ofNullable(asked).map(phrase -> phrase.typed(typed.get()));
  }

  /** It has sealed the session: nothing more is asked, and the sheet is written with it. */
  void sealedWith(HelperPhrase phrase) {
    drop();
    noted = phrase.text();
  }

  /** The phrase that sealed the session; empty before, and once it was dropped. */
  String noted() {
    return noted;
  }

  /** Nobody sees it again. */
  void drop() {
    asked = null;
    noted = "";
    typed.set("");
    question.set("");
    shown.set("");
  }
}
