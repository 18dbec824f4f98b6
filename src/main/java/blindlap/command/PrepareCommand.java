package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.PreparedUnits;
import blindlap.session.HelperEntry;
import blindlap.session.SessionState;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Tells a friend which unit gets which code, and records what the units measure. */
@Command(
    name = "prepare",
    description = {
      "For the friend who prepares units: says which setup goes under the cover with which code,"
          + " and asks what each unit measures.",
      "It asks for the friend's phrase; the rider looks away.",
      "The records of all units are written at once, encrypted and of one length; until then"
          + " nothing is written."
    })
final class PrepareCommand extends HelperDayCommand {
  private static final Words WORDS = Words.of("alone");

  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  PrepareCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      refuse(PreparedUnits.refusals(state));
      PreparedUnits units = new PreparedUnits(helperDay(desk, state));
      MountTalk talk = new MountTalk(this, setting().terminal());
      List<HelperEntry> entries = new ArrayList<>();
      say(Words.of("cautions").say("short"));
      for (PreparedUnits.Unit unit : units.units()) {
        String name = state.plan().setups().get(unit.setup()).name();
        String key = unit.stint() == 0 ? "prepare.unit.warm.up" : "prepare.unit";
        say(WORDS.say(key, unit.code(), name));
        HelperEntry entry =
            talk.measured(units.untouched(unit), unit.settings(), false, units::fits);
        entries.add(entry);
      }
      if (!talk.yes("prepare.ask.done")) {
        say(WORDS.say("prepare.not"));
        return ExitCode.DONE;
      }
      done(units.write(entries));
      did(Done.SAVED);
      say(WORDS.say("prepare.done", entries.size()));
      return ExitCode.DONE;
    }
  }
}
