package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.compute.FindingJson;
import blindlap.exchange.DayRemarks;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.Remark;
import blindlap.review.Sensitivity;
import blindlap.seal.Fingerprint;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Source;
import blindlap.session.day.Twice;
import blindlap.timing.TimeRecord;
import blindlap.wording.FindingText;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What machines record of the same laps without knowing of one another. */
class TwoValuesTest {
  private static final String TIME = "time";

  private static LapId lap(int stint) {
    return new LapId(stint, 1);
  }

  private static Fact timed(int stint, String seconds, TimeRecord.TimedBy by) {
    Instant at = Instant.parse("2026-11-14T09:00:00Z");
    return new Fact.TimeTaken(
        lap(stint), TIME, new TimeRecord(at, at, 0, by, new BigDecimal(seconds)));
  }

  private static Fact filed(int stint, String seconds) {
    return new Fact.ScoreGiven(lap(stint), TIME, new BigDecimal(seconds), Source.FILE);
  }

  private static SessionState folded(Histories history) {
    return SessionState.of(CausalOrder.sort(history.all()));
  }

  private static Twice twice(SessionState state) {
    return state.lap(lap(1)).orElseThrow().twice().get(TIME);
  }

  private static List<String> numbers(Twice twice) {
    return twice.values().stream().map(v -> String.valueOf(v.value())).toList();
  }

  /** Two notebooks that know the plan. */
  private static Histories two() {
    Histories history = new Histories(2);
    history.write(0, Histories.COMMIT);
    history.meet(0, 1);
    return history;
  }

  @Test
  void the_starters_record_counts_whichever_notebook_it_lies_in_and_the_riders_is_set_aside() {
    for (int starter = 0; starter < 2; starter++) {
      Histories history = two();
      history.write(starter, timed(1, "181.4", TimeRecord.TimedBy.STARTER));
      history.write(1 - starter, timed(1, "183", TimeRecord.TimedBy.RIDER));
      SessionState state = folded(history);
      assertThat(numbers(twice(state))).containsExactly("181.4", "183");
      assertThat(state.lap(lap(1)).orElseThrow().values()).containsEntry(TIME, dec("181.4"));
      assertThat(state.lap(lap(1)).orElseThrow().times().get(TIME).timedBy())
          .isEqualTo(TimeRecord.TimedBy.STARTER);
    }
  }

  private static BigDecimal dec(String number) {
    return new BigDecimal(number);
  }

  @Test
  void where_nobody_said_whose_record_it_is_the_notebook_of_the_commit_counts() {
    Histories history = new Histories(2);
    history.write(1, Histories.COMMIT);
    history.meet(0, 1);
    history.write(0, filed(1, "181.4"));
    history.write(1, filed(1, "183"));
    assertThat(numbers(twice(folded(history)))).containsExactly("183", "181.4");
  }

  @Test
  void the_same_number_from_two_machines_and_a_value_that_was_seen_and_replaced_are_one_value() {
    Histories history = two();
    history.write(0, filed(1, "181.4"));
    history.write(1, filed(1, "181.40"));
    assertThat(twice(folded(history))).isNull();
    history.meet(0, 1);
    history.write(1, new Fact.ScoreCorrected(lap(1), TIME, dec("182"), "misread"));
    assertThat(twice(folded(history))).isNull();
    assertThat(folded(history).lap(lap(1)).orElseThrow().values()).containsEntry(TIME, dec("182"));
  }

  @Test
  void a_watch_that_another_machine_starts_takes_no_time_out_of_sight() {
    Histories history = two();
    history.write(0, timed(1, "181.4", TimeRecord.TimedBy.STARTER));
    history.write(1, new Fact.WatchStarted(lap(1), TIME, Instant.EPOCH));
    assertThat(folded(history).lap(lap(1)).orElseThrow().values())
        .containsEntry(TIME, dec("181.4"));
  }

  private static Outcome choose(SessionState state, String value, String reason, String who) {
    return new TwoValues(state)
        .choose(lap(1), TIME, dec(value), reason, new TwoValues.Decider(who, true));
  }

  @Test
  void a_choice_makes_the_other_value_count_and_the_first_stays_in_sight() {
    Histories history = two();
    history.write(0, filed(1, "18.14"));
    history.write(1, filed(1, "181.4"));
    history.meet(0, 1);
    Outcome.Accepted chosen =
        (Outcome.Accepted) choose(folded(history), "181.4", "typing error", "E. Moor");
    history.write(0, chosen.facts().get(0));
    SessionState state = folded(history);
    assertThat(numbers(twice(state))).containsExactly("181.4", "18.14");
    assertThat(twice(state).decidedBy()).isEqualTo("E. Moor");
    assertThat(state.notApplied()).isEmpty();
  }

