package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.PaperKeying;
import blindlap.desk.Sessions;
import blindlap.plan.TellingRun;
import blindlap.session.SessionState;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Keys in paper that was typed twice. */
@Command(
    name = "key-in",
    description = {
      "Keys in paper: two files of laps typed from the same sheets, in ridden order.",
      "Where they differ, every difference is shown and nothing is recorded; where they agree, the"
          + " laps are.",
      "Line scales are measured by ruler in millimetres. --form writes the empty table to fill in.",
      "In a telling run the answer stands beside the last lap of its trial; rows of a trial of"
          + " which",
      "nothing is typed, and those after a void, were not ridden."
    })
final class KeyInCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Parameters(index = "1", arity = "0..1", paramLabel = "FIRST.csv", description = "Typed first.")
  @Nullable Path first;

  @Parameters(
      index = "2",
      arity = "0..1",
      paramLabel = "SECOND.csv",
      description = "Typed again, without looking at the first.")
  @Nullable Path second;

  @Option(names = "--form", paramLabel = "FILE", description = "Write the empty table.")
  @Nullable Path form;

  @Option(
      names = "--knows-key",
      paramLabel = "MEASURE",
      description = {
        "A measure that was timed or scored by someone who knows the key: a declared deviation,",
        "said beside the verdict. May be given more than once."
      })
  List<String> knowing = List.of();

  KeyInCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      if (form != null) {
        Files.write(form, new String(desk.keyingIn().form(state), StandardCharsets.UTF_8));
        did(Done.WRITTEN);
        say("Empty table written to " + form + ".");
        return ExitCode.DONE;
      }
      if (first == null || second == null) {
        throw new Complaint(
            ExitCode.BAD_INPUT,
            "Two files are needed, typed from the same sheets. Nothing was recorded.");
      }
      return record(desk, state, ReadFile.LAPS.bytes(first), ReadFile.LAPS.bytes(second));
    }
  }

  private Integer record(Desk desk, SessionState state, byte[] one, byte[] two) {
    PaperKeying.Files files = desk.keyingIn().compare(state, one, two);
    if (!files.problems().isEmpty()) {
      throw complaint(files.problems());
    }
    if (!files.found().isEmpty()) {
      List<String> lines = new ArrayList<>();
      files
          .found()
          .forEach(
              d ->
                  lines.add(
                      "%s, %s: first \"%s\", then \"%s\"."
                          .formatted(lap(state, d.lap()), d.heading(), d.first(), d.second())));
      lines.add("Nothing was recorded. Look at the sheets, mend the files and key in again.");
      throw new Complaint(ExitCode.BAD_INPUT, lines);
    }
    Sessions.Result.Done done = done(desk.keyingIn().record(state, files, knowing));
    say("Both agree. Saved " + done.written().size() + " entries from paper.");
    return ExitCode.DONE;
  }

  private static String lap(SessionState state, String lap) {
    TellingRun run = state.plan().telling();
    return run == null
        ? "Lap " + lap
        : "Trial %d, lap %s".formatted(run.trial(Integer.parseInt(lap)), lap);
  }
}
