package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.wording.day.RideWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Records that the rider learned what is fitted. */
@Command(
    name = "blind-broken",
    description = {
      "Records that the rider saw or was told what is fitted, or that someone had to look at the"
          + " bike; of masked labels, that it came out which part is which.",
      "The laps stay; the finding is given with and without them.",
      "In an emergency look at the bike first."
    })
final class BlindBrokenCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--stint",
      required = true,
      paramLabel = "STINT",
      description = "The stint it concerns.")
  int stint;

  @Option(names = "--what", required = true, paramLabel = "TEXT", description = "What happened.")
  String what = "";

  BlindBrokenCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      done(
          desk.sessions()
              .act(state.id(), latest -> new LifeCommands(latest).blindBroken(stint, what)));
      say(RideWords.broken(state.plan().level(), stint));
      return ExitCode.DONE;
    }
  }
}