  @Test
  void without_reason_person_or_one_of_the_values_nothing_is_chosen_and_nothing_written_over() {
    Histories history = two();
    history.write(0, filed(1, "18.14"));
    history.write(1, filed(1, "181.4"));
    history.meet(0, 1);
    SessionState state = folded(history);
    DayCommands day = new DayCommands(state);
    Fact over = new Fact.ScoreGiven(lap(1), TIME, dec("180"), Source.SCREEN);
    assertThat(
            List.of(
                choose(state, "181.4", "faster", "E. Moor"),
                choose(state, "181.4", "typing error", " "),
                choose(state, "180", "typing error", "E. Moor"),
                day.score(lap(1), TIME, dec("180"), Source.SCREEN),
                day.note(lap(1), over),
                day.takeOut(lap(1), TIME, "misread")))
        .allMatch(Outcome.Refused.class::isInstance);
    ValueChosen unsigned = new ValueChosen(lap(1), TIME, dec("181.4"), "typing error", " ");
    history.write(0, unsigned, new ValueChosen(lap(1), TIME, dec("180"), "typing error", "x"));
    assertThat(folded(history).notApplied()).hasSize(2);
    assertThat(numbers(twice(folded(history)))).containsExactly("18.14", "181.4");
  }

  @Test
  void whoever_writes_over_one_of_two_values_all_the_same_leaves_the_other_machines_in_sight() {
    Histories history = two();
    history.write(0, filed(1, "180"));
    history.write(1, filed(1, "183"));
    history.meet(0, 1);
    history.write(0, new Fact.ScoreCorrected(lap(1), TIME, dec("183"), "as the other says"));
    history.write(1, new Fact.ScoreCorrected(lap(1), TIME, dec("180"), "as the other says"));
    assertThat(numbers(twice(folded(history)))).containsExactlyInAnyOrder("180", "183");
  }

  static LongStream seeds() {
    return LongStream.rangeClosed(1, Long.getLong("histories", 150));
  }

  private static Fact any(Random random, int stint) {
    String number = String.valueOf(170 + random.nextInt(20));
    return switch (random.nextInt(6)) {
      case 0 -> new Fact.ScoreCorrected(lap(stint), TIME, dec(number), "misread");
      case 1 -> timed(stint, number, TimeRecord.TimedBy.RIDER);
      case 2 -> timed(stint, number, TimeRecord.TimedBy.STARTER);
      case 3 -> new ValueChosen(lap(stint), TIME, dec(number), "typing error", "E. Moor");
      default -> filed(stint, number);
    };
  }

  /** The value of a fact that gives one. */
  private static BigDecimal valueOf(Fact fact) {
    if (fact instanceof Fact.ScoreGiven given) {
      return given.value();
    } else if (fact instanceof Fact.TimeTaken taken) {
      return taken.time().seconds();
    } else if (fact instanceof Fact.ScoreCorrected corrected) {
      return corrected.value();
    }
    return null;
  }

