package blindlap.exchange;

import blindlap.plan.Sector;
import blindlap.plan.TimedBy;
import blindlap.plan.Timing;
import blindlap.plan.TrailGate;
import blindlap.plan.TrailVersion;
import java.math.BigDecimal;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Reads where times come from: the gates of a plan's trail and the way of a measure. */
final class TimingReader {
  private static final TrailGate.Point NOWHERE =
      new TrailGate.Point(BigDecimal.ZERO, BigDecimal.ZERO);

  private TimingReader() {}

  /** The field {@code trail_version} of a plan; its gates are filled in at commit. */
  static TrailVersion trailVersion(FieldReader f) {
    f.required("number");
    return new TrailVersion(
        f.integer("number", 1), f.objects("gates", TimingReader::gate), f.text("sha256", ""));
  }

  private static TrailGate gate(FieldReader f) {
    return new TrailGate(
        f.requiredText("name"), point(f, "first"), point(f, "second"), f.integer("direction", 1));
  }

  private static TrailGate.Point point(FieldReader f, String name) {
    f.required(name);
    return Objects.requireNonNullElse(f.object(name, TimingReader::point), NOWHERE);
  }

  private static TrailGate.Point point(FieldReader f) {
    f.required("latitude");
    f.required("longitude");
    return new TrailGate.Point(
        Objects.requireNonNullElse(f.decimal("latitude"), BigDecimal.ZERO),
        Objects.requireNonNullElse(f.decimal("longitude"), BigDecimal.ZERO));
  }

  /** The fields of a measure that say what gives its times. */
  static Timing timing(FieldReader f) {
    String from = f.text("from_gate", "");
    String to = f.text("to_gate", "");
    @Nullable Sector sector = from.isBlank() && to.isBlank() ? null : new Sector(from, to);
    return new Timing(f.option("timed_by", TimedBy.class, TimedBy.WATCH), sector);
  }
}
