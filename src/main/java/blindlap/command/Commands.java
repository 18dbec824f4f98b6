package blindlap.command;

import blindlap.compute.Calculations;
import java.util.List;

/**
 * The commands in the order of a day. Each is made by its name: reading what all of them may be
 * given takes longer than a whole list of sessions, and most starts want one of them.
 */
final class Commands {
  /** All names, in the order of {@code --help}. */
  static final List<String> NAMES =
      List.of(
          "demo",
          "plan",
          "commit",
          "helper",
          "catch-up",
          "prepare",
          "masks",
          "mount",
          "one-stint",
          "codes",
          "sheets",
          "key-in",
          "phones",
          "record",
          "recording",
          "void",
          "look",
          "blind-broken",
          "cut-short",
          "close-day",
          "close-review",
          "unseal",
          "review",
          "report",
          "card",
          "amend",
          "export",
          "bring-in",
          "fingerprint",
          "abandon",
          "notebook",
          "noise",
          "series",
          "field",
          "import-day",
          "trail",
          "profile",
          "passes",
          "compute");

  private Commands() {}

  /** The names that a line can mean: the one it begins with, or all of them. */
  static List<String> meant(String... args) {
    return args.length > 0 && NAMES.contains(args[0]) ? List.of(args[0]) : NAMES;
  }

  /**
   * Makes a command.
   *
   * @throws IllegalArgumentException if none has this name
   */
  static Object named(String name, CommandSetting setting) {
    return switch (name) {
      case "demo" -> new DemoCommand(setting);
      case "plan" -> new PlanCommand(setting);
      case "commit" -> new CommitCommand(setting);
      case "helper" -> new HelperCommand(setting);
      case "catch-up" -> new CatchUpCommand(setting);
      case "prepare" -> new PrepareCommand(setting);
      case "masks" -> new MasksCommand(setting);
      case "mount" -> new MountCommand(setting);
      case "one-stint" -> new OneStintCommand(setting);
      case "codes" -> new CodesCommand(setting);
      case "sheets" -> new SheetsCommand(setting);
      case "key-in" -> new KeyInCommand(setting);
      case "phones" -> new PhonesCommand(setting);
      case "record" -> new RecordCommand(setting);
      case "recording" -> new RecordingCommand(setting);
      case "void" -> new VoidCommand(setting);
      case "look" -> new LookCommand(setting);
      case "blind-broken" -> new BlindBrokenCommand(setting);
      case "cut-short" -> new CutShortCommand(setting);
      case "close-day" -> new CloseDayCommand(setting);
      default -> afterwards(name, setting);
    };
  }

  /** What is done once the day is over, and over the years. */
  private static Object afterwards(String name, CommandSetting setting) {
    return switch (name) {
      case "close-review" -> new CloseReviewCommand(setting);
      case "unseal" -> new UnsealCommand(setting);
      case "review" -> new ReviewCommand(setting);
      case "report" -> new ReportCommand(setting);
      case "card" -> new CardCommand(setting);
      case "amend" -> new AmendCommand(setting);
      case "export" -> new ExportCommand(setting);
      case "bring-in" -> new BringInCommand(setting);
      case "fingerprint" -> new FingerprintCommand(setting);
      case "abandon" -> new AbandonCommand(setting);
      case "notebook" -> new NotebookCommand(setting);
      case "noise" -> new NoiseCommand(setting);
      case "series" -> new SeriesCommand(setting);
      case "field" -> new FieldCommand(setting);
      case "import-day" -> new ImportDayCommand(setting);
      case "trail" -> new TrailCommand(setting);
      case "profile" -> new ProfileCommand(setting);
      case "passes" -> new PassesCommand();
      case "compute" -> new ComputeCommand(Calculations.standard());
      default -> throw new IllegalArgumentException("no command " + name);
    };
  }
}
