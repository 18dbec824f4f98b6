package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.SafeKeeping;
import blindlap.session.NotebookException;
import blindlap.session.NotebookReport;
import blindlap.session.NotebookTrouble;
import blindlap.session.RecoveryReport;
import blindlap.session.SessionSummary;
import blindlap.session.day.SessionId;
import blindlap.wording.KeepingWords;
import blindlap.wording.NotebookWords;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists the sessions of a notebook, and keeps the notebook safe. */
@Command(
    name = "notebook",
    description = {
      "Lists the sessions of a notebook: the one in hand first, then the latest day first.",
      "With one of the options below it checks the notebook, backs it up, or saves what can be"
          + " saved of a damaged one."
    })
final class NotebookCommand extends SessionCommand {
  private static final int VERDICTS_AT_A_TIME = 50;

  @ArgGroup(exclusive = true)
  Task task = new Task();

  @Option(
      names = "--search",
      paramLabel = "WORDS",
      description =
          "Only sessions that hold every one of these words in question, setups, rider, trail,"
              + " date, state, verdict or reason for abandoning.")
  String search = "";

  /** What else is done with the notebook; at most one. */
  static final class Task {
    @Option(
        names = "--verify",
        description =
            "Read and hash every entry again, check every chain and the file itself; also of a"
                + " notebook that cannot be opened.")
    boolean verify;

    @Option(
        names = "--backup",
        description = "Make a backup now, beside the notebook in a folder of its own.")
    boolean backup;

    @Option(names = "--backups", description = "List the backups that are there.")
    boolean backups;

    @ArgGroup(exclusive = false)
    @Nullable Rescue rescue;
  }

  /** A damaged notebook and where what can be saved goes. */
  static final class Rescue {
    @Option(
        names = "--recover",
        required = true,
        paramLabel = "DAMAGED",
        description =
            "Save everything of a damaged notebook that still verifies into a new one; losses are"
                + " listed, the damaged file is never written to.")
    @Nullable Path damaged;

    @Option(
        names = "--out",
        required = true,
        paramLabel = "NEW",
        description = "The new notebook; nothing may lie there.")
    @Nullable Path fresh;
  }

  NotebookCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    if (task.rescue != null) {
      return recover(task.rescue);
    }
    if (task.verify) {
      return verify();
    }
    if (task.backup) {
      Object made = keeping().backUp();
      did(Done.WRITTEN);
      say(KeepingWords.say("backup.done", made));
      return ExitCode.DONE;
    }
    return task.backups ? backups() : list();
  }

  private int list() {
    try (Desk desk = open()) {
      List<SessionSummary> told = desk.sessionList().told(search, VERDICTS_AT_A_TIME);
      List<SessionSummary> found = search.isBlank() ? desk.sessionList().handFirst(told) : told;
      if (!found.isEmpty()) {
        // Said at once: a list of years written out line by line takes longer than reading it.
        Map<SessionId, String> series = desk.sessionList().inSeries(found);
        say(
            found.stream()
                .flatMap(each -> lines(each, series.getOrDefault(each.id(), "")))
                .collect(Collectors.joining(System.lineSeparator())));
      } else if (search.isBlank()) {
        say("The notebook is empty. See a whole day with: blindlap demo");
      } else {
        say(NotebookWords.found(0, 0));
      }
      return ExitCode.DONE;
    }
  }

  private int verify() {
    NotebookReport report = keeping().verify();
    List<String> lines = KeepingWords.verified(report, notebookFile());
    if (report.sound()) {
      lines.forEach(this::say);
      return ExitCode.DONE;
    }
    lines.forEach(this::complain);
    return ExitCode.CHECK_FAILED;
  }

  private int backups() {
    Map<Instant, Path> all = keeping().backups();
    if (all.isEmpty()) {
      say(KeepingWords.say("backups.none"));
      return ExitCode.DONE;
    }
    all.forEach((made, file) -> say(KeepingWords.backup(made, size(file), file)));
    say(KeepingWords.say("backups.how"));
    return ExitCode.DONE;
  }

  private static long size(Path file) {
    try {
      return java.nio.file.Files.size(file);
    } catch (IOException e) {
      throw new NotebookException(
          NotebookException.Kind.OTHER, NotebookTrouble.BACKUP_NOT_READABLE, e, file);
    }
  }

  private int recover(Rescue rescue) {
    Path damaged = java.util.Objects.requireNonNull(rescue.damaged);
    Path fresh = java.util.Objects.requireNonNull(rescue.fresh);
    RecoveryReport report = new SafeKeeping(setting().files(), damaged).recover(fresh);
    did(Done.WRITTEN);
    KeepingWords.recovered(report, fresh).forEach(this::say);
    return report.losses().isEmpty() ? ExitCode.DONE : ExitCode.CHECK_FAILED;
  }

  private static Stream<String> lines(SessionSummary each, String series) {
    List<String> outcome = NotebookWords.outcome(each);
    String first =
        String.join(
            "  ",
            each.id().brief(),
            each.day().toString(),
            NotebookWords.title(each),
            each.trail(),
            each.rider(),
            outcome.get(0));
    return Stream.concat(
        Stream.of(first),
        Stream.of(NotebookWords.looks(each), outcome.get(1), series)
            .filter(s -> !s.isEmpty())
            .map(s -> "          " + s));
  }
}
