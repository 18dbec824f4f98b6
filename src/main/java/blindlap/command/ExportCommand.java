package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.wording.KeepingWords;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes a session for others: as a data package, or as one file for another notebook. */
@Command(
    name = "export",
    description = {
      "Writes a session for others, in one of two ways or in both.",
      "--out DIR: a data package, CSV and JSON with a dictionary of columns and units, from which"
          + " anyone recomputes every number. While the session is sealed it holds codes only.",
      "--session-file FILE: the session itself, every entry as it is, sealed if it is sealed, for"
          + " another notebook: blindlap bring-in FILE."
    })
final class ExportCommand extends SessionCommand {
  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @ArgGroup(exclusive = false, multiplicity = "1")
  Ways ways = new Ways();

  /** Where to; at least one. */
  static final class Ways {
    @Option(
        names = "--out",
        paramLabel = "DIR",
        description = "The folder to write the data package to.")
    @Nullable Path folder;

    @Option(
        names = "--session-file",
        paramLabel = "FILE",
        description =
            "The file to write the session to; written over only if it is the file of a session.")
    @Nullable Path file;
  }

  ExportCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      if (ways.folder != null) {
        dataPackage(desk, state, ways.folder);
      }
      if (ways.file != null) {
        int entries = desk.exchange(keeping()).write(state.id(), ways.file);
        did(Done.WRITTEN);
        say(KeepingWords.written(SessionSummary.of(state), entries, ways.file));
      }
      return ExitCode.DONE;
    }
  }

  private void dataPackage(Desk desk, SessionState state, Path folder) {
    if (state.unsealed()) {
      // No blind package of it: the session inside holds its opened key and what was found.
      desk.reviews()
          .refuse(state)
          .ifPresent(
              problems -> {
                throw complaint(problems);
              });
    }
    Files.write(folder, desk.reviews().export(state));
    did(Done.WRITTEN);
    say(
        state.unsealed()
            ? "Data package written to " + folder
            : "Blind data package, codes only, written to " + folder);
  }
}
