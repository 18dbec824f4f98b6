package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.Sessions;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.wording.TwoValuesWords;
import blindlap.wording.day.RideWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Closes the day. */
@Command(
    name = "close-day",
    description = {
      "Closes the day: the bike is covered or back to neutral, paper is keyed in, nothing has been looked at.",
      "After this no lap is recorded; voids and typing errors can still be settled."
    })
final class CloseDayCommand extends SessionCommand {
  @Parameters(
      index = "0",
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
  String session = "";

  CloseDayCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      Sessions.Result.Done result =
          done(desk.sessions().act(state.id(), latest -> new LifeCommands(latest).closeDay()));
      say(
          "Day closed with "
              + result.state().lapsRidden()
              + " laps. Next: settle voids and typing errors, then blindlap close-review.");
      if (result.state().nextLap().isPresent()) {
        say(RideWords.missing(result.state().day()));
      }
      TwoValuesWords.withRule(result.state()).forEach(this::say);
      return ExitCode.DONE;
    }
  }
}
