package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Ends a session without a finding. */
@Command(
    name = "abandon",
    description = {
      "Ends a session without a finding. Its entries are kept, and later reports of the same question list it."
    })
final class AbandonCommand extends SessionCommand {
  @Parameters(
      index = "0",
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
  String session = "";

  @Option(names = "--reason", required = true, paramLabel = "TEXT", description = "Why.")
  String reason = "";

  @Option(
      names = "--unaware",
      paramLabel = "NAME",
      description =
          "Who decides it and declares not to know key or setups: needed in a declared series once a scored lap is ridden, so that another session may take its place.")
  String unaware = "";

  AbandonCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      done(desk.sessionList().abandon(state.id(), reason, unaware));
      say("Session " + state.id().brief() + " is abandoned; its entries are kept.");
      return ExitCode.DONE;
    }
  }
}
