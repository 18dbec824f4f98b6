package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints the finding of an unsealed session. */
@Command(
    name = "review",
    description = {
      "Prints the finding of an unsealed session: verdict first, then the evidence.",
      "With --json the numbers come with fixed names, for other programs."
    })
final class ReviewCommand extends SessionCommand {
  @Parameters(
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
  String session = "";

  @Option(names = "--json", description = "Print the numbers as JSON.")
  boolean json;

  ReviewCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      desk.reviews()
          .refuse(state)
          .ifPresent(
              problems -> {
                throw complaint(problems);
              });
      if (json) {
        say(desk.reviews().json(state));
      } else {
        desk.reviews().text(state).forEach(this::say);
      }
      return ExitCode.DONE;
    }
  }
}
