package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.wording.NotebookWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Ends a session without a finding. */
@Command(
    name = "abandon",
    description = {
      "Ends a session without a finding. Its entries are kept, and later reports of the same"
          + " question list it.",
      "Nothing takes it up again, so it asks before it does."
    })
final class AbandonCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(names = "--reason", required = true, paramLabel = "TEXT", description = "Why.")
  String reason = "";

  @Option(
      names = "--unaware",
      paramLabel = "NAME",
      description =
          "Who decides it and declares not to know key or setups: needed in a declared series once"
              + " a scored lap is ridden, so that another session may take its place.")
  String unaware = "";

  @Option(
      names = "--yes",
      description =
          "For scripts: abandons without asking. Needed for that where there is no terminal.")
  boolean yes;

  AbandonCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      asked(desk, state);
      done(desk.sessionList().abandon(state.id(), reason, unaware));
      say("Session " + state.id().brief() + " is abandoned; its entries are kept.");
      return ExitCode.DONE;
    }
  }

  /**
   * Names the session, which the beginning of an id or "latest" does not, and asks.
   *
   * @throws Complaint if it may not be abandoned, or shall stay, or nobody answers
   */
  private void asked(Desk desk, SessionState state) {
    desk.sessionList()
        .refuseAbandoning(state, reason, unaware)
        .ifPresent(
            problems -> {
              throw complaint(problems);
            });
    if (yes) {
      return;
    }
    CommandSetting.Terminal terminal = setting().terminal();
    if (!terminal.present()) {
      throw new Complaint(ExitCode.BAD_INPUT, NotebookWords.say("abandon.no.terminal"));
    }
    SessionSummary summary = SessionSummary.of(state);
    String ask =
        NotebookWords.say(
            "abandon.ask",
            state.id().brief(),
            NotebookWords.title(summary),
            summary.rider(),
            summary.trail(),
            summary.day());
    if (!YesOrNo.ask(terminal, ask, this::complain, NotebookWords.say("abandon.unclear"))) {
      throw new Complaint(ExitCode.BAD_INPUT, NotebookWords.say("abandon.stays"));
    }
  }
}
