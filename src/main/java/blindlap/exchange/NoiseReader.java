package blindlap.exchange;

import blindlap.plan.DeclaredNoise;
import blindlap.plan.StintShare;
import java.math.BigDecimal;
import java.util.Objects;

/** Reads what a tester knows of the rider's noise. */
final class NoiseReader {
  private NoiseReader() {}

  static DeclaredNoise noise(FieldReader f) {
    BigDecimal usual = f.decimal("usual_difference");
    BigDecimal sd = f.decimal("sd");
    String source = f.text("source", "");
    Integer df = f.integer("df");
    Integer laps = f.integer("laps");
    StintShare share =
        f.parsed(
            "stint_share",
            FieldWords.STINT_SHARE.say(),
            text -> StintShare.read(text).orElseThrow());
    if (usual == null) {
      if (sd == null) {
        f.required("sd");
      }
      return new DeclaredNoise(sd == null ? BigDecimal.ONE : sd, df, source, null, laps, share);
    }
    DeclaredNoise usually = DeclaredNoise.usually(usual, source);
    if (sd != null
        && sd.subtract(usually.sd()).abs().doubleValue() > 1e-3 * sd.abs().doubleValue()) {
      f.wrong(
          "sd",
          Objects.requireNonNull(f.value("sd")),
          FieldWords.SAME_NOISE.say(usually.sd().toPlainString()));
    }
    return new DeclaredNoise(sd == null ? usually.sd() : sd, df, source, usual, laps, share);
  }
}
