package blindlap.command;

import blindlap.desk.AloneDay;
import blindlap.desk.Desk;
import blindlap.desk.DeskFault;
import blindlap.desk.MeasuredValues;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.session.HelperEntry;
import blindlap.session.MountedUnit;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Words;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/** Asks a rider who swaps alone what was mounted, measured and checked. */
final class MountTalk {
  private static final Words WORDS = Words.of("alone");

  private final SessionCommand command;
  private final CommandSetting.Terminal terminal;

  MountTalk(SessionCommand command, CommandSetting.Terminal terminal) {
    this.command = command;
    this.terminal = terminal;
  }

  /** A line as it was answered; blank where nobody answers. */
  String answer(String key, Object... details) {
    return terminal.answer(WORDS.say(key, details)).map(String::strip).orElse("");
  }

  private boolean agreed(String prompt) {
    while (true) {
      Optional<String> typed = terminal.answer(prompt);
      switch (typed.orElse("no").strip().toLowerCase(Locale.ROOT)) {
        case "yes", "y" -> {
          return true;
        }
        case "no", "n", "" -> {
          return false;
        }
        default -> command.complain(WORDS.say("unclear"));
      }
    }
  }

  /** True if whoever is asked says so; false where nobody answers. */
  boolean yes(String key, Object... details) {
    return agreed(WORDS.say(key, details));
  }

  /** A setup or label by name, its beginning, or letter. */
  static int setup(Plan plan, String typed) {
    List<String> names = names(plan);
    List<Integer> meant =
        IntStream.range(0, names.size())
            .filter(i -> names.get(i).equalsIgnoreCase(typed))
            .boxed()
            .toList();
    if (meant.isEmpty()) {
      String lower = typed.toLowerCase(Locale.ROOT);
      meant =
          IntStream.range(0, names.size())
              .filter(i -> names.get(i).toLowerCase(Locale.ROOT).startsWith(lower))
              .boxed()
              .toList();
    }
    if (meant.size() != 1 || typed.isEmpty()) {
      throw SessionCommand.complaint(
          List.of(Problem.of(DeskFault.NO_SUCH_SETUP, "", typed, String.join(", ", names))));
    }
    return meant.get(0);
  }

  /** What the setups are called on the day. */
  static List<String> names(Plan plan) {
    return IntStream.range(0, plan.setups().size())
        .mapToObj(setup -> Labels.name(plan, setup))
        .toList();
  }

  /** What a stint comes to: what was really on, measured, checked. */
  HelperEntry entry(AloneDay day, AloneDay.Work work, SessionState state) {
    Plan plan = day.plan();
    Integer due = work.setup();
    HelperEntry entry = HelperEntry.untouched(work.stint(), plan.rider(), due == null ? 0 : due);
    if (due != null) {
      String on = answer("ask.on", Labels.name(plan, due));
      entry = on.isEmpty() ? entry : entry.withFitted(setup(plan, on));
    }
    entry = measured(entry, day.settings(work.stint(), entry.fitted()));
    Set<SafetyCheck> confirmed = EnumSet.noneOf(SafetyCheck.class);
    for (SafetyCheck check : SafetyCheck.values()) {
      if (agreed(WORDS.say("ask.check", SwapWords.say("check." + check.name())))) {
        confirmed.add(check);
      }
    }
    entry = entry.withConfirmed(confirmed);
    return work.stint() > day.firstStint()
        ? entry.withFit(state.lapsSoFar(), yes("ask.fit"))
        : entry;
  }

  /** The same entry with what is measured of these settings, and why where outside tolerance. */
  HelperEntry measured(HelperEntry entry, List<Setting> settings) {
    HelperEntry measured = entry.withMeasured(Map.of(), List.of());
    for (Setting setting : settings) {
      String name = setting.name();
      String typed = answer("ask.setting", name, SwapWords.aim(setting));
      measured = MeasuredValues.judged(settings, measured, name, typed);
      if (measured.outside(name).isPresent()) {
        measured = measured.because(name, answer("ask.outside", name, setting.shown()));
      }
    }
    return measured;
  }

  /** Which prepared unit was mounted, and whether its cover held. */
  MountedUnit unit(AloneDay day, AloneDay.Work work, SessionState state) {
    if (!day.prepared()) {
      return MountedUnit.asPlanned(work.stint());
    }
    String typed = work.stint() == 0 ? "" : answer("ask.code", work.code());
    int stint = typed.isEmpty() ? work.stint() : stint(state, typed);
    boolean whole = yes("ask.whole");
    return new MountedUnit(stint, whole, whole ? "" : answer("ask.open"));
  }

  private static int stint(SessionState state, String typed) {
    int code = TypedNumber.whole(typed).orElse(-1);
    int place = state.codes().indexOf(code);
    if (place < 0) {
      throw SessionCommand.complaint(List.of(Problem.of(DeskFault.NO_SUCH_CODE, "", typed)));
    }
    return place + 1;
  }

  /** The day of a session whose rider swaps. */
  static AloneDay day(Desk desk, SessionState state) {
    return desk.aloneDays()
        .day(state)
        .orElseThrow(
            () -> SessionCommand.complaint(List.of(Problem.of(SessionFault.NOT_ALONE, ""))));
  }

  /** The session as it stands now. */
  static SessionState now(Desk desk, SessionId id) {
    return desk.sessions().state(id).orElseThrow();
  }
}
