package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.Sessions;
import blindlap.session.SessionState;
import blindlap.wording.TwoValuesWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Closes the review, still blind. */
@Command(
    name = "close-review",
    description = {
      "Closes the review, still blind: voids and corrections are final after this.",
      "Prints the fingerprint of the review; give it to someone else before unsealing."
    })
final class CloseReviewCommand extends SessionCommand {
  @Parameters(
      index = "0",
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
  String session = "";

  CloseReviewCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      Sessions.Result.Done result = done(desk.keys().closeReview(state.id()));
      say("Review closed. Its fingerprint (give it to someone else now):");
      say("  " + result.state().reviewFingerprint().orElseThrow().grouped());
      TwoValuesWords.withRule(result.state()).forEach(this::say);
      return ExitCode.DONE;
    }
  }
}
