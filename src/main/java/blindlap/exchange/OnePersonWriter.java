package blindlap.exchange;

import blindlap.plan.PlanJson;
import blindlap.session.MasksGuessed;
import blindlap.session.MasksRead;
import blindlap.session.MasksSealed;
import blindlap.session.OnePersonVisitor;
import blindlap.session.OneStintAnswered;
import blindlap.session.OneStintShown;
import blindlap.session.SetupShown;
import blindlap.session.StintMounted;
import java.util.List;
import java.util.Map;

/** The bodies of a day without a helper. */
final class OnePersonWriter implements OnePersonVisitor<Map<String, Object>> {
  @Override
  public Map<String, Object> setupShown(SetupShown fact) {
    return Map.of("stint", String.valueOf(fact.stint()), "setup", String.valueOf(fact.setup() + 1));
  }

  @Override
  public Map<String, Object> stintMounted(StintMounted fact) {
    return Map.of("stint", String.valueOf(fact.stint()), "record", fact.text());
  }

  @Override
  public Map<String, Object> masksSealed(MasksSealed fact) {
    return Map.of("key", Map.copyOf(fact.key().fields()));
  }

  @Override
  public Map<String, Object> masksGuessed(MasksGuessed fact) {
    return Map.of("setups", setups(fact.setups()));
  }

  @Override
  public Map<String, Object> masksRead(MasksRead fact) {
    return Map.of("setups", setups(fact.setups()), "from", PlanJson.word(fact.from()));
  }

  @Override
  public Map<String, Object> oneStintShown(OneStintShown fact) {
    return Map.of("stint", String.valueOf(fact.stint()), "name", fact.name());
  }

  @Override
  public Map<String, Object> oneStintAnswered(OneStintAnswered fact) {
    return Map.of("stint", String.valueOf(fact.stint()), "rider_saw", fact.riderSaw());
  }

  private static List<String> setups(List<Integer> setups) {
    return setups.stream().map(setup -> String.valueOf(setup + 1)).toList();
  }
}
