package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import blindlap.wording.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists the sessions of a notebook. */
@Command(
    name = "notebook",
    description =
        "Lists the sessions of a notebook, latest first; with --verify checks every entry.")
final class NotebookCommand extends SessionCommand {
  @Option(names = "--verify", description = "Hash every entry again and check every chain.")
  boolean verify;

  NotebookCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      int entries = 0;
      int sessions = 0;
      for (SessionState state : desk.sessions().all()) {
        sessions++;
        entries += state.entries().size();
        if (!verify) {
          line(desk, state);
        }
      }
      if (verify) {
        say(sessions + " sessions, " + entries + " entries: every hash and every chain holds.");
      } else if (sessions == 0) {
        say("The notebook is empty. See a whole day with: blindlap demo");
      }
      return ExitCode.DONE;
    }
  }

  private void line(Desk desk, SessionState state) {
    String step = Words.of("steps").say(state.step().name());
    say(
        String.join(
            "  ",
            state.id().brief(),
            state.plan().day().toString(),
            state.plan().title(),
            state.plan().trail(),
            state.plan().rider(),
            desk.reviews().verdict(state).orElse(step)));
  }
}
