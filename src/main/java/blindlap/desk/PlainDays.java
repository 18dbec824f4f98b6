package blindlap.desk;

import blindlap.exchange.PlainDayFile;
import blindlap.exchange.PlainDayMapping;
import blindlap.exchange.PlainDayReading;
import blindlap.fault.Decimals;
import blindlap.fault.Problem;
import blindlap.fault.TypedText;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.session.Fact;
import blindlap.session.Notebook;
import blindlap.session.PlainDay;
import blindlap.session.PlainDayPlaces;
import blindlap.session.PlainDayPreview;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Drift;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Brings in old test days from files: unblinded, for noise only, never for verdicts. */
public final class PlainDays {
  /** Fewest and most laps of an old day. */
  public static final int LEAST_LAPS = 3;

  /** Most laps of an old day. */
  public static final int MOST_LAPS = 400;

  private final Notebook notebook;
  private final Sessions sessions;
  private final Committing committing;

  PlainDays(Notebook notebook, Sessions sessions, Committing committing) {
    this.notebook = notebook;
    this.sessions = sessions;
    this.committing = committing;
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
   * Where the rows of a file come from.
   *
   * @param file name of the file
   * @param rider who rode
   * @param trail where
   * @param day day of rows where no column has it
   */
  public record Origin(String file, String rider, String trail, Optional<LocalDate> day) {}

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
   * @param places where a row belongs
   */
  public record Mapping(List<Wanted> measures, PlainDayPlaces places) {
    public Mapping {
      measures = List.copyOf(measures);
    }

    /** One day, a lap a row in ridden order, decimals as written. */
    public Mapping(List<Wanted> measures, String setup, String voids) {
      this(measures, new PlainDayPlaces("", "", "", setup, voids, Decimals.Sign.AS_WRITTEN));
    }
  }

  /** The header and the first rows of a file. */
  public static PlainDayPreview preview(byte[] file, int rows) {
    return PlainDayFile.preview(file, rows);
  }

  /**
   * A file, before anything of it is taken.
   *
   * @param days in the order of the file
   * @param measures as they would be recorded
   * @param problems mistakes that no day can be told for; nothing is taken then
   */
  public record Reading(List<PlainDay> days, List<Measure> measures, List<Problem> problems) {
    public Reading {
      days = List.copyOf(days);
      measures = List.copyOf(measures);
      problems = List.copyOf(problems);
    }

    /** Days that can be taken. */
    public List<PlainDay> good() {
      return problems.isEmpty()
          ? days.stream().filter(day -> day.problems().isEmpty()).toList()
          : List.of();
    }
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
    for (SessionSummary each : notebook.summaries()) {
      if (each.rider().equalsIgnoreCase(rider) && each.trail().equalsIgnoreCase(trail)) {
        Optional<Measure> known = sessions.state(each.id()).flatMap(s -> named(s.plan(), name));
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

  /** Reads a file and says of each day whether it can be taken. Nothing is written. */
  public Reading read(Origin origin, byte[] file, Mapping wanted) {
    List<PlainDayMapping.Column> columns = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    if (origin.rider().isBlank() || origin.trail().isBlank()) {
      problems.add(Problem.of(DeskFault.PLAIN_DAY_WHO, ""));
    }
    if (wanted.measures().isEmpty()) {
      problems.add(Problem.of(DeskFault.PLAIN_DAY_NO_MEASURE, ""));
    }
    texts(origin, wanted, problems);
    for (Wanted each : wanted.measures()) {
      column(origin, each, problems).ifPresent(columns::add);
    }
    if (!problems.isEmpty()) {
      return new Reading(List.of(), List.of(), problems);
    }
    PlainDayMapping mapping = new PlainDayMapping(columns, wanted.places());
    PlainDayReading reading = PlainDayFile.read(file, mapping, origin.day());
    problems.addAll(reading.problems());
    if (reading.days().isEmpty() && problems.isEmpty()) {
      problems.add(Problem.of(DeskFault.PLAIN_DAY_NO_DAY, ""));
    }
    return new Reading(
        reading.days().stream().map(day -> checked(origin, day)).toList(),
        columns.stream().map(PlainDayMapping.Column::measure).toList(),
        problems);
  }

  private static void texts(Origin origin, Mapping wanted, List<Problem> problems) {
    line(origin.rider(), "rider", problems);
    line(origin.trail(), "trail", problems);
    for (Wanted each : wanted.measures()) {
      line(each.measure(), "measure", problems);
      line(each.unit(), "unit", problems);
    }
  }

  private static void line(String text, String where, List<Problem> problems) {
    TypedText.problem(text, TypedText.Form.LINE, where).ifPresent(problems::add);
  }

  private Optional<PlainDayMapping.Column> column(
      Origin origin, Wanted each, List<Problem> problems) {
    boolean timed = each.kind().timed();
    Optional<PlainDayMapping.TimeUnit> unit =
        timed
            ? PlainDayMapping.TimeUnit.of(each.unit())
            : Optional.of(PlainDayMapping.TimeUnit.SECONDS);
    if (unit.isEmpty()) {
      problems.add(Problem.of(DeskFault.PLAIN_DAY_UNIT, "", each.measure(), each.unit()));
      return Optional.empty();
    }
    String said = timed ? "s" : each.unit();
    Measure measure = measure(origin.rider(), origin.trail(), each.measure(), each.kind(), said);
    // A known measure of another kind or unit would mix values that do not go together.
    if (measure.kind() != each.kind() || !timed && !measure.unit().equals(said)) {
      problems.add(
          Problem.of(
              DeskFault.PLAIN_DAY_MEASURE,
              "",
              measure.name(),
              PlanJson.word(measure.kind()),
              measure.unit()));
      return Optional.empty();
    }
    return Optional.of(new PlainDayMapping.Column(measure, each.column(), unit.get()));
  }

  private PlainDay checked(Origin origin, PlainDay day) {
    List<Problem> problems = new ArrayList<>(day.problems());
    int laps = day.lines().size();
    if (laps < LEAST_LAPS || laps > MOST_LAPS) {
      problems.add(Problem.of(DeskFault.PLAIN_DAY_LAPS, "", laps, LEAST_LAPS, MOST_LAPS));
    }
    if (problems.isEmpty()) {
      twin(origin, day)
          .ifPresent(
              same -> problems.add(Problem.of(DeskFault.PLAIN_DAY_TWICE, "", same.id().brief())));
    }
    return new PlainDay(day.day(), day.lines(), day.laps(), day.lapsPerStint(), problems);
  }

  /**
   * Takes every day of a file that can be taken, each whole.
   *
   * @return the sessions written, in the order of the file
   */
  public List<SessionState> take(Origin origin, byte[] file, Mapping wanted) {
    Reading reading = read(origin, file, wanted);
    List<SessionState> taken = new ArrayList<>();
    for (PlainDay day : reading.good()) {
      taken.add(write(origin, wanted, reading.measures(), day));
    }
    return taken;
  }

  private SessionState write(Origin origin, Mapping wanted, List<Measure> measures, PlainDay day) {
    List<PlainDayMapping.Column> columns = new ArrayList<>();
    for (int i = 0; i < measures.size(); i++) {
      columns.add(
          new PlainDayMapping.Column(
              measures.get(i),
              wanted.measures().get(i).column(),
              PlainDayMapping.TimeUnit.SECONDS));
    }
    return committing.open(
        PlainDayPlan.of(origin.file(), origin.rider(), origin.trail(), measures, day),
        List.of(),
        List.of(
            new Fact.PlainDayImported(
                origin.file(),
                new PlainDayMapping(columns, wanted.places()).columns(),
                day.laps())));
  }

  /** Brings a day in: all of it or nothing. */
  public Result bring(Day day, byte[] file, Mapping wanted) {
    Origin origin = new Origin(day.file(), day.rider(), day.trail(), Optional.of(day.day()));
    Reading reading = read(origin, file, wanted);
    List<Problem> problems = new ArrayList<>(reading.problems());
    reading.days().forEach(each -> problems.addAll(each.problems()));
    return problems.isEmpty()
        ? new Result.Brought(write(origin, wanted, reading.measures(), reading.days().get(0)))
        : new Result.Refused(problems);
  }

  /** The same laps of the same day, already in the notebook. */
  private Optional<SessionSummary> twin(Origin origin, PlainDay day) {
    return notebook.summaries().stream()
        .filter(s -> s.kind() == Plan.Kind.NOISE_RUN && s.day().equals(day.day()))
        .filter(s -> s.rider().equals(origin.rider()) && s.trail().equals(origin.trail()))
        .filter(s -> s.step() != blindlap.session.day.Step.ABANDONED)
        .filter(
            s ->
                sessions
                    .state(s.id())
                    .flatMap(SessionState::plainDay)
                    .filter(old -> old.laps().equals(day.laps()))
                    .isPresent())
        .findFirst();
  }
}
