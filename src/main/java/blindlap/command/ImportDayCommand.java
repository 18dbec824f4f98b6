package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.PlainDays;
import blindlap.fault.Decimals;
import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.PlanJson;
import blindlap.review.NoiseRecord;
import blindlap.session.PlainDayPlaces;
import blindlap.session.SessionState;
import blindlap.wording.NoiseWords;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
      paramLabel = "DATE",
      description = "When, such as 2024-05-18; not needed where a column has it.")
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

  @Option(
      names = "--date",
      paramLabel = "COLUMN",
      description = "Column with the date, in a file of several days.")
  String date = "";

  @Option(
      names = "--stint",
      paramLabel = "COLUMN",
      description = "Column with the stint, where a stint has several laps.")
  String stint = "";

  @Option(
      names = "--lap",
      paramLabel = "COLUMN",
      description = "Column with the number of the lap, where rows are not in ridden order.")
  String lap = "";

  @Option(
      names = "--decimals",
      paramLabel = "SIGN",
      description = "comma or point; as the file has it if not given.")
  String decimals = "as written";

  ImportDayCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    Path path = java.util.Objects.requireNonNull(file);
    byte[] bytes = ReadFile.LAPS.bytes(path);
    try (Desk desk = open()) {
      List<PlainDays.Wanted> columns = new ArrayList<>();
      map.forEach((name, column) -> columns.add(wanted(name, column)));
      PlainDays.Origin origin =
          new PlainDays.Origin(
              String.valueOf(path.getFileName()), rider, trail, Optional.ofNullable(day));
      PlainDays.Mapping mapping =
          new PlainDays.Mapping(
              columns, new PlainDayPlaces(date, stint, lap, setup, voids, decimals()));
      List<Problem> problems = problems(desk.plainDays().read(origin, bytes, mapping));
      if (!problems.isEmpty()) {
        throw complaint(problems);
      }
      for (SessionState state : desk.plainDays().take(origin, bytes, mapping)) {
        did(Done.BROUGHT_IN);
        say(
            NoiseWords.say(
                "plain.done",
                state.id().brief(),
                state.plan().stints() * state.plan().laps().scored(),
                trail,
                state.plan().day(),
                rider));
      }
      for (NoiseRecord record : desk.history().records(rider, trail)) {
        say("  " + NoiseWords.pooled(record));
      }
      return ExitCode.DONE;
    }
  }

  private static List<Problem> problems(PlainDays.Reading reading) {
    List<Problem> problems = new ArrayList<>(reading.problems());
    reading.days().forEach(each -> problems.addAll(each.problems()));
    return problems;
  }

  private Decimals.Sign decimals() {
    int at = PlanJson.words(Decimals.Sign.class).indexOf(decimals.strip());
    if (at < 0) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "\""
              + decimals
              + "\" is no sign of decimals; write comma or point. Nothing was brought in.");
    }
    return Decimals.Sign.values()[at];
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
