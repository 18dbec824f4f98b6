package blindlap.desk;

import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.plan.TellingTask;
import blindlap.sample.SampleSession;
import blindlap.sample.SampleSources;
import blindlap.seal.HelperSchedule;
import blindlap.seal.SealParameters;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Invents the laps and answers of the sample telling runs; as a program it writes their files. */
final class SampleTrials {
  /**
   * A run that is invented.
   *
   * @param right trials answered rightly
   * @param spoiled what spoiled a trial at one of its laps, by lap of the day
   */
  private record Sample(
      String name, long seed, List<Integer> right, Map<Integer, String> spoiled) {}

  private static final List<Sample> SAMPLES =
      List.of(
          new Sample(
              "clicks-told-on-alder-bank",
              21,
              List.of(1, 2, 3, 5, 7, 8, 9, 11, 12, 13, 15),
              Map.of(17, "crash")),
          new Sample(
              "pads-told-on-slate-run",
              22,
              List.of(2, 3, 5, 8, 9, 10, 13, 14, 17, 18, 21, 22),
              Map.of()),
          new Sample(
              "same-dial-on-alder-bank",
              23,
              List.of(1, 3, 4, 7, 8, 10, 13, 15, 16, 19, 20, 23, 24),
              Map.of()));

  private SampleTrials() {}

  /** Writes the laps of all samples made here. */
  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    for (Sample sample : SAMPLES) {
      Files.writeString(folder.resolve(sample.name()).resolve("laps.csv"), laps(sample));
    }
  }

  private static String laps(Sample sample) throws IOException {
    Path notebook = Files.createTempDirectory("sample").resolve("sample.blindlap");
    Clock clock = Clock.fixed(java.time.Instant.EPOCH, ZoneId.of("UTC"));
    var ids = SampleSources.stream(sample.name(), "id");
    try (Desk desk =
        new Desk(
            SqliteNotebook.open(notebook, ids.exactly(16), clock.instant()),
            clock,
            SampleSources.of(sample.name()),
            new SealParameters(1_000),
            ids)) {
      SampleSession session = new SampleSession(sample.name(), desk);
      return text(
          sample, session.preview().plan().orElseThrow(), session.commit().sealed().schedule());
    }
  }

  private static String text(Sample sample, Plan plan, HelperSchedule schedule) {
    TellingRun run = plan.telling();
    Random random = new Random(sample.seed());
    boolean voids = !sample.spoiled().isEmpty();
    StringBuilder out = new StringBuilder("lap");
    plan.measures().forEach(measure -> out.append(',').append(measure.name()));
    out.append(voids ? ",void" : "").append(",guess,sureness\n");
    for (int trial = 1; trial <= run.trials(); trial++) {
      for (int lap = run.firstStint(trial); lap <= run.lastStint(trial); lap++) {
        boolean last = lap == run.lastStint(trial);
        String spoiled = sample.spoiled().getOrDefault(lap, "");
        out.append(lap);
        plan.measures().forEach(measure -> out.append(',').append(4 + random.nextInt(3)));
        out.append(voids ? "," + spoiled : "");
        boolean right = sample.right().contains(trial);
        out.append(last ? "," + answer(run, trial, right, schedule, random) : ",");
        out.append(last ? "," + sureness(right, random) : ",").append('\n');
        if (!spoiled.isEmpty()) {
          break;
        }
      }
    }
    return out.toString();
  }

  private static int answer(
      TellingRun run, int trial, boolean right, HelperSchedule schedule, Random random) {
    int wanted = wanted(run, trial, schedule);
    int first = run.task().firstNamed();
    if (right) {
      return wanted;
    }
    int other = first + random.nextInt(run.task().laps() - first);
    return other < wanted ? other : other + 1;
  }

  private static int wanted(TellingRun run, int trial, HelperSchedule schedule) {
    int first = run.firstStint(trial);
    int a = schedule.fit(first).named();
    int b = schedule.fit(first + 1).named();
    if (run.task() == TellingTask.TWO_CHOICE) {
      return a == 1 ? 1 : 2; // the second setup is the one declared to have more
    }
    int c = schedule.fit(first + 2).named();
    return b == c ? 1 : a == b ? 3 : 2;
  }

  private static String sureness(boolean right, Random random) {
    int likely = random.nextInt(10);
    if (right) {
      return likely < 6 ? "certain" : likely < 9 ? "fairly sure" : "hunch";
    }
    return likely < 1 ? "certain" : likely < 5 ? "fairly sure" : "hunch";
  }
}
