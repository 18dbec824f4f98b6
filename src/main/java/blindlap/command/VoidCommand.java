package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.Sessions;
import blindlap.plan.Sector;
import blindlap.plan.TellingRun;
import blindlap.session.DayCommands;
import blindlap.session.Outcome;
import blindlap.session.RecordingCommands;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.wording.day.RideTrialWords;
import blindlap.wording.day.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Declares a lap void because of an event. */
@Command(
    name = "void",
    description = {
      "Declares a lap void because of an event: traffic, crash, puncture, mechanical, wrong line,"
          + " stopped.",
      "With --from and --to one sector of it alone, between two gates of the plan's trail: other"
          + " sectors stay.",
      "A slow or strange score is never a reason. Possible until the review is closed."
    })
final class VoidCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Parameters(
      index = "1",
      paramLabel = "LAP",
      description = "Number of the lap over the day, settling laps included.")
  int lap;

  @Option(names = "--reason", required = true, paramLabel = "EVENT", description = "The event.")
  String reason = "";

  @Option(names = "--words", paramLabel = "TEXT", description = "What happened.")
  String words = "";

  @Option(names = "--withdraw", description = "Take the void back; --reason then says why.")
  boolean withdraw;

  @ArgGroup(exclusive = false)
  @Nullable Part part;

  /** One sector of the lap: where it begins and ends, both or neither. */
  static final class Part {
    @Option(
        names = "--from",
        required = true,
        paramLabel = "GATE",
        description = "The gate where the sector begins.")
    String from = "";

    @Option(
        names = "--to",
        required = true,
        paramLabel = "GATE",
        description = "The gate where it ends.")
    String to = "";
  }

  VoidCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      int perStint = state.plan().laps().perStint();
      if (lap < 1 || lap > state.plan().lapsOfDay()) {
        throw complaint(
            java.util.List.of(
                blindlap.fault.Problem.of(
                    blindlap.session.SessionFault.NO_SUCH_LAP, "", lap, state.plan().lapsOfDay())));
      }
      LapId id = LapId.ofDay(lap, perStint);
      Part named = part;
      boolean whole = named == null;
      Sector sector = named == null ? new Sector("", "") : new Sector(named.from, named.to);
      Sessions.Result result =
          desk.sessions()
              .act(state.id(), latest -> whole ? lap(latest, id) : sector(latest, id, sector));
      SessionState after = done(result).state();
      TellingRun run = after.plan().telling();
      if (run != null && whole) {
        say(RideTrialWords.voided(run.trial(id.stint()), withdraw));
        return ExitCode.DONE;
      }
      String what = whole ? "lap" : "sector";
      say(
          Words.of("voids")
              .say(what + (withdraw ? ".counts" : ".void"), lap, sector.from(), sector.to()));
      return ExitCode.DONE;
    }
  }

  private Outcome lap(SessionState latest, LapId id) {
    DayCommands commands = new DayCommands(latest);
    return withdraw ? commands.withdrawVoid(id, reason) : commands.voidLap(id, reason, words);
  }

  private Outcome sector(SessionState latest, LapId id, Sector sector) {
    RecordingCommands commands = new RecordingCommands(latest);
    return withdraw
        ? commands.withdraw(id, sector, reason)
        : commands.voidSector(id, sector, reason, words);
  }
}
