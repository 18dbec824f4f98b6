package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/** Invented telling runs. */
final class TellingSamples {
  static final TrialStrip.Said SAID =
      new TrialStrip.Said("this lap differed", "M. Oss named this one", "right", "wrong", "trial");

  private TellingSamples() {}

  static Map<String, Drawing> all() {
    Map<String, Drawing> all = new TreeMap<>();
    all.put("trials-triangle", TrialStrip.of(drawn(15, 3, false, 0.6)));
    all.put("trials-triangle-all-right", TrialStrip.of(drawn(15, 3, false, 1)));
    all.put("trials-triangle-one", TrialStrip.of(drawn(1, 3, false, 0)));
    all.put("trials-triangle-hundred", TrialStrip.of(drawn(100, 3, false, 0.3)));
    all.put("trials-duo-trio", TrialStrip.of(drawn(24, 3, true, 0.4)));
    all.put("trials-two-choice", TrialStrip.of(drawn(24, 2, false, 0.5)));
    all.put("trials-two-choice-hundred", TrialStrip.of(drawn(100, 2, false, 0.1)));
    all.put("chance-can", axis(15, 11, 5, 8, 10, new Limits(7.3, 13.6), new Limits(6.7, 13.8)));
    all.put("chance-all", axis(15, 15, 5, 8, 10, new Limits(12.3, 15), new Limits(11.7, 15)));
    all.put("chance-none", axis(15, 0, 5, 8, 10, new Limits(0, 2.7), new Limits(0, 3.3)));
    all.put("chance-could-not", axis(2, 2, 0.667, 2, 1.33, new Limits(0.4, 2), new Limits(0.3, 2)));
    all.put(
        "chance-two-choice", axis(24, 12, 12, 16, 18, new Limits(7.7, 16.3), new Limits(7, 17)));
    all.put(
        "chance-hundred",
        axis(100, 41, 33.3, 41, 66.7, new Limits(32.7, 49.7), new Limits(31.3, 51.3)));
    all.put(
        "chance-matters-all",
        axis(24, 20, 12, 16, 24, new Limits(15.8, 22.5), new Limits(15, 22.9)));
    return all;
  }

  static TrialStrip.Content drawn(int number, int rows, boolean reference, double told) {
    Random random = new Random(31L * number + rows);
    int first = reference ? 1 : 0;
    List<TrialStrip.Trial> trials = new ArrayList<>();
    for (int i = 1; i <= number; i++) {
      int differed = first + random.nextInt(rows - first);
      boolean tells = random.nextDouble() < told;
      int named = tells ? differed : first + random.nextInt(rows - first);
      trials.add(new TrialStrip.Trial(i, differed, named));
    }
    List<String> names = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      names.add(row < first ? "reference" : "lap " + (row + 1));
    }
    return new TrialStrip.Content(
        trials, names, reference, SAID, new Spoken("Trials of a telling run.", ""));
  }

  static ChanceAxis axis(
      int trials,
      int right,
      double guessed,
      int guessersTo,
      double mattering,
      Limits ninety,
      Limits ninetyFive) {
    return ChanceAxis.of(
        new ChanceAxis.Numbers(trials, right, guessed, guessersTo, mattering, ninety, ninetyFive),
        new ChanceAxis.Said(
            "Right answers",
            "of " + trials + " trials",
            "guessing gives " + Samples.plain(guessed, 1),
            Samples.plain(mattering, 1) + ": from here it matters, as declared",
            right + " right",
            List.of(
                "95 % interval",
                Samples.plain(ninetyFive.low(), 0.1)
                    + " to "
                    + Samples.plain(ninetyFive.high(), 0.1)
                    + " of "
                    + trials),
            "at least 19 of 20 guessers land here"),
        new Spoken(right + " of " + trials + " right.", ""));
  }
}
