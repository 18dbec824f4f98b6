package blindlap.desk;

import blindlap.exchange.PlanFields;
import blindlap.exchange.PlanText;
import blindlap.fault.CanonicalJson;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.stats.compare.LevelMeans;
import blindlap.stats.compare.Trend;
import blindlap.wording.AfterStepsWords;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Plans that follow from an unsealed steps day: its two best levels against each other, or the
 * setup with its setting at one level. Levels that were ridden alone are offered, and none outside
 * limits that were typed in; which setting is good for a bike is nobody's claim here.
 */
public final class AfterSteps {
  private final Reviews reviews;
  private final AnotherDay another;

  AfterSteps(Reviews reviews, AnotherDay another) {
    this.reviews = reviews;
    this.another = another;
  }

  /**
   * What a day offers.
   *
   * @param plan of the steps day
   * @param levels that can be taken, by their place in the plan, the lowest first
   * @param best the two best by their means after drift, the lower level first; empty if that is
   *     not known
   */
  public record Offer(Plan plan, List<Integer> levels, List<Integer> best) {
    public Offer {
      levels = List.copyOf(levels);
      best = List.copyOf(best);
    }

    /** Levels that can be taken, as they are called. */
    public List<String> names() {
      return levels.stream().map(level -> plan.setups().get(level).name()).toList();
    }
  }

  /** What became of a request for a plan. */
  public sealed interface Taken {
    /**
     * A plan to be typed on.
     *
     * @param said what it is, a sentence each
     */
    record Drafted(AnotherDay.Made made, List<String> said) implements Taken {}

    /** There is no such plan. */
    record Refused(List<Problem> problems) implements Taken {}
  }

  /**
   * What a finding offers; empty of other days.
   *
   * @param primary the primary measure, compared; empty where it was not
   */
  public static Optional<Offer> offer(DayRecord day, Optional<Comparison> primary) {
    Plan plan = day.plan();
    StepsDay steps = plan.steps();
    if (steps == null || plan.levels().isEmpty()) {
      return Optional.empty();
    }
    List<Integer> levels =
        IntStream.range(0, plan.setups().size())
            .boxed()
            .filter(level -> ridden(day, level) && within(steps, plan.setups().get(level)))
            .sorted(Comparator.comparing((Integer level) -> plan.levels().orElseThrow().get(level)))
            .toList();
    return Optional.of(
        new Offer(plan, levels, primary.map(p -> best(p, levels)).orElse(List.of())));
  }

  private static boolean ridden(DayRecord day, int level) {
    return day.laps().stream()
        .filter(lap -> lap.ridden() && lap.id().stint() <= day.lastStint())
        .map(DayRecord.Lap::id)
        .mapToInt(LapId::stint)
        .anyMatch(stint -> stint > 0 && day.setup(stint) == level);
  }

  private static boolean within(StepsDay steps, Setup level) {
    BigDecimal value = steps.value(level).orElseThrow();
    BigDecimal least = steps.least();
    BigDecimal most = steps.most();
    return (least == null || value.compareTo(least) >= 0)
        && (most == null || value.compareTo(most) <= 0);
  }

  private static List<Integer> best(Comparison primary, List<Integer> offered) {
    Measure.Better better = primary.measure().better();
    List<LevelMeans.Mean> means =
        primary.trend().flatMap(Trend::means).map(LevelMeans::means).orElse(List.of()).stream()
            .filter(mean -> offered.contains(mean.setup()))
            .toList();
    if (better == Measure.Better.NEITHER || means.size() < 2) {
      return List.of();
    }
    Comparator<LevelMeans.Mean> lowest = Comparator.comparing(LevelMeans.Mean::mean);
    return means.stream()
        .sorted(better == Measure.Better.LOWER ? lowest : lowest.reversed())
        .limit(2)
        .sorted(Comparator.comparing(LevelMeans.Mean::level))
        .map(LevelMeans.Mean::setup)
        .toList();
  }

  /** The two best levels against each other, as an ordinary comparison. */
  public Taken compareTwoBest(SessionState state) {
    return taken(
        state,
        offer ->
            offer.best().isEmpty()
                ? refused(Problem.of(DeskFault.NO_TWO_BEST, ""))
                : compared(state, offer));
  }

  /**
   * The setup with its setting at a level, as the first of a new plan.
   *
   * @param typed the level, as its number or as it is called
   */
  public Taken take(SessionState state, String typed) {
    return taken(
        state,
        offer ->
            offer.levels().stream()
                .filter(level -> called(offer.plan(), level, typed))
                .findFirst()
                .map(level -> level(state, offer, level))
                .orElseGet(
                    () ->
                        refused(
                            Problem.of(
                                DeskFault.LEVEL_NOT_OFFERED,
                                "",
                                typed,
                                StepsDay.range(offer.names())))));
  }

