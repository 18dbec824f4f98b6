package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.review.NoiseRecord;
import blindlap.session.SessionState;
import blindlap.session.day.Step;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/**
 * The review of a session without a key, an open noise run or an old day: what was ridden and the
 * noise it tells, as far as it is ridden. Nothing is compared.
 */
public final class NoiseRunWords {
  private static final Words WORDS = Words.of("noise");

  private NoiseRunWords() {}

  /** A sentence each. */
  public static List<String> lines(SessionState state) {
    Plan plan = state.plan();
    boolean old = state.plainDay().isPresent();
    List<String> lines = new ArrayList<>();
    lines.add(
        WORDS.say(old ? "run.old" : "run", plan.rider(), plan.trail(), plan.day().toString()));
    if (state.step() == Step.ABANDONED) {
      lines.add(WORDS.say("run.abandoned", state.abandonedBecause().orElse("")));
      return lines;
    }
    if (!old) {
      int voids = (int) state.laps().stream().filter(lap -> lap.voided().isPresent()).count();
      boolean open = state.step().day();
      lines.add(
          WORDS.say(
              open ? "run.laps.open" : "run.laps", state.lapsRidden(), plan.lapsOfDay(), voids));
    }
    for (NoiseRecord record : NoiseRecord.ofOneDay(state)) {
      lines.addAll(LapNoiseWords.lines(record));
    }
    lines.add(WORDS.say("run.next"));
    return lines;
  }
}
