package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the data package of a session. */
@Command(
    name = "export",
    description = {
      "Writes a session as a data package: CSV and JSON with a dictionary of columns and units.",
      "While the session is sealed it holds codes only."
    })
final class ExportCommand extends SessionCommand {
  @Parameters(
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
  String session = "";

  @Option(
      names = "--out",
      required = true,
      paramLabel = "DIR",
      description = "The folder to write to.")
  @Nullable Path out;

  ExportCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    Path folder = java.util.Objects.requireNonNull(out);
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      Files.folder(folder);
      desk.reviews()
          .export(state)
          .forEach((name, bytes) -> Files.write(folder.resolve(name), bytes));
      say(
          state.unsealed()
              ? "Data package written to " + folder
              : "Blind data package, codes only, written to " + folder);
      return ExitCode.DONE;
    }
  }
}
