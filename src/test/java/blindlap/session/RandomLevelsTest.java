package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanReader;
import blindlap.exchange.Protocols;
import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.PlanCheck;
import blindlap.plan.PlanJson;
import blindlap.seal.CoveredOrder;
import blindlap.seal.MaskSealing;
import blindlap.seal.Masks;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.SealedKey;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.seal.SessionKind;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import blindlap.wording.day.Problems;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Invented days of every blind level: one or two notebooks show, mount, ride, mask, guess, read,
 * show single stints and close, sensibly or not, and meet now and then.
 */
class RandomLevelsTest {
  private static final int DAYS = 30;
  private static final long MIXED = 0x9E3779B97F4A7C15L;

  /** What was tried, by name: whether it was taken, whether it was refused. */
  private final Map<String, boolean[]> tried = new TreeMap<>();

  private Random random = new Random();
  private Histories book = new Histories(1);
  private Optional<CoveredOrder> order = Optional.empty();
  private Optional<SealedKey> masks = Optional.empty();
  private BlindLevel level = BlindLevel.OPEN;

  private static Plan plan(BlindLevel level) {
    Plan plan =
        PlanReader.read(
                """
                question: q
                rider: R. Lind
                trail: Quarry loop
                day: 2026-11-14
                setups: [{name: Shock K, component: shock}, {name: Shock L, component: shock}]
                measures: [{name: time, kind: lap time, unit: s, role: primary, worthwhile: 1}]
                rule: {setups: 2, stints: 4, block: 4}
                stints: 4
                laps: {warm_up: 1}
                differences_reason: whole parts
                override: to see how it goes
                blinding: {level: %s, prepared_by: M. Oster}
                """
                    .formatted(PlanJson.word(level)),
                Protocols.NONE)
            .plan();
    assertThat(PlanCheck.problems(plan)).isEmpty();
    return plan;
  }

  private void begin(long seed) {
    random = new Random(seed * MIXED);
    int notebooks = 1 + random.nextInt(2);
    book = new Histories(notebooks);
    Plan plan = plan(level);
    byte[] bytes = PlanJson.bytes(plan);
    String text = new String(bytes, StandardCharsets.UTF_8);
    SecureBytes drawn =
        count -> {
          byte[] some = new byte[count];
          random.nextBytes(some);
          return some;
        };
    SealingSources sources = SealingSources.allFrom(drawn);
    Sealing sealing = new Sealing(sources, new SealParameters(1));
    MaskSealing masking = new MaskSealing(sources, new SealParameters(1));
    Fact commit;
    if (level.shown()) {
      CoveredOrder covered = sealing.cover(bytes, plan.rule(), Histories.SESSION.text());
      order = Optional.of(covered);
      commit =
          new Fact.PlanCommitted(
              plan, text, null, true, covered.fingerprint(), covered.codes(), List.of("R. Lind"));
    } else {
      Sealed sealed =
          sealing.seal(
              bytes,
              plan.rule(),
              Histories.SESSION.text(),
              SessionKind.comparison(),
              sealing.drawPhrase(plan.rule()).unasked());
      order = Optional.empty();
      commit =
          new Fact.PlanCommitted(
              plan, text, sealed.key(), sealed.fingerprint(), sealed.codes(), List.of("R. Lind"));
    }
    masks =
        Optional.of(
            masking.seal(
                Masks.of(List.of(1, 0)),
                Histories.SESSION.text(),
                blindlap.seal.Fingerprint.sha256(bytes),
                masking.drawPhrase().unasked()));
    int first = random.nextInt(notebooks);
    book.write(first, commit);
    for (int step = 0; step < 90; step++) {
      int at = random.nextInt(notebooks);
      if (book.held(at).isEmpty() || random.nextInt(8) == 0) {
        IntStream.range(0, notebooks).forEach(other -> book.meet(at, other));
      }
      if (!book.held(at).isEmpty()) {
        give(at, step);
      }
    }
    IntStream.range(0, notebooks).forEach(other -> book.meet(0, other));
  }

  private void give(int at, int step) {
    SessionState before = SessionState.of(CausalOrder.sort(book.held(at)));
    List<String> names = new ArrayList<>(List.of("show", "mount", "lap", "lap", "show", "mount"));
    names.addAll(List.of("mask", "one stint", "answer", "broken", "guess"));
    if (step > 50) {
      names.addAll(List.of("close day", "close review", "read", "guess"));
    }
    String name = names.get(random.nextInt(names.size()));
    Outcome outcome = outcome(name, before);
    boolean[] both = tried.computeIfAbsent(name, key -> new boolean[2]);
    if (outcome instanceof Outcome.Accepted accepted) {
      both[0] = true;
      book.write(at, accepted.facts().toArray(new Fact[0]));
    } else {
      both[1] = true;
      for (Problem problem : ((Outcome.Refused) outcome).problems()) {
        assertThat(Problems.sentence(problem)).as(name).matches("(?s)[A-Z0-9].*\\.");
      }
    }
  }

