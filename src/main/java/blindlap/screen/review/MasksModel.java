package blindlap.screen.review;

import blindlap.desk.MaskKeeping;
import blindlap.desk.Sessions;
import blindlap.plan.BlindLevel;
import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.screen.part.Background;
import blindlap.session.SessionState;
import blindlap.wording.FriendWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * Masked labels on the Review page: one guess which label is on which setup, before any finding is
 * shown; after that what is read with the friend's phrase or from marks.
 */
public final class MasksModel {
  private final MaskKeeping masks;
  private final Background background;
  private final Runnable changed;
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");

  /**
   * @param changed run after the guess, and after the masks were read
   */
  MasksModel(MaskKeeping masks, Background background, Runnable changed) {
    this.masks = masks;
    this.background = background;
    this.changed = changed;
  }

  /** Why the last wish was not granted; empty if it was. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** True in a session of masked labels. */
  static boolean masked(SessionState state) {
    return state.covered() && state.plan().blinding().level() == BlindLevel.MASKED;
  }

  /** True while the rider's one guess is still to be asked. */
  static boolean asksGuess(SessionState state) {
    return masked(state) && state.masksGuessed().isEmpty() && state.masksRead().isEmpty();
  }

  /** True once the masks may be read and are not. */
  static boolean asksReading(SessionState state) {
    return masked(state) && state.masksRead().isEmpty();
  }

  /** Every way in which the labels may be on the setups, in words; by label, 0 = A. */
  static Map<String, List<Integer>> mappings(Plan plan) {
    Map<String, List<Integer>> all = new LinkedHashMap<>();
    extend(List.of(), plan.setups().size()).forEach(each -> all.put(words(plan, each), each));
    return all;
  }

  private static List<List<Integer>> extend(List<Integer> begun, int setups) {
    if (begun.size() == setups) {
      return List.of(begun);
    }
    List<List<Integer>> all = new ArrayList<>();
    for (int setup = 0; setup < setups; setup++) {
      if (!begun.contains(setup)) {
        List<Integer> longer = new ArrayList<>(begun);
        longer.add(setup);
        all.addAll(extend(longer, setups));
      }
    }
    return all;
  }

  private static String words(Plan plan, List<Integer> mapping) {
    return String.join(
        "; ",
        IntStream.range(0, mapping.size())
            .mapToObj(
                label ->
                    FriendWords.on(Labels.of(label), plan.setups().get(mapping.get(label)).name()))
            .toList());
  }

  /**
   * The rider's one guess.
   *
   * @param setups by label; empty if the rider does not guess
   */
  public void guess(SessionState state, List<Integer> setups) {
    act(() -> masks.guess(state, setups));
  }

  /** Reads the masks with the friend's phrase as typed. */
  public void read(SessionState state, String phrase) {
    act(() -> masks.read(state, phrase));
  }

  /** Writes down what stood under the tape. */
  public void fromMarks(SessionState state, List<Integer> setups) {
    act(() -> masks.fromMarks(state, setups));
  }

  private void act(Callable<Sessions.Result> work) {
    background.run(
        work,
        result -> {
          if (result instanceof Sessions.Result.Refused refused) {
            trouble.set(String.join(" ", Problems.sentences(refused.problems())));
          } else {
            trouble.set("");
            changed.run();
          }
        },
        e -> trouble.set(Trouble.sentence(e)));
  }
}
