package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;

/** Invented drawings of the day, the noise and the small pictures. */
public final class MoreSamples {
  private static final Axis SECONDS =
      new Axis("seconds a lap, 1 SD", Axis.Counting.DECIMAL, Samples::plain);

  private MoreSamples() {}

  /** Every drawing by a short name that is a file name too. */
  public static Map<String, Drawing> all() {
    Map<String, Drawing> all = new TreeMap<>();
    all.put("detectable", detectable(16, 0.5));
    all.put("detectable-worthwhile-large", detectable(8, 2.0));
    all.put("noise", noise());
    all.put("noise-one-session", firstNoise());
    all.putAll(TrailSamples.all());
    all.putAll(TrendSamples.all());
    all.putAll(TellingSamples.all());
    all.put("rider-noise-over-days", overDays(6));
    all.put("rider-noise-over-many-days", overDays(31));
    all.put("rider-noise-over-one-day", overDays(1));
    all.put("series-one-rider", seriesOfOne());
    all.put("series-riders", seriesOfRiders());
    all.put("series-unbounded", seriesUnbounded());
    all.put("day", day(8));
    all.put("day-24-stints", day(24));
    all.put("day-overrun", overrun(8, 50));
    all.put("day-overrun-at-noon", overrun(16, 190));
    all.put("day-overrun-24-stints", overrun(24, 100));
    all.put("day-overrun-a-little", overrun(8, 1));
    all.put("small-stints", smallStints());
    all.put("small-interval", smallInterval(-1.23, -1.62, -0.85, 0.5));
    all.put("small-interval-unbounded", smallInterval(0.2, Double.NEGATIVE_INFINITY, 0.9, 0.5));
    all.put("qr", qr());
    all.put("guesses", guesses());
    all.put("guesses-ends", TrendSamples.guesses());
    all.put("small-levels", TrendSamples.small());
    all.putAll(WaySamples.all());
    all.putAll(FieldSamples.all());
    return all;
  }

  /** What days of 8 to 48 stints can show. */
  public static DetectableCurve detectable(int chosen, double worthwhile) {
    int[] stints = {8, 12, 16, 20, 24, 28, 32, 40, 48};
    double[] shows = {0, 1.22, 0.99, 0.86, 0.77, 0.71, 0.66, 0.58, 0.53};
    List<DetectableContent.Dot> dots = new ArrayList<>();
    for (int i = 0; i < stints.length; i++) {
      boolean never = shows[i] == 0;
      dots.add(
          new DetectableContent.Dot(
              stints[i],
              never ? OptionalDouble.empty() : OptionalDouble.of(shows[i]),
              never ? OptionalDouble.empty() : OptionalDouble.of(0.84 * shows[i]),
              never ? OptionalDouble.empty() : OptionalDouble.of(1.21 * shows[i]),
              never ? "8 stints: never enough" : Samples.plain(shows[i], 0.1) + " s",
              stints[i] <= 20 ? DetectableContent.Fit.FITS : DetectableContent.Fit.NEEDS_MORE));
    }
    return DetectableCurve.of(
        new DetectableContent(
            dots,
            OptionalInt.of(chosen),
            chosen + " stints: 1.0 s",
            worthwhile,
            Samples.plain(worthwhile, 0.1) + " s: what would change your mind",
            "daylight for 20 stints",
            "more than one day",
            new Axis("s", Axis.Counting.DECIMAL, Samples::plain),
            "stints, both setups together",
            new Spoken("16 stints can show 1.0 s or more on 8 of 10 such days.", "")));
  }

  /** Four sessions and the pooled noise. */
  public static NoiseHistory noise() {
    return NoiseHistory.of(
        new NoiseHistory.Content(
            List.of(
                new NoiseHistory.Entry("12 Sep", 0.71, new Limits(0.49, 1.29)),
                new NoiseHistory.Entry("26 Sep", 0.66, new Limits(0.48, 1.06)),
                new NoiseHistory.Entry("10 Oct", 0.61, new Limits(0.47, 0.87)),
                new NoiseHistory.Entry("24 Oct", 0.62, new Limits(0.48, 0.89))),
            Optional.of(new NoiseHistory.Entry("pooled", 0.64, new Limits(0.54, 0.77))),
            SECONDS,
            new Spoken("Noise of four sessions; pooled 0.64 s, 0.54 to 0.77 s.", "")));
  }

