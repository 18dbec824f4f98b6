package blindlap.desk;

import blindlap.plan.BlindLevel;
import blindlap.plan.Blinding;
import blindlap.plan.ChangeMethod;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Preparation;
import blindlap.plan.Protocol;
import blindlap.plan.Rule;
import blindlap.plan.Setup;
import blindlap.session.PlainDay;
import blindlap.session.PlainLap;
import blindlap.wording.NoiseWords;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The plan under which an old day stands in the notebook: open, without order, for noise only. */
final class PlainDayPlan {
  private PlainDayPlan() {}

  static Plan of(String file, String rider, String trail, List<Measure> measures, PlainDay day) {
    return new Plan(
        Plan.Kind.NOISE_RUN,
        NoiseWords.say("plain.question", file),
        Plan.Expectations.NONE,
        rider,
        trail,
        day.day(),
        "",
        setups(day.laps()),
        ChangeMethod.REFIT,
        null,
        "",
        List.of(),
        measures,
        Protocol.unnamed(Rule.blocks(2, 16, 4)),
        day.laps().size() / day.lapsPerStint(),
        new Plan.Laps(0, 0, day.lapsPerStint()),
        Blinding.at(BlindLevel.OPEN, Preparation.NONE),
        null,
        null,
        "",
        null,
        null,
        List.of(),
        List.of(),
        null,
        null,
        null);
  }

  private static List<Setup> setups(List<PlainLap> laps) {
    Set<String> names = new LinkedHashSet<>();
    laps.forEach(lap -> names.add(lap.setup()));
    List<Setup> setups = new ArrayList<>();
    for (String name : names) {
      setups.add(Setup.named(name.isBlank() ? NoiseWords.say("plain.setup") : name));
    }
    return setups;
  }
}
