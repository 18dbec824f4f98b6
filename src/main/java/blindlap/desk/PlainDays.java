package blindlap.desk;

import blindlap.exchange.PlainDayFile;
import blindlap.plan.Blinding;
import blindlap.plan.ChangeMethod;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Problem;
import blindlap.plan.Protocol;
import blindlap.plan.Rule;
import blindlap.plan.Setup;
import blindlap.session.Fact;
import blindlap.session.PlainLap;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.stats.Drift;
import blindlap.stats.Scale;
import blindlap.wording.NoiseWords;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Brings in old test days from files: unblinded, for noise only, never for verdicts. */
public final class PlainDays {
  /** Fewest and most laps of an old day. */
  public static final int LEAST_LAPS = 3;

  /** Most laps of an old day. */
  public static final int MOST_LAPS = 400;

  private final Desk desk;

  PlainDays(Desk desk) {
    this.desk = desk;
  }

  /**
   * An old day.
   *
   * @param file name of its file
   * @param rider who rode
   * @param trail where
   * @param day when
   */
  public record Day(String file, String rider, String trail, LocalDate day) {}

  /**
   * A measure and where the file has it.
   *
   * @param measure its name, as in the plans it is to count with
   * @param column name of the column
   * @param kind what sort of value it is
   * @param unit unit in the file; of times s, ms or min
   */
  public record Wanted(String measure, String column, Measure.Kind kind, String unit) {}

  /**
   * What stands where.
   *
   * @param measures at least one
   * @param setup column that says what was on; empty for none
   * @param voids column that marks spoiled laps; empty for none
   */
  public record Mapping(List<Wanted> measures, String setup, String voids) {
    public Mapping {
      measures = List.copyOf(measures);
    }
  }

  /**
   * A file before it is mapped.
   *
   * @param header names of its columns
   * @param rows its first rows as texts
   * @param problems why it cannot be read
   */
  public record Preview(List<String> header, List<List<String>> rows, List<Problem> problems) {
    public Preview {
      header = List.copyOf(header);
      rows = List.copyOf(rows);
      problems = List.copyOf(problems);
    }
  }

  /** The header and the first rows of a file. */
  public static Preview preview(byte[] file, int rows) {
    PlainDayFile.Preview preview = PlainDayFile.preview(file, rows);
    return new Preview(preview.header(), preview.rows(), preview.problems());
  }

  /** What became of it. */
  public sealed interface Result {
    /** In the notebook and on disk. */
    record Brought(SessionState state) implements Result {}

    /** Nothing was written. */
    record Refused(List<Problem> problems) implements Result {
      public Refused {
        problems = List.copyOf(problems);
      }
    }
  }

  /**
   * The measure of a name as the rider's earlier plans have it, so that old days count with new
   * ones; a plain one of the kind otherwise.
   */
  private Measure measure(String rider, String trail, String name, Measure.Kind kind, String unit) {
    for (SessionSummary each : desk.notebook().summaries()) {
      if (each.rider().equalsIgnoreCase(rider) && each.trail().equalsIgnoreCase(trail)) {
        Optional<Measure> known =
            desk.sessions().state(each.id()).flatMap(s -> named(s.plan(), name));
        if (known.isPresent()) {
          return known.get();
        }
      }
    }
    return new Measure(
        name,
        kind,
        unit,
        "",
        "",
        Measure.Role.SECONDARY,
        kind.rating() ? Measure.Better.HIGHER : Measure.Better.LOWER,
        null,
        Drift.LINE,
        Scale.RAW);
  }

  private static Optional<Measure> named(Plan plan, String name) {
    return plan.measures().stream().filter(m -> m.name().equalsIgnoreCase(name)).findFirst();
  }

