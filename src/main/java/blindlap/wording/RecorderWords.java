package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.review.Finding;
import blindlap.review.RecorderFinding;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import java.util.ArrayList;
import java.util.List;

/** What recorders leave open, and how watches agree with them, in words. */
public final class RecorderWords {
  /** Standard deviations to either side that hold 95 %. */
  private static final double WIDE = 1.96;

  private static final double PER_CENT = 100;

  private RecorderWords() {}

  /** Of every measure that a recording times; nothing where none does. */
  public static List<String> lines(Finding finding) {
    List<String> lines = new ArrayList<>();
    for (RecorderFinding found : RecorderFinding.of(finding)) {
      if (found.measure().recorded()) {
        share(found, lines);
      }
      agreement(found, lines);
    }
    return lines;
  }

  private static void share(RecorderFinding found, List<String> lines) {
    String name = found.measure().name();
    if (found.laps() == 0) {
      lines.add(TimingWords.say("recorder.none", name));
      return;
    }
    String seconds = seconds(WIDE * found.uncertainty());
    String each = name(found.measure());
    if (found.share().isEmpty()) {
      lines.add(TimingWords.say("recorder.alone", seconds, each));
    } else if (found.share().getAsDouble() >= 1) {
      lines.add(TimingWords.say("recorder.all", seconds, each));
    } else {
      lines.add(TimingWords.say("recorder.share", seconds, each, perCent(found)));
    }
    if (found.missing() > 0) {
      lines.add(
          TimingWords.say(
              "recorder.missing", name, found.missing(), found.laps() + found.missing()));
    }
  }

  /** "each lap time", or "each time of upper half". */
  private static String name(Measure measure) {
    return measure.kind() == Measure.Kind.LAP_TIME
        ? TimingWords.say("recorder.lap")
        : TimingWords.say("recorder.sector", measure.name());
  }

  private static String perCent(RecorderFinding found) {
    double share = found.share().orElseThrow() * PER_CENT;
    return share < 1 ? TimingWords.say("recorder.below") : Figures.number(share, 0);
  }

  private static void agreement(RecorderFinding found, List<String> lines) {
    found
        .agreement()
        .ifPresent(
            agreement -> {
              Interval limits = agreement.limits();
              lines.add(
                  TimingWords.say(
                      found.measure().recorded() ? "agreement.recording" : "agreement.watch",
                      found.measure().name(),
                      seconds(Math.abs(agreement.bias())),
                      TimingWords.say(agreement.bias() < 0 ? "agreement.less" : "agreement.more"),
                      Figures.signed(limits.low(), 2),
                      Figures.signed(limits.high(), 2),
                      found.pairs()));
            });
  }

  private static String seconds(double seconds) {
    return Figures.number(seconds, seconds < 1 ? 2 : 1);
  }
}
