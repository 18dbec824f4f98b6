package blindlap.exchange;

import blindlap.plan.Measure;
import blindlap.review.Remark;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What was said and done on an unsealed day, read from its entries in their order, so that a value
 * that was replaced, a reason or a name is not lost behind what stands in the end.
 */
public final class DayRemarks {
  private final SessionState state;
  private final Map<String, BigDecimal> values = new HashMap<>();
  private final Map<LapId, String> voids = new HashMap<>();
  private final List<Remark> remarks = new ArrayList<>();
  private final SaidAgain saidAgain;

  private DayRemarks(SessionState state) {
    this.state = state;
    this.saidAgain = new SaidAgain(state.plan().laps().perStint());
  }

  /** The remarks of an unsealed session; the helper's are read from the opened records. */
  public static List<Remark> of(SessionState state) {
    return new DayRemarks(state).all();
  }

  private List<Remark> all() {
    Set<StoredEntry> late = new HashSet<>(state.notApplied());
    for (StoredEntry stored : state.entries()) {
      Fact fact = stored.entry().fact();
      if (late.contains(stored)) {
        late(fact);
      } else {
        said(fact);
        changed(fact);
        saidAgain.take(stored.entry()).forEach(remarks::add);
      }
    }
    takenOut();
    timed();
    state.laps().forEach(this::conditions);
    remarks.addAll(HelperRemarks.of(state));
    return remarks;
  }

  private void said(Fact fact) {
    if (fact instanceof Fact.DayCutShort cut) {
      remarks.add(
          new Remark(
              Remark.Kind.CUT_SHORT,
              cut.lastStint(),
              0,
              "",
              cut.decidedBy(),
              "",
              cut.knowsKey() ? Remark.KNEW : "",
              cut.reason()));
    } else if (fact instanceof Fact.DeviationNoted d) {
      remarks.add(Remark.ofStint(Remark.Kind.DEVIATION, d.stint(), d.kind().name(), d.what()));
    } else if (fact instanceof Fact.SheetReprinted sheet) {
      remarks.add(Remark.ofStint(Remark.Kind.REPRINTED, Remark.WHOLE_DAY, "", sheet.sheet()));
    } else if (fact instanceof Fact.LapVoided voided) {
      voids.put(voided.lap(), words(voided));
    } else if (fact instanceof Fact.VoidWithdrawn back) {
      remarks.add(
          onLap(
              Remark.Kind.VOID_WITHDRAWN,
              back.lap(),
              "",
              voids.getOrDefault(back.lap(), ""),
              "",
              back.reason()));
    }
  }

  private static String words(Fact.LapVoided voided) {
    String event = voided.event().text();
    return voided.words().isBlank() ? event : event + ": " + voided.words();
  }

  private Remark onLap(
      Remark.Kind kind, LapId lap, String about, String before, String value, String words) {
    return new Remark(
        kind,
        lap.stint(),
        lap.ofDay(state.plan().laps().perStint()),
        about,
        "",
        before,
        value,
        words);
  }

  private void changed(Fact fact) {
    if (fact instanceof Fact.ScoreGiven given) {
      value(given.lap(), given.measure(), given.value());
    } else if (fact instanceof Fact.TimeTaken taken) {
      value(taken.lap(), taken.measure(), taken.time().seconds());
    } else if (fact instanceof Fact.ScoreCorrected c) {
      BigDecimal before = values.get(key(c.lap(), c.measure()));
      remarks.add(
          onLap(
              Remark.Kind.CORRECTED,
              c.lap(),
              c.measure(),
              text(before),
              text(c.value()),
              c.reason()));
      values.remove(key(c.lap(), c.measure()));
      BigDecimal now = c.value();
      if (now != null) {
        values.put(key(c.lap(), c.measure()), now);
      }
    }
  }

  /** A time that another takes the place of, even if a watch was set to nought between them. */
  private void value(LapId lap, String measure, @Nullable BigDecimal now) {
    BigDecimal before = values.get(key(lap, measure));
    boolean replaced = before != null && (now == null || before.compareTo(now) != 0);
    if (replaced && timed(measure)) {
      remarks.add(onLap(Remark.Kind.REPLACED, lap, measure, text(before), text(now), ""));
    }
    if (now == null) {
      values.remove(key(lap, measure));
    } else {
      values.put(key(lap, measure), now);
    }
  }

  /** Times that a watch started again, or set to nought, has taken out for good. */
  private void takenOut() {
    for (LapState lap : state.laps()) {
      for (Measure measure : state.plan().measures()) {
        BigDecimal before = values.get(key(lap.id(), measure.name()));
        if (before != null && !lap.values().containsKey(measure.name()) && measure.kind().timed()) {
          remarks.add(onLap(Remark.Kind.REPLACED, lap.id(), measure.name(), text(before), "", ""));
        }
      }
    }
  }

  private boolean timed(String measure) {
    return state.plan().measures().stream()
        .anyMatch(m -> m.name().equals(measure) && m.kind().timed());
  }

  private static String key(LapId lap, String measure) {
    return lap + " " + measure;
  }

  private static String text(@Nullable BigDecimal value) {
    return value == null ? "" : value.stripTrailingZeros().toPlainString();
  }

  private void timed() {
    for (Measure measure : state.plan().measures()) {
      if (measure.kind().timed()) {
        Map<String, Integer> laps = new TreeMap<>();
        for (LapState lap : state.laps()) {
          TimeRecord time = lap.times().get(measure.name());
          if (time != null || lap.values().containsKey(measure.name())) {
            laps.merge(time == null ? "" : time.timedBy().name(), 1, Integer::sum);
          }
        }
        laps.forEach(
            (who, count) ->
                remarks.add(
                    new Remark(
                        Remark.Kind.TIMED,
                        Remark.WHOLE_DAY,
                        0,
                        measure.name(),
                        who,
                        "",
                        String.valueOf(count),
                        "")));
      }
    }
  }

  private void conditions(LapState lap) {
    new TreeMap<>(lap.conditions())
        .forEach(
            (name, words) ->
                remarks.add(onLap(Remark.Kind.CONDITION, lap.id(), name, "", "", words)));
  }

  private void late(Fact fact) {
    String words = typed(fact).stream().filter(w -> !w.isBlank()).collect(Collectors.joining(", "));
    if (!words.isEmpty()) {
      String kind = fact.getClass().getSimpleName();
      remarks.add(Remark.ofStint(Remark.Kind.LATE, Remark.WHOLE_DAY, kind, words));
    }
  }

  /** What was typed into an entry that came too late. */
  private static List<String> typed(Fact fact) {
    if (fact instanceof Fact.LapVoided voided) {
      return List.of(words(voided));
    } else if (fact instanceof Fact.NoteWritten note) {
      return List.of(note.text());
    } else if (fact instanceof Fact.ExpectationGiven expected) {
      return List.of(expected.text());
    } else if (fact instanceof Fact.BlindBroken broken) {
      return List.of(broken.what());
    } else if (fact instanceof Fact.ScoreCorrected c) {
      return List.of(c.measure(), text(c.value()), c.reason());
    } else if (fact instanceof Fact.VoidWithdrawn back) {
      return List.of(back.reason());
    } else if (fact instanceof Fact.GuessGiven guess) {
      return List.of(guess.guess().cue());
    } else if (fact instanceof Fact.DayCutShort cut) {
      return List.of(cut.reason(), cut.decidedBy());
    } else if (fact instanceof Fact.ConditionsNoted noted) {
      return List.copyOf(noted.conditions().values());
    }
    return List.of();
  }
}
