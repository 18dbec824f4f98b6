package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.PlainDays;
import blindlap.plan.Measure;
import blindlap.plan.PlanJson;
import blindlap.review.NoiseRecord;
import blindlap.wording.NoiseWords;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Brings in an old test day for its noise. */
@Command(
    name = "import-day",
    description = {
      "Brings in the laps of an old test day from a CSV file, for the rider's noise only: it is not blinded and never gives a verdict.",
      "One row a lap, in ridden order. Say which column holds which measure: --map \"lap time=Zeit\"."
    })
final class ImportDayCommand extends SessionCommand {
  @Parameters(paramLabel = "FILE", description = "The CSV file.")
  @Nullable Path file;

  @Option(names = "--rider", required = true, paramLabel = "NAME", description = "Who rode.")
  String rider = "";

  @Option(names = "--trail", required = true, paramLabel = "NAME", description = "Where.")
  String trail = "";

  @Option(
      names = "--day",
      required = true,
      paramLabel = "DATE",
      description = "When, such as 2024-05-18.")
  @Nullable LocalDate day;

  @Option(
      names = "--map",
      required = true,
      paramLabel = "MEASURE=COLUMN",
      description = "Column of a measure, named as in your plans; once for each measure.")
  Map<String, String> map = new LinkedHashMap<>();

  @Option(
      names = "--kind",
      paramLabel = "MEASURE=KIND",
      description = "lap time (default), sector time, line scale, category scale or count.")
  Map<String, String> kinds = new LinkedHashMap<>();

  @Option(
      names = "--unit",
      paramLabel = "MEASURE=UNIT",
      description = "Unit in the file. Times: s (default), ms or min; m:ss.s is understood anyway.")
  Map<String, String> units = new LinkedHashMap<>();

  @Option(names = "--setup", paramLabel = "COLUMN", description = "Column that says what was on.")
  String setup = "";

  @Option(names = "--void", paramLabel = "COLUMN", description = "Column that marks spoiled laps.")
  String voids = "";

  ImportDayCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    Path path = java.util.Objects.requireNonNull(file);
    byte[] bytes = read(path);
    try (Desk desk = open()) {
      List<PlainDays.Wanted> columns = new ArrayList<>();
      map.forEach((name, column) -> columns.add(wanted(name, column)));
      PlainDays.Result result =
          desk.plainDays()
              .bring(
                  new PlainDays.Day(
                      String.valueOf(path.getFileName()),
                      rider,
                      trail,
                      java.util.Objects.requireNonNull(day)),
                  bytes,
                  new PlainDays.Mapping(columns, setup, voids));
      if (result instanceof PlainDays.Result.Refused refused) {
        throw complaint(refused.problems());
      }
      blindlap.session.SessionState state = ((PlainDays.Result.Brought) result).state();
      say(
          NoiseWords.say(
              "plain.done", state.id().brief(), state.plan().stints(), trail, day, rider));
      for (NoiseRecord record : desk.history().records(rider, trail)) {
        say("  " + NoiseWords.pooled(record));
      }
      return ExitCode.DONE;
    }
  }

  private PlainDays.Wanted wanted(String name, String column) {
    Measure.Kind kind = kind(kinds.getOrDefault(name, "lap time"));
    return new PlainDays.Wanted(
        name, column, kind, units.getOrDefault(name, kind.timed() ? "s" : ""));
  }

  private static Measure.Kind kind(String word) {
    int at = PlanJson.words(Measure.Kind.class).indexOf(word.strip());
    if (at < 0) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "\""
              + word
              + "\" is no kind of measure; kinds are "
              + String.join(", ", PlanJson.words(Measure.Kind.class))
              + ". Nothing was brought in.");
    }
    return Measure.Kind.values()[at];
  }
}
