package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.HelperDay;
import blindlap.desk.Looking;
import blindlap.fault.Problem;
import blindlap.session.LookCommands;
import blindlap.session.SessionState;
import blindlap.wording.LookWords;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes a look that the plan declares before the end of the day. */
@Command(
    name = "look",
    description = {
      "Takes a look that the plan declares before its end: says \"ride on\" or \"you may stop\","
          + " nothing else.",
      "The program looks whether it is settled that the setups differ. Asks for the helper phrase.",
      "Each look is taken once, when all laps up to it are recorded and each is void or has its"
          + " value; asked",
      "again, it says the same. What it used stays as it was: a void declared later does not change"
          + " it."
    })
final class LookCommand extends HelperDayCommand {
  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--after-stint",
      paramLabel = "STINT",
      description = "Which look, if not the latest whose stints are all ridden.")
  @Nullable Integer after;

  LookCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      early(state);
      HelperDay day = helperDay(desk, state);
      Looking looking = new Looking(day);
      Looking.Result result = after == null ? looking.look() : looking.look(after);
      if (result instanceof Looking.Result.Refused refused) {
        throw complaint(refused.problems());
      }
      Looking.Result.Taken taken = (Looking.Result.Taken) result;
      did(taken.again() ? Done.NOTHING : Done.SAVED);
      LookWords.taken(day.plan(), taken.stint(), taken.settled(), taken.again()).forEach(this::say);
      return ExitCode.DONE;
    }
  }

  /** Nobody types a phrase for a look that cannot be. */
  private void early(SessionState state) {
    LookCommands looks = new LookCommands(state);
    int stint = after == null ? looks.meant().orElse(0) : after;
    List<Problem> problems = looks.problems(stint);
    if (!problems.isEmpty() && !state.looks().containsKey(stint)) {
      throw complaint(problems);
    }
  }
}
