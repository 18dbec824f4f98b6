package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the report of an unsealed session. */
@Command(
    name = "report",
    description =
        "Writes the report of an unsealed session, one HTML file that needs nothing else.")
final class ReportCommand extends SessionCommand {
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

  ReportCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    Path folder = java.util.Objects.requireNonNull(out);
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      desk.reviews()
          .refuse(state)
          .ifPresent(
              problems -> {
                throw complaint(problems);
              });
      Path file = folder.resolve(desk.reviews().reportName(state));
      try {
        java.nio.file.Files.createDirectories(folder);
      } catch (IOException e) {
        throw new Complaint(
            ExitCode.FILE_TROUBLE,
            "The folder " + folder + " cannot be made; nothing was written.");
      }
      Files.write(file, desk.reviews().html(state));
      desk.reviews().reported(state, file.getFileName().toString());
      say("Report written to " + file);
      return ExitCode.DONE;
    }
  }
}
