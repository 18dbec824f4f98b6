package blindlap.ride;

import blindlap.desk.day.DayResult;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;

/** What guess, watches and taking back see of the day in hand, and how they save. */
interface RideHand {
  /** The session in hand. */
  SessionId session();

  /** The lap in hand. */
  LapId lap();

  /** What is asked now. */
  RideSheet sheet();

  /** What the score sheet asks. */
  RideQuestions questions();

  /** The day as it was last read; empty before it was. */
  Optional<Day> day();

  /** Reads the day again. */
  void reload();

  /** Done with the lap in hand. */
  void lapDone();

  /** Asks whether the rider is done though something is open; empty to ask no more. */
  void ask(String words);

  /** The setups a guess may name. */
  int setups();

  /** True while an answer is on its way to the disk. */
  boolean saving();

  /**
   * Saves something.
   *
   * @param accepted gets the day afterwards, before it is shown, once the disk has it
   */
  void save(Callable<DayResult> work, Consumer<Day> accepted);

  /**
   * A step of the day: pressed twice before the disk has it, it is still one step.
   *
   * @param effect what it does to the result, said once the disk has it; empty for nothing
   * @param accepted gets the day afterwards, before it is shown
   */
  void step(Callable<DayResult> work, String effect, Consumer<Day> accepted);

  /**
   * Saves an answer that can be taken back.
   *
   * @param restored done once it was taken back
   */
  void saveAnswer(LapId lap, String measure, Callable<DayResult> work, Runnable restored);

  /**
   * Saves a guess, which can be taken back.
   *
   * @param stint the stint that was guessed
   */
  void saveGuess(int stint, Callable<DayResult> work);

  /** Refuses something in words; nothing is saved. */
  void refuse(String words);

  /** Says what something does to the result. */
  void say(String words);

  /** The name of the last answer that can be taken back; empty if none can. */
  void canTakeBack(String measure);
}
