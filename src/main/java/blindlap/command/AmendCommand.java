package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.wording.AmendmentWords;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Adds an amendment to an unsealed session. */
@Command(
    name = "amend",
    description = {
      "Adds an amendment after unsealing: dated, with a reason, marked as such.",
      "No value, void or number changes; the original analysis stays, and review and report show"
          + " both."
    })
final class AmendCommand extends SessionCommand {
  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(names = "--text", required = true, paramLabel = "TEXT", description = "What is added.")
  String text = "";

  @Option(names = "--reason", required = true, paramLabel = "TEXT", description = "Why.")
  String reason = "";

  AmendCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      SessionState now =
          done(desk.sessions()
                  .act(state.id(), latest -> new LifeCommands(latest).amend(text, reason)))
              .state();
      List<String> lines = AmendmentWords.lines(now);
      say(lines.get(lines.size() - 1));
      say("The original analysis stays as it is; the amendment stands beside it.");
      return ExitCode.DONE;
    }
  }
}