  /** Days of a rider who learns a trail; the first were not blinded. */
  public static NoiseOverDays overDays(int number) {
    List<NoiseOverDays.Day> days = new ArrayList<>();
    for (int i = 0; i < number; i++) {
      double sd = 0.6 + 0.7 / (1 + i);
      days.add(
          new NoiseOverDays.Day(
              (1 + i % 28) + " Sept 2026",
              i < 3 ? "old day" : "comparison",
              i >= 3,
              sd,
              new Limits(0.7 * sd, i == 0 ? 9 : 1.6 * sd)));
    }
    return NoiseOverDays.of(
        new NoiseOverDays.Content(
            days,
            number < 2
                ? Optional.empty()
                : Optional.of(
                    new NoiseOverDays.Pooled(
                        0.74, new Limits(0.62, 0.9), List.of("all days", "0.74 s"))),
            SECONDS,
            new Spoken("Noise fell from 1.3 s to 0.7 s.", "")));
  }

  private static PooledRows.Row row(
      PooledRows.Kind kind, String label, double estimate, double half) {
    return new PooledRows.Row(
        kind,
        !label.startsWith("28"),
        label,
        estimate,
        new Limits(estimate - half, estimate + half),
        new Limits(estimate - 0.8 * half, estimate + 0.8 * half),
        Samples.plain(Math.abs(estimate), 0.1) + " s faster");
  }

  private static PooledRows series(List<PooledRows.Row> rows) {
    return PooledRows.of(
        new PooledRows.Content(
            rows,
            Optional.of(new Band(0.5, List.of("under 0.5 s:", "too small to matter"))),
            new Axis("seconds a lap", Axis.Counting.DECIMAL, Samples::plain),
            "Shock L faster",
            "Shock K faster",
            new Spoken("A series.", "")));
  }

  /** Four sessions of one rider. */
  public static PooledRows seriesOfOne() {
    return series(
        List.of(
            row(PooledRows.Kind.OWN, "14 Nov 2026", -2.1, 0.9),
            row(PooledRows.Kind.OWN, "21 Nov 2026", -1.2, 1.1),
            row(PooledRows.Kind.OWN, "28 Nov 2026", -0.4, 1.4),
            row(PooledRows.Kind.OWN, "5 Dec 2026", -1.6, 0.8),
            row(PooledRows.Kind.POOLED, "On these days", -1.5, 0.5)));
  }

  /** Riders of whom one rode twice. */
  public static PooledRows seriesOfRiders() {
    return series(
        List.of(
            row(PooledRows.Kind.OWN, "R. Lind", -1.7, 0.7),
            row(PooledRows.Kind.UNDER, "14 Nov 2026", -2.1, 0.9),
            row(PooledRows.Kind.UNDER, "21 Nov 2026", -1.2, 1.1),
            row(PooledRows.Kind.OWN, "M. Oster", 0.3, 0.9),
            row(PooledRows.Kind.OWN, "A rider with a name that needs more than a line", -0.9, 1.2),
            row(PooledRows.Kind.POOLED, "These riders, these days", -0.9, 0.5),
            row(PooledRows.Kind.POOLED, "Riders in general, too few for a verdict", -0.8, 2.6)));
  }

