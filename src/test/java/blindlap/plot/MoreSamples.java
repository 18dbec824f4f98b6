package blindlap.plot;

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
    all.put("day", day(8));
    all.put("day-24-stints", day(24));
    all.put("small-stints", smallStints());
    all.put("small-interval", smallInterval(-1.23, -1.62, -0.85, 0.5));
    all.put("small-interval-unbounded", smallInterval(0.2, Double.NEGATIVE_INFINITY, 0.9, 0.5));
    all.put("qr", qr());
    all.put("guesses", guesses());
    return all;
  }

  /** What days of 8 to 48 stints can show. */
  public static DetectableCurve detectable(int chosen, double worthwhile) {
    int[] stints = {8, 12, 16, 20, 24, 28, 32, 40, 48};
    double[] shows = {0, 1.22, 0.99, 0.86, 0.77, 0.71, 0.66, 0.58, 0.53};
    List<DetectableCurve.Dot> dots = new ArrayList<>();
    for (int i = 0; i < stints.length; i++) {
      boolean never = shows[i] == 0;
      dots.add(
          new DetectableCurve.Dot(
              stints[i],
              never ? OptionalDouble.empty() : OptionalDouble.of(shows[i]),
              never ? OptionalDouble.empty() : OptionalDouble.of(0.84 * shows[i]),
              never ? OptionalDouble.empty() : OptionalDouble.of(1.21 * shows[i]),
              never ? "8 stints: never enough" : Samples.plain(shows[i], 0.1) + " s",
              stints[i] <= 20 ? DetectableCurve.Fit.FITS : DetectableCurve.Fit.NEEDS_MORE));
    }
    return DetectableCurve.of(
        new DetectableCurve.Content(
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
    blocks.add(
        new DayStrip.Block(DayStrip.Kind.END, at + 68, at + 100, "sunset 16:38 CET", "16:38"));
    return DayStrip.of(
        new DayStrip.Content(
            blocks,
            7,
            "1 h 08 spare",
            new Spoken(stints + " stints from 09:40; sunset 16:38.", "")));
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
