package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.LapFiles;
import blindlap.desk.Sessions;
import blindlap.session.SessionState;
import blindlap.session.TwoValues;
import blindlap.session.day.LapState;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Records laps from a file. */
@Command(
    name = "record",
    description = {
      "Records laps from a file: all rows, or none if one is wrong.",
      "Header row with lap (number over the day) or code, then measures; optional lap_in_stint,"
          + " guess (answer in a telling run), void, note.",
      "Separator ; or tab or comma; times in seconds or m:ss.s; an empty cell is a missing value."
    })
final class RecordCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Parameters(index = "1", paramLabel = "LAPS.csv", description = "The file of laps.")
  @Nullable Path file;

  @Option(
      names = "--correct",
      description = "Change laps that are already recorded; needs --reason.")
  boolean correct;

  @Option(names = "--reason", paramLabel = "TEXT", description = "Why values are changed.")
  String reason = "";

  @Option(
      names = "--knows-key",
      paramLabel = "MEASURE",
      description = {
        "A measure that was timed or scored by someone who knows the key: a declared deviation,",
        "said beside the verdict. May be given more than once."
      })
  List<String> knowing = List.of();

  @Option(
      names = "--decided-by",
      paramLabel = "NAME",
      description = {
        "With --correct and --reason \"typing error\": who decides that of two values that two"
            + " machines",
        "recorded for one lap another counts than the plan says."
      })
  String decidedBy = "";

  @Option(
      names = "--knows-neither",
      description = "That person declares to know neither key nor setups.")
  boolean knowsNeither;

  RecordCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    byte[] bytes = ReadFile.LAPS.bytes(java.util.Objects.requireNonNull(file));
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      LapFiles files = new LapFiles(desk.sessions());
      Sessions.Result result =
          correct
              ? files.correct(
                  state, bytes, reason, knowing, new TwoValues.Decider(decidedBy, knowsNeither))
              : files.record(state, bytes, knowing);
      Sessions.Result.Done written = done(result);
      long voids =
          written.state().laps().stream().map(LapState::voided).filter(v -> v.isPresent()).count();
      say(
          "Saved "
              + written.written().size()
              + " entries. "
              + written.state().lapsRidden()
              + " of "
              + state.plan().lapsOfDay()
              + " laps are recorded, "
              + voids
              + " of them void.");
      return ExitCode.DONE;
    }
  }
}
