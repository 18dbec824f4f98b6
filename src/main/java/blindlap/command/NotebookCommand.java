package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.wording.NotebookWords;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists the sessions of a notebook. */
@Command(
    name = "notebook",
    description =
        "Lists the sessions of a notebook, latest first; with --verify checks every entry.")
final class NotebookCommand extends SessionCommand {
  private static final int VERDICTS_AT_A_TIME = 50;

  @Option(names = "--verify", description = "Hash every entry again and check every chain.")
  boolean verify;

  @Option(
      names = "--search",
      paramLabel = "WORDS",
      description =
          "Only sessions that hold every one of these words in question, setups, rider, trail, date, state or verdict.")
  String search = "";

  NotebookCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      if (verify) {
        verify(desk);
        return ExitCode.DONE;
      }
      while (desk.sessionList().keepVerdicts(VERDICTS_AT_A_TIME)) {
        // Verdicts that no list has shown yet are worked out once and kept.
      }
      List<SessionSummary> found = desk.sessionList().find(search);
      found.forEach(this::line);
      if (found.isEmpty()) {
        say(
            search.isBlank()
                ? "The notebook is empty. See a whole day with: blindlap demo"
                : NotebookWords.found(0, 0));
      }
      return ExitCode.DONE;
    }
  }

  private void verify(Desk desk) {
    int entries = 0;
    List<SessionState> all = desk.sessions().all();
    for (SessionState state : all) {
      entries += state.entries().size();
    }
    say(all.size() + " sessions, " + entries + " entries: every hash and every chain holds.");
  }

  private void line(SessionSummary each) {
    List<String> verdict = NotebookWords.verdictParts(each.verdict());
    boolean told = !each.step().sealed() && !each.verdict().isEmpty();
    say(
        String.join(
            "  ",
            each.id().brief(),
            each.day().toString(),
            NotebookWords.title(each),
            each.trail(),
            each.rider(),
            told ? verdict.get(0) : NotebookWords.standing(each)));
    if (told && !verdict.get(1).isEmpty()) {
      say("          " + verdict.get(1));
    }
  }
}
