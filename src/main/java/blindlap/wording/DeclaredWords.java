package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Protocol;
import blindlap.plan.Setup;
import blindlap.review.SeriesDeclaration;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** What a plan says in the fields that every plan of a series has in common. */
public final class DeclaredWords {
  private static final Words WORDS = Words.of("series");

  private DeclaredWords() {}

  /** "0.3 s", "7 sessions", "blocks of four": the value of a field, in words. */
  public static String value(SeriesDeclaration.Field field, Plan plan) {
    return switch (field) {
      case QUESTION -> WORDS.say("field.question", plan.question());
      case KIND -> WORDS.say("field.kind." + plan.kind().name());
      case SETUPS ->
          String.join(", ", plan.setups().stream().map(DeclaredWords::setup).sorted().toList());
      case PRIMARY -> measure(plan, Measure::name);
      case MEASURE_KIND -> measure(plan, m -> PlanJson.word(m.kind()));
      case UNIT -> measure(plan, Measure::unit);
      case BETTER -> WORDS.say("field.better", measure(plan, m -> PlanJson.word(m.better())));
      case WORTHWHILE ->
          measure(
              plan,
              m -> m.worthwhile() == null ? WORDS.say("page.undeclared") : Sizes.worthwhile(m));
      case DRIFT -> WORDS.say("field.drift", measure(plan, m -> m.drift().text()));
      case SCALE -> WORDS.say("field.scale", measure(plan, m -> m.scale().text()));
      case SUMMARY -> WORDS.say("field.summary", measure(plan, m -> m.summary().text()));
      case TIMING -> measure(plan, m -> TimingWords.by(m.timing()));
      case TRAIL -> TimingWords.gates(plan.trailVersion());
      case COVARIATES -> CovariateWords.common(plan);
      case RULE -> rule(plan.protocol());
      case LEVEL -> LevelWords.name(plan.level());
      case SESSIONS -> sessions(plan.seriesSessions());
    };
  }

  private static String sessions(@org.jspecify.annotations.Nullable Integer declared) {
    return declared == null
        ? WORDS.say("field.sessions.none")
        : WORDS.say("field.sessions", declared);
  }

  private static String measure(Plan plan, Function<Measure, String> what) {
    return plan.primary().map(what).orElse("");
  }

  /** Setups go by their ids, so that an id of its own is said. */
  private static String setup(Setup setup) {
    return setup.id().equals(Setup.idOf(setup.name()))
        ? setup.name()
        : WORDS.say("field.setup", setup.name(), setup.id());
  }

  /** Two rules may bear one name, so that what they restrict is said, too. */
  private static String rule(Protocol protocol) {
    List<String> limits = new ArrayList<>();
    if (protocol.block() != null) {
      limits.add(WORDS.say("field.rule.block", protocol.block()));
    }
    if (!protocol.patterns().isEmpty()) {
      limits.add(WORDS.say("field.rule.patterns", String.join(", ", protocol.patterns())));
    }
    if (protocol.maxRun() != null) {
      limits.add(WORDS.say("field.rule.run", protocol.maxRun()));
    }
    if (protocol.minTrendEfficiency() != null) {
      limits.add(WORDS.say("field.rule.trend", String.valueOf(protocol.minTrendEfficiency())));
    }
    return protocol.own() && !limits.isEmpty()
        ? WORDS.say("field.rule", protocol.title(), String.join("; ", limits))
        : protocol.title();
  }
}
