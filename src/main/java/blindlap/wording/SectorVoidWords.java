package blindlap.wording;

import blindlap.plan.Sector;
import blindlap.session.SectorVoided;
import blindlap.wording.day.Words;

/** What is said of sectors that are void alone. */
public final class SectorVoidWords {
  private static final Words WORDS = Words.of("voids");

  private SectorVoidWords() {}

  /** A sentence. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** "Bridge to Ford". */
  public static String name(Sector sector) {
    return WORDS.say("sector", sector.from(), sector.to());
  }

  /**
   * A void that stands.
   *
   * @param lap number over the day
   */
  public static String standing(int lap, SectorVoided each) {
    return WORDS.say(
        each.afterValuesSeen() ? "sector.standing.seen" : "sector.standing",
        lap,
        name(each.sector()),
        each.event().text());
  }
}
