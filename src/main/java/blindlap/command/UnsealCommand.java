package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.Sessions;
import blindlap.plan.Labels;
import blindlap.session.SeriesEnded;
import blindlap.session.SessionState;
import blindlap.wording.FingerprintWords;
import blindlap.wording.SeriesWords;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Opens the seal. */
@Command(
    name = "unseal",
    description = {
      "Opens the seal once the review is closed. Asks for the helper phrase, where the order is"
          + " sealed and not covered; both fingerprints are recomputed.",
      "With --from-sheet the text of the helper's sheet opens it where the phrase is lost."
    })
final class UnsealCommand extends SessionCommand {
  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--from-sheet",
      paramLabel = "FILE",
      description = "Text typed or scanned from the helper's sheet; - reads standard input.")
  @Nullable Path sheet;

  @Option(
      names = "--end-series",
      paramLabel = "REASON",
      description =
          "End the session's declared series early, with a reason, so that it may be unsealed; no"
              + " verdict is pooled then.")
  @Nullable String endSeries;

  @Option(
      names = "--decided-by",
      paramLabel = "NAME",
      description = "Who ends the series early; with --end-series.")
  String decidedBy = "";

  UnsealCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      Optional<SeriesEnded> ending = ending();
      desk.keys()
          .refuseEarly(state, ending)
          .ifPresent(
              problems -> {
                throw complaint(problems);
              });
      Sessions.Result result =
          sheet == null && state.covered()
              ? desk.keys().unsealCovered(state, ending)
              : sheet == null
                  ? desk.keys().unseal(state, phrase(state), ending)
                  : desk.keys()
                      .unsealFromSheet(state, ReadFile.SHEET.text(sheet, System.in), ending);
      Sessions.Result.Done opened = done(result);
      did(Done.OPENED);
      if (opened.written().get(0).entry().fact() instanceof SeriesEnded) {
        say(SeriesWords.say("ended"));
      }
      say(FingerprintWords.say(state.covered() ? "opened" : "unsealed"));
      say("  plan    " + opened.state().planFingerprint().grouped());
      say("  review  " + opened.state().reviewFingerprint().orElseThrow().grouped());
      say(
          desk.reviews().waits(opened.state())
              ? SeriesWords.say("unsealed.waits")
              : "Order ridden: "
                  + Labels.order(
                      opened.state().plan(), opened.state().openKey().orElseThrow().order()));
      return ExitCode.DONE;
    }
  }

  private Optional<SeriesEnded> ending() {
    return Optional.ofNullable(endSeries)
        .map(reason -> new SeriesEnded(reason.strip(), decidedBy.strip()));
  }
}