  private static LapId lapOf(Fact fact) {
    return fact instanceof Fact.ScoreGiven given
        ? given.lap()
        : fact instanceof Fact.TimeTaken taken ? taken.lap() : ((Fact.ScoreCorrected) fact).lap();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void no_value_is_out_of_sight_unless_someone_who_saw_it_wrote_in_its_place(long seed) {
    Random random = new Random(seed * 7919);
    int count = 2 + random.nextInt(2);
    Histories history = new Histories(count);
    history.write(0, Histories.COMMIT);
    history.meet(java.util.stream.IntStream.range(0, count).toArray());
    for (int i = 0; i < 25; i++) {
      if (random.nextInt(5) == 0) {
        history.meet(random.nextInt(count), random.nextInt(count));
      }
      history.write(random.nextInt(count), any(random, 1 + random.nextInt(2)));
    }
    List<StoredEntry> all = new ArrayList<>(history.all());
    SessionState state = folded(history);
    for (StoredEntry stored : all) {
      BigDecimal value = valueOf(stored.entry().fact());
      if (value != null && !replacedBySomeoneWhoSawIt(all, stored)) {
        assertThat(inSight(state, lapOf(stored.entry().fact())))
            .as("%s of seed %d", history.name(stored), seed)
            .contains(value.stripTrailingZeros().toPlainString());
      }
    }
    Map<String, Object> told = Told.of(state);
    for (int round = 0; round < 5; round++) {
      Collections.shuffle(all, random);
      assertThat(Told.of(SessionState.of(CausalOrder.sort(all)))).isEqualTo(told);
    }
  }

  private static boolean replacedBySomeoneWhoSawIt(List<StoredEntry> all, StoredEntry stored) {
    LapId lap = lapOf(stored.entry().fact());
    return all.stream()
        .filter(later -> later != stored && !(later.entry().fact() instanceof ValueChosen))
        .filter(later -> valueOf(later.entry().fact()) != null)
        .filter(later -> lapOf(later.entry().fact()).equals(lap))
        .anyMatch(later -> CausalOrder.known(all, List.of(later.head()), stored));
  }

  private static TreeSet<String> inSight(SessionState state, LapId lap) {
    LapState known = state.lap(lap).orElseThrow();
    TreeSet<String> seen = new TreeSet<>();
    if (known.values().containsKey(TIME)) {
      seen.add(known.values().get(TIME).stripTrailingZeros().toPlainString());
    }
    Twice twice = known.twice().get(TIME);
    if (twice != null) {
      twice.values().stream()
          .filter(v -> v.value() != null)
          .forEach(v -> seen.add(v.value().stripTrailingZeros().toPlainString()));
    }
    return seen;
  }

  /** What each machine recorded of each stint; a machine may have missed one. */
  private static Map<Integer, List<Fact>> records(Random random, int machines) {
    Map<Integer, List<Fact>> records = new LinkedHashMap<>();
    for (int machine = 0; machine < machines; machine++) {
      List<Fact> facts = new ArrayList<>();
      for (int stint = 1; stint <= 8; stint++) {
        if (machine == 0 || random.nextInt(3) > 0) {
          facts.add(new Fact.LapRidden(lap(stint), Source.SCREEN));
          String seconds = 170 + random.nextInt(20) + "." + random.nextInt(10);
          facts.add(timed(stint, seconds, TimeRecord.TimedBy.values()[random.nextInt(3)]));
        }
      }
      records.put(machine, facts);
    }
    return records;
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void no_order_of_exchange_changes_what_stands_or_what_is_found(long seed) {
    Random random = new Random(seed * 104729);
    int machines = 2 + random.nextInt(2);
    Map<Integer, List<Fact>> records = records(random, machines);
    List<String> first = null;
    for (int round = 0; round < 4; round++) {
      List<String> found = found(exchanged(random, machines, records), records);
      first = first == null ? found : first;
      assertThat(found).as("round %d of seed %d", round, seed).isEqualTo(first);
    }
  }

  /** The machines write their records in any order and meet in any order, until all know all. */
  private static SessionState exchanged(
      Random random, int machines, Map<Integer, List<Fact>> records) {
    Histories history = new Histories(machines);
    history.write(0, Histories.COMMIT);
    history.meet(java.util.stream.IntStream.range(0, machines).toArray());
    List<Integer> order = new ArrayList<>(records.keySet());
    Collections.shuffle(order, random);
    order.forEach(machine -> history.write(machine, records.get(machine).toArray(new Fact[0])));
    List<int[]> meetings = new ArrayList<>();
    for (int i = 0; i < machines; i++) {
      for (int j = 0; j < i; j++) {
        meetings.add(new int[] {i, j});
      }
    }
    for (int twice = 0; twice < 2; twice++) {
      Collections.shuffle(meetings, random);
      meetings.forEach(history::meet);
    }
    int closing = random.nextInt(machines);
    history.write(closing, new Fact.DayClosed());
    history.write(closing, new Fact.ReviewClosed(Fingerprint.of(new byte[32])));
    history.write(closing, Histories.opened());
    return folded(history);
  }

  private static List<String> found(SessionState state, Map<Integer, List<Fact>> records) {
    DayRecord day = DayRecord.of(state, new TreeMap<>(), DayRemarks.of(state));
    Finding finding = Analysis.of(day);
    Comparison primary = finding.primary().orElseThrow();
    List<String> told = new ArrayList<>();
    told.add(primary.verdict() + " " + primary.result().estimate() + " " + primary.p());
    for (Sensitivity each : finding.sensitivities()) {
      told.add(each.kind() + " " + each.stints() + " " + each.result().orElseThrow().estimate());
    }
    List<String> remarks = new ArrayList<>();
    for (Remark remark : day.remarks()) {
      if (remark.kind() == Remark.Kind.COUNTS || remark.kind() == Remark.Kind.SET_ASIDE) {
        remarks.add(remark.lap() + " " + remark.before() + " " + remark.value());
      }
    }
    told.addAll(remarks);
    String all = String.join("\n", remarks);
    List<String> text = new FindingText(finding).lines();
    String json = FindingJson.write(finding);
    told.addAll(text);
    for (List<Fact> facts : records.values()) {
      for (Fact fact : facts) {
        BigDecimal value = valueOf(fact);
        if (value != null) {
          String number = value.stripTrailingZeros().toPlainString();
          boolean counts =
              state.lap(lapOf(fact)).orElseThrow().values().get(TIME).compareTo(value) == 0;
          assertThat(counts || all.contains(lapOf(fact).stint() + " " + number + " "))
              .as("%s in %s", number, all)
              .isTrue();
          String lap = "Lap " + lapOf(fact).stint() + ", " + TIME + ":";
          assertThat(counts || text.stream().anyMatch(t -> t.contains(lap) && t.contains(number)))
              .as("%s of %s in the review: %s", number, lap, text)
              .isTrue();
          assertThat(counts || json.contains("\"set_aside\" : \"" + number + "\""))
              .as("%s in JSON", number)
              .isTrue();
        }
      }
    }
    assertThat(finding.sensitivities().isEmpty()).isEqualTo(remarks.isEmpty());
    return told;
  }
}
