package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.DeskFault;
import blindlap.desk.FitCorrections;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperOver;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.session.GuessWords;
import blindlap.session.HelperEntry;
import blindlap.session.SessionState;
import blindlap.wording.HandlingWords;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Tells the helper what to fit. */
@Command(
    name = "helper",
    description = {
      "Tells the helper what to fit, stint by stint. Asks for the helper phrase; the rider looks"
          + " away.",
      "blindlap sheets --helper writes the same as a sheet to print.",
      "Once stints are handled it asks whether a wrong setup was on in one; what is answered is"
          + " sealed, and",
      "whether a swap is real follows it. Nothing of it stands on the command line, and with or"
          + " without a",
      "correction the notebook file changes alike. blindlap catch-up keys in the helper's paper."
    })
final class HelperCommand extends HelperDayCommand {
  private static final String WRONG =
      "Was a wrong setup on in a stint? Its number (0 = the warm-up), or Enter for none:";

  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--day-over",
      description = {
        "The helper's day is over: write its closing record, which every day with a helper's page",
        "gets, corrected or not. Possible until the review is closed."
      })
  boolean over;

  HelperCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      HelperDay day = helperDay(desk, state);
      SessionState now = now(desk, state);
      FitCorrections fits = new FitCorrections(day, desk.clock());
      if (!over) {
        schedule(day, fits.known(now));
        say(Words.of("cautions").say("short"));
        say(Words.of("cautions").say("emergency"));
      }
      HelperEntry entry = asked(fits, now);
      if (over) {
        close(new HelperOver(day, desk.clock()), state, now, entry);
      } else if (fits.open(now)) {
        keep(day, entry, !entry.equals(fits.inHand(now)));
      }
      return ExitCode.DONE;
    }
  }

  /** The entry in hand with what was answered; nobody at the terminal answers nothing. */
  private HelperEntry asked(FitCorrections fits, SessionState now) {
    HelperEntry entry = fits.inHand(now);
    while (fits.open(now)) {
      String stint = answer(WRONG);
      if (stint.isEmpty()) {
        break;
      }
      int number =
          TypedNumber.whole(stint)
              .orElseThrow(
                  () -> complaint(List.of(Problem.of(DeskFault.FIT_NOT_A_STINT, "", stint))));
      int setup = setup(now.plan(), answer("What was really on (name, its beginning, or letter):"));
      HelperEntry.Correction said =
          fits.now(number, setup, answer("How it came about; sealed (Enter for no words):"));
      refuse(fits.problems(now, entry, said));
      entry = entry.withCorrection(said);
    }
    return entry;
  }

  private String answer(String prompt) {
    return setting().terminal().answer(prompt).map(String::strip).orElse("");
  }

  private static int setup(Plan plan, String typed) {
    Integer setup = GuessWords.setup(plan, typed).orElse(null);
    if (setup == null) {
      String names = String.join(", ", plan.setups().stream().map(Setup::name).toList());
      throw complaint(List.of(Problem.of(DeskFault.NO_SUCH_SETUP, "", typed, names)));
    }
    return setup;
  }

  /** Whoever only looks writes the same as whoever corrects. */
  private void keep(HelperDay day, HelperEntry entry, boolean corrected) {
    day.keep(entry);
    if (corrected) {
      did(Done.KEPT);
      say("Kept, encrypted, for the next record. Say nothing of it to the rider.");
    }
  }

  private void close(HelperOver closing, SessionState before, SessionState now, HelperEntry entry) {
    // A day that was closed already got its record as the phrase opened it.
    if (HelperOver.closed(before) || !HelperOver.closed(now)) {
      done(closing.write(entry));
    } else {
      did(Done.SAVED);
    }
    say("The helper's day is closed. Next: cover the bike or refit it to a neutral state.");
  }

  private void schedule(HelperDay day, SortedMap<Integer, Integer> known) {
    Plan plan = day.plan();
    HelperDay.Work first = day.work(0);
    String before = plan.oneSetting() == null ? "" : " (first handling" + way(plan, first) + ")";
    say(
        "Warm-up laps on "
            + plan.setups().get(first.setup()).name()
            + before
            + really(day, 0, known));
    HandlingWords.every(plan).forEach(this::say);
    HandlingWords.limits(plan).ifPresent(this::say);
    say("stint  code  fit");
    for (int stint = 1; stint <= plan.stints(); stint++) {
      HelperDay.Work work = day.work(stint);
      say(
          String.format(
              Locale.ROOT,
              "%5d  %4d  %s (%s)%s",
              stint,
              work.code(),
              plan.setups().get(work.setup()).name(),
              (work.real() ? "real swap" : "dummy swap") + way(plan, work),
              really(day, stint, known)));
    }
  }

  /** How a level is set from the one that is on; empty for other days. */
  private static String way(Plan plan, HelperDay.Work work) {
    String way = HandlingWords.row(plan, work.comesOff(), work.setup());
    return way.isEmpty() ? "" : ": " + way;
  }

  /** What was on instead, where a stint was fitted otherwise. */
  private static String really(HelperDay day, int stint, SortedMap<Integer, Integer> known) {
    int scheduled = day.work(stint).setup();
    int on = known.getOrDefault(stint, scheduled);
    return on == scheduled ? "" : "; " + day.plan().setups().get(on).name() + " was on";
  }
}
