package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.Keys;
import blindlap.plan.Plan;
import blindlap.seal.HelperSchedule;
import blindlap.session.SessionState;
import blindlap.wording.day.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Tells the helper what to fit. */
@Command(
    name = "helper",
    description = {
      "Tells the helper what to fit, stint by stint. Asks for the helper phrase; the rider looks away.",
      "blindlap sheets --helper writes the same as a sheet to print."
    })
final class HelperCommand extends SessionCommand {
  @Parameters(
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
  String session = "";

  HelperCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      Keys.Result result = desk.keys().helper(state, setting().terminal().secret("Helper phrase:"));
      if (result instanceof Keys.Result.Refused refused) {
        throw complaint(refused.problems());
      }
      schedule(state.plan(), ((Keys.Result.Open) result).schedule());
      say(Words.of("cautions").say("short"));
      say(Words.of("cautions").say("emergency"));
      return ExitCode.DONE;
    }
  }

  private void schedule(Plan plan, HelperSchedule schedule) {
    say("Warm-up laps on " + plan.setups().get(schedule.warmUp()).name());
    say("stint  code  fit");
    for (HelperSchedule.Fit fit : schedule.fits()) {
      String swap = fit.swap() == HelperSchedule.Swap.REAL ? "real swap" : "dummy swap";
      say(
          String.format(
              java.util.Locale.ROOT,
              "%5d  %4d  %s (%s)",
              fit.stint(),
              fit.code(),
              plan.setups().get(fit.fitted()).name(),
              swap));
    }
  }
}
