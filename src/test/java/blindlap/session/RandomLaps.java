package blindlap.session;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import blindlap.session.day.Step;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** Laps as people type them, right and wrong, each with what is wrong with it. */
final class RandomLaps {
  private final Random random;
  private final Recount day;
  private final Plan plan;

  RandomLaps(Random random, Recount day) {
    this.random = random;
    this.day = day;
    this.plan = day.plan;
  }

  /**
   * A typed lap.
   *
   * @param faults what is wrong with it, whether it was ridden or not left aside
   * @param guess what its guess means; null if none was typed
   * @param event what its void reason means; null if none was typed
   */
  record Drawn(
      Recount day,
      LapInput input,
      List<SessionFault> faults,
      @Nullable Guess guess,
      @Nullable VoidEvent event) {
    /** What it becomes when it is recorded. */
    List<Fact> facts(Source source) {
      List<Fact> facts = new ArrayList<>();
      LapId lap = input.lap();
      facts.add(new Fact.LapRidden(lap, source));
      for (Measure measure : day.plan.measures()) {
        BigDecimal value = input.values().get(measure.name());
        if (value != null) {
          facts.add(new Fact.ScoreGiven(lap, measure.name(), value, source));
        }
      }
      if (!input.note().isBlank()) {
        facts.add(new Fact.NoteWritten(lap, input.note()));
      }
      if (event != null) {
        facts.add(new Fact.LapVoided(lap, event, "", false));
      }
      if (guess != null) {
        facts.add(new Fact.GuessGiven(lap.stint(), guess));
      }
      return facts;
    }

    /** Measures whose value it corrects. */
    List<String> corrected() {
      return corrections("").stream()
          .filter(Fact.ScoreCorrected.class::isInstance)
          .map(fact -> ((Fact.ScoreCorrected) fact).measure())
          .toList();
    }

    /** What docs/laps-file.md says of cells that no correction changes. */
    List<SessionFault> uncorrected() {
      List<SessionFault> faults = new ArrayList<>();
      Guess recorded = day.guesses().get(input.lap().stint());
      if (guess != null && (recorded == null || !Objects.equals(recorded.setup(), guess.setup()))) {
        faults.add(SessionFault.NOT_CORRECTED);
      }
      if (event != null
          && day.voided(input.lap()) instanceof Fact.LapVoided known
          && known.event() != event) {
        faults.add(SessionFault.NOT_CORRECTED);
      }
      return faults;
    }

    /** What it becomes when it is typed again as a correction. */
    List<Fact> corrections(String reason) {
      List<Fact> facts = new ArrayList<>();
      LapId lap = input.lap();
      for (Measure measure : day.plan.measures()) {
        BigDecimal now = input.values().get(measure.name());
        BigDecimal before = day.value(lap, measure.name()).orElse(null);
        boolean both = now != null && before != null;
        if (both ? now.subtract(before).signum() != 0 : now != before) {
          facts.add(new Fact.ScoreCorrected(lap, measure.name(), now, reason));
        }
      }
      if (!input.note().isBlank() && !input.note().equals(day.note(lap))) {
        facts.add(new Fact.NoteWritten(lap, input.note()));
      }
      if (event != null && !day.isVoid(lap)) {
        facts.add(new Fact.LapVoided(lap, event, "", day.step() == Step.DAY_CLOSED));
      }
      return facts;
    }
  }

  private boolean rarely() {
    return random.nextInt(10) == 0;
  }

  private int perStint() {
    return plan.laps().settling() + plan.laps().scored();
  }

  /** A lap that is to be ridden next, one that was, or any, one too many at times. */
  LapId lap() {
    List<LapId> ridden = List.copyOf(day.ridden());
    if (rarely()) {
      return new LapId(1 + random.nextInt(plan.stints() + 1), 1 + random.nextInt(perStint() + 1));
    }
    return ridden.isEmpty() || random.nextInt(3) > 0
        ? day.nextLap().orElse(new LapId(1, 1))
        : ridden.get(random.nextInt(ridden.size()));
  }

  /** Some laps as of one file. */
  List<Drawn> several() {
    List<Drawn> several = new ArrayList<>();
    LapId next = lap();
    int count = 1 + random.nextInt(3);
    for (int i = 0; i < count; i++) {
      several.add(drawn(next, "line " + (i + 2)));
      next =
          rarely()
              ? next
              : next.lap() < perStint()
                  ? new LapId(next.stint(), next.lap() + 1)
                  : new LapId(next.stint() + 1, 1);
    }
    return several;
  }

