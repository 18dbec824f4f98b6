package blindlap.command;

import blindlap.desk.AloneDay;
import blindlap.desk.Desk;
import blindlap.fault.Problem;
import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.session.HelperEntry;
import blindlap.session.SessionState;
import blindlap.wording.day.Words;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows a rider who swaps alone what to mount next, and records it as mounted. */
@Command(
    name = "mount",
    description = {
      "For a rider who swaps alone: shows what to mount next and asks what was mounted,"
          + " measured and checked.",
      "From then on the laps of the stint may start.",
      "The next stint is shown once the one before is mounted and ridden. That is an entry with its"
          + " time; asked again, it is the same.",
      "Where nobody answers, the stint is shown and not yet mounted."
    })
final class MountCommand extends SessionCommand {
  private static final Words WORDS = Words.of("alone");

  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--correct",
      description = "Asks in which mounted stint something else was on, and what.")
  boolean correct;

  @Option(
      names = "--paper",
      description =
          "The next stint was kept on paper, where it was also shown: what was not measured or"
              + " ticked there stays open.")
  boolean paper;

  MountCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      AloneDay day = MountTalk.day(desk, state);
      MountTalk talk = new MountTalk(this, setting().terminal());
      if (correct) {
        correct(day, state, talk);
      } else if (paper) {
        paper(desk, day, state, talk);
      } else {
        next(desk, day, state, talk);
      }
      return ExitCode.DONE;
    }
  }

  private void next(Desk desk, AloneDay day, SessionState state, MountTalk talk) {
    AloneDay.Next next = day.next(state);
    if (next instanceof AloneDay.Next.Over) {
      say(WORDS.say("over"));
    } else if (next instanceof AloneDay.Next.Ride ride) {
      say(WORDS.say(ride.stint() == 0 ? "ride.warm.up" : "ride", ride.stint()));
    } else if (next instanceof AloneDay.Next.Mount mount) {
      mount(desk, day, mount.work(), talk);
    } else {
      AloneDay.Shown shown = day.show();
      if (shown instanceof AloneDay.Shown.Refused refused) {
        throw complaint(refused.problems());
      }
      did(Done.SAVED);
      mount(desk, day, ((AloneDay.Shown.Setup) shown).work(), talk);
    }
  }

  private void mount(Desk desk, AloneDay day, AloneDay.Work work, MountTalk talk) {
    shown(day, work);
    if (!talk.yes("ask.mounted")) {
      say(WORDS.say("not.mounted"));
      return;
    }
    SessionState now = MountTalk.now(desk, day.id());
    HelperEntry entry = talk.entry(day, work, now);
    done(day.mount(entry, talk.unit(day, work, now)));
    say(WORDS.say(work.stint() == 0 ? "mounted.warm.up" : "mounted", work.stint()));
  }

  private void shown(AloneDay day, AloneDay.Work work) {
    Plan plan = day.plan();
    Integer setup = work.setup();
    String place = work.stint() == 0 ? ".warm.up" : "";
    if (setup == null) {
      say(WORDS.say("unit" + place, work.stint(), work.code()));
    } else {
      String key = work.real() ? "setup" : "setup.stays";
      say(WORDS.say(key + place, work.stint(), Labels.name(plan, setup), work.code()));
    }
    say(Words.of("cautions").say("short"));
  }

  private void paper(Desk desk, AloneDay day, SessionState state, MountTalk talk) {
    AloneDay.Shown shown = day.showOnPaper();
    if (shown instanceof AloneDay.Shown.Refused refused) {
      throw complaint(refused.problems());
    }
    AloneDay.Work work = ((AloneDay.Shown.Setup) shown).work();
    say(WORDS.say(work.stint() == 0 ? "paper.warm.up" : "paper", work.stint()));
    HelperEntry kept = talk.onPaper(day, work, MountTalk.now(desk, day.id()));
    done(day.mountOnPaper(kept, talk.unit(day, work, state)));
    say(WORDS.say(work.stint() == 0 ? "mounted.warm.up" : "mounted", work.stint()));
  }

  private void correct(AloneDay day, SessionState state, MountTalk talk) {
    List<Problem> refusals = day.correcting(state);
    if (!refusals.isEmpty()) {
      throw complaint(refusals);
    }
    MountTalk.Otherwise said = talk.otherwise(day, state);
    done(day.correct(said.stint(), said.setup(), said.words()));
    say(WORDS.say("corrected", said.stint()));
  }
}
