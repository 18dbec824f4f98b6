package blindlap.command;

import blindlap.compute.PassesJson;
import blindlap.fault.StatsException;
import blindlap.fault.Unreadable;
import blindlap.recording.Gate;
import blindlap.recording.Passes;
import blindlap.recording.Position;
import blindlap.recording.Track;
import blindlap.recording.TrackReader;
import blindlap.wording.PassWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says when a recorder went through gates; for anyone who doubts a lap time. No notebook. */
@Command(
    name = "passes",
    description = {
      "Says when a recording (GPX or TCX) goes through one gate or several, and the laps between.",
      "One gate: every pass, and laps in the direction of the first. Several: start, splits,"
          + " finish, in that order."
    })
final class PassesCommand implements Callable<Integer> {
  private static final int NUMBERS = 4;

  /** Metres: the earth is flat around it; two numbers mixed up make a gate across a continent. */
  private static final int WIDEST = 2_000;

  @Spec @Nullable CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "The recording.")
  @Nullable Path file;

  @Option(
      names = "--gate",
      required = true,
      paramLabel = "LAT,LON,LAT,LON",
      description = {
        "Both ends of a gate across the trail, in degrees, latitude first:",
        "--gate=47.1,11.3,47.1001,11.3"
      })
  List<String> gates = new ArrayList<>();

  @Option(names = "--json", description = "Print JSON.")
  boolean json;

  @Override
  public Integer call() {
    if (file == null || spec == null) {
      throw new IllegalStateException("picocli sets both");
    }
    List<Gate> across = gates.stream().map(PassesCommand::gate).toList();
    Track track;
    try {
      track = TrackReader.read(ReadFile.RECORDING.bytes(file));
    } catch (Unreadable e) {
      throw new Complaint(ExitCode.BAD_INPUT, file + ": " + Problems.sentence(e.problem()));
    }
    Passes passes = Passes.of(track, across);
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(PassesJson.of(track, passes));
    } else {
      PassWords.lines(track, passes, across.size()).forEach(out::println);
    }
    out.flush();
    return ExitCode.DONE;
  }

  private static Gate gate(String typed) {
    String[] parts = typed.split(",", -1);
    if (parts.length != NUMBERS) {
      throw refused(typed, "a gate has two ends: four numbers with commas between");
    }
    double[] numbers = new double[NUMBERS];
    for (int i = 0; i < NUMBERS; i++) {
      String part = parts[i].strip();
      try {
        // Programs write them too, with more digits than anyone types.
        numbers[i] = new BigDecimal(part).doubleValue();
      } catch (NumberFormatException e) {
        throw refused(typed, "\"" + part + "\" is no number of degrees");
      }
    }
    try {
      Position first = new Position(numbers[0], numbers[1]);
      Position second = new Position(numbers[2], numbers[3]);
      double metres = first.to(second).metres();
      if (metres > WIDEST) {
        throw refused(
            typed,
            "its ends lie "
                + Figures.count(Math.round(metres))
                + " m apart, and a gate may be "
                + Figures.count(WIDEST)
                + " m wide at most");
      }
      return new Gate(first, second);
    } catch (StatsException e) {
      throw refused(typed, "the " + e.argument() + " " + e.why().replaceAll("\\.$", ""));
    }
  }

  private static Complaint refused(String typed, String why) {
    return new Complaint(
        ExitCode.BAD_INPUT,
        "--gate=" + typed + ": " + why + ". Nothing was read; mend it and try again.");
  }
}
