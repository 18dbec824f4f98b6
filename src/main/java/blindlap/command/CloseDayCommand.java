package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.Sessions;
import blindlap.phone.Awaited;
import blindlap.phone.Phones;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.wording.RecordingsWords;
import blindlap.wording.TwoValuesWords;
import blindlap.wording.day.RideTrialWords;
import blindlap.wording.day.RideWords;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Closes the day. */
@Command(
    name = "close-day",
    description = {
      "Closes the day: the bike is covered or back to neutral, paper is keyed in, nothing has been"
          + " looked at.",
      "After this no lap is recorded; voids and typing errors can still be settled.",
      "Where laps are missing, or phones still keep answers, it says so and asks before it closes."
    })
final class CloseDayCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--yes",
      description =
          "For scripts: closes without asking although laps are missing or answers are waited for."
              + " Needed for that where there is no terminal.")
  boolean yes;

  CloseDayCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      asked(state, awaited(desk, state));
      Sessions.Result.Done result =
          done(desk.sessions().act(state.id(), latest -> new LifeCommands(latest).closeDay()));
      say(
          "Day closed with "
              + result.state().lapsRidden()
              + " laps. Next: settle voids and typing errors, then blindlap close-review.");
      RecordingsWords.awaited(result.state()).forEach(this::say);
      TwoValuesWords.withRule(result.state()).forEach(this::say);
      return ExitCode.DONE;
    }
  }

  /** What phones of the session still keep, or may keep; none if no phone ever came. */
  private List<String> awaited(Desk desk, SessionState state) {
    if (!state.step().day()) {
      return List.of();
    }
    try (Phones phones = setting().phones().of(desk).phones(state.id())) {
      return Awaited.sentences(state.day(), phones.known(), desk.clock().instant());
    }
  }

  /**
   * Says what is missing or waited for before a day is closed that nothing opens again, and asks.
   *
   * @throws Complaint if it shall stay open, or nobody answers
   */
  private void asked(SessionState state, List<String> awaited) {
    boolean closes = new LifeCommands(state).closeDay() instanceof Outcome.Accepted;
    List<String> all = new ArrayList<>(awaited);
    String open = RideTrialWords.missing(state.day());
    if (!open.isEmpty()) {
      all.add(0, open);
    }
    if (!closes || all.isEmpty()) {
      return;
    }
    String missing = String.join(" ", all);
    if (!yes && !setting().terminal().present()) {
      throw new Complaint(ExitCode.BAD_INPUT, RideWords.say("close.no.terminal", missing));
    }
    say(missing);
    String ask = RideWords.say("close.ask");
    if (!yes
        && !YesOrNo.ask(
            setting().terminal(), ask, this::complain, RideWords.say("close.unclear"))) {
      throw new Complaint(ExitCode.BAD_INPUT, RideWords.say("close.stays"));
    }
  }
}
