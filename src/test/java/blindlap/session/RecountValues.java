package blindlap.session;

import blindlap.plan.Blinding;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Which values of a lap stand, asked of the entries' pasts anew for every question: an entry counts
 * as replaced if some entry replaces it, and what an entry replaces is asked of what stood in its
 * own past. Slow; written apart from {@link LapValues}.
 */
final class RecountValues {
  private final List<StoredEntry> entries;
  private final Plan plan;
  private final NotebookId home;
  private final int end;
  private final List<Set<Integer>> pasts = new ArrayList<>();
  private final Map<Integer, Set<Integer>> replaced = new HashMap<>();
  private final Map<Integer, List<Stands>> against = new HashMap<>();
  private final Map<Integer, Boolean> held = new HashMap<>();

  /**
   * @param entries in causal order, the commit first
   * @param end from here on nothing of the day is applied
   */
  RecountValues(List<StoredEntry> entries, Plan plan, int end) {
    this.entries = entries;
    this.plan = plan;
    this.home = entries.get(0).entry().notebook();
    this.end = end;
  }

  /** What stood in an entry's past; worked out for all of them once it is asked for. */
  private Set<Integer> past(int at) {
    if (pasts.isEmpty()) {
      recountPasts();
    }
    return pasts.get(at);
  }

  private void recountPasts() {
    for (StoredEntry stored : entries) {
      Set<Integer> past = new TreeSet<>();
      for (int i = 0; i < pasts.size(); i++) {
        Entry before = entries.get(i).entry();
        boolean own =
            before.notebook().equals(stored.entry().notebook())
                && before.number() == stored.entry().number() - 1;
        if (own || stored.entry().seen().contains(entries.get(i).head())) {
          past.add(i);
          past.addAll(pasts.get(i));
        }
      }
      pasts.add(past);
    }
  }

  /** A value as it stands: which entry gave it, and whose record it is. */
  record Stands(BigDecimal value, int at) {
    boolean same(BigDecimal other) {
      return value == null ? other == null : other != null && value.compareTo(other) == 0;
    }
  }

  /** Values that stand for someone who knows these entries, the one that counts first. */
  List<BigDecimal> values(LapId lap, String measure) {
    Set<Integer> all = IntStream.range(0, end).boxed().collect(Collectors.toSet());
    List<Stands> standing = standing(lap, measure, all);
    List<BigDecimal> values = new ArrayList<>();
    standing.stream().min(rank()).ifPresent(best -> values.add(best.value()));
    for (Stands each : aside(standing, lap, measure).stream().sorted(rank()).toList()) {
      if (values.stream().noneMatch(each::same)) {
        values.add(each.value());
      }
    }
    return values;
  }

  /** Who decided that the first value counts; empty if nobody did. */
  String decidedBy(LapId lap, String measure) {
    Set<Integer> all = IntStream.range(0, end).boxed().collect(Collectors.toSet());
    return standing(lap, measure, all).stream()
        .min(rank())
        .map(best -> fact(best.at()) instanceof ValueChosen chosen ? chosen.decidedBy() : "")
        .orElse("");
  }

  /** True if one notebook alone wrote of the value. */
  boolean alone(LapId lap, String measure) {
    return IntStream.range(0, end)
            .filter(i -> about(i, lap, measure))
            .mapToObj(i -> entries.get(i).entry().notebook())
            .distinct()
            .count()
        <= 1;
  }

  private Fact fact(int at) {
    return entries.get(at).entry().fact();
  }

  private boolean about(int at, LapId lap, String measure) {
    Fact fact = fact(at);
    boolean here =
        fact instanceof Fact.ScoreGiven f && f.lap().equals(lap) && f.measure().equals(measure)
            || fact instanceof Fact.ScoreCorrected c
                && c.lap().equals(lap)
                && c.measure().equals(measure)
            || fact instanceof Fact.TimeTaken t
                && t.lap().equals(lap)
                && t.measure().equals(measure)
            || fact instanceof Fact.WatchStarted s
                && s.lap().equals(lap)
                && s.measure().equals(measure)
            || fact instanceof Fact.WatchReset r
                && r.lap().equals(lap)
                && r.measure().equals(measure)
            || fact instanceof ValueChosen v
                && v.lap().equals(lap)
                && v.measure().equals(measure)
                && holds(at, v);
    return here && EntryMeaning.problem(plan, fact).isEmpty();
  }

  /** A choice holds if there was something to choose from for whoever made it. */
  boolean holds(int at, ValueChosen choice) {
    Boolean known = held.get(at);
    if (known == null) {
      known = asked(at, choice);
      held.put(at, known);
    }
    return known;
  }

  private boolean asked(int at, ValueChosen choice) {
    List<Stands> known = everything(choice.lap(), choice.measure(), past(at));
    return plan.blinding().blinded()
        && !choice.decidedBy().isBlank()
        && choice.reason().toLowerCase(java.util.Locale.ROOT).startsWith("typing error")
        && known.stream().anyMatch(one -> one.same(choice.value()))
        && known.stream().anyMatch(one -> !one.same(choice.value()));
  }

