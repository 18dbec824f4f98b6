package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;

/** Words to whoever holds the phrase: the helper of the day, or the friend who comes before it. */
public final class PhraseWords {
  private final boolean friend;

  private PhraseWords(boolean friend) {
    this.friend = friend;
  }

  /** Words to the holder of a session's phrase. */
  public static PhraseWords of(BlindLevel level) {
    return new PhraseWords(level.friend());
  }

  /** A sentence of the Plan page's bundle, in its words to the friend where it has such. */
  public String say(String key, Object... arguments) {
    String other = key + ".friend";
    return PlanWords.say(friend && PlanWords.has(other) ? other : key, arguments);
  }

  /** Gives the machine to whoever will hold the phrase, by name if the plan has one. */
  public String handOver(Plan plan) {
    String name = friend ? plan.blinding().preparation().by() : plan.blinding().helper();
    return name.isBlank()
        ? say("commit.handover.terminal")
        : say("commit.handover.terminal.named", name.strip());
  }
}
