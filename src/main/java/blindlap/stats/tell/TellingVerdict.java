package blindlap.stats.tell;

/** What right answers in a run of trials allow to say (docs/method.md#telling-runs). */
public enum TellingVerdict {
  /** Guessing gives as many right answers in at most one run of twenty. */
  CAN_TELL("can tell"),
  /** Guessing explains the answers, and telling as often as would matter does not. */
  CANNOT_AS_OFTEN("cannot tell as often as would matter"),
  /** Neither. */
  NOT_SETTLED("not settled"),
  /** Not even right answers in all trials would have been too many for guessing. */
  COULD_NOT_SHOW("this plan could not show anything");

  private final String text;

  TellingVerdict(String text) {
    this.text = text;
  }

  /** The fixed string of files and requests, never translated. */
  public String text() {
    return text;
  }

  /**
   * The verdict of a fixed string.
   *
   * @throws IllegalArgumentException if it is none
   */
  public static TellingVerdict parse(String text) {
    for (TellingVerdict verdict : values()) {
      if (verdict.text.equals(text)) {
        return verdict;
      }
    }
    throw new IllegalArgumentException("no verdict of a telling run: " + text);
  }

  /** How often a rider who can tell does so, against what was declared to matter. */
  public enum Often {
    /** More often than would matter. */
    MORE("more often than would matter"),
    /** Less often than would matter. */
    LESS("less often than would matter"),
    /** Either is possible. */
    OPEN("open");

    private final String text;

    Often(String text) {
      this.text = text;
    }

    /** The fixed string of files and requests, never translated. */
    public String text() {
      return text;
    }
  }
}
