package blindlap.calibration;

import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.Telling;
import blindlap.stats.tell.TellingPower;
import blindlap.stats.tell.TellingRiders;
import blindlap.stats.tell.TellingRiders.Habit;
import blindlap.stats.tell.TellingTrials;
import blindlap.stats.tell.TellingVerdict;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/** How often each verdict of a telling run comes out, simulated trial by trial and exact. */
final class TellingTable {
  private static final long SEED = 20_261_205L;
  private static final double[] TOLD = {0, 0.25, 0.5, 1};

  private TellingTable() {}

  /** Prints the tables alone; argument: runs per cell. */
  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  /** A run that is simulated. */
  record Run(String text, TellingTrials trials) {
    static Run of(Discrimination task, int trials) {
      String name = task.name().toLowerCase(Locale.ROOT).replace('_', '-');
      return new Run(trials + ", " + name, TellingTrials.of(task, trials, 0.5));
    }
  }

  private static final List<Run> RUNS =
      List.of(
          Run.of(Discrimination.TRIANGLE, 12),
          Run.of(Discrimination.TRIANGLE, 15),
          Run.of(Discrimination.TRIANGLE, 60),
          Run.of(Discrimination.DUO_TRIO, 24),
          Run.of(Discrimination.TWO_CHOICE, 24),
          Run.of(Discrimination.TWO_CHOICE, 100));

  /** Shares of the verdicts over simulated runs. */
  static Map<TellingVerdict, Double> simulate(
      TellingTrials trials, double told, Habit habit, int runs, long seed) {
    Random random = new Random(seed);
    List<TellingVerdict> verdicts = new ArrayList<>();
    for (int right = 0; right <= trials.number(); right++) {
      verdicts.add(Telling.of(trials, right).verdict());
    }
    Map<TellingVerdict, Integer> counted = new EnumMap<>(TellingVerdict.class);
    for (int i = 0; i < runs; i++) {
      int right = TellingRiders.right(trials.task(), trials.number(), told, habit, random);
      counted.merge(verdicts.get(right), 1, Integer::sum);
    }
    Map<TellingVerdict, Double> shares = new EnumMap<>(TellingVerdict.class);
    counted.forEach((verdict, count) -> shares.put(verdict, (double) count / runs));
    return shares;
  }

  static List<String> lines(int runs) {
    List<String> lines = new ArrayList<>();
    lines.add("## Telling runs");
    lines.add("");
    lines.add(
        "How often \"can tell\" / \"cannot tell as often as would matter\" come out, one half being"
            + " declared to matter, by the share of trials that are really told; in brackets the"
            + " exact binomial. The rest is not settled. "
            + String.format(Locale.ROOT, "%,d", runs)
            + " runs a cell, every trial drawn and answered on its own; standard error of one half "
            + String.format(Locale.ROOT, "%.4f.", 0.5 / Math.sqrt(runs)));
    lines.add("");
    lines.add("| trials | none | one quarter | one half | all |");
    lines.add("| --- | --- | --- | --- | --- |");
    for (Run run : RUNS) {
      StringBuilder row = new StringBuilder("| " + run.text() + " |");
      for (double told : TOLD) {
        Map<TellingVerdict, Double> seen =
            simulate(run.trials(), told, Habit.AT_RANDOM, runs, SEED + RUNS.indexOf(run));
        Map<TellingVerdict, Double> exact = TellingPower.of(run.trials()).rates(told);
        row.append(' ')
            .append(both(seen, exact, TellingVerdict.CAN_TELL))
            .append(" / ")
            .append(both(seen, exact, TellingVerdict.CANNOT_AS_OFTEN))
            .append(" |");
      }
      lines.add(row.toString());
    }
    lines.add("");
    lines.add(
        "How often \"can tell\" comes out for riders who feel nothing and answer by habit. As no"
            + " trial's draw hangs on another's, no habit gains anything, and no share may exceed"
            + " .05 by more than simulation error.");
    lines.add("");
    StringBuilder head = new StringBuilder("| answers |");
    StringBuilder rule = new StringBuilder("| --- |");
    for (Run run : RUNS) {
      head.append(' ').append(run.text()).append(" |");
      rule.append(" ---: |");
    }
    lines.add(head.toString());
    lines.add(rule.toString());
    for (Habit habit : Habit.values()) {
      StringBuilder row = new StringBuilder("| " + habit.text() + " |");
      for (Run run : RUNS) {
        row.append(' ')
            .append(
                share(
                    simulate(run.trials(), 0, habit, runs, SEED + 10 + habit.ordinal()),
                    TellingVerdict.CAN_TELL))
            .append(" |");
      }
      lines.add(row.toString());
    }
    StringBuilder row = new StringBuilder("| exact |");
    for (Run run : RUNS) {
      row.append(' ')
          .append(share(TellingPower.of(run.trials()).rates(0), TellingVerdict.CAN_TELL))
          .append(" |");
    }
    lines.add(row.toString());
    lines.add("");
    return lines;
  }

  private static String both(
      Map<TellingVerdict, Double> seen, Map<TellingVerdict, Double> exact, TellingVerdict verdict) {
    return share(seen, verdict) + " (" + share(exact, verdict) + ")";
  }

  private static String share(Map<TellingVerdict, Double> shares, TellingVerdict verdict) {
    return String.format(Locale.ROOT, "%.3f", shares.getOrDefault(verdict, 0.0));
  }
}
