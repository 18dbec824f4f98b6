package blindlap.command;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.seal.HelperPhrase;
import blindlap.seal.PhraseAsked;
import blindlap.wording.PhraseWords;
import blindlap.wording.PlanWords;
import java.util.Locale;
import java.util.Optional;

/**
 * Brings a helper phrase out before anything is sealed under it: writes it, makes sure that it was
 * written, on disk where it goes to a file, and has two of its words typed back.
 */
final class PhraseTalk {
  private final SessionCommand command;
  private final CommandSetting.Terminal terminal;
  private final PhraseWords words;

  /**
   * @param level how blind the session is, which says whose phrase it is
   */
  PhraseTalk(SessionCommand command, CommandSetting.Terminal terminal, BlindLevel level) {
    this.command = command;
    this.terminal = terminal;
    this.words = PhraseWords.of(level);
  }

  /**
   * Makes sure that the machine is with whoever will hold the phrase before anything is shown that
   * is theirs alone.
   *
   * @throws Complaint if it is not, or nobody answers; nothing was shown then
   */
  void handedOver(Plan plan) {
    command.say(words.handOver(plan));
    String prompt = words.say("commit.handover.ask");
    while (true) {
      String typed = terminal.answer(prompt).orElse("no").strip().toLowerCase(Locale.ROOT);
      switch (typed) {
        case "yes", "y" -> {
          return;
        }
        case "no", "n" -> throw new Complaint(ExitCode.BAD_INPUT, words.say("commit.handover.not"));
        default -> command.complain(PlanWords.say("commit.handover.unclear"));
      }
    }
  }

  /**
   * Writes the phrase once and asks nothing.
   *
   * @throws Complaint if it could not be written whole; nothing is sealed then
   */
  HelperPhrase unasked(PhraseAsked asked) {
    write(asked);
    return asked.unasked();
  }

  /**
   * Writes the phrase until two of its words came back right.
   *
   * @throws Complaint if it could not be written whole, or nobody answers; nothing is sealed then
   */
  HelperPhrase confirmed(PhraseAsked asked) {
    return confirmed(asked, PlanWords.say("commit.words.none"));
  }

  /**
   * The same.
   *
   * @param unanswered what is said where nobody answers
   */
  HelperPhrase confirmed(PhraseAsked asked, String unanswered) {
    String prompt = PlanWords.askedWords(asked.first(), asked.second());
    while (true) {
      write(asked);
      Optional<String> typed = terminal.answer(prompt);
      if (typed.isEmpty()) {
        throw new Complaint(ExitCode.BAD_INPUT, unanswered);
      }
      PhraseAsked.Back back = asked.typed(typed.get());
      if (back instanceof PhraseAsked.Back.Right right) {
        return right.phrase();
      }
      command.complain(PlanWords.wrongWords(((PhraseAsked.Back.Wrong) back).places()));
    }
  }

  private void write(PhraseAsked asked) {
    command.say(words.say("commit.phrase.once"));
    command.say("  " + asked.text());
    if (command.out().checkError() || !terminal.settled()) {
      throw new Complaint(ExitCode.FILE_TROUBLE, words.say("commit.phrase.unwritten"));
    }
  }
}