  private static boolean called(Plan plan, int level, String typed) {
    Setup setup = plan.setups().get(level);
    BigDecimal value = Objects.requireNonNull(plan.steps()).value(setup).orElseThrow();
    return setup.name().equals(typed.strip())
        || TypedNumber.number(typed).filter(number -> number.compareTo(value) == 0).isPresent();
  }

  private Taken taken(SessionState state, Function<Offer, Taken> make) {
    if (state.plan().steps() == null) {
      return refused(Problem.of(DeskFault.NO_STEPS_DAY, ""));
    }
    Optional<List<Problem>> sealed = reviews.refuse(state);
    if (sealed.isPresent()) {
      return new Taken.Refused(sealed.get());
    }
    DayRecord day = Reviews.day(state);
    return offer(day, Analysis.verdictOnly(day))
        .map(make)
        .orElseGet(() -> refused(Problem.of(DeskFault.NO_STEPS_DAY, "")));
  }

  private static Taken refused(Problem problem) {
    return new Taken.Refused(List.of(problem));
  }

  private Taken compared(SessionState state, Offer offer) {
    Plan plan = offer.plan();
    int first = offer.best().get(0);
    int second = offer.best().get(1);
    List<Map<String, Object>> setups = new ArrayList<>();
    for (int level : offer.best()) {
      Map<String, Object> setup = setup(state, level);
      setup.put("name", AfterStepsWords.name(plan, level));
      setups.add(setup);
    }
    return drafted(
        state,
        setups,
        AfterStepsWords.question(plan, first, second),
        AfterStepsWords.compared(plan, first, second));
  }

  private Taken level(SessionState state, Offer offer, int level) {
    StepsDay steps = Objects.requireNonNull(offer.plan().steps());
    Map<String, Object> setup = setup(state, level);
    setup.put("name", steps.setup());
    setup.put("id", steps.setupId());
    return drafted(state, List.of(setup), null, AfterStepsWords.taken(offer.plan(), level));
  }

  /** A level as the setup that it is, with the limits that stood in the steps day. */
  private Map<String, Object> setup(SessionState state, int level) {
    Map<String, Object> setup = setups(state).get(level);
    StepsDay steps = Objects.requireNonNull(state.plan().steps());
    String limits = AfterStepsWords.limits(steps);
    if (!limits.isEmpty()) {
      List<Object> all = new ArrayList<>();
      if (setup.get("limits") instanceof List<?> typed) {
        all.addAll(typed);
      }
      Map<String, Object> own = new LinkedHashMap<>();
      own.put("what", steps.setting());
      own.put("value", limits);
      own.put("source", steps.source());
      all.add(own);
      setup.put("limits", all);
    }
    return setup;
  }

  /** The setups of a committed plan as fields of a plan file, in its order. */
  private static List<Map<String, Object>> setups(SessionState state) {
    Map<String, Object> plan = new LinkedHashMap<>();
    plan.put(
        "setups",
        PlanText.read(CanonicalJson.text(PlanJson.tree(state.plan()))).fields().get("setups"));
    List<Map<String, Object>> setups = new ArrayList<>();
    if (PlanFields.once(plan).get("setups") instanceof List<?> each) {
      each.forEach(setup -> setups.add(fields(setup)));
    }
    return setups;
  }

  private static Map<String, Object> fields(Object typed) {
    Map<String, Object> fields = new LinkedHashMap<>();
    if (typed instanceof Map<?, ?> map) {
      map.forEach((name, value) -> fields.put(String.valueOf(name), value));
    }
    return fields;
  }

  /**
   * A plan like that of the day but for what only a steps day has. Its worthwhile differences were
   * declared over the whole range: between two levels in the middle of it the same number would
   * call almost any difference small. So they are left to be declared.
   */
  private Taken drafted(
      SessionState state,
      List<Map<String, Object>> setups,
      @Nullable String question,
      List<String> said) {
    AnotherDay.Made made = another.like(state.id()).orElseThrow();
    Map<String, Object> fields = made.fields();
    for (String name : List.of("kind", "steps_day", "protocol", "rule", "stints", "question")) {
      fields.remove(name);
    }
    if (question != null) {
      fields.put("question", question);
    }
    fields.put("setups", setups);
    if (fields.get("measures") instanceof List<?> measures) {
      fields.put("measures", measures.stream().map(AfterSteps::undeclared).toList());
    }
    return new Taken.Drafted(made, said);
  }

  private static Object undeclared(Object measure) {
    Map<String, Object> fields = fields(measure);
    fields.remove("worthwhile");
    return fields;
  }
}
