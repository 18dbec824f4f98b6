package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.DeskFault;
import blindlap.desk.FitCorrections;
import blindlap.desk.HelperDay;
import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.session.GuessWords;
import blindlap.session.SessionState;
import blindlap.session.day.Guess;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Corrects what was on in an earlier stint. */
@Command(
    name = "wrong-fit",
    description = {
      "The helper noticed after the hand-over that another setup was on. Asks for the helper phrase; the",
      "rider looks away, and hears nothing of it.",
      "It is kept in the helper's encrypted draft and goes into the next record that is written anyway.",
      "Once the day is closed, blindlap amend adds it after unsealing."
    })
final class WrongFitCommand extends HelperDayCommand {
  @Parameters(
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
  String session = "";

  @Option(
      names = "--stint",
      required = true,
      paramLabel = "STINT",
      description = "Which stint, as handed over; 0 for the warm-up.")
  int stint;

  @Option(
      names = "--on",
      required = true,
      paramLabel = "SETUP",
      description = "What was really on: a setup's name, its beginning or its letter.")
  String on = "";

  @Option(names = "--words", paramLabel = "TEXT", description = "How it came about; sealed.")
  String words = "";

  WrongFitCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      int setup = setup(state.plan());
      HelperDay day = helperDay(desk, state);
      FitCorrections fits = new FitCorrections(day, desk.clock());
      refuse(fits.keep(now(desk, state), fits.now(stint, setup, words)));
      did(Done.KEPT);
      say("Kept, encrypted, for the next record. Say nothing of it to the rider.");
      return ExitCode.DONE;
    }
  }

  private int setup(Plan plan) {
    Integer setup = GuessWords.parse(plan, on).map(Guess::setup).orElse(null);
    if (setup == null) {
      String names = String.join(", ", plan.setups().stream().map(Setup::name).toList());
      throw complaint(List.of(Problem.of(DeskFault.NO_SUCH_SETUP, "", on, names)));
    }
    return setup;
  }
}
