package blindlap.review;

import blindlap.fault.Unusable;
import blindlap.stats.noise.RankAgreement;
import java.util.List;
import java.util.Optional;

/** Whether riders put three and more setups in one order. */
final class RidersAgreement {
  private RidersAgreement() {}

  /** How far they agree; empty for one rider, for two setups, and where all is tied. */
  static Optional<RankAgreement> of(List<SeriesFinding.Rider> riders, int setups) {
    if (riders.size() < 2 || setups < 3) {
      return Optional.empty();
    }
    double[][] table =
        riders.stream()
            .map(r -> r.ranking().stream().mapToDouble(Double::doubleValue).toArray())
            .toArray(double[][]::new);
    try {
      return Optional.of(RankAgreement.of(table));
    } catch (Unusable allTied) {
      return Optional.empty();
    }
  }
}
