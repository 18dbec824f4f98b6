package blindlap.screen.book;

import blindlap.desk.PlainDays;
import blindlap.desk.RiderHistory;
import blindlap.fault.Decimals;
import blindlap.plan.Measure;
import blindlap.plan.PlanOptions;
import blindlap.screen.part.Background;
import blindlap.screen.part.TypedForm;
import blindlap.session.PlainDayPlaces;
import blindlap.session.PlainDayPreview;
import blindlap.session.SessionState;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import blindlap.wording.day.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.ObservableList;

/**
 * The room where old days are brought in: a file, what stands where in it, what of it will be taken
 * and what is refused. Nothing is written before {@link #take}, and then what the preview shows.
 */
public final class OldDayModel {
  private static final Words WORDS = Words.of("oldday");
  private static final long MOST_BYTES = 10_000_000;
  private static final int SAMPLE_ROWS = 4;
  private static final List<String> TIMES = List.of("s", "ms", "min");
  private static final List<String> COLUMNS = List.of("date", "stint", "lap", "setup", "void");

  private final PlainDays days;
  private final RiderHistory history;
  private final Background background;
  private final TypedForm form = new TypedForm(this::changed);
  private final ReadOnlyObjectWrapper<Found> found = new ReadOnlyObjectWrapper<>(Found.NOTHING);
  private final ReadOnlyObjectWrapper<OldDayPreview> preview =
      new ReadOnlyObjectWrapper<>(OldDayPreview.NONE);
  private final ReadOnlyStringWrapper notice = new ReadOnlyStringWrapper("");
  private byte[] bytes = new byte[0];
  private String fileTrouble = "";
  private boolean filling;
  private volatile int asked;

  /**
   * What a file has.
   *
   * @param name of the file
   * @param columns names of its columns; empty before a file is read
   * @param cells first cells of each column
   */
  public record Found(String name, List<String> columns, List<List<String>> cells) {
    static final Found NOTHING = new Found("", List.of(), List.of());

    public Found {
      columns = List.copyOf(columns);
      cells = List.copyOf(cells);
    }
  }

  private record Opened(byte[] bytes, PlainDayPreview preview, Optional<RiderHistory.Where> at) {}

  /** A file that cannot be used; the message is a sentence. */
  private static final class Unusable extends Exception {
    private static final long serialVersionUID = 1L;

    private final String sentence;

    Unusable(String sentence) {
      super(sentence);
      this.sentence = sentence;
    }
  }

  public OldDayModel(PlainDays days, RiderHistory history, Background background) {
    this.days = days;
    this.history = history;
    this.background = background;
    form.field("decimals").set(Decimals.Sign.AS_WRITTEN.name());
    form.list("measures");
  }

  /** The fields of the page. */
  public TypedForm form() {
    return form;
  }

  /** The measures, each with column, name, kind and unit. */
  public ObservableList<TypedForm> measures() {
    return form.list("measures");
  }

  /** What the file has. */
  public ReadOnlyObjectProperty<Found> foundProperty() {
    return found.getReadOnlyProperty();
  }

  /** What would be taken and what is refused. */
  public ReadOnlyObjectProperty<OldDayPreview> previewProperty() {
    return preview.getReadOnlyProperty();
  }

  /** What became of the last request; empty if there was none. */
  public ReadOnlyStringProperty noticeProperty() {
    return notice.getReadOnlyProperty();
  }

  /** Reads a file; what was chosen before is forgotten only if it can be read. */
  public void open(Path file) {
    form.field("file").set(file.toString());
    read();
  }

  /** Reads the file whose path is typed. */
  public void read() {
    String typed = form.field("file").get().strip();
    notice.set("");
    background.run(() -> opened(typed), this::show, this::cannot);
  }

