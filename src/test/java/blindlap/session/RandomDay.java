package blindlap.session;

import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.RandomPlans;
import blindlap.seal.Fingerprint;
import blindlap.seal.HelperRecord;
import blindlap.seal.OpenKey;
import blindlap.seal.Opening;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SessionKind;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A whole invented session of a seed: one, two or three notebooks give commands that a person might
 * give, sensible or not, and meet now and then.
 */
final class RandomDay {
  /** Days in every build; more with {@code -Dhistories=5000} (DEVELOPERS.md). */
  private static final int DAYS = 60;

  /** Seeds that lie side by side begin alike, unless they are spread first. */
  private static final long MIXED = 0x9E3779B97F4A7C15L;

  /** An old day is brought in with the plan that is made for it, in one writing. */
  private static final Fact OLD_DAY =
      new Fact.PlainDayImported("old.csv", Map.of("t", "time"), List.of());

  private static final List<RandomDay> KEPT = new ArrayList<>();

  /**
   * A command and what became of it.
   *
   * @param at which notebook
   * @param before the session as that notebook had it
   * @param after the same afterwards
   */
  record Tried(
      int at,
      SessionState before,
      RandomCommands.Trial trial,
      Outcome outcome,
      SessionState after) {
    @Override
    public String toString() {
      return trial.what() + " at " + before.step() + ": " + outcome;
    }
  }

  /** What was sealed; nothing in an open noise run. */
  record Secrets(
      Sealing sealing, @Nullable Sealed sealed, @Nullable OpenKey opened, Fingerprint fingerprint) {
    OpenKey key() {
      return java.util.Objects.requireNonNull(opened);
    }

    HelperRecord record(int stint) {
      Sealed known = java.util.Objects.requireNonNull(sealed);
      return sealing.record(known.lock(), Histories.SESSION.text(), stint, "fitted");
    }
  }

  final long seed;
  final Histories book;
  final List<Tried> tried = new ArrayList<>();

  /** The session as each notebook had it, one after the other, merges included. */
  final List<List<SessionState>> courses = new ArrayList<>();

  private final Random random;
  private final Secrets secrets;

  private RandomDay(long seed) {
    this.seed = seed;
    this.random = new Random(seed * MIXED);
    Plan plan =
        random.nextInt(8) == 0 ? RandomPlans.noiseRun(random) : small(2 + random.nextInt(3));
    int notebooks = 1 + random.nextInt(3);
    this.book = new Histories(notebooks);
    IntStream.range(0, notebooks).forEach(i -> courses.add(new ArrayList<>()));
    byte[] bytes = PlanJson.bytes(plan);
    this.secrets = seal(plan, bytes);
    Sealed sealed = secrets.sealed();
    int first = random.nextInt(notebooks);
    Fact commit =
        new Fact.PlanCommitted(
            plan,
            new String(bytes, StandardCharsets.UTF_8),
            sealed == null ? null : sealed.key(),
            secrets.fingerprint(),
            sealed == null
                ? IntStream.rangeClosed(1, plan.stints()).boxed().toList()
                : sealed.codes(),
            List.of("R. Lind"));
    boolean old = sealed == null && random.nextBoolean();
    Fact[] begun = old ? new Fact[] {commit, OLD_DAY} : new Fact[] {commit};
    courses.get(first).add(SessionState.of(book.write(first, begun)));
    live(40 + random.nextInt(80));
  }

  /** Few stints, so that days are ridden to their end, and beyond the laps that were agreed to. */
  private Plan small(int setups) {
    return RandomPlans.comparison(
        random, setups, (setups == 3 ? 3 : 4) * (1 + random.nextInt(3)), 1 + random.nextInt(3));
  }

  private Secrets seal(Plan plan, byte[] bytes) {
    Sealing sealing =
        new Sealing(
            SealingSources.allFrom(
                count -> {
                  byte[] drawn = new byte[count];
                  random.nextBytes(drawn);
                  return drawn;
                }),
            new SealParameters(1));
    if (plan.kind() == Plan.Kind.NOISE_RUN) {
      return new Secrets(sealing, null, null, Fingerprint.sha256(bytes));
    }
    SessionKind kind =
        random.nextInt(4) == 0
            ? SessionKind.nullRun(random.nextInt(plan.setups().size()))
            : SessionKind.comparison();
    Sealed sealed =
        sealing.seal(
            bytes,
            plan.rule(),
            Histories.SESSION.text(),
            kind,
            sealing.drawPhrase(plan.rule()).unasked());
    Opening.Opened opened = (Opening.Opened) sealing.open(sealed.key(), sealed.phrase());
    return new Secrets(sealing, sealed, opened.key(), sealed.fingerprint());
  }

  private void live(int steps) {
    for (int step = 0; step < steps; step++) {
      int at = random.nextInt(courses.size());
      if (courses.get(at).isEmpty() || random.nextInt(10) == 0) {
        meet(at, random.nextInt(courses.size()));
      }
      if (!courses.get(at).isEmpty()) {
        give(at, step > steps * 2 / 3);
      }
    }
    for (int at = 0; at < courses.size(); at++) {
      meet(0, at);
    }
  }

  private void meet(int one, int other) {
    book.meet(one, other);
    for (int at : new int[] {one, other}) {
      if (!book.held(at).isEmpty()) {
        courses.get(at).add(SessionState.of(CausalOrder.sort(book.held(at))));
      }
    }
  }

  private void give(int at, boolean late) {
    SessionState before = last(at);
    Recount counted = new Recount(before.entries());
    RandomCommands.Trial trial = new RandomCommands(random, counted, secrets).draw(late);
    Outcome outcome = trial.run().apply(before);
    if (outcome instanceof Outcome.Accepted accepted) {
      List<StoredEntry> more = book.write(at, accepted.facts().toArray(new Fact[0]));
      courses.get(at).add(before.after(more));
    }
    tried.add(new Tried(at, before, trial, outcome, last(at)));
  }

  private SessionState last(int at) {
    List<SessionState> course = courses.get(at);
    return course.get(course.size() - 1);
  }

  /** Everything anyone wrote, in causal order. */
  List<StoredEntry> entries() {
    return CausalOrder.sort(book.all());
  }

  @Override
  public String toString() {
    return "day of seed " + seed;
  }

  /** The days of this run; those of an ordinary build are made once and kept. */
  static Stream<RandomDay> all() {
    Integer asked = Integer.getInteger("histories");
    if (asked != null) {
      return LongStream.rangeClosed(1, asked).mapToObj(RandomDay::new);
    }
    if (KEPT.isEmpty()) {
      LongStream.rangeClosed(1, DAYS).mapToObj(RandomDay::new).forEach(KEPT::add);
    }
    return KEPT.stream();
  }
}
