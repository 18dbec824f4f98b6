package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.DayCommands;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.IntUnaryOperator;

/** Steps days for tests: clicks of one shock at three levels, nine stints in blocks of three. */
public final class StepsTestDay {
  /** Clicks, with sag to be measured besides, scales, a guess and a timetable. */
  public static final String NINE = plan("levels: [4, 7, 10], least: 2, most: 16", 9);

  private StepsTestDay() {}

  /**
   * The day of {@link TestDay#EIGHT} with one setup and the levels of its rebound.
   *
   * @param stepsDay fields of steps_day beside setting and unit
   */
  public static String plan(String stepsDay, int stints) {
    String eight = TestDay.EIGHT;
    String setups =
        """
        setups:
          - name: Shock K
            settings:
              - {name: sag, value: 26, unit: "%%", tolerance: 1, readings: 3}
        kind: steps day
        steps_day: {setting: rebound, unit: clicks, source: p. 12, %s}
        """
            .formatted(stepsDay);
    return eight.substring(0, eight.indexOf("setups:"))
        + setups
        + eight
            .substring(eight.indexOf("bike:"))
            .replace("protocol: eight-stints\nstints: 8", "stints: " + stints)
            .replace("lap_budget: 12", "lap_budget: 40")
            .replace("16:38", "20:00");
  }

  /**
   * Rides a day up to the opened key.
   *
   * @param seconds the lap time of a stint
   */
  public static SessionState ride(TestDay day, int stints, IntUnaryOperator seconds) {
    List<LapInput> laps = new ArrayList<>();
    for (int stint = 1; stint <= stints; stint++) {
      BigDecimal time = BigDecimal.valueOf(seconds.applyAsInt(stint));
      laps.add(LapInput.of(new LapId(stint, 1), Map.of("lap time", time)));
    }
    Sessions sessions = day.desk().sessions();
    done(sessions.act(day.id(), state -> new DayCommands(state).record(laps, Source.FILE)));
    done(sessions.act(day.id(), state -> new LifeCommands(state).closeDay()));
    done(sessions.act(day.id(), state -> new LifeCommands(state).closeReview()));
    done(day.desk().keys().unseal(day.state(), day.phrase()));
    return day.state();
  }

  private static void done(Sessions.Result result) {
    assertThat(result).as(String.valueOf(result)).isInstanceOf(Sessions.Result.Done.class);
  }
}