  /** Brings a day in: all of it or nothing. */
  public Result bring(Day day, byte[] file, Mapping wanted) {
    List<PlainDayFile.Column> columns = new ArrayList<>();
    for (Wanted each : wanted.measures()) {
      boolean timed = each.kind().timed();
      Optional<PlainDayFile.TimeUnit> unit =
          timed
              ? PlainDayFile.TimeUnit.of(each.unit())
              : Optional.of(PlainDayFile.TimeUnit.SECONDS);
      if (unit.isEmpty()) {
        return refused(DeskFault.PLAIN_DAY_UNIT, each.measure(), each.unit());
      }
      String said = timed ? "s" : each.unit();
      columns.add(
          new PlainDayFile.Column(
              measure(day.rider(), day.trail(), each.measure(), each.kind(), said),
              each.column(),
              unit.get()));
    }
    return bring(day, file, new PlainDayFile.Mapping(columns, wanted.setup(), wanted.voids()));
  }

  private Result bring(Day day, byte[] file, PlainDayFile.Mapping mapping) {
    PlainDayFile.Reading reading = PlainDayFile.read(file, mapping);
    if (!reading.problems().isEmpty()) {
      return new Result.Refused(reading.problems());
    }
    List<PlainLap> laps = reading.laps();
    if (laps.size() < LEAST_LAPS || laps.size() > MOST_LAPS) {
      return refused(DeskFault.PLAIN_DAY_LAPS, laps.size(), LEAST_LAPS, MOST_LAPS);
    }
    if (day.rider().isBlank() || day.trail().isBlank()) {
      return refused(DeskFault.PLAIN_DAY_WHO);
    }
    Optional<SessionSummary> same = twin(day, laps);
    if (same.isPresent()) {
      return refused(DeskFault.PLAIN_DAY_TWICE, same.get().id().brief());
    }
    return new Result.Brought(
        desk.committing()
            .open(
                plan(day, mapping, laps),
                List.of(),
                List.of(new Fact.PlainDayImported(day.file(), mapping.columns(), laps))));
  }

  private static Result refused(DeskFault fault, Object... details) {
    return new Result.Refused(List.of(Problem.of(fault, "", details)));
  }

  /** The same laps of the same day, already in the notebook. */
  private Optional<SessionSummary> twin(Day day, List<PlainLap> laps) {
    return desk.notebook().summaries().stream()
        .filter(s -> s.kind() == Plan.Kind.NOISE_RUN && s.day().equals(day.day()))
        .filter(s -> s.rider().equals(day.rider()) && s.trail().equals(day.trail()))
        .filter(s -> s.step() != blindlap.session.Step.ABANDONED)
        .filter(
            s ->
                desk.sessions()
                    .state(s.id())
                    .flatMap(SessionState::plainDay)
                    .filter(old -> old.laps().equals(laps))
                    .isPresent())
        .findFirst();
  }

  private static Plan plan(Day day, PlainDayFile.Mapping mapping, List<PlainLap> laps) {
    return new Plan(
        Plan.Kind.NOISE_RUN,
        NoiseWords.say("plain.question", day.file()),
        Plan.Expectations.NONE,
        day.rider(),
        day.trail(),
        day.day(),
        "",
        setups(laps),
        ChangeMethod.REFIT,
        null,
        "",
        List.of(),
        mapping.measures().stream().map(PlainDayFile.Column::measure).toList(),
        Protocol.unnamed(Rule.blocks(2, 16, 4)),
        laps.size(),
        new Plan.Laps(0, 0, 1),
        unblinded(),
        null,
        null,
        "",
        null,
        null);
  }

  private static List<Setup> setups(List<PlainLap> laps) {
    Set<String> names = new LinkedHashSet<>();
    laps.forEach(lap -> names.add(lap.setup()));
    List<Setup> setups = new ArrayList<>();
    for (String name : names) {
      setups.add(Setup.named(name.isBlank() ? NoiseWords.say("plain.setup") : name));
    }
    return setups;
  }

  private static Blinding unblinded() {
    Blinding blind = Blinding.BLIND;
    return new Blinding(false, "", "", "", "", "", "", "", "", "", false, "", "", blind.times());
  }
}
