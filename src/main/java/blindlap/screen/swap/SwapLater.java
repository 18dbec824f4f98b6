package blindlap.screen.swap;

import blindlap.desk.CaughtUp;
import blindlap.desk.DeskFault;
import blindlap.desk.FitCorrections;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperOver;
import blindlap.desk.PaperForm;
import blindlap.desk.Sessions;
import blindlap.fault.Problem;
import blindlap.plan.Setup;
import blindlap.screen.part.Background;
import blindlap.session.HelperEntry;
import blindlap.session.KeptOnPaper;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * What the helper says later than at the stint itself: that another setup was on, what was kept on
 * paper, that the helper's day is over. The entry in hand takes a correction up and is kept by its
 * own clock; after the last stint the closing entry is kept every few seconds, changed or not, and
 * once more when the page closes: whoever counts the changes of the file cannot tell whether
 * anything was corrected.
 */
public final class SwapLater {
  /** How often the entry in hand is kept; a correction is on disk after so long at most. */
  static final Duration BEAT = Duration.ofSeconds(5);

  /**
   * A stint that can be corrected.
   *
   * @param stint 0 = the warm-up
   * @param setup index of what is known to have been on
   * @param words its number and that setup's name
   */
  public record Stint(int stint, int setup, String words) {
    /** Says which stint only. */
    @Override
    public String toString() {
      return "Stint[" + stint + "]";
    }
  }

  private final Background background;
  private final Clock clock;
  private final LongSupplier monotonic;
  private final SwapWork work;
  private final Consumer<SessionState> handed;

  /** So many stints can be picked, the latest; of three hundred the page would hold no more. */
  private static final int MOST = 40;

  private final ReadOnlyObjectWrapper<List<Stint>> stints = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<@Nullable SwapPaper> paper = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper closable = new ReadOnlyBooleanWrapper();
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final List<HelperEntry.Correction> here = new ArrayList<>();
  private @Nullable SessionId session;
  private @Nullable HelperDay day;
  private @Nullable SessionState state;
  private @Nullable HelperEntry closing;
  private boolean busy;
  private long beaten;

  SwapLater(
      Background background,
      Clock clock,
      LongSupplier monotonic,
      SwapWork work,
      Consumer<SessionState> handed) {
    this.background = background;
    this.clock = clock;
    this.monotonic = monotonic;
    this.work = work;
    this.handed = handed;
  }

  /** The stints that can be corrected, the latest first. */
  public ReadOnlyObjectProperty<List<Stint>> stintsProperty() {
    return stints.getReadOnlyProperty();
  }

  /** The next stint that can be caught up from paper; null if every stint has its record. */
  public ReadOnlyObjectProperty<@Nullable SwapPaper> paperProperty() {
    return paper.getReadOnlyProperty();
  }

  /** True once every stint has its record and the helper's day is not closed yet. */
  public ReadOnlyBooleanProperty closableProperty() {
    return closable.getReadOnlyProperty();
  }

  /** What was recorded last; else empty. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Names of the setups. */
  public List<String> setups() {
    return day == null ? List.of() : day.plan().setups().stream().map(Setup::name).toList();
  }

  void load(HelperDay open, SessionState latest) {
    if (day == null) {
      beaten = monotonic.getAsLong();
    }
    if (!open.id().equals(session)) {
      session = open.id();
      here.clear();
    }
    day = open;
    state = latest;
    if (work.entry() != null || HelperOver.closed(latest)) {
      closing = null;
    } else if (closing == null) {
      closing =
          new HelperOver(open, clock).entry(latest).withEarlier(fits(open).notSealed(latest, here));
    }
    closable.set(closing != null);
    show();
  }

  private void show() {
    HelperDay open = day;
    SessionState now = state;
    HelperEntry inHand = inHand();
    if (open == null || now == null) {
      stints.set(List.of());
      paper.set(null);
      return;
    }
    List<Stint> all = new ArrayList<>();
    if (inHand != null) {
      fits(open)
          .known(now, inHand)
          .forEach((stint, setup) -> all.add(0, new Stint(stint, setup, words(stint, setup))));
    }
    stints.set(List.copyOf(all.subList(0, Math.min(MOST, all.size()))));
    HelperEntry next = work.entry();
    paper.set(next == null ? null : SwapPaper.of(open, now, next.stint()));
  }

