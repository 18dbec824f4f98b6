package blindlap.command;

import blindlap.desk.AloneDay;
import blindlap.desk.Desk;
import blindlap.desk.DeskFault;
import blindlap.desk.MeasuredValues;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.fault.TypedText;
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
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** Asks a rider who swaps alone what was mounted, measured and checked. */
final class MountTalk {
  private static final Words WORDS = Words.of("alone");

  private final SessionCommand command;
  private final CommandSetting.Terminal terminal;

  /** Something else was on in a stint; the setup as number, 0 = A, at masked labels the label. */
  record Otherwise(int stint, int setup, String words) {}

  MountTalk(SessionCommand command, CommandSetting.Terminal terminal) {
    this.command = command;
    this.terminal = terminal;
  }

  /** A line as it was answered; blank where nobody answers. */
  String answer(String key, Object... details) {
    return terminal.answer(WORDS.say(key, details)).map(String::strip).orElse("");
  }

  /** Enter is no where nothing hangs on it that was typed before, and elsewhere a slip. */
  private Optional<Boolean> agreed(String prompt, boolean enter) {
    while (true) {
      Optional<String> typed = terminal.answer(prompt);
      if (typed.isEmpty()) {
        return Optional.empty();
      }
      switch (typed.get().strip().toLowerCase(Locale.ROOT)) {
        case "yes", "y" -> {
          return Optional.of(true);
        }
        case "no", "n" -> {
          return Optional.of(false);
        }
        case "" -> {
          if (enter) {
            return Optional.of(false);
          }
          command.complain(WORDS.say("unclear"));
        }
        default -> command.complain(WORDS.say("unclear"));
      }
    }
  }