  private Outcome outcome(String name, SessionState state) {
    AloneCommands alone = new AloneCommands(state);
    int stint = random.nextInt(5);
    List<Integer> mapping = random.nextInt(4) == 0 ? List.of(1, 1) : List.of(1, 0);
    return switch (name) {
      case "show" -> {
        int next = alone.nextToShow().orElse(4);
        yield alone.show(next, order.map(covered -> covered.setup(next)).orElse(0));
      }
      case "mount" -> alone.mount(alone.nextToMount().orElse(stint), "fitted");
      case "lap" ->
          new DayCommands(state)
              .record(
                  List.of(
                      LapInput.of(
                          state.nextLap().orElse(new LapId(1, 1)),
                          Map.of("time", BigDecimal.valueOf(90 + random.nextInt(9))))),
                  Source.SCREEN);
      case "mask" -> new MaskCommands(state).seal(masks.orElseThrow());
      case "guess" -> new MaskCommands(state).guess(mapping);
      case "read" -> new MaskCommands(state).read(mapping, MasksRead.From.MARKS);
      case "one stint" -> new OneStintCommands(state).show(stint, "P. Wier");
      case "answer" ->
          new OneStintCommands(state)
              .answer(
                  new OneStintCommands(state).unanswered().orElse(stint),
                  random.nextBoolean(),
                  "Somebody else was shown it.");
      case "broken" -> new LifeCommands(state).blindBroken(Math.max(1, stint), "It tore.");
      case "close day" -> new LifeCommands(state).closeDay();
      case "close review" -> new LifeCommands(state).closeReview();
      default -> throw new AssertionError(name);
    };
  }

  private static Map<String, Object> told(SessionState state) {
    Map<String, Object> told = Told.of(state);
    told.put("shown", state.shown());
    told.put("mounted", state.mounted());
    told.put("one stint", state.oneStint());
    told.put("masks", state.masks());
    told.put("guessed", state.masksGuessed());
    told.put("read", state.masksRead());
    return told;
  }

  @ParameterizedTest
  @EnumSource(BlindLevel.class)
  void aDayOfEveryLevelTellsTheSameInAnyOrderAndKeepsToItsLevel(BlindLevel which) {
    level = which;
    for (long seed = 1; seed <= DAYS; seed++) {
      begin(seed);
      List<StoredEntry> shuffled = new ArrayList<>(book.all());
      Collections.shuffle(shuffled, new Random(seed));
      List<StoredEntry> sorted = CausalOrder.sort(shuffled);
      SessionState state = SessionState.of(sorted);
      assertThat(told(state)).isEqualTo(told(SessionState.of(CausalOrder.sort(book.all()))));
      SessionState handfuls = SessionState.of(sorted.subList(0, 1));
      for (int at = 1; at < sorted.size(); at++) {
        handfuls = handfuls.after(sorted.subList(at, at + 1));
      }
      assertThat(told(handfuls)).isEqualTo(told(state));
      keepsToItsLevel(state);
    }
    bothWays();
  }

  private void keepsToItsLevel(SessionState state) {
    SortedMap<Integer, Integer> shown = state.shown();
    // What was shown follows stint by stint, and is what the cover has.
    assertThat(new ArrayList<>(shown.keySet()))
        .isEqualTo(IntStream.range(0, shown.size()).boxed().toList());
    shown.forEach((stint, setup) -> assertThat(setup).isEqualTo(order.orElseThrow().setup(stint)));
    if (level.shown()) {
      assertThat(shown.keySet()).containsAll(new TreeSet<>(state.mounted().keySet()));
    } else {
      assertThat(shown).isEmpty();
    }
    if (level == BlindLevel.HELPER) {
      assertThat(state.mounted()).isEmpty();
    }
    if (level != BlindLevel.MASKED) {
      assertThat(state.masks()).isEmpty();
      assertThat(state.masksGuessed()).isEmpty();
      assertThat(state.masksRead()).isEmpty();
    }
    if (!level.blind()) {
      assertThat(state.oneStint()).isEmpty();
    }
    if (level == BlindLevel.OPEN || level == BlindLevel.DRAWN) {
      assertThat(state.blindBroken()).isEmpty();
    }
  }

  /** What belongs to a level was taken and refused; what does not was refused alone. */
  private void bothWays() {
    boolean masked = level == BlindLevel.MASKED;
    taken("show", level.shown());
    taken("mount", level != BlindLevel.HELPER);
    taken("mask", masked);
    taken("guess", masked);
    taken("read", masked);
    taken("one stint", level.blind());
    taken("answer", level.blind());
    taken("broken", level.blind() || masked);
    taken("close review", true);
  }

  private void taken(String name, boolean belongs) {
    assertThat(tried.get(name)).as(name).containsExactly(belongs, true);
  }
}
