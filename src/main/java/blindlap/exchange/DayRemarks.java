package blindlap.exchange;

import blindlap.plan.Measure;
import blindlap.review.Remark;
import blindlap.session.AloneCommands;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.timing.TimeRecord;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What was said and done on an unsealed day, read from its entries in their order, so that a value
 * that was replaced, a reason or a name is not lost behind what stands in the end.
 */
public final class DayRemarks {
  private final SessionState state;
  private final ValueRemarks values;
  private final Map<LapId, String> voids = new HashMap<>();
  private final List<Remark> remarks = new ArrayList<>();
  private final SaidAgain saidAgain;

  private DayRemarks(SessionState state) {
    this.state = state;
    this.values = new ValueRemarks(state);
    this.saidAgain = new SaidAgain(state.plan());
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
        LateRemarks.of(state.plan().laps().perStint(), stored.entry()).ifPresent(remarks::add);
      } else {
        said(fact);
        remarks.addAll(values.take(stored));
        saidAgain.take(stored.entry()).forEach(remarks::add);
      }
    }
    remarks.addAll(values.rest());
    timed();
    state.laps().forEach(this::conditions);
    remarks.addAll(HelperRemarks.of(state));
    notMounted();
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

  /** Laps may come from a file or paper, whatever was shown and mounted. */
  private void notMounted() {
    if (AloneCommands.alone(state)) {
      state.laps().stream()
          .filter(lap -> lap.ridden() && !state.mounted().containsKey(lap.id().stint()))
          .map(lap -> lap.id().stint())
          .distinct()
          .forEach(stint -> remarks.add(Remark.ofStint(Remark.Kind.NOT_MOUNTED, stint, "", "")));
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

  private void timed() {
    for (Measure measure : state.plan().measures()) {
      if (measure.kind().timed() && !measure.recorded()) {
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
}
