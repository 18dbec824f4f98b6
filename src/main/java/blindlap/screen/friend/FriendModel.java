package blindlap.screen.friend;

import blindlap.desk.AloneDays;
import blindlap.desk.HelperDays;
import blindlap.desk.MaskKeeping;
import blindlap.desk.Sessions;
import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.plan.Preparation;
import blindlap.screen.cover.HelperCover;
import blindlap.screen.part.Background;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.FriendWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * A friend's page: masks are drawn or typed and sealed, prepared units are measured and recorded.
 * Of what is on it nothing is kept once it is hidden or done.
 */
public final class FriendModel {
  /** What the page asks for. */
  public enum Phase {
    /** The session is none in which the rider swaps alone: the page is the helper's. */
    OTHER,
    /** Nobody has anything to do here. */
    NOTHING,
    /** The machine is to be handed to the friend, who chooses a PIN. */
    PIN,
    /** Which label goes on which part. */
    MASKS,
    /** Units that are measured and recorded. */
    UNITS,
    /** All is done. */
    DONE
  }

  private final AloneDays days;
  private final HelperDays helpers;
  private final Background background;
  private final HelperCover cover;
  private final FriendMasks masks;
  private final FriendUnits units;
  private final ReadOnlyObjectWrapper<Phase> phase = new ReadOnlyObjectWrapper<>(Phase.OTHER);
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private @Nullable SessionId id;
  private @Nullable SessionState state;

  /**
   * @param days days of riders who swap alone
   * @param helpers opens what a friend sealed, with the friend's phrase
   * @param keeping seals masks
   */
  public FriendModel(
      AloneDays days, HelperDays helpers, MaskKeeping keeping, Clock clock, Background background) {
    this.days = days;
    this.helpers = helpers;
    this.background = background;
    this.cover = new HelperCover(clock, helpers::pin, this::leave);
    this.masks = new FriendMasks(keeping, this::act);
    this.units = new FriendUnits(this::act);
  }

  /** What the page asks for. */
  public ReadOnlyObjectProperty<Phase> phaseProperty() {
    return phase.getReadOnlyProperty();
  }

  /** What is asked or done, a sentence. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** What keeps the page from a passing rider. */
  public HelperCover cover() {
    return cover;
  }

  /** Which label goes on which part. */
  public FriendMasks masks() {
    return masks;
  }

  /** Units that are measured and recorded. */
  public FriendUnits units() {
    return units;
  }

  /** True once the units of a prepared day are recorded. */
  boolean prepared() {
    SessionState latest = state;
    return phase.get() == Phase.DONE
        && latest != null
        && latest.plan().blinding().level() == BlindLevel.PREPARED;
  }

  /** Opens a session. */
  public void open(SessionId session) {
    if (session.equals(id) && phase.get() != Phase.NOTHING && phase.get() != Phase.OTHER) {
      return;
    }
    id = session;
    leave();
    background.run(() -> days.state(session), found -> found.ifPresent(this::take), this::failed);
  }

  private void take(SessionState latest) {
    state = latest;
    if (days.day(latest).isEmpty()) {
      phase.set(Phase.OTHER);
      return;
    }
    Preparation friend = latest.plan().blinding().preparation();
    boolean masked =
        latest.plan().blinding().level() == BlindLevel.MASKED
            && friend.masks() == Preparation.Masks.FRIEND;
    boolean prepared = latest.plan().blinding().level() == BlindLevel.PREPARED;
    boolean done = masked ? latest.masks().isPresent() : !latest.helperRecords().isEmpty();
    if (!masked && !prepared) {
      show(Phase.NOTHING, FriendWords.say("friend.nobody"));
    } else if (done) {
      show(Phase.DONE, FriendWords.say(masked ? "friend.masked" : "friend.prepared"));
    } else {
      String who = friend.by().isBlank() ? FriendWords.say("friend.unnamed") : friend.by();
      show(Phase.PIN, FriendWords.say(masked ? "friend.masks" : "friend.units", who));
    }
  }

  private void show(Phase now, String said) {
    words.set(said);
    phase.set(now);
  }

  /** The machine is with the friend, who has chosen a PIN. */
  public void begin(String digits) {
    SessionState latest = state;
    if (latest == null || !cover.begin(digits)) {
      return;
    }
    boolean masked = latest.plan().blinding().level() == BlindLevel.MASKED;
    if (masked) {
      masks.begin(latest);
    }
    show(
        masked ? Phase.MASKS : Phase.UNITS,
        FriendWords.say(masked ? "friend.masks.how" : "friend.units.how"));
  }

  /** Opens the units with the friend's phrase as typed: up to a second of work. */
  public void phrase(String typed) {
    SessionState latest = state;
    if (latest == null) {
      return;
    }
    background.run(
        () -> helpers.open(latest, typed),
        opened -> {
          if (opened instanceof HelperDays.Opened.Refused refused) {
            refuse(refused.problems());
          } else if (opened instanceof HelperDays.Opened.Day open) {
            trouble.set("");
            cover.touch();
            units.begin(open.day());
          }
        },
        this::failed);
  }

  private void act(Callable<Sessions.Result> work) {
    background.run(
        work,
        result -> {
          if (result instanceof Sessions.Result.Refused refused) {
            refuse(refused.problems());
            return;
          }
          trouble.set("");
          forget();
          take(((Sessions.Result.Done) result).state());
        },
        this::failed);
  }

  private void forget() {
    masks.forget();
    units.forget();
    cover.end();
  }

  /** The page is left, or too many wrong PINs were tried: what was not sealed is gone. */
  public void leave() {
    forget();
    trouble.set("");
    SessionState latest = state;
    if (latest != null && latest.id().equals(id)) {
      take(latest);
    }
  }

  private void refuse(List<Problem> problems) {
    trouble.set(String.join(" ", Problems.sentences(problems)));
  }

  private void failed(Exception problem) {
    trouble.set(Trouble.sentence(problem));
  }
}
