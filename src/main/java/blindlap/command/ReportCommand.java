package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import java.nio.file.Path;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the report of an unsealed session. */
@Command(
    name = "report",
    description =
        "Writes the report of an unsealed session: a PDF, and one HTML file that needs nothing"
            + " else.")
final class ReportCommand extends SessionCommand {
  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--out",
      required = true,
      paramLabel = "DIR",
      description = "The folder to write to.")
  @Nullable Path out;

  @Option(names = "--black", description = "Black on white instead of colour.")
  boolean black;

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
      Map<String, byte[]> files = desk.reviews().report(state, black);
      Files.write(folder, files);
      did(Done.WRITTEN);
      files
          .keySet()
          .forEach(
              name -> {
                desk.reviews().reported(state, name);
                say("Report written to " + folder.resolve(name));
              });
      return ExitCode.DONE;
    }
  }
}
