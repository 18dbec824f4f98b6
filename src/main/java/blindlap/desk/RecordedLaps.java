package blindlap.desk;

import blindlap.recording.Fix;
import blindlap.recording.Pass;
import blindlap.recording.PieceTimes;
import blindlap.recording.ReferenceLine;
import blindlap.recording.Run;
import blindlap.recording.Track;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.day.LapId;
import blindlap.wording.SettlingRow.Match;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** What a settled recording becomes: one entry, to the millisecond, and positions between gates. */
final class RecordedLaps {
  private static final int MILLISECONDS = 3;
  private static final BigDecimal LEAST = new BigDecimal("0.001");

  private final Settling settling;
  private final Track track;
  private final double[] borders;

  RecordedLaps(Settling settling) {
    this.settling = settling;
    this.track = settling.file().runs().track();
    this.borders = settling.file().trail().borders();
  }

  /**
   * The entry.
   *
   * @param keep keeps the positions of a lap and answers their SHA-256, or null
   */
  RecordingBroughtIn fact(Function<byte[], @Nullable String> keep) {
    BroughtFile file = settling.file();
    List<RecordedLap> laps = new ArrayList<>();
    for (Map.Entry<LapId, Settling.Taken> each : settling.taken().entrySet()) {
      Run run = each.getValue().run();
      Optional<byte[]> positions = positions(run);
      laps.add(
          new RecordedLap(
              each.getKey(),
              passes(run),
              pieces(run),
              positions.map(keep).orElse(null),
              settled(each.getValue().match())));
    }
    return new RecordingBroughtIn(
        file.name(),
        file.sha256(),
        file.trail().version().sha256(),
        settling.offset().map(RecordedLaps::seconds).orElse(null),
        Arrays.stream(borders).mapToObj(RecordedLaps::seconds).toList(),
        laps);
  }

  private static RecordedLap.Settled settled(Match match) {
    return switch (match) {
      case KEPT -> RecordedLap.Settled.KEPT;
      case CHOSEN -> RecordedLap.Settled.CHOSEN;
      case FITS, DOUBTFUL, LEFT_OUT, PROPOSED, NO_PASS, FITS_NONE, NO_LAP ->
          RecordedLap.Settled.FITS;
    };
  }

  private static BigDecimal seconds(double seconds) {
    return plain(BigDecimal.valueOf(seconds).setScale(MILLISECONDS, RoundingMode.HALF_EVEN));
  }

  /** As it is read from an entry again. */
  private static BigDecimal plain(BigDecimal number) {
    BigDecimal stripped = number.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }

  /** Seconds after the first pass whose time is known: the start gate unless it was missed. */
  private static List<RecordedPass> passes(Run run) {
    Pass first = run.first();
    List<RecordedPass> passes = new ArrayList<>();
    for (Pass pass : run.passes()) {
      RecordedPass.Doubt doubt =
          pass == null
              ? null
              : pass.gap() ? RecordedPass.Doubt.GAP : pass.slow() ? RecordedPass.Doubt.SLOW : null;
      passes.add(
          pass == null || first == null || pass.within()
              ? new RecordedPass(null, null, doubt)
              : new RecordedPass(
                  seconds(pass.seconds() - first.seconds()),
                  seconds(pass.uncertainty()).max(LEAST),
                  doubt));
    }
    return passes;
  }

  private List<@Nullable BigDecimal> pieces(Run run) {
    ReferenceLine line = settling.file().trail().line();
    List<@Nullable BigDecimal> pieces = new ArrayList<>();
    if (line == null || borders.length == 0) {
      return pieces;
    }
    Pass start = run.first();
    if (Double.isNaN(run.seconds()) || start == null) {
      for (int piece = 1; piece < borders.length; piece++) {
        pieces.add(null);
      }
      return pieces;
    }
    double[] times =
        PieceTimes.of(line, borders, track, start.seconds(), start.seconds() + run.seconds());
    // Borders are rounded, not pieces, so that pieces add up to the lap.
    double at = 0;
    for (double time : times) {
      pieces.add(Double.isNaN(time) ? null : plain(seconds(at + time).subtract(seconds(at))));
      at += Double.isNaN(time) ? 0 : time;
    }
    return pieces;
  }

  /** Lines of seconds, latitude and longitude, between the first and the last gate passed. */
  private Optional<byte[]> positions(Run run) {
    Pass first = run.first();
    Pass last = run.last();
    if (first == null || last == null) {
      return Optional.empty();
    }
    StringBuilder text = new StringBuilder("seconds,latitude,longitude\n");
    for (Fix fix : track.fixes()) {
      if (fix.seconds() >= first.seconds() && fix.seconds() <= last.seconds()) {
        text.append(seconds(fix.seconds() - first.seconds()).toPlainString());
        text.append(
            String.format(Locale.ROOT, ",%.7f,%.7f%n", fix.at().latitude(), fix.at().longitude()));
      }
    }
    return Optional.of(text.toString().replace("\r", "").getBytes(StandardCharsets.UTF_8));
  }
}
