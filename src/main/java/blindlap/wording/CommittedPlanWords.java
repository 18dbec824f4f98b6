package blindlap.wording;

import blindlap.plan.DayAnswer;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.session.SessionState;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Words;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A committed plan, to be read by anyone: what was signed, and the rest of what was fixed. Nothing
 * here depends on the order or on anything else that is sealed; what anyone expects comes after
 * unsealing.
 */
public final class CommittedPlanWords {
  private static final Words WORDS = Words.of("committed");

  private CommittedPlanWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** What was fixed, and when. */
  public static Headline headline(SessionState state, ZoneId zone) {
    return new Headline(
        "", state.plan().title(), say("after", DayWords.zoned(state.committedAt().atZone(zone))));
  }

  /** Which session it is, and who signed. */
  public static List<String> lead(SessionState state) {
    List<String> lines = new ArrayList<>(List.of(say("session", state.id())));
    if (!state.signedBy().isEmpty()) {
      lines.add(say("signed", String.join(", ", state.signedBy())));
    }
    return lines;
  }

  /** The fingerprint, what it shows, and who holds it. */
  public static PlanSummary.Part fingerprint(SessionState state) {
    List<String> lines = new ArrayList<>(List.of(state.planFingerprint().grouped()));
    lines.add(FingerprintWords.beside(state));
    lines.addAll(FingerprintWords.given(state));
    return new PlanSummary.Part(say("fingerprint"), lines);
  }

  /** The plan in parts, each with its heading. */
  public static List<PlanSummary.Part> parts(SessionState state, Optional<DayAnswer> answer) {
    Plan plan = state.plan();
    List<PlanSummary.Part> parts =
        new ArrayList<>(PlanSummary.parts(plan, answer, EarlierNoise.NONE));
    add(parts, "setups", setups(plan));
    if (plan.kind() != Plan.Kind.TELLING_RUN) { // which no noise of a measure decides
      add(parts, "noise.title", List.of(noise(plan)));
    }
    add(parts, "expectations", expectations(state));
    add(parts, "amendments", amendments(state));
    return parts;
  }

  private static void add(List<PlanSummary.Part> parts, String key, List<String> lines) {
    if (!lines.isEmpty()) {
      parts.add(new PlanSummary.Part(say(key), lines));
    }
  }

  private static List<String> setups(Plan plan) {
    List<String> lines = new ArrayList<>();
    lines.add(say("way", PlanJson.word(plan.change())));
    StepsDay levels = plan.oneSetting();
    // Levels of one setting are one setup, which is read once.
    List<Setup> setups = levels == null ? plan.setups() : List.of(levels.one(plan.setups().get(0)));
    for (Setup setup : setups) {
      String name = setup.name();
      if (setup.massGrams() != null) {
        String typed = setup.massTyped();
        String grams = PlanJson.number(setup.massGrams()) + " g";
        lines.add(say("mass", name, typed.isBlank() ? grams : typed));
      }
      if (setup.ballastGrams() != null) {
        lines.add(say("ballast", name, setup.ballastGrams().toPlainString()));
      }
      if (setup.price() != null) {
        String amount = setup.price().amount().toPlainString();
        lines.add(say("price", name, setup.price().currency(), amount));
      }
      if (setup.mostRefits() != null) {
        lines.add(say("refits", name, setup.mostRefits()));
      }
      list(lines, "steps", name, setup.steps());
      list(lines, "consumables", name, setup.consumables());
      list(lines, "cautions", name, setup.cautions());
    }
    plan.bike().forEach(setting -> lines.add(say("setting", setting.name(), setting.shown())));
    return lines;
  }

  private static void list(List<String> lines, String key, String name, List<String> texts) {
    if (!texts.isEmpty()) {
      lines.add(say(key, name, String.join("; ", texts)).replaceFirst("\\.\\.$", "."));
    }
  }

  private static String noise(Plan plan) {
    DeclaredNoise noise = plan.noise();
    if (noise == null) {
      return say("noise.unknown");
    }
    String unit = plan.primary().map(primary -> " " + primary.unit()).orElse("");
    String sd = PlanJson.number(noise.sd()) + unit;
    return noise.source().isBlank()
        ? say("noise.unsourced", sd)
        : say("noise", sd, noise.source().replaceFirst("\\.$", ""));
  }

  private static List<String> expectations(SessionState state) {
    if (!state.hasKey()) {
      return List.of();
    }
    if (!state.unsealed()) {
      return List.of(say("expectations.hidden"));
    }
    List<String> lines =
        ExpectedWords.lines(
            state.plan(),
            state.expectations().stream()
                .map(e -> new ExpectedWords.Expectation(e.who().name(), e.text()))
                .toList());
    return lines.isEmpty() ? List.of(say("expectations.none")) : lines;
  }

  private static List<String> amendments(SessionState state) {
    if (!state.hasKey()) {
      return List.of(say("amend.first"), say("amend.open"));
    }
    if (!state.unsealed()) {
      return List.of(say("amend.first"), say("amend.later"));
    }
    List<String> lines = new ArrayList<>(AmendmentWords.lines(state));
    lines.add(say("amend.now"));
    return lines;
  }
}
