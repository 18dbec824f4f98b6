package blindlap.wording;

import blindlap.review.WhereOnTrail;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import java.util.stream.Stream;

/** Seconds in one number of decimals, so chosen that no limit is rounded to "no difference". */
final class WhereSizes {
  private static final int MOST_DECIMALS = 6;

  private final int decimals;

  private WhereSizes(int decimals) {
    this.decimals = decimals;
  }

  static WhereSizes of(WhereOnTrail where) {
    double[] said =
        where.sectors().stream()
            .flatMap(s -> s.each().stream())
            .flatMap(
                s ->
                    Stream.concat(
                        Stream.of(s.estimate()),
                        s.interval().stream().flatMap(i -> Stream.of(i.low(), i.high()))))
            .mapToDouble(Double::doubleValue)
            .filter(Double::isFinite)
            .toArray();
    double narrowest =
        where.sectors().stream()
            .flatMap(s -> s.each().stream())
            .flatMap(s -> s.interval().stream())
            .mapToDouble(Interval::halfWidth)
            .filter(Double::isFinite)
            .min()
            .orElse(1);
    int decimals = Math.max(1, Figures.decimals(narrowest));
    while (decimals < MOST_DECIMALS && lost(said, decimals)) {
      decimals++;
    }
    return new WhereSizes(decimals);
  }

  private static boolean lost(double[] said, int decimals) {
    double half = 0.5 * Math.pow(10, -decimals);
    for (double value : said) {
      if (Math.abs(value) > 1e-9 && Math.abs(value) <= half) {
        return true;
      }
    }
    return false;
  }

  /** With its sign. */
  String signed(double seconds) {
    return Figures.signed(seconds, decimals);
  }

  /** Without a sign. */
  String plain(double seconds) {
    return Figures.number(Math.abs(seconds), decimals);
  }
}
