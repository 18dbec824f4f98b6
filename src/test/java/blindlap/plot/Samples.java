package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;

/** Invented drawings, ordinary and awkward, for tests and pictures. */
public final class Samples {
  private static final String ORDER = "BBAAAABBBABAAABB";
  private static final double[] LAPS = {
    93.42, 91.43, 96.14, 95.39, 94.5, 94.42, 93.11, 92.54, 92.52, 95.11, 93.06, 94.28, 94.2, 94.36,
    91.81, 91.94
  };
  private static final String[] CODES = {
    "731", "264", "518", "907", "346", "859", "482", "615", "190", "573", "826", "401", "968",
    "237", "654", "312"
  };
  private static final double ESTIMATE = -2.30459529065489;
  private static final String LONG_K = "Shock K with the long spring and two volume spacers";
  private static final String LONG_L =
      "Shock L as delivered, medium spring, damper opened two clicks";

  private static final Axis CLOCK =
      new Axis("lap time, m:ss.s", Axis.Counting.CLOCK, (v, step) -> clock(v));
  private static final Axis SECONDS =
      new Axis("seconds a lap", Axis.Counting.DECIMAL, (v, step) -> signed(v, step));
  private static final Axis SHARE =
      new Axis("p", Axis.Counting.DECIMAL, (v, step) -> plain(v, step).replace("0.", "."));
  private static final Axis PLAIN =
      new Axis("seconds a lap", Axis.Counting.DECIMAL, Samples::plain);

  private Samples() {}

  /** Every drawing by a short name that is a file name too. */
  public static Map<String, Drawing> all() {
    Map<String, Drawing> all = new TreeMap<>();
    all.put("difference", difference());
    all.put("difference-unbounded", unbounded());
    all.put("difference-near-zero", nearZero());
    all.put("difference-long-names", longNames());
    all.put("difference-24-stints", many(24, 2));
    all.put("difference-three-setups", many(18, 3));
    all.put("difference-four-setups", many(24, 4));
    all.put("difference-counts", counts());
    all.put("ridden-order", riddenOrder());
    all.put("ridden-order-void", riddenOrderWithVoids());
    all.put("ridden-order-blind", blind(16));
    all.put("ridden-order-blind-24", blind(24));
    all.put("curve", curve());
    all.put("curve-unbounded", curveUnbounded());
    return all;
  }

  /** The session of the pictures: real and worthwhile. */
  public static StintsAndDifference difference() {
    return StintsAndDifference.of(
        new StintsContent(
            List.of(
                row(SetupMark.A, "Shock K", values('A'), 94.8),
                row(SetupMark.B, "Shock L", values('B'), 94.8 + ESTIMATE)),
            CLOCK,
            List.of(found()),
            SECONDS,
            Optional.of(noise(0.636)),
            worthwhile(0.5),
            "Shock L quicker",
            "Shock K quicker",
            new Spoken(
                "16 stints; Shock L was quicker by 2.3 s a lap, 95 % interval 1.7 to 3.0 s.",
                "Shock K: mean 1:34.8. Shock L: mean 1:32.5.")));
  }

  private static StintsContent.Row row(
      SetupMark mark, String name, List<Double> values, double mean) {
    return new StintsContent.Row(mark, name, values, mean, "mean " + clock(mean));
  }

  private static StintsContent.Pair pair(
      String title, double estimate, Limits outer, Limits inner, String words, String interval) {
    return new StintsContent.Pair(
        SetupMark.B, SetupMark.A, title, "L less K", estimate, outer, inner, words, interval);
  }

  private static StintsContent.Pair found() {
    return pair(
        "Difference",
        ESTIMATE,
        new Limits(-3.04, -1.67),
        new Limits(-2.91, -1.76),
        "2.3 s quicker",
        "95 % interval 1.7 to 3.0 s");
  }

  private static Band noise(double sd) {
    return new Band(sd, List.of("one stint’s noise,", "±" + plain(sd, 0.01) + " s (1 SD)"));
  }

