package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.Reviews;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import blindlap.fault.Unusable;
import blindlap.session.SessionState;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints the finding of an unsealed session. */
@Command(
    name = "review",
    description = {
      "Prints the finding of an unsealed session: verdict first, then the evidence.",
      "With --json the numbers come with fixed names, for other programs."
    })
final class ReviewCommand extends SessionCommand {
  @Parameters(
      paramLabel = "SESSION",
      arity = "0..1",
      description = "Id of the session or its beginning, or latest.")
  @Nullable String session;

  @Option(
      names = "--from",
      paramLabel = "PACKAGE",
      description = "A data package to read instead of a notebook: its folder.")
  @Nullable Path from;

  @Option(names = "--json", description = "Print the numbers as JSON.")
  boolean json;

  ReviewCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    if ((from == null) == (session == null)) {
      throw new Complaint(
          ExitCode.BAD_INPUT, "Name either a session, or a data package with --from.");
    }
    return from == null ? ofNotebook(Objects.requireNonNull(session)) : ofPackage(from);
  }

  private int ofPackage(Path folder) {
    Map<String, byte[]> files = new TreeMap<>();
    for (String name :
        List.of(
            "plan.json",
            "key.json",
            "laps.csv",
            "stints.csv",
            "helper.csv",
            "record.csv",
            "amendments.csv",
            "finding.json")) {
      if (java.nio.file.Files.exists(folder.resolve(name))) {
        files.put(name, ReadFile.PACKAGE.bytes(folder.resolve(name)));
      }
    }
    try {
      if (json) {
        say(Reviews.jsonOfPackage(files));
      } else {
        Reviews.textOfPackage(files).forEach(this::say);
      }
      return ExitCode.DONE;
    } catch (Unreadable e) {
      throw refused(folder, e.problem());
    } catch (Unusable e) {
      throw refused(folder, e.problem());
    }
  }

  private static Complaint refused(Path folder, Problem why) {
    return new Complaint(
        ExitCode.BAD_INPUT, Words.of("package").say("refused", folder, Problems.sentence(why)));
  }

  private int ofNotebook(String typed) {
    try (Desk desk = open()) {
      SessionState state = find(desk, typed);
      desk.reviews()
          .refuse(state)
          .ifPresent(
              problems -> {
                throw complaint(problems);
              });
      if (json) {
        say(desk.reviews().json(state));
      } else {
        desk.reviews().text(state).forEach(this::say);
      }
      return ExitCode.DONE;
    }
  }
}
