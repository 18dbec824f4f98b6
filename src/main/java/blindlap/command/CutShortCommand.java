package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.Sessions;
import blindlap.plan.Plan;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.wording.day.RideTrialWords;
import blindlap.wording.day.RideWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Ends a day early. */
@Command(
    name = "cut-short",
    description = {
      "Ends a day early, with the reason and who decided. The set of orders is kept; stints not"
          + " ridden are masked."
    })
final class CutShortCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--after-stint",
      required = true,
      paramLabel = "STINT",
      description = "Last stint that was ridden; 0 if none.")
  int lastStint;

  @Option(
      names = "--reason",
      required = true,
      paramLabel = "TEXT",
      description = {
        "Why: dark, rain, fatigue, damage, … Where the rider knows what is on, or its label, a",
        "verdict is given only if the reason begins with dark, injury or damage."
      })
  String reason = "";

  @Option(
      names = "--decided-by",
      required = true,
      paramLabel = "NAME",
      description = "Who decided.")
  String decidedBy = "";

  @Option(names = "--knows-key", description = "Whoever decided knows the key.")
  boolean knowsKey;

  CutShortCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      Sessions.Result result =
          desk.sessions()
              .act(
                  state.id(),
                  latest ->
                      new LifeCommands(latest).cutShort(lastStint, reason, decidedBy, knowsKey));
      SessionState after = done(result).state();
      say(
          after.plan().telling() == null
              ? "The day ends after stint "
                  + lastStint
                  + ". The committed orders stand; stints not ridden are masked."
              : RideTrialWords.cutShort(after.day(), after.plan().telling()));
      if (!state.plan().level().blind() && state.plan().kind() != Plan.Kind.NOISE_RUN) {
        say(RideWords.say("cut.known"));
      }
      return ExitCode.DONE;
    }
  }
}
