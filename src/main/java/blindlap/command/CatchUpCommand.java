package blindlap.command;

import blindlap.desk.CaughtUp;
import blindlap.desk.Desk;
import blindlap.desk.HelperDay;
import blindlap.desk.Sessions;
import blindlap.session.KeptOnPaper;
import blindlap.session.SessionState;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Keys in the helper's paper. */
@Command(
    name = "catch-up",
    description = {
      "Keys in the helper's paper: stints that were handled without the helper's page, in ridden"
          + " order.",
      "Each gets a record \"kept on paper\". Asks for the helper phrase; the rider looks away.",
      "--form writes the empty table to fill in; it needs no phrase and names no setup."
    })
final class CatchUpCommand extends HelperDayCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "TABLE.csv",
      description = "The table, filled in; delete it afterwards, for it holds the key.")
  @Nullable Path table;

  @Option(names = "--form", paramLabel = "FILE", description = "Write the empty table.")
  @Nullable Path form;

  CatchUpCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      refuse(CaughtUp.refusals(state));
      if (form != null) {
        Files.write(form, new String(CaughtUp.form(state), StandardCharsets.UTF_8));
        did(Done.WRITTEN);
        say("Empty table written to " + form + ".");
        return ExitCode.DONE;
      }
      if (table == null) {
        throw new Complaint(
            ExitCode.BAD_INPUT,
            "A table is needed: blindlap catch-up SESSION --form FILE writes an empty one. Nothing"
                + " was recorded.");
      }
      CaughtUp.Paper paper = CaughtUp.read(state, ReadFile.SHEET.bytes(table));
      refuse(paper.problems());
      HelperDay day = helperDay(desk, state);
      Sessions.Result.Done done = done(new CaughtUp(day).record(paper.stints()));
      List<Integer> stints = paper.stints().stream().map(KeptOnPaper::stint).toList();
      int left = new CaughtUp(day).open(done.state()).size();
      say(
          "Kept on paper and recorded: %d %s. Without a record: %d."
              .formatted(stints.size(), stints.size() == 1 ? "stint" : "stints", left));
      say("Delete " + table + " now: it says what was fitted.");
      return ExitCode.DONE;
    }
  }
}
