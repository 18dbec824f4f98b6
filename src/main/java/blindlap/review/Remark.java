package blindlap.review;

import java.time.ZonedDateTime;
import java.util.Optional;

/**
 * Something that was said or done on a day and that a reader of its finding must be able to see. It
 * changes no number that counts. Remarks are made once the key is open, since some are the
 * helper's.
 *
 * @param kind what it is about
 * @param stint from 1; 0 = the warm-up, {@link #WHOLE_DAY} = none in particular
 * @param lap number over the day, from 1; 0 = none in particular
 * @param about what it concerns: a measure, a setting, an event, a condition; may be empty
 * @param who who did or decided it; may be empty
 * @param before a value that no longer stands, or was aimed at; may be empty
 * @param value the value that stands, or was found; may be empty
 * @param words what was typed; may be empty
 * @param at when it was written, in the zone of the writer; said of what replaced other words
 */
public record Remark(
    Kind kind,
    int stint,
    int lap,
    String about,
    String who,
    String before,
    String value,
    String words,
    Optional<ZonedDateTime> at) {
  /** Of no stint in particular. */
  public static final int WHOLE_DAY = -1;

  /** What a remark is about. */
  public enum Kind {
    /** Who decided that the day ends, and why; value {@link #KNEW} if that person knew the key. */
    CUT_SHORT,
    /** Who timed a measure, value laps. */
    TIMED,
    /** A departure from the plan; about its kind. */
    DEVIATION,
    /** A time that was taken or typed and then replaced. */
    REPLACED,
    /** A value that was corrected, with the reason. */
    CORRECTED,
    /**
     * Of values that machines recorded apart the one that counts: who as whose record, empty if not
     * said; words is the beginning of the notebook's id.
     */
    COUNTS,
    /** One that is set aside, as before; value is the one that counts. Follows its COUNTS. */
    SET_ASIDE,
    /** Someone made another value count than the plan's rule gives; words is the reason. */
    CHOSEN,
    /** A note that took the place of another. */
    NOTE_REPLACED,
    /** A guess that took the place of another; letters of setups, {@link #DONT_KNOW} for none. */
    GUESS_REPLACED,
    /** How sure a guess was, said otherwise later. */
    SURENESS_REPLACED,
    /** What gave a setup away, said otherwise later. */
    CUE_REPLACED,
    /** A void that was taken back, with the reason; before is what it was for. */
    VOID_WITHDRAWN,
    /** A condition of a lap. */
    CONDITION,
    /** A setting that was accepted outside its tolerance, with the reason. */
    OUTSIDE,
    /** Who handled a stint. */
    HANDLED,
    /**
     * A wrong fit that was noticed later: letters of the setups recorded before and really on;
     * about is the seconds from the bike being ready to that, where both are known.
     */
    FIT_CORRECTED,
    /**
     * A stint that was kept on paper: letters of the setups scheduled and fitted, who ticked the
     * safety list there; about is what was ticked, {@link #ALL} for everything.
     */
    ON_PAPER,
    /** Who closed the helper's day, with what was still to be said. */
    HELPER_CLOSED,
    /** Nobody closed the helper's day. */
    HELPER_NOT_CLOSED,
    /** A stint that was ridden alone, and of which no entry says what was mounted. */
    NOT_MOUNTED,
    /** A sheet with the key was written again. */
    REPRINTED,
    /**
     * What came too late to change anything; about the kind of entry, who the beginning of the
     * notebook's id, before the measure, value the value or the event.
     */
    LATE
  }

  /** Value of a {@link Kind#CUT_SHORT} that was decided by someone who knew the key. */
  public static final String KNEW = "knew the key";

  /** About an {@link Kind#ON_PAPER} of which the whole safety list is ticked. */
  public static final String ALL = "all";

  /** A {@link Kind#GUESS_REPLACED} of no setup. */
  public static final String DONT_KNOW = "-";

  /** A remark of which nobody asks when it was written. */
  public Remark(
      Kind kind,
      int stint,
      int lap,
      String about,
      String who,
      String before,
      String value,
      String words) {
    this(kind, stint, lap, about, who, before, value, words, Optional.empty());
  }

  /** A remark on a stint. */
  public static Remark ofStint(Kind kind, int stint, String about, String words) {
    return new Remark(kind, stint, 0, about, "", "", "", words);
  }
}
