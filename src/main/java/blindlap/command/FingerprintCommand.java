package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints the fingerprints of a session, and writes down who received one. */
@Command(
    name = "fingerprint",
    description = {
      "Prints the fingerprints of a session.",
      "With --given-to it writes down who received the latest one; the report says so."
    })
final class FingerprintCommand extends SessionCommand {
  @Parameters(
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
  String session = "";

  @Option(
      names = "--given-to",
      paramLabel = "NAME",
      description = "Who received the latest fingerprint.")
  @Nullable String to;

  FingerprintCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      say("plan    " + state.planFingerprint().grouped());
      state.reviewFingerprint().ifPresent(f -> say("review  " + f.grouped()));
      if (to != null) {
        done(desk.reviews().given(state, to));
        say("Written down: given to " + to.strip() + ".");
      }
      return ExitCode.DONE;
    }
  }
}
