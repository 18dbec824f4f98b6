package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.DeskFault;
import blindlap.desk.OneStints;
import blindlap.desk.Sheets;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Setting;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.wording.OneStintWords;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows somebody who is not the helper what to set for one stint, once. */
@Command(
    name = "one-stint",
    description = {
      "For somebody who swaps for one stint only: shows what to set for it, once and for 60"
          + " seconds, against the three words on a slip of paper.",
      "Afterwards it asks whether the rider saw; the rider looks away.",
      "With --make whoever holds the phrase makes the words for every stint that is left."
    })
final class OneStintCommand extends HelperDayCommand {
  private static final Duration IN_SIGHT = Duration.ofSeconds(60);

  private static final String SLIPS = "one-stint-slips.pdf";

  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--make",
      description =
          "Make the words of every stint that is left. Asks for the phrase; the rider looks away.")
  boolean make;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "With --make: write the words as slips of paper to print and cut, not to the screen.")
  @Nullable Path out;

  @Option(names = "--paper", paramLabel = "PAPER", description = "A4 or LETTER.")
  Sheets.Paper paper = Sheets.Paper.A4;

  OneStintCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      OneStints views = desk.oneStints();
      if (make) {
        refuse(views.refusal(state).orElse(List.of()));
        make(views, desk, state);
      } else {
        look(views, desk, state);
      }
      return ExitCode.DONE;
    }
  }

  private void make(OneStints views, Desk desk, SessionState state) {
    OneStints.Made made = views.make(helperDay(desk, state), now(desk, state));
    if (made instanceof OneStints.Made.Refused refused) {
      throw complaint(refused.problems());
    }
    did(Done.CODES);
    List<OneStints.Slip> slips = ((OneStints.Made.Slips) made).slips();
    if (out == null) {
      told(slips);
    } else {
      Files.write(out, Map.of(SLIPS, desk.sheets().oneStint(state, slips, paper)));
      did(Done.WRITTEN);
      say(OneStintWords.say("made.slips", out.resolve(SLIPS)));
    }
    say(Words.of("cautions").say("short"));
  }

  private void told(List<OneStints.Slip> slips) {
    say(OneStintWords.say("made.once"));
    say(OneStintWords.say("made.heads"));
    for (OneStints.Slip slip : slips) {
      String stint = String.format(Locale.ROOT, "%5d", slip.stint());
      say(OneStintWords.say("made.row", stint, slip.code(), slip.words().text()));
    }
    say(OneStintWords.say("made.next"));
  }

  private void look(OneStints views, Desk desk, SessionState state) {
    Optional<Integer> unanswered = views.unanswered(state);
    if (unanswered.isPresent()) {
      ask(views, state, unanswered.get());
      return;
    }
    refuse(views.refusal(state).orElse(List.of()));
    String name = answer("ask.name");
    if (name.isEmpty()) {
      throw complaint(List.of(Problem.of(SessionFault.ONE_STINT_NOBODY, "")));
    }
    String typed = answer("ask.stint");
    if (typed.isEmpty()) {
      throw new Complaint(ExitCode.BAD_INPUT, OneStintWords.say("no.stint"));
    }
    int stint =
        TypedNumber.whole(typed)
            .orElseThrow(
                () -> complaint(List.of(Problem.of(DeskFault.ONE_STINT_NO_CODE, "", typed))));
    refuse(views.missing(state, stint));
    String words = setting().terminal().secret(OneStintWords.say("ask.words"));
    OneStints.Shown shown = views.show(now(desk, state), stint, name, words);
    if (shown instanceof OneStints.Shown.Refused refused) {
      throw complaint(refused.problems());
    }
    did(Done.SAVED);
    show((OneStints.Shown.Setup) shown);
    ask(views, state, stint);
  }

  private void show(OneStints.Shown.Setup shown) {
    String key = shown.real() ? "real" : "dummy";
    say(OneStintWords.say(key, shown.stint(), shown.setup(), shown.code()));
    for (Setting setting : shown.settings()) {
      say(OneStintWords.say("setting", setting.name(), SwapWords.aim(setting)));
    }
    shown.steps().forEach(this::say);
    say(Words.of("cautions").say("short"));
    say(OneStintWords.say("gone", IN_SIGHT.toSeconds()));
    setting().terminal().blankAfter(IN_SIGHT);
  }

  private void ask(OneStints views, SessionState state, int stint) {
    while (true) {
      Optional<String> typed = setting().terminal().answer(OneStintWords.say("ask.saw", stint));
      switch (typed.orElse("").strip().toLowerCase(Locale.ROOT)) {
        case "yes", "y" -> {
          done(views.answer(state.id(), stint, true));
          say(OneStintWords.say("kept.yes", stint));
          return;
        }
        case "no", "n" -> {
          done(views.answer(state.id(), stint, false));
          say(OneStintWords.say("kept.no"));
          return;
        }
        default -> {
          if (typed.isEmpty()) {
            say(OneStintWords.say("no.answer"));
            return;
          }
          complain(OneStintWords.say("unclear"));
        }
      }
    }
  }

  private String answer(String key) {
    return setting().terminal().answer(OneStintWords.say(key)).map(String::strip).orElse("");
  }
}
