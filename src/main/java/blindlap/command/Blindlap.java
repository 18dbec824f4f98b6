package blindlap.command;

import blindlap.desk.Calculations;
import blindlap.session.NotebookException;
import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The command line: parses, calls the desk once, prints. */
@Command(
    name = "blindlap",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    synopsisSubcommandLabel = "COMMAND",
    description = {
      "A notebook for structured blind ride comparisons.",
      "A day in order: plan, commit, helper and codes, record and void, close-day, close-review, unseal, review, report.",
      "Without a command the window opens."
    })
public final class Blindlap implements Runnable {
  private final CommandSetting setting;

  private Blindlap(CommandSetting setting) {
    this.setting = setting;
  }

  /** Without a command the window opens. */
  @Override
  public void run() {
    if (!setting.window().open(setting.defaultNotebook())) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE,
          "There is no display to open the window on. The command line does everything: blindlap --help");
    }
  }

  private static void overSessions(CommandLine line, CommandSetting setting) {
    line.addSubcommand(new NotebookCommand(setting));
    line.addSubcommand(new NoiseCommand(setting));
    line.addSubcommand(new SeriesCommand(setting));
    line.addSubcommand(new ImportDayCommand(setting));
  }

  /**
   * Runs a command.
   *
   * @return the exit code: 0 done, 1 a check failed, 2 bad input or usage, 3 file trouble
   */
  public static int run(CommandSetting setting, PrintWriter out, PrintWriter err, String... args) {
    CommandLine line = new CommandLine(new Blindlap(setting));
    line.addSubcommand(new DemoCommand(setting));
    line.addSubcommand(new PlanCommand(setting));
    line.addSubcommand(new CommitCommand(setting));
    line.addSubcommand(new HelperCommand(setting));
    line.addSubcommand(new CodesCommand(setting));
    line.addSubcommand(new RecordCommand(setting));
    line.addSubcommand(new VoidCommand(setting));
    line.addSubcommand(new BlindBrokenCommand(setting));
    line.addSubcommand(new CutShortCommand(setting));
    line.addSubcommand(new CloseDayCommand(setting));
    line.addSubcommand(new CloseReviewCommand(setting));
    line.addSubcommand(new UnsealCommand(setting));
    line.addSubcommand(new ReviewCommand(setting));
    line.addSubcommand(new ReportCommand(setting));
    line.addSubcommand(new ExportCommand(setting));
    line.addSubcommand(new FingerprintCommand(setting));
    line.addSubcommand(new AbandonCommand(setting));
    overSessions(line, setting);
    line.addSubcommand(new ComputeCommand(Calculations.standard()));
    line.setOut(out);
    line.setErr(err);
    line.setExecutionExceptionHandler(
        (e, command, parsed) -> {
          if (e instanceof Complaint complaint) {
            err.println(complaint.getMessage());
            err.flush();
            return complaint.exitCode();
          }
          if (e instanceof NotebookException) {
            err.println(e.getMessage());
            err.flush();
            return ExitCode.FILE_TROUBLE;
          }
          throw e;
        });
    return line.execute(args);
  }
}