  /** True if whoever is asked says so; false where nobody answers. */
  boolean yes(String key, Object... details) {
    return agreed(WORDS.say(key, details), true).orElse(false);
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

  /**
   * What a stint comes to: what was really on, measured, checked. What cannot be used is asked
   * again by itself, so that one slip loses nothing of what was typed before it.
   *
   * @throws Complaint if nobody answers, or what is open is not seen to; nothing was written then
   */
  HelperEntry entry(AloneDay day, AloneDay.Work work, SessionState state) {
    HelperEntry entry = checked(seen(day, work, false), EnumSet.allOf(SafetyCheck.class));
    int laps = state.lapsSoFar();
    boolean first = work.stint() == day.firstStint();
    if (!first) {
      entry = entry.withFit(laps, said("ask.fit"));
    }
    List<Problem> missing = day.missing(entry, laps);
    while (!missing.isEmpty()) {
      if (!said("ask.open.checks", String.join(" ", Problems.sentences(missing)))) {
        throw SessionCommand.complaint(missing);
      }
      Set<SafetyCheck> open = EnumSet.allOf(SafetyCheck.class);
      open.removeAll(entry.confirmed());
      entry = checked(entry, open);
      if (Boolean.FALSE.equals(entry.fit().get(laps))) {
        entry = entry.withFit(laps, said("ask.fit"));
      }
      missing = day.missing(entry, laps);
    }
    return entry;
  }

  /** The same of a stint that was kept on paper: what is not measured or ticked stays open. */
  HelperEntry onPaper(AloneDay day, AloneDay.Work work, SessionState state) {
    HelperEntry entry = checked(seen(day, work, true), EnumSet.allOf(SafetyCheck.class));
    HelperEntry fit =
        work.stint() > day.firstStint() ? entry.withFit(state.lapsSoFar(), said("ask.fit")) : entry;
    return fit.onPaper(new HelperEntry.Paper(day.plan().rider()));
  }

  private HelperEntry seen(AloneDay day, AloneDay.Work work, boolean paper) {
    Plan plan = day.plan();
    Integer due = work.setup();
    HelperEntry entry = HelperEntry.untouched(work.stint(), plan.rider(), due == null ? 0 : due);
    if (due != null) {
      int on =
          until(
              WORDS.say("ask.on", Labels.name(plan, due)),
              typed -> typed.isEmpty() ? due : setup(plan, typed));
      entry = on == due ? entry : entry.withFitted(on);
    }
    return measured(entry, day.settings(work.stint(), entry.fitted()), paper, day::fits);
  }

  private HelperEntry checked(HelperEntry entry, Set<SafetyCheck> asked) {
    HelperEntry checked = entry;
    for (SafetyCheck check : asked) {
      String item = SwapWords.say("check." + check.name());
      checked = checked.withCheck(check, said("ask.check", item));
    }
    return checked;
  }

  /**
   * The same entry with what is measured of these settings, and why where outside tolerance.
   *
   * @param paper true where it is copied from paper: what is empty there stays open
   * @param fits true of an entry that is not too long to be kept
   */
  HelperEntry measured(
      HelperEntry entry, List<Setting> settings, boolean paper, Predicate<HelperEntry> fits) {
    HelperEntry measured = entry.withMeasured(Map.of(), List.of());
    for (Setting setting : settings) {
      String name = setting.name();
      HelperEntry before = measured;
      measured =
          until(
              WORDS.say("ask.setting", name, SwapWords.aim(setting)),
              typed -> {
                refuse(MeasuredValues.wrong(setting, typed, paper));
                return room(MeasuredValues.judged(settings, before, name, typed), fits);
              });
      if (measured.outside(name).isPresent()) {
        HelperEntry outside = measured;
        measured =
            until(
                WORDS.say("ask.outside", name, setting.shown()),
                typed -> {
                  if (typed.isEmpty() && !paper) {
                    refuse(List.of(Problem.of(DeskFault.OUTSIDE_TOLERANCE, "", name)));
                  }
                  return room(outside.because(name, words(typed)), fits);
                });
      }
    }
    return measured;
  }

  private static HelperEntry room(HelperEntry entry, Predicate<HelperEntry> fits) {
    if (!fits.test(entry)) {
      refuse(List.of(Problem.of(DeskFault.NOTE_TOO_LONG, "")));
    }
    return entry;
  }

  /** Which prepared unit was mounted, and whether its cover held. */
  MountedUnit unit(AloneDay day, AloneDay.Work work, SessionState state) {
    if (!day.prepared()) {
      return MountedUnit.asPlanned(work.stint());
    }
    int stint = work.stint();
    if (stint > 0) {
      stint =
          until(
              WORDS.say("ask.code", work.code()),
              typed -> typed.isEmpty() ? work.stint() : stint(state, typed));
    }
    while (!said("ask.whole")) {
      String open = until(WORDS.say("ask.open"), MountTalk::words);
      if (!open.isEmpty()) {
        return new MountedUnit(stint, false, open);
      }
      // Whoever said no by a slip has a way back to the question.
      complain(SessionCommand.complaint(List.of(Problem.of(DeskFault.COVER_WORDS, ""))));
    }
    return new MountedUnit(stint, true, "");
  }

  /**
   * In which stint something else was on, what, and how it came about. Enter in place of a stint or
   * a setup leaves.
   */
  Otherwise otherwise(AloneDay day, SessionState state) {
    int stint =
        orLeft(
            WORDS.say("ask.stint"),
            typed -> {
              int number = TypedNumber.whole(typed).orElseThrow(() -> noStint(typed));
              refuse(day.correcting(state, number));
              return number;
            });
    int setup =
        orLeft(
            WORDS.say("ask.really"),
            typed -> {
              int meant = setup(day.plan(), typed);
              refuse(day.correcting(state, stint, meant));
              return meant;
            });
    String words = until(WORDS.say("ask.words"), MountTalk::words);
    return new Otherwise(stint, setup, words);
  }

  private static Complaint noStint(String typed) {
    return SessionCommand.complaint(List.of(Problem.of(DeskFault.FIT_NOT_A_STINT, "", typed)));
  }

  private static String words(String typed) {
    refuse(TypedText.problem(typed, TypedText.Form.WORDS, "").stream().toList());
    return typed;
  }

  private static void refuse(List<Problem> problems) {
    if (!problems.isEmpty()) {
      throw SessionCommand.complaint(problems);
    }
  }

  /** Asks until the answer can be used, and says each time why it cannot. */
  private <T> T until(String prompt, Function<String, T> used) {
    return until(prompt, used, false);
  }

  /** The same, but for Enter, which leaves with why it cannot be used. */
  private <T> T orLeft(String prompt, Function<String, T> used) {
    return until(prompt, used, true);
  }

  private <T> T until(String prompt, Function<String, T> used, boolean leaves) {
    while (true) {
      String typed = somebody(prompt);
      try {
        return used.apply(typed);
      } catch (Complaint wrong) {
        if (leaves && typed.isEmpty()) {
          throw wrong;
        }
        complain(wrong);
      }
    }
  }

  private void complain(Complaint wrong) {
    command.complain(wrong.getMessage() + " " + WORDS.say("again"));
  }

  private String somebody(String prompt) {
    return terminal.answer(prompt).map(String::strip).orElseThrow(MountTalk::nobody);
  }

  private static Complaint nobody() {
    return new Complaint(ExitCode.BAD_INPUT, WORDS.say("nobody"));
  }

  /** True or false as whoever is asked says. */
  private boolean said(String key, Object... details) {
    return agreed(WORDS.say(key, details), false).orElseThrow(MountTalk::nobody);
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
