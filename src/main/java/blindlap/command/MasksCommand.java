package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.DeskFault;
import blindlap.desk.MaskKeeping;
import blindlap.fault.Problem;
import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.seal.HelperPhrase;
import blindlap.seal.Masks;
import blindlap.session.GuessWords;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.day.Guess;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which label is on which part: a friend seals it, the rider guesses once, it is read. */
@Command(
    name = "masks",
    description = {
      "Masked labels: a friend seals which label is on which part; the rider does not see it.",
      "The rider guesses once, after the day is closed.",
      "The labels are read after the review is closed, with the friend's phrase or from marks under"
          + " tape."
    })
final class MasksCommand extends SessionCommand {
  private static final Words WORDS = Words.of("alone");

  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @ArgGroup(multiplicity = "1")
  What what = new What();

  /** One of them. */
  static final class What {
    @Option(
        names = "--seal",
        description = "For the friend: draws or asks which label is on which part, and seals it.")
    boolean seal;

    @Option(names = "--guess", description = "Asks the rider once which label is which.")
    boolean guess;

    @Option(names = "--read", description = "Asks for the words of the friend who sealed it.")
    boolean read;

    @Option(
        names = "--marks",
        description = "Asks what stood on the marks under the tape; it was not sealed.")
    boolean marks;
  }

  MasksCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      MaskKeeping masks = desk.masks();
      MountTalk talk = new MountTalk(this, setting().terminal());
      if (what.seal) {
        refuse(masks.refuseSealing(state).orElse(List.of()));
        seal(masks, state, talk);
      } else if (what.guess) {
        refuse(masks.refuseGuess(state).orElse(List.of()));
        guess(masks, state);
      } else {
        refuse(masks.refuseReading(state).orElse(List.of()));
        read(masks, state, talk);
      }
      return ExitCode.DONE;
    }
  }

  private static void refuse(List<Problem> problems) {
    if (!problems.isEmpty()) {
      throw complaint(problems);
    }
  }

  private void seal(MaskKeeping masks, SessionState state, MountTalk talk) {
    PhraseTalk phrases = new PhraseTalk(this, setting().terminal(), state.plan().level());
    if (!talk.yes("masks.ask.friend")) {
      throw new Complaint(ExitCode.BAD_INPUT, WORDS.say("masks.not.friend"));
    }
    String typed = talk.answer("masks.ask.mapping", labels(state.plan()));
    Masks mapping = typed.isEmpty() ? masks.draw(state) : typed(masks, state, typed);
    HelperPhrase phrase = phrases.confirmed(masks.phrase(), WORDS.say("masks.words.none"));
    done(masks.seal(state, mapping, phrase));
    did(Done.SEALED);
    for (int label = 0; label < mapping.setups().size(); label++) {
      String name = state.plan().setups().get(mapping.setups().get(label)).name();
      say(WORDS.say("masks.label", Labels.of(label), name));
    }
    say(WORDS.say("masks.sealed"));
  }

  private static Masks typed(MaskKeeping masks, SessionState state, String typed) {
    return masks
        .typed(state, setups(state.plan(), typed))
        .orElseThrow(
            () ->
                complaint(
                    List.of(
                        Problem.of(SessionFault.NOT_A_MAPPING, "", state.plan().setups().size()))));
  }

  private void guess(MaskKeeping masks, SessionState state) {
    // It is asked once, so that a closed terminal must not answer for the rider.
    String typed =
        setting()
            .terminal()
            .answer(WORDS.say("masks.ask.guess", labels(state.plan())))
            .map(String::strip)
            .orElseThrow(() -> new Complaint(ExitCode.BAD_INPUT, WORDS.say("masks.not.asked")));
    done(masks.guess(state, typed.isEmpty() ? List.of() : setups(state.plan(), typed)));
    say(WORDS.say(typed.isEmpty() ? "masks.no.guess" : "masks.guessed"));
  }

  private void read(MaskKeeping masks, SessionState state, MountTalk talk) {
    SessionState now =
        what.read
            ? done(masks.read(state, setting().terminal().secret(WORDS.say("masks.phrase"))))
                .state()
            : done(masks.fromMarks(
                    state,
                    setups(state.plan(), talk.answer("masks.ask.marks", labels(state.plan())))))
                .state();
    List<Integer> setups = now.masksRead().orElseThrow().setups();
    for (int label = 0; label < setups.size(); label++) {
      String name = state.plan().setups().get(setups.get(label)).name();
      say(WORDS.say("masks.was", Labels.of(label), name));
    }
    say(WORDS.say(what.read ? "masks.read" : "masks.from.marks"));
  }

  private static String labels(Plan plan) {
    List<String> labels = new ArrayList<>();
    for (int label = 0; label < plan.setups().size(); label++) {
      labels.add(Labels.of(label));
    }
    return String.join(", ", labels);
  }

  /** Setups by name, in the order of the labels, with commas between. */
  private static List<Integer> setups(Plan plan, String typed) {
    List<Integer> setups = new ArrayList<>();
    List<String> names = plan.setups().stream().map(setup -> setup.name()).toList();
    for (String name : typed.split(",", -1)) {
      setups.add(
          GuessWords.parse(plan, name)
              .map(Guess::setup)
              .orElseThrow(
                  () ->
                      complaint(
                          List.of(
                              Problem.of(
                                  DeskFault.NO_SUCH_SETUP,
                                  "",
                                  name.strip(),
                                  String.join(", ", names))))));
    }
    return setups;
  }
}
