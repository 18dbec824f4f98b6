package blindlap.command;

import blindlap.desk.Desk;
import blindlap.plan.TellingRun;
import blindlap.session.SessionState;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Prints the codes of a session. */
@Command(
    name = "codes",
    description = {
      "Prints the rider's card: the code of each stint, and nothing that depends on the order."
    })
final class CodesCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  CodesCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      TellingRun run = state.plan().telling();
      say((run == null ? "" : "trial  ") + "stint  code");
      for (int stint = 1; stint <= state.plan().stints(); stint++) {
        say(trial(run, stint) + String.format(Locale.ROOT, "%5d  %4d", stint, state.code(stint)));
      }
      say(blindlap.wording.day.Words.of("cautions").say("ride"));
      return ExitCode.DONE;
    }
  }

  /** The number of a trial beside its first lap. */
  private static String trial(@Nullable TellingRun run, int stint) {
    if (run == null) {
      return "";
    }
    return run.place(stint) == 1
        ? String.format(Locale.ROOT, "%5d  ", run.trial(stint))
        : " ".repeat(7);
  }
}