  private Opened opened(String typed) throws Unusable {
    try {
      Path file = Path.of(typed);
      if (typed.isEmpty() || !Files.isRegularFile(file)) {
        throw new Unusable(WORDS.say("file.missing", typed));
      }
      if (Files.size(file) > MOST_BYTES) {
        throw new Unusable(WORDS.say("file.large", typed));
      }
      byte[] read = Files.readAllBytes(file);
      PlainDayPreview shown = PlainDays.preview(read, SAMPLE_ROWS);
      if (!shown.problems().isEmpty()) {
        throw new Unusable(String.join(" ", Problems.sentences(shown.problems())));
      }
      return new Opened(read, shown, history.everywhere().stream().findFirst());
    } catch (InvalidPathException e) {
      throw new Unusable(WORDS.say("file.missing", typed));
    } catch (IOException e) {
      throw new Unusable(WORDS.say("file.unreadable", typed));
    }
  }

  private void cannot(Exception problem) {
    fileTrouble = problem instanceof Unusable known ? known.sentence : Trouble.sentence(problem);
    bytes = new byte[0];
    found.set(Found.NOTHING);
    changed();
  }

  private void show(Opened opened) {
    filling = true;
    fileTrouble = "";
    bytes = opened.bytes();
    PlainDayPreview shown = opened.preview();
    List<List<String>> cells = new ArrayList<>();
    for (int column = 0; column < shown.header().size(); column++) {
      int at = column;
      cells.add(shown.rows().stream().map(row -> row.get(at)).toList());
    }
    Path name = Path.of(form.field("file").get().strip()).getFileName();
    PlainDayPreview.Guess guess = shown.guess();
    form.field("date").set(guess.date());
    form.field("stint").set(guess.stint());
    form.field("lap").set(guess.lap());
    form.field("setup").set(guess.setup());
    form.field("void").set(guess.voids());
    measures().clear();
    addMeasure(guess.measure(), "lap time");
    opened
        .at()
        .filter(where -> form.field("rider").get().isBlank() && form.field("trail").get().isBlank())
        .ifPresent(
            where -> {
              form.field("rider").set(where.rider());
              form.field("trail").set(where.trail());
            });
    found.set(new Found(String.valueOf(name), shown.header(), cells));
    filling = false;
    changed();
  }

  /** Adds a measure that is still to be described. */
  public void addMeasure() {
    addMeasure("", "");
  }

  private void addMeasure(String column, String name) {
    form.add("measures", Map.of("column", column, "name", name, "kind", "lap time", "unit", "s"));
  }

  /** Leaves a measure out. */
  public void remove(TypedForm measure) {
    measures().remove(measure);
  }

  private void changed() {
    if (filling) {
      return;
    }
    int mine = ++asked;
    Map<String, String> open = faults();
    boolean ready = open.isEmpty();
    form.tell("", open);
    if (bytes.length == 0) {
      preview.set(OldDayPreview.NONE);
      return;
    }
    if (!ready) {
      preview.set(OldDayPreview.open());
      return;
    }
    PlainDays.Origin origin = origin();
    PlainDays.Mapping mapping = mapping();
    byte[] file = bytes;
    background.run(
        () -> mine == asked ? Optional.of(days.read(origin, file, mapping)) : Optional.empty(),
        (Optional<PlainDays.Reading> reading) -> {
          if (mine == asked) {
            reading.ifPresent(r -> preview.set(OldDayPreview.of(r)));
          }
        },
        this::fail);
  }

  /** What is still wrong with the fields, by field. */
  private Map<String, String> faults() {
    Map<String, String> faults = new LinkedHashMap<>();
    if (!fileTrouble.isEmpty()) {
      faults.put("file", fileTrouble);
    }
    if (bytes.length == 0) {
      return faults;
    }
    for (String name : List.of("rider", "trail")) {
      if (form.field(name).get().isBlank()) {
        faults.put(name, WORDS.say(name + ".missing"));
      }
    }
    String typed = form.field("day").get().strip();
    if (form.field("date").get().isBlank() && day().isEmpty()) {
      faults.put("day", WORDS.say(typed.isEmpty() ? "day.missing" : "day.wrong", typed));
    }
    Set<String> names = new HashSet<>();
    for (int i = 0; i < measures().size(); i++) {
      TypedForm each = measures().get(i);
      String path = "measures[" + (i + 1) + "].";
      String name = each.field("name").get().strip();
      if (each.field("column").get().isBlank()) {
        faults.put(path + "column", WORDS.say("measure.column.missing"));
      }
      if (name.isEmpty()) {
        faults.put(path + "name", WORDS.say("measure.name.missing"));
      } else if (!names.add(name.toLowerCase(java.util.Locale.ROOT))) {
        faults.put(path + "name", WORDS.say("measure.twice"));
      }
      OldDayUnit.impossible(kind(each), each.field("unit").get(), cells(each.field("column").get()))
          .ifPresent(
              cell ->
                  faults.put(
                      path + "unit",
                      WORDS.say("measure.unit.which", cell, each.field("unit").get())));
    }
    return faults;
  }

