package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.seal.Fingerprint;
import blindlap.seal.HelperPhrase;
import blindlap.seal.MaskSealing;
import blindlap.seal.Masks;
import blindlap.seal.PhraseAsked;
import blindlap.seal.PhraseReading;
import blindlap.seal.SealedKey;
import blindlap.session.MaskCommands;
import blindlap.session.MasksRead;
import blindlap.session.Outcome;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * Masked labels: a friend seals which label is on which setup, in a step that the rider does not
 * see; the rider guesses once; it is read with the friend's phrase, or from marks under tape.
 */
public final class MaskKeeping {
  private final Sessions sessions;
  private final MaskSealing sealing;

  MaskKeeping(Sessions sessions, MaskSealing sealing) {
    this.sessions = sessions;
    this.sealing = sealing;
  }

  /** Why masks cannot be sealed in this session now, if so. */
  public Optional<List<Problem>> refuseSealing(SessionState state) {
    return refusal(new MaskCommands(state).maySeal());
  }

  private static Optional<List<Problem>> refusal(
      @org.jspecify.annotations.Nullable Outcome outcome) {
    return outcome instanceof Outcome.Refused refused
        ? Optional.of(refused.problems())
        : Optional.empty();
  }

  /** The friend's phrase; nothing is sealed before it is out and two of its words came back. */
  public PhraseAsked phrase() {
    return sealing.drawPhrase();
  }

  /** A mapping drawn by lot, for the friend alone: labels in order, 0 = X. */
  public Masks draw(SessionState state) {
    return sealing.draw(state.plan().setups().size());
  }

  /**
   * A mapping as the friend typed it.
   *
   * @param setups by label, 0 = A
   * @return empty if the labels are not each on a setup of its own
   */
  public Optional<Masks> typed(SessionState state, List<Integer> setups) {
    return Masks.isMapping(setups, state.plan().setups().size())
        ? Optional.of(Masks.of(setups))
        : Optional.empty();
  }

  /**
   * Seals a mapping under the friend's phrase.
   *
   * @param phrase as it was given out
   */
  public Sessions.Result seal(SessionState state, Masks masks, HelperPhrase phrase) {
    Optional<List<Problem>> refusal = refuseSealing(state);
    if (refusal.isPresent()) {
      return new Sessions.Result.Refused(refusal.get());
    }
    byte[] plan = state.planText().getBytes(StandardCharsets.UTF_8);
    SealedKey key = sealing.seal(masks, state.id().text(), Fingerprint.sha256(plan), phrase);
    return sessions.act(state.id(), latest -> new MaskCommands(latest).seal(key));
  }

  /** Why the rider cannot be asked for the guess now, if so; told before anyone is asked. */
  public Optional<List<Problem>> refuseGuess(SessionState state) {
    return refusal(new MaskCommands(state).mayGuess());
  }

  /**
   * The rider's one guess.
   *
   * @param setups by label, 0 = A; empty if the rider does not guess
   */
  public Sessions.Result guess(SessionState state, List<Integer> setups) {
    return sessions.act(state.id(), latest -> new MaskCommands(latest).guess(setups));
  }

  /** Why the masks cannot be read now, if so; asked before anyone types a phrase. */
  public Optional<List<Problem>> refuseReading(SessionState state) {
    return refusal(new MaskCommands(state).mayRead());
  }

  /** Reads the masks with the friend's phrase as typed: up to a second of work. */
  public Sessions.Result read(SessionState state, String typed) {
    Optional<List<Problem>> refusal = refuseReading(state);
    if (refusal.isPresent()) {
      return new Sessions.Result.Refused(refusal.get());
    }
    SealedKey sealed = state.masks().orElse(null);
    if (sealed == null) {
      return refused(Problem.of(SessionFault.MASKS_NOT_SEALED, ""));
    }
    PhraseReading reading = PhraseReading.of(typed);
    if (!(reading instanceof PhraseReading.Read phrase)) {
      return refused(Keys.unread(reading));
    }
    MaskSealing.Opened opened = sealing.open(sealed, phrase.phrase());
    if (opened instanceof MaskSealing.Opened.Read read) {
      return read(state, read.masks().setups(), MasksRead.From.PHRASE);
    }
    return refused(
        Problem.of(
            opened instanceof MaskSealing.Opened.WrongPhrase
                ? DeskFault.MASKS_WRONG_PHRASE
                : DeskFault.MASKS_DAMAGED,
            ""));
  }

  /**
   * Writes down what was read from marks under tape; it was not sealed.
   *
   * @param setups by label, 0 = A
   */
  public Sessions.Result fromMarks(SessionState state, List<Integer> setups) {
    return read(state, setups, MasksRead.From.MARKS);
  }

  private Sessions.Result read(SessionState state, List<Integer> setups, MasksRead.From from) {
    return sessions.act(state.id(), latest -> new MaskCommands(latest).read(setups, from));
  }

  private static Sessions.Result refused(Problem problem) {
    return new Sessions.Result.Refused(List.of(problem));
  }
}
