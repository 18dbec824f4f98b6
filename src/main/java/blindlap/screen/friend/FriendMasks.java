package blindlap.screen.friend;

import blindlap.desk.MaskKeeping;
import blindlap.plan.Labels;
import blindlap.seal.Masks;
import blindlap.seal.PhraseAsked;
import blindlap.session.SessionState;
import blindlap.wording.FriendWords;
import blindlap.wording.PlanWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * Which label goes on which part: drawn or chosen, noted with the friend's phrase, and sealed once
 * two words of the phrase came back. It is in memory only, never in a draft.
 */
public final class FriendMasks {
  /** Where it stands. */
  public enum Step {
    CHOOSE,
    PHRASE,
    WORDS
  }

  private final MaskKeeping keeping;
  private final Writer writer;
  private final ReadOnlyObjectWrapper<Step> step = new ReadOnlyObjectWrapper<>(Step.CHOOSE);
  private final ReadOnlyStringWrapper wrong = new ReadOnlyStringWrapper("");
  private @Nullable SessionState state;
  private @Nullable Masks masks;
  private @Nullable PhraseAsked asked;

  FriendMasks(MaskKeeping keeping, Writer writer) {
    this.keeping = keeping;
    this.writer = writer;
  }

  /** Where it stands. */
  public ReadOnlyObjectProperty<Step> stepProperty() {
    return step.getReadOnlyProperty();
  }

  /** What of the words typed back differs, a sentence; else empty. */
  public ReadOnlyStringProperty wrongProperty() {
    return wrong.getReadOnlyProperty();
  }

  void begin(SessionState latest) {
    state = latest;
    masks = null;
    asked = null;
    wrong.set("");
    step.set(Step.CHOOSE);
  }

  void forget() {
    state = null;
    masks = null;
    asked = null;
    wrong.set("");
    step.set(Step.CHOOSE);
  }

  private SessionState state() {
    return java.util.Objects.requireNonNull(state, "no session is open");
  }

  /** Labels in order. */
  public List<String> labels() {
    return IntStream.range(0, setups().size()).mapToObj(Labels::of).toList();
  }

  /** Names of the setups. */
  public List<String> setups() {
    return state == null
        ? List.of()
        : state().plan().setups().stream().map(setup -> setup.name()).toList();
  }

  /** A mapping by lot. */
  public void draw() {
    chosen(keeping.draw(state()));
  }

  /**
   * A mapping as the friend chose it.
   *
   * @param setups by label, 0 = A
   */
  public void choose(List<Integer> setups) {
    keeping
        .typed(state(), setups)
        .ifPresentOrElse(this::chosen, () -> wrong.set(FriendWords.say("friend.each")));
  }

  private void chosen(Masks drawn) {
    masks = drawn;
    wrong.set("");
    asked = keeping.phrase();
    step.set(Step.PHRASE);
  }

  /** The mapping in words, a line each; empty while none is chosen. */
  public List<String> lines() {
    Masks now = masks;
    List<String> lines = new ArrayList<>();
    for (int label = 0; now != null && label < now.setups().size(); label++) {
      lines.add(FriendWords.on(Labels.of(label), setups().get(now.setups().get(label))));
    }
    return lines;
  }

  /** The friend's phrase; empty while there is none. */
  public String phrase() {
    return Optional.ofNullable(asked).map(PhraseAsked::text).orElse("");
  }

  /** Which two words are asked back. */
  public String question() {
    PhraseAsked now = asked;
    return now == null ? "" : PlanWords.askedWords(now.first(), now.second());
  }

  /** Labels and phrase are written down. */
  public void noted() {
    step.set(Step.WORDS);
  }

  /** They are to be seen once more. */
  public void again() {
    step.set(Step.PHRASE);
  }

  /** Two words came back: if they are those of the phrase, the labels are sealed. */
  public void seal(String typed) {
    PhraseAsked now = asked;
    Masks drawn = masks;
    SessionState latest = state;
    if (now == null || drawn == null || latest == null) {
      return;
    }
    PhraseAsked.Back back = now.typed(typed);
    if (back instanceof PhraseAsked.Back.Wrong off) {
      wrong.set(PlanWords.wrongWords(off.places()));
      again();
    } else if (back instanceof PhraseAsked.Back.Right right) {
      wrong.set("");
      writer.accept(() -> keeping.seal(latest, drawn, right.phrase()));
    }
  }

  /** Says nothing of what it holds. */
  @Override
  public String toString() {
    return "FriendMasks[]";
  }
}
