package blindlap.session;

import blindlap.plan.Blinding;
import blindlap.plan.Plan;
import blindlap.session.Sight.Place;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Source;
import blindlap.session.day.Twice;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Everything that was said of the values of a day, and which of it stands
 * (docs/method.md#two-values). What an entry replaces follows from what its writer had seen, never
 * from the order in which entries arrived: a value replaces those before it that its writer had
 * seen, unless these differed already; then only what was written in the same notebook. A phone
 * that had no signal is like a notebook of its own. Which of several counts follows from the plan.
 */
final class LapValues {
  private record Slot(LapId lap, String measure) {}

  /**
   * What was said of a slot.
   *
   * @param replaced all that any of it replaces: gathered once, so that a day on which one answer
   *     is changed a thousand times does not slow down for everybody
   */
  private record Slotted(List<Said> all, Set<Place> replaced) {
    static final Slotted NONE = new Slotted(List.of(), Set.of());

    private static Slotted of(List<Said> all) {
      Set<Place> gone =
          all.stream().flatMap(one -> one.replaces().stream()).collect(Collectors.toSet());
      return new Slotted(all, gone);
    }

    Slotted and(Said now) {
      List<Said> more = new ArrayList<>(all);
      more.add(now);
      Set<Place> gone = new HashSet<>(replaced);
      gone.addAll(now.replaces());
      return new Slotted(more, gone);
    }

    /** The same as if only these had been said. */
    Slotted only(List<Said> some) {
      return some.size() == all.size() ? this : of(some);
    }

    List<Said> standing() {
      return all.stream().filter(one -> one.speaks() && !replaced.contains(one.place())).toList();
    }
  }

  private final Map<Slot, Slotted> said = new HashMap<>();
  private final Sight sight;

  LapValues() {
    this(new Sight());
  }

  private LapValues(Sight sight) {
    this.sight = sight;
  }

  LapValues copy() {
    LapValues copy = new LapValues(sight.copy());
    copy.said.putAll(said);
    return copy;
  }

  /** Every entry is taken, whatever it says, so that it is known what later ones had seen. */
  void take(Entry entry) {
    sight.take(entry);
  }

  /**
   * A lap after a value of it was recorded.
   *
   * @param home the notebook in which the plan was committed
   * @param lap as it were if nothing else stood
   */
  LapState recorded(Plan plan, NotebookId home, LapState lap, String measure, Said now) {
    List<Said> known = everything(seen(lap.id(), measure, now.place()));
    boolean differ = known.stream().anyMatch(one -> !one.same(known.get(0)));
    List<Said> replaced =
        all(lap.id(), measure).stream()
            .filter(one -> !differ && sight.saw(now.place(), one.place()) || own(one, now))
            .toList();
    return settled(plan, home, lap, measure, now.replacing(places(replaced)).keeping(replaced));
  }

  private static Set<Place> places(List<Said> all) {
    return all.stream().map(Said::place).collect(Collectors.toSet());
  }

  private static boolean own(Said before, Said now) {
    return before.place().sameHand(now.place());
  }

  /** The value that a correction corrects: the one that counted for whoever wrote it. */
  Said corrected(Plan plan, NotebookId home, Fact.ScoreCorrected fact, Entry entry) {
    Comparator<Said> rank = rank(plan, home);
    return seen(fact.lap(), fact.measure(), Place.of(entry)).stream()
        .min(rank)
        .orElse(Said.recorded(entry, null, null, whose(plan, fact.measure()), Source.FILE))
        .corrected(entry, fact.value());
  }

  /** Whose record it is, where nothing is said: who rides, rates and counts; who timed, nobody. */
  static Blinding.@Nullable RecordOf whose(Plan plan, String measure) {
    boolean timed = plan.measure(measure).filter(m -> m.kind().timed()).isPresent();
    return timed ? null : Blinding.RecordOf.RIDER;
  }

  /**
   * A lap after a person chose one of its values; null if there was no such choice for whoever
   * wrote it.
   */
  @Nullable LapState chosen(
      Plan plan, NotebookId home, LapState lap, ValueChosen fact, Entry entry) {
    List<Said> known = everything(seen(lap.id(), fact.measure(), Place.of(entry)));
    Twice.Value wanted = new Twice.Value(fact.value(), null, "");
    List<Said> others = known.stream().filter(one -> !wanted.same(one.value())).toList();
    Said value =
        known.stream().filter(one -> wanted.same(one.value())).min(rank(plan, home)).orElse(null);
    boolean may =
        plan.blinding().blinded()
            && !fact.decidedBy().isBlank()
            && ValueChosen.reason(fact.reason());
    if (!may || value == null || others.isEmpty()) {
      return null;
    }
    List<Said> replaced =
        all(lap.id(), fact.measure()).stream()
            .filter(one -> sight.saw(Place.of(entry), one.place()))
            .toList();
    Said now = value.chosen(entry, others, fact.decidedBy()).replacing(places(replaced));
    return settled(plan, home, lap, fact.measure(), now);
  }

  private LapState settled(Plan plan, NotebookId home, LapState lap, String measure, Said now) {
    Slotted slotted = slotted(lap.id(), measure).and(now);
    said.put(new Slot(lap.id(), measure), slotted);
    List<Said> standing = slotted.standing();
    if (standing.isEmpty() || standing.size() == 1 && now.decidedBy().isEmpty() && now.speaks()) {
      return lap.withoutTwice(measure);
    }
    List<Said> ranked = everything(standing).stream().sorted(rank(plan, home)).toList();
    Said counts = standing.stream().min(rank(plan, home)).orElseThrow();
    List<Twice.Value> values = new ArrayList<>(List.of(counts.shown()));
    for (Said each : ranked) {
      if (values.stream().noneMatch(value -> value.same(each.value()))) {
        values.add(each.shown());
      }
    }
    LapState stands = lap.standing(measure, counts.value(), counts.time());
    return values.size() == 1
        ? stands.withoutTwice(measure)
        : stands.withTwice(measure, new Twice(values, counts.decidedBy()));
  }

  private List<Said> all(LapId lap, String measure) {
    return slotted(lap, measure).all();
  }

  private Slotted slotted(LapId lap, String measure) {
    return said.getOrDefault(new Slot(lap, measure), Slotted.NONE);
  }

  /** What stood for whoever wrote at a place. */
  private List<Said> seen(LapId lap, String measure, Place writer) {
    Slotted slotted = slotted(lap, measure);
    return slotted
        .only(slotted.all().stream().filter(one -> sight.saw(writer, one.place())).toList())
        .standing();
  }

  /** What stands, and what it was chosen against. */
  private static List<Said> everything(List<Said> standing) {
    return standing.stream()
        .flatMap(one -> Stream.concat(Stream.of(one), one.against().stream()))
        .toList();
  }

  /**
   * Which value counts: one that was chosen; then by whose record the plan names, then the other's;
   * then what was written at once before what was copied; then what was written where the plan was
   * committed; then by notebook id, by when it was said, and by number.
   */
  private static Comparator<Said> rank(Plan plan, NotebookId home) {
    return Comparator.comparing((Said one) -> one.decidedBy().isEmpty())
        .thenComparing(one -> rank(plan, one.whose()))
        .thenComparing(Said::source)
        .thenComparing(one -> !one.place().notebook().equals(home))
        .thenComparing(one -> one.place().notebook())
        .thenComparing(one -> one.place().when())
        .thenComparing(one -> one.place().number());
  }

  private static int rank(Plan plan, Blinding.@Nullable RecordOf whose) {
    if (whose == null) {
      return 2;
    }
    return whose == plan.blinding().recordOf() ? 0 : 1;
  }

  /** The value of a time as its watch or a person gave it. */
  static Said time(Entry entry, Fact.TimeTaken fact) {
    BigDecimal seconds = fact.time().seconds();
    return Said.recorded(
        entry,
        seconds,
        fact.time(),
        switch (fact.time().timedBy()) {
          case STARTER -> Blinding.RecordOf.STARTER;
          case RIDER -> Blinding.RecordOf.RIDER;
          case OTHER -> null;
        },
        Source.SCREEN);
  }
}
