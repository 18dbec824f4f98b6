package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.seal.StintCode;
import blindlap.seal.StintView;
import blindlap.seal.StintViews;
import blindlap.session.Notebook;
import blindlap.session.OneStintCommands;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.HandlingWords;
import blindlap.wording.OneStintWords;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The one-stint view: whoever holds the phrase makes a one-time code for each stint that is left;
 * against it somebody else is shown what to set for that stint, once. What is shown is encrypted
 * under the code, beside the record, and lost once it was shown.
 */
public final class OneStints {
  /** Words cost up to a second of work each, so that nobody guesses them in the time of a day. */
  private static final int MOST_SLIPS = 64;

  private final Sessions sessions;
  private final StintViews views;
  private final Notebook notebook;
  private final Clock clock;

  /**
   * @param views seals and opens what is shown
   */
  public OneStints(Sessions sessions, StintViews views, Notebook notebook, Clock clock) {
    this.sessions = sessions;
    this.views = views;
    this.notebook = notebook;
    this.clock = clock;
  }

  /**
   * A code for a slip of paper.
   *
   * @param stint from 1
   * @param code of the stint, on everything the rider sees
   * @param words that open the view
   */
  public record Slip(int stint, int code, StintCode words) {}

  /** What became of an attempt to make codes. */
  public sealed interface Made {
    /** A code for every stint that is left; earlier ones open nothing any more. */
    record Slips(List<Slip> slips) implements Made {
      public Slips {
        slips = List.copyOf(slips);
      }
    }

    /** Why none were made. */
    record Refused(List<Problem> problems) implements Made {}
  }

  /** What became of an attempt to see what to set. */
  public sealed interface Shown {
    /**
     * What to set, for whoever looks and nobody else.
     *
     * @param stint from 1
     * @param code of the stint
     * @param setup to be on, by its name
     * @param real true if something else was on before by the order
     * @param settings to dial and measure
     * @param steps how a level of a steps day is set, whatever is on; empty for other days
     */
    record Setup(
        int stint, int code, String setup, boolean real, List<Setting> settings, List<String> steps)
        implements Shown {
      public Setup {
        settings = List.copyOf(settings);
        steps = List.copyOf(steps);
      }

      /** Says which stint only. */
      @Override
      public String toString() {
        return "Setup[stint " + stint + "]";
      }
    }

    /** Why nothing was shown. */
    record Refused(List<Problem> problems) implements Shown {}
  }

  /** Why no view may be made or shown in this session now, if so; asked before anyone types. */
  public Optional<List<Problem>> refusal(SessionState state) {
    return new OneStintCommands(state).refusal();
  }

  /**
   * Makes a code for every stint that is left: up to a second of work each.
   *
   * @param day opened with the phrase
   */
  public Made make(HelperDay day, SessionState state) {
    Optional<List<Problem>> refusal = refusal(state);
    if (refusal.isPresent()) {
      return new Made.Refused(refusal.get());
    }
    List<Integer> left = new OneStintCommands(state).left();
    if (left.size() > MOST_SLIPS) {
      return new Made.Refused(
          List.of(Problem.of(DeskFault.ONE_STINT_TOO_MANY, "", left.size(), MOST_SLIPS)));
    }
    List<Slip> slips = new ArrayList<>();
    List<StintView> kept = new ArrayList<>();
    for (int stint : left) {
      HelperDay.Work work = day.work(stint);
      StintCode words = views.draw();
      StintViews.Shown shown = new StintViews.Shown(work.setup(), work.real());
      kept.add(views.seal(state.id().text(), stint, shown, words));
      slips.add(new Slip(stint, work.code(), words));
    }
    if (slips.isEmpty()) {
      return new Made.Refused(List.of(Problem.of(DeskFault.ONE_STINT_NONE, "")));
    }
    keep(state.id(), OneStintDraft.of(kept));
    return new Made.Slips(slips);
  }

  /** Why what to set for a stint is not shown, whatever the code; nothing if it may be. */
  public List<Problem> missing(SessionState state, int stint) {
    if (new OneStintCommands(state).mayShow(stint) instanceof Outcome.Refused refused) {
      return refused.problems();
    }
    OneStintDraft draft = draft(state.id());
    if (draft.view(stint).isEmpty()) {
      return List.of(Problem.of(DeskFault.ONE_STINT_NO_CODE, "", stint));
    }
    long seconds = draft.wait(clock.instant());
    return seconds > 0 ? List.of(Problem.of(DeskFault.ONE_STINT_WAIT, "", seconds)) : List.of();
  }

  /**
   * Shows what to set for a stint, once: an entry is written and the view is lost before anything
   * is answered. One derivation, up to a second of work, whether the words are right or not.
   *
   * @param name of whoever looks
   * @param typed the three words
   */
  public Shown show(SessionState state, int stint, String name, String typed) {
    Outcome outcome = new OneStintCommands(state).show(stint, name);
    List<Problem> problems =
        outcome instanceof Outcome.Refused refused ? refused.problems() : missing(state, stint);
    if (!problems.isEmpty()) {
      return new Shown.Refused(problems);
    }
    StintView view = draft(state.id()).view(stint).orElse(null);
    StintCode code = StintCode.read(typed).orElse(null);
    if (view == null || code == null) {
      return refused(Problem.of(DeskFault.ONE_STINT_WORDS, ""));
    }
    StintViews.Shown opened = views.open(state.id().text(), view, code).orElse(null);
    if (opened == null) {
      keep(state.id(), draft(state.id()).wrong(clock.instant()));
      return refused(Problem.of(DeskFault.ONE_STINT_WRONG, "", stint));
    }
    Sessions.Result written =
        sessions.act(state.id(), latest -> new OneStintCommands(latest).show(stint, name));
    if (written instanceof Sessions.Result.Refused refused) {
      return new Shown.Refused(refused.problems());
    }
    // Another window may have made words anew meanwhile.
    keep(state.id(), draft(state.id()).without(stint));
    Plan plan = state.plan();
    return new Shown.Setup(
        stint,
        state.day().code(stint),
        plan.setups().get(opened.setup()).name(),
        opened.real(),
        StintSettings.of(plan, stint, opened.setup()),
        HandlingWords.steps(plan, null, opened.setup()));
  }

  /** The first stint that was shown and of which it was not said whether the rider saw. */
  public Optional<Integer> unanswered(SessionState state) {
    return new OneStintCommands(state).unanswered();
  }

  /** Whether the rider saw or heard what was set; if so the blind is broken in that stint. */
  public Sessions.Result answer(SessionId id, int stint, boolean riderSaw) {
    return sessions.act(
        id, latest -> new OneStintCommands(latest).answer(stint, riderSaw, what(latest, stint)));
  }

  private static String what(SessionState state, int stint) {
    return Optional.ofNullable(state.oneStint().get(stint))
        .map(shown -> OneStintWords.broken(shown.name()))
        .orElse("");
  }

  private OneStintDraft draft(SessionId id) {
    return OneStintDraft.read(notebook.drafts().getOrDefault(OneStintDraft.name(id), ""));
  }

  private void keep(SessionId id, OneStintDraft draft) {
    notebook.putDraft(OneStintDraft.name(id), draft.text());
  }

  private static Shown refused(Problem problem) {
    return new Shown.Refused(List.of(problem));
  }
}