  static PooledRows seriesUnbounded() {
    return series(
        List.of(
            new PooledRows.Row(
                PooledRows.Kind.OWN,
                true,
                "14 Nov 2026",
                0.2,
                new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY),
                new Limits(-0.9, Double.POSITIVE_INFINITY),
                "0.2 s faster"),
            row(PooledRows.Kind.POOLED, "On these days", 0.2, 40)));
  }

  static NoiseHistory firstNoise() {
    return NoiseHistory.of(
        new NoiseHistory.Content(
            List.of(new NoiseHistory.Entry("12 Sep", 0.71, new Limits(0.3, 8))),
            Optional.empty(),
            SECONDS,
            new Spoken("One session: 0.71 s.", "")));
  }

  /** A day with warm-up, rest and sunset. */
  public static DayStrip day(int stints) {
    List<DayStrip.Block> blocks = blocks(stints);
    double at = blocks.get(blocks.size() - 1).to();
    blocks.add(
        new DayStrip.Block(DayStrip.Kind.END, at + 68, at + 100, "sunset 16:38 CET", "16:38"));
    return DayStrip.of(
        new DayStrip.Content(
            blocks,
            Optional.empty(),
            7,
            "15:30",
            "1 h 08 spare",
            new Spoken(stints + " stints from 09:40; sunset 16:38.", "")));
  }

  /**
   * A day that goes on after sunset.
   *
   * @param left minutes of the day that are left at sunset
   */
  public static DayStrip overrun(int stints, double left) {
    List<DayStrip.Block> blocks = blocks(stints);
    double sunset = blocks.get(blocks.size() - 1).to() - left;
    return DayStrip.of(
        new DayStrip.Content(
            blocks,
            Optional.of(new DayStrip.Overrun(sunset, "sunset 16:38 CET", "16:38")),
            7,
            "",
            "",
            new Spoken(stints + " stints from 09:40, beyond sunset at 16:38.", "")));
  }

  private static List<DayStrip.Block> blocks(int stints) {
    List<DayStrip.Block> blocks = new ArrayList<>();
    blocks.add(new DayStrip.Block(DayStrip.Kind.OTHER, 0, 40, "warm-up", "09:00"));
    double at = 40;
    for (int i = 1; i <= stints; i++) {
      if (i == stints / 2 + 1) {
        blocks.add(new DayStrip.Block(DayStrip.Kind.OTHER, at, at + 30, "rest", "12:12"));
        at += 30;
      }
      String clock = i == 1 ? "09:40" : i == stints / 2 + 1 ? "12:42" : "";
      blocks.add(new DayStrip.Block(DayStrip.Kind.STINT, at, at + 19, Integer.toString(i), clock));
      at += 19;
    }
    return blocks;
  }

  /** Two rows of raw stints. */
  public static SmallStints smallStints() {
    return SmallStints.of(
        List.of(
            new SmallStints.Row(SetupMark.A, List.of(14.99, 14.89, 14.77, 14.9, 14.6, 14.8, 14.4)),
            new SmallStints.Row(SetupMark.B, List.of(14.5, 14.46, 14.6, 14.5, 14.3, 14.3, 14.1))),
        new Spoken("Straight sector, every stint.", ""));
  }

  /** An interval against a band. */
  public static SmallInterval smallInterval(
      double estimate, double low, double high, double worthwhile) {
    Limits limits = new Limits(low, high);
    return SmallInterval.of(
        new SmallInterval.Content(estimate, limits, limits, worthwhile),
        new Spoken("Difference with its 95 % interval.", ""));
  }

  /** A code of invented words. */
  public static Qr qr() {
    return Qr.of("fingerprint 7f3a91c4e20b", new Spoken("QR code of the fingerprint.", ""));
  }

  /** Sixteen guesses, some right, some "don't know". */
  public static GuessedOrder guesses() {
    String fitted = "BBAAAABBBABAAABB";
    String guessed = "B?AAB?ABBABA?BAB";
    List<GuessedOrder.Stint> stints = new ArrayList<>();
    for (int i = 0; i < fitted.length(); i++) {
      String guess = guessed.substring(i, i + 1);
      stints.add(
          new GuessedOrder.Stint(
              i + 1,
              SetupMark.valueOf(fitted.substring(i, i + 1)),
              guess.equals("?") ? Optional.empty() : Optional.of(SetupMark.valueOf(guess))));
    }
    return GuessedOrder.of(
        new GuessedOrder.Content(
            stints,
            "fitted",
            "guessed",
            "?",
            new Spoken("9 guesses right, 4 wrong, 3 “don’t know”.", "")));
  }
}