  private List<Stands> standing(LapId lap, String measure, Set<Integer> among) {
    List<Integer> here =
        among.stream().filter(i -> i < end && about(i, lap, measure)).sorted().toList();
    List<Stands> standing = new ArrayList<>();
    for (int at : here) {
      boolean replaced = here.stream().anyMatch(later -> replaces(later, at, lap, measure));
      if (!replaced) {
        said(at).ifPresent(standing::add);
      }
    }
    return standing;
  }

  private Optional<Stands> said(int at) {
    Fact fact = fact(at);
    if (fact instanceof Fact.ScoreGiven given) {
      return Optional.of(new Stands(given.value(), at));
    } else if (fact instanceof Fact.ScoreCorrected corrected) {
      return Optional.of(new Stands(corrected.value(), at));
    } else if (fact instanceof ValueChosen chosen) {
      return Optional.of(new Stands(chosen.value(), at));
    } else if (fact instanceof Fact.TimeTaken taken && taken.time().seconds() != null) {
      return Optional.of(new Stands(taken.time().seconds(), at));
    }
    return Optional.empty();
  }

  private boolean replaces(int later, int at, LapId lap, String measure) {
    Set<Integer> known = replaced.get(later);
    if (known == null) {
      known = replaced(later, lap, measure);
      replaced.put(later, known);
    }
    return known.contains(at);
  }

  private Set<Integer> replaced(int later, LapId lap, String measure) {
    List<Stands> known = everything(lap, measure, past(later));
    boolean all =
        fact(later) instanceof ValueChosen
            || known.stream().allMatch(each -> each.same(known.get(0).value()));
    NotebookId mine = entries.get(later).entry().notebook();
    return past(later).stream()
        .filter(at -> at < end && about(at, lap, measure))
        .filter(at -> all || entries.get(at).entry().notebook().equals(mine))
        .collect(Collectors.toSet());
  }

  private List<Stands> everything(LapId lap, String measure, Set<Integer> among) {
    List<Stands> standing = standing(lap, measure, among);
    List<Stands> all = new ArrayList<>(standing);
    all.addAll(aside(standing, lap, measure));
    return all;
  }

  /** What stands, and what choices among it or before it were made against. */
  private List<Stands> aside(Collection<Stands> standing, LapId lap, String measure) {
    List<Stands> all = new ArrayList<>(standing);
    standing.forEach(each -> all.addAll(against(each.at(), lap, measure)));
    return all;
  }

  private List<Stands> against(int at, LapId lap, String measure) {
    List<Stands> known = against.get(at);
    if (known != null) {
      return known;
    }
    List<Stands> all = new ArrayList<>();
    if (fact(at) instanceof ValueChosen chosen) {
      everything(lap, measure, past(at)).stream()
          .filter(one -> !one.same(chosen.value()))
          .forEach(all::add);
    } else {
      for (int before : past(at)) {
        if (before < end
            && about(before, lap, measure)
            && replaces(at, before, lap, measure)
            && !against(before, lap, measure).isEmpty()) {
          said(before).ifPresent(all::add);
          all.addAll(against(before, lap, measure));
        }
      }
    }
    against.put(at, all);
    return all;
  }

  private Comparator<Stands> rank() {
    return Comparator.comparing((Stands one) -> !(fact(one.at()) instanceof ValueChosen))
        .thenComparing(one -> whose(one.at()))
        .thenComparing(one -> source(one.at()))
        .thenComparing(one -> !entries.get(one.at()).entry().notebook().equals(home))
        .thenComparing(one -> entries.get(one.at()).entry().notebook())
        .thenComparing(one -> entries.get(one.at()).entry().number());
  }

  /** 0 whose the plan names, 1 the other's, 2 nobody knows. */
  private int whose(int at) {
    Fact fact = fact(root(at));
    boolean starter = plan.blinding().recordOf() == Blinding.RecordOf.STARTER;
    if (fact instanceof Fact.TimeTaken taken) {
      TimeRecord.TimedBy by = taken.time().timedBy();
      return by == TimeRecord.TimedBy.OTHER
          ? 2
          : (by == TimeRecord.TimedBy.STARTER) == starter ? 0 : 1;
    }
    String measure =
        fact instanceof Fact.ScoreGiven given
            ? given.measure()
            : ((Fact.ScoreCorrected) fact).measure();
    Measure asked = plan.measure(measure).orElseThrow();
    return asked.kind().timed() ? 2 : starter ? 1 : 0;
  }

  private Source source(int at) {
    Fact fact = fact(root(at));
    if (fact instanceof Fact.ScoreGiven given) {
      return given.source();
    }
    return fact instanceof Fact.TimeTaken ? Source.SCREEN : Source.FILE;
  }

  /** The record that a correction corrected, or a choice chose. */
  private int root(int at) {
    if (fact(at) instanceof Fact.ScoreCorrected c) {
      return standing(c.lap(), c.measure(), past(at)).stream()
          .min(rank())
          .map(best -> root(best.at()))
          .orElse(at);
    } else if (fact(at) instanceof ValueChosen c) {
      return everything(c.lap(), c.measure(), past(at)).stream()
          .filter(one -> one.same(c.value()))
          .min(rank())
          .map(best -> root(best.at()))
          .orElseThrow();
    }
    return at;
  }
}
