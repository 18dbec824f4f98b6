package blindlap.session.day;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One lap as it was typed or keyed in, with the place it stands at.
 *
 * @param lap which lap
 * @param values values by measure, times in seconds; a measure left out is missing
 * @param voidReason words of the void column; null or blank if not void
 * @param note a note; may be empty
 * @param guess name or letter of the guessed setup, "-" for don't know; null if not asked
 * @param sureness how sure the guess is, in words; null or blank if not said
 * @param cue what gave it away; may be empty
 * @param conditions of the lap, by name; those left out were not said
 * @param covariates by name, those whose column is there; empty where its cell is
 * @param where place for messages, such as "line 7"
 * @param columns column of each measure and covariate for messages; a table gives that of every
 *     measure it has, empty cells included
 */
public record LapInput(
    LapId lap,
    Map<String, BigDecimal> values,
    @Nullable String voidReason,
    String note,
    @Nullable String guess,
    @Nullable String sureness,
    String cue,
    Map<String, String> conditions,
    Map<String, Optional<BigDecimal>> covariates,
    String where,
    Map<String, String> columns) {
  /** Names of the conditions that are asked for. */
  public static final List<String> CONDITIONS = List.of("wind", "surface", "light", "traffic");

  public LapInput {
    values = Map.copyOf(values);
    conditions = Map.copyOf(conditions);
    covariates = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(covariates));
    columns = Map.copyOf(columns);
  }

  /** A lap of which no covariate is said. */
  public LapInput(
      LapId lap,
      Map<String, BigDecimal> values,
      @Nullable String voidReason,
      String note,
      @Nullable String guess,
      @Nullable String sureness,
      String cue,
      Map<String, String> conditions,
      String where,
      Map<String, String> columns) {
    this(lap, values, voidReason, note, guess, sureness, cue, conditions, Map.of(), where, columns);
  }

  /** A lap of which neither sureness, cue nor conditions are said. */
  public LapInput(
      LapId lap,
      Map<String, BigDecimal> values,
      @Nullable String voidReason,
      String note,
      @Nullable String guess,
      String where,
      Map<String, String> columns) {
    this(lap, values, voidReason, note, guess, null, "", Map.of(), Map.of(), where, columns);
  }

  /** A lap with values only. */
  public static LapInput of(LapId lap, Map<String, BigDecimal> values) {
    return new LapInput(lap, values, null, "", null, "", Map.of());
  }

  /** The same lap with these values. */
  public LapInput with(Map<String, BigDecimal> other) {
    return new LapInput(
        lap, other, voidReason, note, guess, sureness, cue, conditions, covariates, where, columns);
  }

  /** Place of a measure or covariate for messages. */
  public String where(String measure) {
    String column = columns.get(measure);
    return String.join(", ", column == null ? List.of(where) : List.of(where, column));
  }
}
