package blindlap.command;

import blindlap.desk.Desk;
import blindlap.review.FileFingerprints;
import blindlap.session.SessionState;
import blindlap.wording.FingerprintWords;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints the fingerprints of a session, and writes down who received one. */
@Command(
    name = "fingerprint",
    description = {
      "Prints the fingerprints of a session.",
      "With --given-to it writes down who received the latest one, and which; the report says so.",
      "With --compare it answers whether a number that somebody holds is one of this file: exit"
          + " code 0 yes, 1 no. A file that was rewritten as a whole matches itself; whoever kept a"
          + " number from before sees it here."
    })
final class FingerprintCommand extends SessionCommand {
  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--given-to",
      paramLabel = "NAME",
      description = "Who received the latest fingerprint.")
  @Nullable String to;

  @Option(
      names = "--compare",
      paramLabel = "NUMBER",
      description =
          "What somebody was given, typed or scanned: its first 16 digits at least. Blanks, dashes,"
              + " capitals and line breaks do not matter.")
  @Nullable String number;

  FingerprintCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      if (number != null) {
        return compare(state, number);
      }
      say("plan    " + state.planFingerprint().grouped());
      state.reviewFingerprint().ifPresent(f -> say("review  " + f.grouped()));
      say(FingerprintWords.beside(state));
      FingerprintWords.given(state).forEach(this::say);
      if (to != null) {
        done(desk.reviews().given(state, to));
        say(FingerprintWords.say("written", to.strip()));
      }
      return FileFingerprints.of(state).differ() ? ExitCode.CHECK_FAILED : ExitCode.DONE;
    }
  }

  private int compare(SessionState state, String held) {
    if (to != null) {
      throw new Complaint(ExitCode.BAD_INPUT, FingerprintWords.say("compare.alone"));
    }
    FingerprintWords.Typed typed = FingerprintWords.typed(held);
    if (!typed.complaint().isEmpty()) {
      throw new Complaint(ExitCode.BAD_INPUT, typed.complaint());
    }
    FileFingerprints.Answer answer = FileFingerprints.compare(state, typed.digits());
    say(FingerprintWords.answer(answer));
    return answer.yes() ? ExitCode.DONE : ExitCode.CHECK_FAILED;
  }
}
