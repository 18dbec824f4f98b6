package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.Sessions;
import blindlap.session.DayCommands;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Declares a lap void because of an event. */
@Command(
    name = "void",
    description = {
      "Declares a lap void because of an event: traffic, crash, puncture, mechanical, wrong line, stopped.",
      "A slow or strange score is never a reason. Possible until the review is closed."
    })
final class VoidCommand extends SessionCommand {
  @Parameters(
      index = "0",
      paramLabel = "SESSION",
      description = "Id of the session or its beginning, or latest.")
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
      Sessions.Result result =
          desk.sessions()
              .act(
                  state.id(),
                  latest ->
                      withdraw
                          ? new DayCommands(latest).withdrawVoid(id, reason)
                          : new DayCommands(latest).voidLap(id, reason, words));
      done(result);
      say(
          withdraw
              ? "Lap " + lap + " counts again."
              : "Lap " + lap + " is void; its values are kept.");
      return ExitCode.DONE;
    }
  }
}
