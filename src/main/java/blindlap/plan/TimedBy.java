package blindlap.plan;

/** What a time of a measure comes from; one alone counts, never a mixture. */
public enum TimedBy {
  /** A watch or a typed time. A recording's time is kept beside it. */
  WATCH,
  /** A recording; nobody is asked for a time, and what it lacks is missing. */
  RECORDING,
  /** A recording counts; a watch is read as well, to see how well the two agree. */
  RECORDING_AND_WATCH;

  /** True if the recording's time is the one that counts. */
  public boolean recorded() {
    return this != WATCH;
  }

  /** True if the people of the day are asked for a time. */
  public boolean asked() {
    return this != RECORDING;
  }
}