  /** The first cells of a column. */
  private List<String> cells(String column) {
    int at = found.get().columns().indexOf(column);
    return at < 0 ? List.of() : found.get().cells().get(at);
  }

  private Optional<LocalDate> day() {
    try {
      return Optional.of(LocalDate.parse(form.field("day").get().strip()));
    } catch (DateTimeException noDate) {
      return Optional.empty();
    }
  }

  private PlainDays.Origin origin() {
    return new PlainDays.Origin(
        found.get().name(),
        form.field("rider").get().strip(),
        form.field("trail").get().strip(),
        day());
  }

  private PlainDays.Mapping mapping() {
    List<PlainDays.Wanted> wanted = new ArrayList<>();
    for (TypedForm each : measures()) {
      wanted.add(
          new PlainDays.Wanted(
              each.field("name").get().strip(),
              each.field("column").get(),
              kind(each),
              each.field("unit").get().strip()));
    }
    return new PlainDays.Mapping(
        wanted,
        new PlainDayPlaces(
            form.field("date").get(),
            form.field("stint").get(),
            form.field("lap").get(),
            form.field("setup").get(),
            form.field("void").get(),
            Decimals.Sign.valueOf(form.field("decimals").get())));
  }

  /** Units that times may have in a file. */
  public static List<String> timeUnits() {
    return TIMES;
  }

  /**
   * Leaves the unit of a measure only where it fits the chosen kind.
   *
   * @return true for a time, whose unit is one of {@link #timeUnits}
   */
  public static boolean settleUnit(TypedForm measure) {
    boolean timed = kind(measure).timed();
    TypedForm.Entry unit = measure.field("unit");
    if (timed != TIMES.contains(unit.get())) {
      unit.set(timed ? TIMES.get(0) : "");
    }
    return timed;
  }

  private static Measure.Kind kind(TypedForm measure) {
    int at = PlanOptions.of("kind").indexOf(measure.field("kind").get());
    return at < 0 ? Measure.Kind.LAP_TIME : Measure.Kind.values()[at];
  }

  /** Names of the fields that take a column. */
  public static List<String> columnFields() {
    return COLUMNS;
  }

  /** Signs of decimals to choose from, as the field has them. */
  public static List<String> decimalSigns() {
    return Arrays.stream(Decimals.Sign.values()).map(Enum::name).toList();
  }

  /** Takes the days that the preview shows. */
  public void take() {
    if (preview.get().days() == 0) {
      return;
    }
    PlainDays.Origin origin = origin();
    PlainDays.Mapping mapping = mapping();
    byte[] file = bytes;
    background.run(
        () -> days.take(origin, file, mapping), taken -> taken(origin, taken), this::fail);
  }

  private void taken(PlainDays.Origin origin, List<SessionState> taken) {
    int laps =
        taken.stream()
            .flatMap(state -> state.plainDay().stream())
            .mapToInt(old -> old.laps().size())
            .sum();
    notice.set(
        WORDS.say(
            taken.size() == 1 ? "taken.one" : "taken",
            taken.size(),
            laps,
            origin.rider(),
            origin.trail()));
    changed();
  }

  private void fail(Exception problem) {
    notice.set(WORDS.say("trouble", Trouble.sentence(problem)));
  }
}
