package blindlap.wording;

import blindlap.recording.Pass;
import blindlap.recording.Passes;
import blindlap.recording.Track;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** A recorder's passes and laps in lines. */
public final class PassWords {
  private static final Words WORDS = Words.of("recording");
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss.SS", Locale.UK).withZone(ZoneOffset.UTC);

  private PassWords() {}

  /**
   * @param gates how many were given
   */
  public static List<String> lines(Track track, Passes passes, int gates) {
    List<String> lines = new ArrayList<>();
    String step = Figures.number(track.step(), 1);
    lines.add(
        track.leftOut() == 0
            ? WORDS.say("read", track.fixes().size(), step)
            : WORDS.say("read.left", track.fixes().size(), step, track.leftOut()));
    if (passes.passes().isEmpty()) {
      lines.add(WORDS.say("none", gates));
      return lines;
    }
    passes.passes().forEach(pass -> lines.add(pass(track, pass, gates)));
    if (!passes.laps().isEmpty()) {
      lines.add(WORDS.say("laps", passes.laps().size()));
    }
    for (int lap = 0; lap < passes.laps().size(); lap++) {
      lines.add(lap(passes, lap));
    }
    lines.add(WORDS.say("recorder"));
    return lines;
  }

  private static String pass(Track track, Pass pass, int gates) {
    String line =
        WORDS.say(
            "pass",
            CLOCK.format(track.at(pass.seconds())),
            WORDS.say("direction." + pass.direction()),
            Figures.number(1.96 * pass.uncertainty(), 1));
    String named = gates == 1 ? line : WORDS.say("pass.gate", pass.gate() + 1, line);
    if (pass.gap()) {
      return named + WORDS.say("gap");
    }
    return pass.slow() ? named + WORDS.say("slow") : named;
  }

  private static String lap(Passes passes, int number) {
    Passes.Lap lap = passes.laps().get(number);
    if (!lap.known()) {
      return WORDS.say("lap.unknown", number + 1);
    }
    String total = Figures.time(lap.total(), 2);
    String time =
        lap.seconds().length == 1
            ? total
            : WORDS.say(
                "sectors",
                total,
                Arrays.stream(lap.seconds())
                    .mapToObj(each -> Figures.time(each, 2))
                    .collect(Collectors.joining(" + ")));
    String said = WORDS.say("lap", number + 1, time);
    return said
        + (lap.pause() > 0 ? WORDS.say("lap.pause", Figures.number(lap.pause(), 0)) : "")
        + (lap.doubtful() ? WORDS.say("lap.doubtful") : "")
        + (passes.mayBeTwo(number) ? WORDS.say("lap.two") : "");
  }
}
