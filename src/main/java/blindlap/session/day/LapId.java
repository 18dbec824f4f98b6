package blindlap.session.day;

/**
 * A lap of the day.
 *
 * @param stint from 1
 * @param lap within the stint, from 1, settling laps first
 */
public record LapId(int stint, int lap) implements Comparable<LapId> {
  public LapId {
    if (stint < 1 || lap < 1) {
      throw new IllegalArgumentException("stints and laps are counted from 1");
    }
  }

  /** The lap with a number over the day. */
  public static LapId ofDay(int number, int lapsPerStint) {
    return new LapId((number - 1) / lapsPerStint + 1, (number - 1) % lapsPerStint + 1);
  }

  /** Its number over the day, settling laps included. */
  public int ofDay(int lapsPerStint) {
    return (stint - 1) * lapsPerStint + lap;
  }

  @Override
  public int compareTo(LapId other) {
    return stint != other.stint
        ? Integer.compare(stint, other.stint)
        : Integer.compare(lap, other.lap);
  }
}
