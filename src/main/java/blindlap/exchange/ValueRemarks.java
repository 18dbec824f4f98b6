package blindlap.exchange;

import blindlap.plan.Blinding;
import blindlap.plan.Measure;
import blindlap.review.Remark;
import blindlap.session.CausalOrder;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.Head;
import blindlap.session.NotebookId;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.ValueChosen;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Twice;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Values of a day that others took the place of, and those that machines recorded apart, so that
 * none is out of sight behind the one that counts.
 */
final class ValueRemarks {
  private final SessionState state;
  private final Map<String, Map<NotebookId, Given>> given = new HashMap<>();
  private final List<Remark> remarks = new ArrayList<>();

  /** A value with the entry that gave it. */
  private record Given(StoredEntry by, BigDecimal value) {}

  ValueRemarks(SessionState state) {
    this.state = state;
  }

  /** The remarks on an entry, which is the next of the day that was applied. */
  List<Remark> take(StoredEntry stored) {
    remarks.clear();
    Fact fact = stored.entry().fact();
    if (fact instanceof Fact.ScoreGiven score) {
      value(stored, score.lap(), score.measure(), score.value());
    } else if (fact instanceof Fact.TimeTaken taken) {
      value(stored, taken.lap(), taken.measure(), taken.time().seconds());
    } else if (fact instanceof Fact.ScoreCorrected c) {
      BigDecimal before = before(stored, c.lap(), c.measure()).map(Given::value).orElse(null);
      remarks.add(
          remark(
              Remark.Kind.CORRECTED,
              c.lap(),
              c.measure(),
              "",
              text(before),
              text(c.value()),
              c.reason()));
      put(stored, c.lap(), c.measure(), c.value());
    } else if (fact instanceof ValueChosen c) {
      remarks.add(
          remark(
              Remark.Kind.CHOSEN,
              c.lap(),
              c.measure(),
              c.decidedBy(),
              "",
              text(c.value()),
              c.reason()));
      put(stored, c.lap(), c.measure(), c.value());
    }
    return List.copyOf(remarks);
  }

  private Map<NotebookId, Given> all(LapId lap, String measure) {
    return given.computeIfAbsent(lap + " " + measure, none -> new LinkedHashMap<>());
  }

  /**
   * What stood for whoever wrote an entry: of the same notebook first, else what was known there.
   */
  private Optional<Given> before(StoredEntry stored, LapId lap, String measure) {
    Map<NotebookId, Given> all = all(lap, measure);
    Given own = all.get(stored.entry().notebook());
    return own != null
        ? Optional.of(own)
        : all.values().stream().filter(one -> known(stored, one)).reduce((a, b) -> b);
  }

  private boolean known(StoredEntry later, Given one) {
    Entry entry = later.entry();
    List<Head> heads = new ArrayList<>(entry.seen());
    if (entry.number() > 1) {
      heads.add(new Head(entry.notebook(), entry.number() - 1, entry.previous()));
    }
    return CausalOrder.known(state.entries(), heads, one.by());
  }

  /** A time that another takes the place of, even if a watch was set to nought between them. */
  private void value(StoredEntry stored, LapId lap, String measure, @Nullable BigDecimal now) {
    Given before = before(stored, lap, measure).orElse(null);
    boolean replaced = before != null && (now == null || before.value().compareTo(now) != 0);
    if (before != null && replaced && told(stored, before, measure)) {
      remarks.add(
          remark(Remark.Kind.REPLACED, lap, measure, "", text(before.value()), text(now), ""));
    }
    put(stored, lap, measure, now);
  }

  /** Ratings are moved until they fit; what another machine had is told of all the same. */
  private boolean told(StoredEntry stored, Given before, String measure) {
    return timed(measure) || !before.by().entry().notebook().equals(stored.entry().notebook());
  }

  private void put(StoredEntry stored, LapId lap, String measure, @Nullable BigDecimal now) {
    Map<NotebookId, Given> all = all(lap, measure);
    NotebookId own = stored.entry().notebook();
    all.values().removeIf(one -> !one.by().entry().notebook().equals(own) && known(stored, one));
    all.remove(own);
    if (now != null) {
      all.put(own, new Given(stored, now));
    }
  }

  private boolean timed(String measure) {
    return state.plan().measures().stream()
        .anyMatch(m -> m.name().equals(measure) && m.kind().timed());
  }

  /** At the end: times that a watch has taken out for good, and values of several machines. */
  List<Remark> rest() {
    remarks.clear();
    for (LapState lap : state.laps()) {
      for (Measure measure : state.plan().measures()) {
        Twice twice = lap.twice().get(measure.name());
        if (twice != null) {
          apart(lap.id(), measure.name(), twice);
        } else if (!lap.values().containsKey(measure.name()) && measure.kind().timed()) {
          all(lap.id(), measure.name())
              .values()
              .forEach(
                  one ->
                      remarks.add(
                          remark(
                              Remark.Kind.REPLACED,
                              lap.id(),
                              measure.name(),
                              "",
                              text(one.value()),
                              "",
                              "")));
        }
      }
    }
    return List.copyOf(remarks);
  }

  private void apart(LapId lap, String measure, Twice twice) {
    Twice.Value counts = twice.counts();
    remarks.add(
        remark(
            Remark.Kind.COUNTS,
            lap,
            measure,
            whose(counts),
            "",
            text(counts.value()),
            counts.notebook()));
    for (Twice.Value aside : twice.setAside()) {
      remarks.add(
          remark(
              Remark.Kind.SET_ASIDE,
              lap,
              measure,
              whose(aside),
              text(aside.value()),
              text(counts.value()),
              aside.notebook()));
    }
  }

  private static String whose(Twice.Value value) {
    Blinding.RecordOf whose = value.whose();
    return whose == null ? "" : whose.name();
  }

  private Remark remark(
      Remark.Kind kind,
      LapId lap,
      String measure,
      String who,
      String before,
      String value,
      String words) {
    int number = lap.ofDay(state.plan().laps().perStint());
    return new Remark(kind, lap.stint(), number, measure, who, before, value, words);
  }

  static String text(@Nullable BigDecimal value) {
    return value == null ? "" : value.stripTrailingZeros().toPlainString();
  }
}
