package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.DeskFault;
import blindlap.desk.Sessions;
import blindlap.fault.Problem;
import blindlap.session.SessionState;
import blindlap.session.day.Step;
import blindlap.wording.RecordingsWords;
import blindlap.wording.TwoValuesWords;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Closes the review, still blind. */
@Command(
    name = "close-review",
    description = {
      "Closes the review, still blind: voids and corrections are final after this.",
      "Prints the fingerprint of the review; give it to someone else before unsealing."
    })
final class CloseReviewCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--without-recording",
      description =
          "Closes it although a recording that the plan takes times from was not brought in.")
  boolean withoutRecording;

  CloseReviewCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      List<String> awaited = RecordingsWords.awaitedNames(state);
      if (!awaited.isEmpty() && !withoutRecording && state.step() == Step.DAY_CLOSED) {
        throw complaint(
            List.of(Problem.of(DeskFault.RECORDING_AWAITED, "", String.join(", ", awaited))));
      }
      Sessions.Result.Done result = done(desk.keys().closeReview(state.id()));
      say("Review closed. Its fingerprint (give it to someone else now):");
      say("  " + result.state().reviewFingerprint().orElseThrow().grouped());
      TwoValuesWords.withRule(result.state()).forEach(this::say);
      return ExitCode.DONE;
    }
  }
}