  private String words(int stint, int setup) {
    String name = setups().get(setup);
    HelperDay open = day;
    return open == null
        ? ""
        : SwapWords.say("later.stint", SwapWords.stint(open.plan(), stint), name);
  }

  private FitCorrections fits(HelperDay open) {
    return new FitCorrections(open, clock);
  }

  private @Nullable HelperEntry inHand() {
    return closing != null ? closing : work.entry();
  }

  /** Another setup than recorded was on in an earlier stint. */
  public void correct(int stint, int setup, String words) {
    HelperDay open = day;
    SessionState now = state;
    HelperEntry inHand = inHand();
    said.set("");
    if (open == null || now == null || inHand == null) {
      return;
    }
    HelperEntry.Correction correction = fits(open).now(stint, setup, words);
    List<Problem> problems = fits(open).problems(now, inHand, correction);
    if (!problems.isEmpty()) {
      refuse(problems);
      return;
    }
    here.add(correction);
    if (closing != null) {
      closing = closing.withCorrection(correction);
    } else {
      work.correct(correction);
    }
    trouble.set("");
    said.set(SwapWords.say("later.corrected", words(stint, setup)));
    show();
  }

  /** A stint's paper as far as it was typed before, on this page or before a restart. */
  PaperForm typed(int stint) {
    return work.paper()
        .filter(form -> form.stint() == stint)
        .orElseGet(() -> PaperForm.empty(stint));
  }

  /** Paper is being typed; the clock says when it is kept. */
  void typing(PaperForm form) {
    HelperEntry inHand = work.entry();
    if (inHand != null && inHand.stint() == form.stint() && !work.paper(form)) {
      refuse(List.of(Problem.of(DeskFault.NOTE_TOO_LONG, "")));
    }
  }

  /** A stint was kept on paper: its record is written. */
  public void keptOnPaper(KeptOnPaper kept) {
    HelperDay open = day;
    said.set("");
    if (open == null || busy) {
      return;
    }
    busy = true;
    background.run(
        () -> new CaughtUp(open).record(List.of(kept)),
        result ->
            written(
                result, SwapWords.say("later.kept", SwapWords.within(open.plan(), kept.stint()))),
        this::failed);
  }

  /** The helper's day is over: its closing record is written, whether it says anything or not. */
  public void dayOver() {
    HelperDay open = day;
    HelperEntry entry = closing;
    said.set("");
    if (open == null || entry == null || busy) {
      return;
    }
    busy = true;
    background.run(
        () -> new HelperOver(open, clock).write(entry),
        result -> written(result, SwapWords.say("later.over.done")),
        this::failed);
  }

  private void written(Sessions.Result result, String words) {
    busy = false;
    if (result instanceof Sessions.Result.Refused refused) {
      refuse(refused.problems());
      return;
    }
    trouble.set("");
    handed.accept(((Sessions.Result.Done) result).state());
    said.set(words);
  }

  private void refuse(List<Problem> problems) {
    trouble.set(String.join(" ", Problems.sentences(problems)));
  }

  private void failed(Exception problem) {
    busy = false;
    trouble.set(SwapWords.say("not.saved", Trouble.sentence(problem)));
  }

  /** Somebody closed the day: the helper's closing record follows while it still can. */
  void dayClosed(@Nullable HelperDay open, SessionState latest) {
    if (open == null || !HelperOver.missing(latest)) {
      return;
    }
    HelperEntry left = closing;
    List<HelperEntry.Correction> mine = fits(open).notSealed(latest, here);
    background.run(
        () -> {
          HelperOver over = new HelperOver(open, clock);
          return over.write((left == null ? over.entry(latest) : left).withEarlier(mine));
        },
        result -> here.clear(),
        this::failed);
    day = null;
  }

  /** Once a second. */
  void beat() {
    if (monotonic.getAsLong() - beaten >= BEAT.toNanos()) {
      keep();
    }
  }

  private void keep() {
    HelperDay open = day;
    HelperEntry end = closing;
    beaten = monotonic.getAsLong();
    if (open != null && end != null) {
      background.run(
          () -> {
            open.keep(end);
            return end;
          },
          kept -> {},
          this::failed);
    }
  }

  /** The page closes; what was said is kept first. */
  void close() {
    keep();
    day = null;
    closing = null;
    said.set("");
    trouble.set("");
    closable.set(false);
    show();
  }
}
