package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Prints the codes of a session. */
@Command(
    name = "codes",
    description = {
      "Prints the rider's card: the code of each stint, and nothing that depends on the order."
    })
final class CodesCommand extends SessionCommand {
  @Parameters(
      index = "0",
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
  String session = "";

  CodesCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      say("stint  code");
      for (int stint = 1; stint <= state.plan().stints(); stint++) {
        say(String.format(java.util.Locale.ROOT, "%5d  %4d", stint, state.code(stint)));
      }
      say(blindlap.wording.day.Words.of("cautions").say("ride"));
      return ExitCode.DONE;
    }
  }
}