  private Drawn drawn(LapId lap, String where) {
    Map<String, BigDecimal> values = new LinkedHashMap<>();
    int count = random.nextInt(plan.measures().size() + 1);
    for (int i = 0; i < count; i++) {
      Map.Entry<String, BigDecimal> value = value();
      values.put(value.getKey(), value.getValue());
    }
    VoidEvent event = rarely() ? VoidEvent.values()[random.nextInt(6)] : null;
    String reason = event == null ? (random.nextBoolean() ? null : " ") : typed(event);
    List<SessionFault> faults = new ArrayList<>(missing(lap));
    LapInput plain = new LapInput(lap, values, null, "", null, where, Map.of());
    plain.values().forEach((name, value) -> faults.addAll(wrong(name, value)));
    if (random.nextInt(30) == 0) {
      event = null;
      reason = "a bad score";
      faults.add(SessionFault.NOT_AN_EVENT);
    }
    Guess guess = random.nextInt(3) == 0 ? guess() : null;
    String guessed = guess == null ? (random.nextBoolean() ? null : "") : typed(guess);
    if (random.nextInt(30) == 0) {
      guess = null;
      guessed = "another one";
      faults.add(SessionFault.UNKNOWN_SETUP);
    }
    String note = random.nextInt(3) == 0 ? "note " + random.nextInt(3) : "";
    return new Drawn(
        day,
        new LapInput(lap, values, reason, note, guessed, where, Map.of()),
        faults,
        guess,
        event);
  }

  private String typed(VoidEvent event) {
    String words = event.name().toLowerCase(Locale.ROOT);
    return switch (random.nextInt(4)) {
      case 0 -> words;
      case 1 -> " " + words.replace('_', '-') + " ";
      case 2 -> words.toUpperCase(Locale.ROOT).replace("_", "  ");
      default -> words.replace('_', ' ');
    };
  }

  private Guess guess() {
    Integer setup = rarely() ? null : random.nextInt(plan.setups().size());
    return new Guess(setup, null, "");
  }

  private String typed(Guess guess) {
    Integer setup = guess.setup();
    if (setup == null) {
      return List.of("-", " − ", "Don't know").get(random.nextInt(3));
    }
    return switch (random.nextInt(4)) {
      case 0 -> String.valueOf((char) ('A' + setup));
      case 1 -> " " + (char) ('a' + setup);
      case 2 -> plan.setups().get(setup).name().toUpperCase(Locale.ROOT);
      default -> plan.setups().get(setup).name();
    };
  }

  /** A value of some measure, one in ten of them wrong. */
  Map.Entry<String, BigDecimal> value() {
    if (random.nextInt(40) == 0) {
      return Map.entry("no measure", BigDecimal.ONE);
    }
    Measure measure = plan.measures().get(random.nextInt(plan.measures().size()));
    if (rarely()) {
      String[] odd = {"0", "-1", "0.5", "1.0", "9", "9.5", "10", "100", "100.1", "9999", "1e4"};
      String[] times = {"86400", "86400.001", "0.001"};
      String[] from = random.nextInt(3) == 0 ? times : odd;
      return Map.entry(measure.name(), new BigDecimal(from[random.nextInt(from.length)]));
    }
    String text =
        switch (measure.kind()) {
          case LAP_TIME, SECTOR_TIME -> "1" + random.nextInt(9) + "." + random.nextInt(10);
          case LINE_SCALE -> random.nextInt(100) + "." + random.nextInt(10);
          case CATEGORY_SCALE -> String.valueOf(1 + random.nextInt(9));
          case COUNT -> String.valueOf(random.nextInt(5));
        };
    return Map.entry(measure.name(), new BigDecimal(text));
  }

  /** Why there is no such lap, if there is none. */
  List<SessionFault> missing(LapId lap) {
    if (lap.stint() > plan.stints() || lap.lap() > perStint()) {
      return List.of(SessionFault.NO_SUCH_LAP);
    }
    return lap.stint() > day.lastStint() ? List.of(SessionFault.AFTER_CUT_SHORT) : List.of();
  }

  /** What docs/plan-file.md says of a value: times, 0 to 100, 1 to 9, whole counts. */
  List<SessionFault> wrong(String name, BigDecimal value) {
    Measure measure =
        plan.measures().stream().filter(m -> m.name().equals(name)).findFirst().orElse(null);
    if (measure == null) {
      return List.of(SessionFault.UNKNOWN_MEASURE);
    }
    boolean whole = value.remainder(BigDecimal.ONE).signum() == 0;
    return switch (measure.kind()) {
      case LAP_TIME, SECTOR_TIME ->
          value.signum() > 0 && value.compareTo(new BigDecimal(24 * 60 * 60)) <= 0
              ? List.of()
              : List.of(SessionFault.NOT_A_TIME);
      case LINE_SCALE -> scale(value, 0, 100, true);
      case CATEGORY_SCALE -> scale(value, 1, 9, whole);
      case COUNT -> scale(value, 0, 9999, whole);
    };
  }

  private static List<SessionFault> scale(BigDecimal value, int least, int most, boolean whole) {
    boolean inside =
        value.compareTo(BigDecimal.valueOf(least)) >= 0
            && value.compareTo(BigDecimal.valueOf(most)) <= 0;
    if (!inside) {
      return List.of(SessionFault.OUTSIDE_SCALE);
    }
    return whole ? List.of() : List.of(SessionFault.NOT_WHOLE);
  }
}