  private static Band worthwhile(double size) {
    return new Band(size, List.of("under " + plain(size, 0.1) + " s:", "too small to matter"));
  }

  private static List<Double> values(char setup) {
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < LAPS.length; i++) {
      if (ORDER.charAt(i) == setup) {
        values.add(LAPS[i]);
      }
    }
    return values;
  }

  /** Both limits unbounded, one setup with three stints only. */
  static StintsAndDifference unbounded() {
    return simple(
        List.of(94.2, 94.4, 95.0, 94.5),
        List.of(93.9, 94.1, 94.6),
        0.3,
        new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY),
        new Limits(Double.NEGATIVE_INFINITY, 1.1),
        "0.3 s quicker",
        "95 % interval: no limit either way");
  }

  /** Estimate at zero, bands of the same width. */
  static StintsAndDifference nearZero() {
    return simple(
        List.of(94.2, 94.4, 95.0, 94.5, 94.6, 93.9),
        List.of(94.1, 94.2, 95.1, 94.5, 94.4, 94.2),
        0.02,
        new Limits(-0.6, 0.55),
        new Limits(-0.45, 0.41),
        "less than 0.1 s apart",
        "95 % interval −0.6 to 0.6 s");
  }

  private static StintsAndDifference simple(
      List<Double> a,
      List<Double> b,
      double quicker,
      Limits outer,
      Limits inner,
      String words,
      String interval) {
    double mean = 94.5;
    return StintsAndDifference.of(
        new StintsContent(
            List.of(
                row(SetupMark.A, "Shock K", a, mean),
                row(SetupMark.B, "Shock L", b, mean - quicker)),
            CLOCK,
            List.of(pair("Difference", -quicker, outer, inner, words, interval)),
            SECONDS,
            Optional.of(noise(0.5)),
            worthwhile(0.5),
            "Shock L quicker",
            "Shock K quicker",
            new Spoken("Shock K and Shock L: not settled.", "")));
  }

  /** Names that no column holds. */
  static StintsAndDifference longNames() {
    return StintsAndDifference.of(
        new StintsContent(
            List.of(
                row(SetupMark.A, LONG_K, values('A'), 94.8),
                row(SetupMark.B, LONG_L, values('B'), 94.8 + ESTIMATE)),
            CLOCK,
            List.of(found()),
            SECONDS,
            Optional.of(noise(0.636)),
            worthwhile(1.5),
            LONG_L + " quicker",
            LONG_K + " quicker",
            new Spoken("Long names.", "")));
  }

  /** Many stints, up to four setups, one interval row a pair. */
  static StintsAndDifference many(int stints, int setups) {
    Random random = new Random(7 + setups);
    SetupMark[] marks = SetupMark.values();
    List<StintsContent.Row> rows = new ArrayList<>();
    double[] means = new double[setups];
    for (int s = 0; s < setups; s++) {
      List<Double> values = new ArrayList<>();
      means[s] = 94 - 0.7 * s;
      for (int i = 0; i < stints / setups; i++) {
        values.add(Math.round((means[s] + 0.6 * random.nextGaussian()) * 10) / 10.0);
      }
      rows.add(row(marks[s], "Spring " + marks[s], values, means[s]));
    }
    List<StintsContent.Pair> pairs = new ArrayList<>();
    for (int of = 1; of < setups; of++) {
      for (int less = 0; less < of; less++) {
        double d = means[of] - means[less];
        pairs.add(
            new StintsContent.Pair(
                marks[of],
                marks[less],
                marks[of] + " less " + marks[less],
                "adjusted for all pairs",
                d,
                new Limits(d - 0.9, d + 1),
                new Limits(d - 0.7, d + 0.8),
                plain(-d, 0.1) + " s quicker",
                "95 % interval " + signed(d - 0.9, 0.1) + " to " + signed(d + 1, 0.1) + " s"));
      }
    }
    return StintsAndDifference.of(
        new StintsContent(
            rows,
            CLOCK,
            pairs,
            SECONDS,
            Optional.of(noise(0.6)),
            worthwhile(0.4),
            setups == 2 ? "Spring B quicker" : "first-named quicker",
            setups == 2 ? "Spring A quicker" : "second-named quicker",
            new Spoken(stints + " stints of " + setups + " setups.", "")));
  }

  /** A count with many equal values. */
  static StintsAndDifference counts() {
    Axis count = new Axis("feet off the pedals, count", Axis.Counting.WHOLE, Samples::plain);
    return StintsAndDifference.of(
        new StintsContent(
            List.of(
                new StintsContent.Row(
                    SetupMark.A,
                    "Shock K",
                    List.of(0.0, 0.0, 0.0, 0.0, 0.0, 1.0, 1.0, 3.0),
                    0.6,
                    "mean 0.6"),
                new StintsContent.Row(
                    SetupMark.B,
                    "Shock L",
                    List.of(0.0, 0.0, 0.0, 1.0, 1.0, 1.0, 2.0, 0.0),
                    0.7,
                    "mean 0.7")),
            count,
            List.of(
                pair(
                    "Difference",
                    0.1,
                    new Limits(-0.5, 0.7),
                    new Limits(-0.4, 0.6),
                    "0.1 more",
                    "95 % interval −0.5 to +0.7")),
            new Axis("count a stint", Axis.Counting.DECIMAL, Samples::signed),
            Optional.empty(),
            new Band(1, List.of("under 1: too small to matter")),
            "Shock L fewer",
            "Shock K fewer",
            new Spoken("Feet off the pedals: no worthwhile difference.", "")));
  }

  /** The ridden order of the session of the pictures. */
  public static RiddenOrder riddenOrder() {
    return RiddenOrder.of(
        new RiddenContent(
            stints(true, RiddenContent.Standing.KEPT_IN_QUESTION, "walker at the gate: kept"),
            List.of(
                fitted(SetupMark.A, "Shock K", 95.3, 94.3),
                fitted(SetupMark.B, "Shock L", 93.0, 92.0)),
            List.of(4, 8, 12),
            CLOCK,
            "stint, in ridden order",
            "both lines fall by 0.07 s a stint: the drift, removed before comparing",
            new Spoken(
                "16 stints in ridden order; both setups get quicker by 0.07 s a stint.", "")));
  }

  private static List<RiddenContent.Stint> stints(
      boolean open, RiddenContent.Standing third, String reason) {
    List<RiddenContent.Stint> stints = new ArrayList<>();
    for (int i = 0; i < LAPS.length; i++) {
      boolean questioned = i == 2;
      stints.add(
          new RiddenContent.Stint(
              i + 1,
              OptionalDouble.of(LAPS[i]),
              open ? Optional.of(SetupMark.valueOf(ORDER.substring(i, i + 1))) : Optional.empty(),
              open ? "" : CODES[i],
              questioned ? third : RiddenContent.Standing.KEPT,
              questioned ? reason : ""));
    }
    return stints;
  }

  private static RiddenContent.FittedLine fitted(
      SetupMark mark, String name, double from, double to) {
    return new RiddenContent.FittedLine(
        mark, name, List.of(new RiddenContent.Fitted(1, from), new RiddenContent.Fitted(16, to)));
  }

  /** Voids with and without a value, lines that nearly meet, long names. */
  static RiddenOrder riddenOrderWithVoids() {
    List<RiddenContent.Stint> stints =
        new ArrayList<>(stints(true, RiddenContent.Standing.VOID, "void: walker at the gate"));
    stints.set(
        6,
        new RiddenContent.Stint(
            7,
            OptionalDouble.of(141.2),
            Optional.of(SetupMark.B),
            "",
            RiddenContent.Standing.VOID,
            "void: crash in the rock garden, 2:21.2"));
    stints.set(
        14,
        new RiddenContent.Stint(
            15,
            OptionalDouble.empty(),
            Optional.of(SetupMark.B),
            "",
            RiddenContent.Standing.VOID,
            "void: puncture, no time"));
    return RiddenOrder.of(
        new RiddenContent(
            stints,
            List.of(
                fitted(SetupMark.A, LONG_K, 94.9, 93.4), fitted(SetupMark.B, LONG_L, 93.4, 93.3)),
            List.of(4, 8, 12),
            CLOCK,
            "stint, in ridden order",
            "",
            new Spoken("Three of 16 stints are void.", "")));
  }

  /** A sealed session: codes, no setups. */
  public static RiddenOrder blind(int count) {
    List<RiddenContent.Stint> stints =
        new ArrayList<>(
            stints(false, RiddenContent.Standing.KEPT_IN_QUESTION, "walker at the gate"));
    for (int i = stints.size(); i < count; i++) {
      stints.add(
          new RiddenContent.Stint(
              i + 1,
              OptionalDouble.of(93 + i % 3),
              Optional.empty(),
              Integer.toString(111 + 37 * i),
              RiddenContent.Standing.KEPT,
              ""));
    }
    return RiddenOrder.of(
        new RiddenContent(
            stints,
            List.of(),
            List.of(4, 8, 12),
            CLOCK,
            "stint, in ridden order, and its code",
            "",
            new Spoken(count + " stints by code, in ridden order.", "")));
  }

  /** The confidence curve of the session of the pictures. */
  public static ConfidenceCurvePlot curve() {
    double[] knots = knots();
    double[] heights = new double[knots.length + 1];
    for (int i = 0; i < heights.length; i++) {
      heights[i] = Math.min(1, Math.max(2, 2.0 * Math.min(i + 1, heights.length - i)) / 1296);
    }
    return ConfidenceCurvePlot.of(
        curveContent(
            ESTIMATE, new Limits(-3.04, -1.67), new Limits(-2.91, -1.76), 0.00154, worthwhile(0.5)),
        knots,
        heights);
  }

  private static CurveContent curveContent(
      double estimate, Limits outer, Limits inner, double none, Band band) {
    return new CurveContent(
        estimate,
        "best supported: " + plain(-estimate, 0.1) + " s",
        new CurveContent.Named(outer, "95 %: 1.7 to 3.0 s"),
        new CurveContent.Named(inner, "90 %: 1.8 to 2.9 s"),
        none,
        List.of("no difference", "p = " + String.format(Locale.ROOT, "%.4f", none).substring(1)),
        band,
        new Axis(
            "supposed difference, seconds a lap (L less K)",
            Axis.Counting.DECIMAL,
            Samples::signed),
        SHARE,
        new Spoken("The curve peaks at 2.3 s and is above .05 from 1.7 to 3.0 s.", ""));
  }

  /** Eight orders only: the curve never falls below .05. */
  static ConfidenceCurvePlot curveUnbounded() {
    double[] knots = {-1.1, -0.6, -0.3, 0.1, 0.4, 0.9};
    double[] heights = {0.25, 0.5, 0.75, 1, 0.75, 0.5, 0.25};
    Limits all = new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    return ConfidenceCurvePlot.of(curveContent(-0.1, all, all, 1, worthwhile(0.5)), knots, heights);
  }

  private static double[] knots() {
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                Samples.class.getResourceAsStream("curve-knots.txt"), StandardCharsets.UTF_8))) {
      return in.lines()
          .filter(line -> !line.startsWith("#"))
          .mapToDouble(Double::parseDouble)
          .toArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String clock(double seconds) {
    long tenths = Math.round(seconds * 10);
    return String.format(Locale.ROOT, "%d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10);
  }

  static String plain(double value, double step) {
    int digits = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
    String text = String.format(Locale.ROOT, "%." + digits + "f", Math.abs(value));
    return value < 0 && Double.parseDouble(text) != 0 ? "−" + text : text;
  }

  static String signed(double value, double step) {
    String text = plain(value, step);
    return value > 0 && !Arrays.asList("0", "0.0").contains(text) ? "+" + text : text;
  }
}
