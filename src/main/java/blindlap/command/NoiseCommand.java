package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.RiderHistory;
import blindlap.review.NoiseRecord;
import blindlap.wording.LapNoiseWords;
import blindlap.wording.NoiseWords;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Says how noisy riders are on trails. */
@Command(
    name = "noise",
    description = {
      "Says how much a rider's laps differ on one setup, per trail and measure: the noise that a difference must beat.",
      "It comes from unsealed sessions, open noise runs, null runs and old days."
    })
final class NoiseCommand extends SessionCommand {
  @Option(names = "--rider", paramLabel = "NAME", description = "Only this rider.")
  String rider = "";

  @Option(names = "--trail", paramLabel = "NAME", description = "Only this trail.")
  String trail = "";

  @Option(names = "--json", description = "Print the numbers as JSON.")
  boolean json;

  NoiseCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      List<RiderHistory.Where> wanted =
          desk.history().everywhere().stream()
              .filter(where -> is(rider, where.rider()) && is(trail, where.trail()))
              .toList();
      if (json) {
        say(desk.history().json(wanted));
        return ExitCode.DONE;
      }
      if (wanted.isEmpty()) {
        say(NoiseWords.say("nobody"));
      }
      for (RiderHistory.Where where : wanted) {
        List<NoiseRecord> records = desk.history().records(where.rider(), where.trail());
        if (records.isEmpty()) {
          say(NoiseWords.say("nothing", where.rider(), where.trail()));
          continue;
        }
        say(NoiseWords.title(records.get(0)));
        records.forEach(record -> LapNoiseWords.lines(record).forEach(line -> say("  " + line)));
      }
      return ExitCode.DONE;
    }
  }

  private static boolean is(String asked, String name) {
    return asked.isBlank()
        || name.strip().toLowerCase(Locale.ROOT).equals(asked.strip().toLowerCase(Locale.ROOT));
  }
}
