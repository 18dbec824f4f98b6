package blindlap.command;

import blindlap.fault.TypedNumber;
import blindlap.session.NotebookException;
import blindlap.wording.day.Trouble;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The command line: parses, calls the desk once, prints. */
@Command(
    name = "blindlap",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    synopsisSubcommandLabel = "COMMAND",
    description = {
      "A notebook for structured blind ride comparisons.",
      "A day in order: plan, commit, helper and codes, record and void, close-day, close-review,"
          + " unseal, review, report.",
      "Timed by a recorder: trail before the plan, recording before close-review.",
      "Whose work it is, and its licences: LICENSE, NOTICE, docs/third-party.md.",
      "Without a command the window opens."
    })
public final class Blindlap implements Runnable {
  private final CommandSetting setting;

  @Option(
      names = "--notebook",
      paramLabel = "FILE",
      description = "The notebook to open the window on; your own notebook if not given.")
  private @Nullable Path notebook;

  @Option(
      names = "--new",
      description = "Begin the notebook that --notebook names, if there is none.")
  boolean fresh;

  private Blindlap(CommandSetting setting) {
    this.setting = setting;
  }

  /** Without a command the window opens. */
  @Override
  public void run() {
    Path chosen = notebook == null ? setting.defaultNotebook() : notebook;
    SessionCommand.requireThere(setting, chosen, fresh);
    if (!setting.window().open(chosen)) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE,
          "There is no display to open the window on. The command line does everything: blindlap"
              + " --help");
    }
  }

  /** The version of the program. */
  public static String version() {
    return blindlap.compute.Engine.version();
  }

  /**
   * Runs a command.
   *
   * @return the exit code: 0 done, 1 a check failed, 2 bad input or usage, 3 trouble with a file or
   *     with standard output
   */
  public static int run(CommandSetting setting, PrintWriter out, PrintWriter err, String... args) {
    PrintWriter shownOut = new PrintWriter(new ShownWriter(out), true);
    PrintWriter shownErr = new PrintWriter(new ShownWriter(err), true);
    try {
      CommandLine line = line(setting, shownOut, shownErr, args);
      return told(line, line.execute(args), shownOut, shownErr);
    } catch (Throwable nobodyForesaw) {
      return mistake(setting, shownErr, nobodyForesaw);
    } finally {
      shownOut.flush();
      shownErr.flush();
    }
  }

  /** One sentence in place of a trace: what is known of it goes to a file without a message. */
  private static int mistake(CommandSetting setting, PrintWriter err, Throwable why) {
    err.println(Trouble.atCommand(why, setting.mistakes().keep(why)));
    err.flush();
    return ExitCode.FILE_TROUBLE;
  }

  private static CommandLine line(
      CommandSetting setting, PrintWriter out, PrintWriter err, String... args) {
    CommandLine line = line(setting, Commands.meant(args));
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
            err.println(Trouble.sentence(e));
            err.flush();
            return ExitCode.FILE_TROUBLE;
          }
          return mistake(setting, err, e);
        });
    // Referred to once: two references to one method make the virtual machine stop while it writes
    // the archive of classes that the launcher asks for.
    CommandLine.ITypeConverter<Integer> whole = Blindlap::whole;
    line.registerConverter(int.class, whole);
    line.registerConverter(Integer.class, whole);
    line.setExecutionStrategy(Blindlap::execute);
    line.setParameterExceptionHandler(new Misuse());
    // A file's name may begin with @; what is in the file is never part of the line.
    line.setExpandAtFiles(false);
    return line;
  }

  /** All commands, before anything is parsed. */
  static CommandLine line(CommandSetting setting) {
    return line(setting, Commands.NAMES);
  }

  private static CommandLine line(CommandSetting setting, List<String> names) {
    CommandLine line = new CommandLine(new Blindlap(setting));
    names.forEach(name -> line.addSubcommand(Commands.named(name, setting)));
    line.getSubcommands()
        .values()
        .forEach(command -> command.getCommandSpec().mixinStandardHelpOptions(true));
    endsWithExitCodes(line);
    line.getSubcommands().values().forEach(Blindlap::endsWithExitCodes);
    return line;
  }

  /** Every help ends with the same line, read only where help is asked for. */
  private static void endsWithExitCodes(CommandLine command) {
    command
        .getHelpSectionMap()
        .put(
            CommandLine.Model.UsageMessageSpec.SECTION_KEY_FOOTER,
            help -> {
              help.commandSpec().usageMessage().footer(ExitCode.all());
              return help.footer();
            });
  }

  /**
   * Nothing ends well whose answer did not get out. A command that has named a trouble with a file
   * has said already what was done and what was not.
   */
  private static int told(CommandLine line, int code, PrintWriter out, PrintWriter err) {
    if (!out.checkError() || code == ExitCode.FILE_TROUBLE) {
      return code;
    }
    Done done =
        line.getSubcommands().values().stream()
            .map(CommandLine::getCommand)
            .filter(SessionCommand.class::isInstance)
            .map(command -> ((SessionCommand) command).done())
            .filter(each -> each != Done.NOTHING)
            .findFirst()
            .orElse(Done.NOTHING);
    err.println(done.untold());
    err.flush();
    return ExitCode.FILE_TROUBLE;
  }

  private static Integer whole(String typed) {
    return TypedNumber.whole(typed)
        .orElseThrow(
            () ->
                new CommandLine.TypeConversionException(
                    "'" + typed + "' is not a whole number. Nothing was done."));
  }

  /** The window's notebook is not the notebook of a command: it is never passed over in silence. */
  private static int execute(CommandLine.ParseResult parsed) {
    if (parsed.hasMatchedOption("--notebook") && parsed.hasSubcommand()) {
      throw new CommandLine.ParameterException(
          parsed.commandSpec().commandLine(),
          "--notebook stands after the command: blindlap %s --notebook FILE. Nothing was done."
              .formatted(parsed.subcommand().commandSpec().name()));
    }
    return new CommandLine.RunLast().execute(parsed);
  }
}
