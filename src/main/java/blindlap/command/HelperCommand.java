package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.FitCorrections;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperOver;
import blindlap.plan.Plan;
import blindlap.session.SessionState;
import blindlap.wording.day.Words;
import java.util.Locale;
import java.util.SortedMap;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Tells the helper what to fit. */
@Command(
    name = "helper",
    description = {
      "Tells the helper what to fit, stint by stint. Asks for the helper phrase; the rider looks away.",
      "blindlap sheets --helper writes the same as a sheet to print.",
      "Whether a swap is real follows what is on the bike: blindlap wrong-fit corrects it, blindlap catch-up",
      "keys in the helper's paper, and --day-over closes the helper's day."
    })
final class HelperCommand extends HelperDayCommand {
  @Parameters(
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
  String session = "";

  @Option(
      names = "--day-over",
      description = {
        "The helper's day is over: write its closing record, which every day with a helper's page",
        "gets, whether there was anything to correct or not. Possible until the review is closed."
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
      if (over) {
        close(new HelperOver(day, desk.clock()), state, now);
        return ExitCode.DONE;
      }
      FitCorrections fits = new FitCorrections(day, desk.clock());
      fits.keepAsItIs(now);
      schedule(day, fits.known(now));
      say(Words.of("cautions").say("short"));
      say(Words.of("cautions").say("emergency"));
      return ExitCode.DONE;
    }
  }

  private void close(HelperOver closing, SessionState before, SessionState now) {
    // A day that was closed already got its record as the phrase opened it.
    if (HelperOver.closed(before) || !HelperOver.closed(now)) {
      done(closing.write(closing.entry(now)));
    } else {
      did(Done.SAVED);
    }
    say("The helper's day is closed. Next: cover the bike or refit it to a neutral state.");
  }

  private void schedule(HelperDay day, SortedMap<Integer, Integer> known) {
    Plan plan = day.plan();
    say("Warm-up laps on " + plan.setups().get(day.work(0).setup()).name() + really(day, 0, known));
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
              work.real() ? "real swap" : "dummy swap",
              really(day, stint, known)));
    }
  }

  /** What was on instead, where a stint was fitted otherwise. */
  private static String really(HelperDay day, int stint, SortedMap<Integer, Integer> known) {
    int scheduled = day.work(stint).setup();
    int on = known.getOrDefault(stint, scheduled);
    return on == scheduled ? "" : "; " + day.plan().setups().get(on).name() + " was on";
  }
}
