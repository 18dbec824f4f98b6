package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.TrailBook;
import blindlap.desk.TrailDraft;
import blindlap.desk.TrailShape;
import blindlap.fault.TypedNumber;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.recording.Track;
import blindlap.session.KeptTrail;
import blindlap.session.TrailTitle;
import blindlap.wording.TrailWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes, reads, shows and writes trails: where laps start and stop. */
@Command(
    name = "trail",
    description = {
      "Lists the trails of the notebook, or shows one: its gates, how far along they stand, its"
          + " versions.",
      "--from FILE makes a version from one recorded lap (GPX or TCX), --read FILE from GeoJSON;"
          + " --geojson FILE writes one out.",
      "A changed trail is a new version; plans name the version that they are timed on."
    })
final class TrailCommand extends SessionCommand {
  @Parameters(arity = "0..1", paramLabel = "NAME", description = "Name of the trail.")
  String name = "";

  @Option(
      names = "--trail-version",
      paramLabel = "NUMBER",
      description = "This version, not the last.")
  int version;

  @ArgGroup(exclusive = true)
  In in = new In();

  /** Where a version comes from; one of them. */
  static final class In {
    @Option(
        names = "--from",
        paramLabel = "FILE",
        description = "Make a version from one lap of this recording.")
    @Nullable Path recording;

    @Option(names = "--read", paramLabel = "FILE", description = "Read a version from GeoJSON.")
    @Nullable Path geoJson;
  }

  @Option(
      names = "--lap",
      paramLabel = "FROM,TO",
      description =
          "Where the lap lies in the recording, in seconds after its first point; the whole of it"
              + " if not given.")
  String lap = "";

  @Option(
      names = "--start",
      paramLabel = "NAME=METRES",
      description = "The start gate and its distance along the line: --start=\"Gate post=12\".")
  String start = "";

  @Option(names = "--finish", paramLabel = "NAME=METRES", description = "The finish gate.")
  String finish = "";

  @Option(
      names = "--split",
      paramLabel = "NAME=METRES",
      description = "A gate between them; may be given several times.")
  List<String> splits = new ArrayList<>();

  @Option(
      names = "--width",
      paramLabel = "METRES",
      description = "Width of the gates, from end to end; 24 if not given.")
  String width = "24";

  @Option(
      names = "--geojson",
      paramLabel = "FILE",
      description = "Write the version to this file; what lies there is replaced.")
  @Nullable Path out;

  TrailCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    checkTogether();
    Trail made = made();
    try (Desk desk = open()) {
      TrailBook book = desk.trails();
      if (made != null) {
        keep(desk, book, made);
        return ExitCode.DONE;
      }
      if (name.isBlank()) {
        list(desk, book);
        return ExitCode.DONE;
      }
      KeptTrail kept = find(book);
      if (out != null) {
        write(kept, out);
      } else {
        show(desk, book, kept);
      }
      return ExitCode.DONE;
    }
  }

  private void checkTogether() {
    boolean gates = !start.isEmpty() || !finish.isEmpty() || !splits.isEmpty() || !lap.isEmpty();
    if (gates && in.recording == null) {
      throw refused("--start, --finish, --split and --lap belong to --from FILE");
    }
    if (in.recording != null && (name.isBlank() || start.isEmpty() || finish.isEmpty())) {
      throw refused("--from FILE needs the name of the trail, --start and --finish");
    }
    if (out != null && name.isBlank() && in.geoJson == null) {
      throw refused("--geojson FILE needs the name of the trail");
    }
    if (version != 0 && (name.isBlank() || in.recording != null || in.geoJson != null)) {
      throw refused("--trail-version needs the name of a trail that is kept");
    }
  }

  private static Complaint refused(String why) {
    return new Complaint(
        ExitCode.BAD_INPUT, why + ". Nothing was kept; \"blindlap trail --help\" tells more.");
  }

  /** The trail that files and options make; null if none was asked for. */
  private @Nullable Trail made() {
    Path file = in.recording == null ? in.geoJson : in.recording;
    if (file == null) {
      return null;
    }
    try {
      if (in.recording == null) {
        Trail read = TrailBook.read(ReadFile.TRAIL.bytes(file));
        return name.isBlank() ? read : TrailDraft.of(read).named(name.strip()).trail();
      }
      Track track = TrailBook.recording(ReadFile.RECORDING.bytes(file));
      return gates(TrailBook.draft(name.strip(), track, stretch(0), stretch(1))).trail();
    } catch (Unreadable e) {
      throw new Complaint(ExitCode.BAD_INPUT, file + ": " + Problems.sentence(e.problem()));
    }
  }

  private double stretch(int end) {
    if (lap.isEmpty()) {
      return end == 0 ? 0 : Double.POSITIVE_INFINITY;
    }
    String[] parts = lap.split(",", -1);
    if (parts.length != 2) {
      throw refused("--lap=" + lap + ": two numbers of seconds with a comma between are wanted");
    }
    return number("--lap=" + lap, parts[end]);
  }

  private TrailDraft gates(TrailDraft draft) {
    List<TrailDraft.Across> gates = new ArrayList<>();
    gates.add(gate(draft, "--start", start));
    splits.forEach(split -> gates.add(gate(draft, "--split", split)));
    gates.add(gate(draft, "--finish", finish));
    for (int i = 1; i < gates.size(); i++) {
      boolean first = gates.get(i).along() <= gates.get(0).along();
      boolean last = gates.get(i).along() > gates.get(gates.size() - 1).along();
      if (first || last) {
        throw refused(
            gates.get(i).name()
                + " stands at "
                + TrailWords.metres(gates.get(i).along())
                + " m, which is not between start and finish");
      }
    }
    return draft.with(gates);
  }

  private TrailDraft.Across gate(TrailDraft draft, String option, String typed) {
    int sign = typed.lastIndexOf('=');
    if (sign < 1) {
      throw refused(option + "=" + typed + ": a name, an equals sign and metres are wanted");
    }
    double along = number(option + "=" + typed, typed.substring(sign + 1));
    if (along != draft.held(along)) {
      throw refused(
          option
              + "="
              + typed
              + ": the line is "
              + TrailWords.metres(Math.floor(draft.length()))
              + " m long, and a gate stands at least 1 m from its ends, at tenths of a metre");
    }
    double metres = number("--width=" + width, width);
    if (!(metres >= 1 && metres <= 200)) {
      throw refused("--width=" + width + ": a gate is between 1 m and 200 m wide");
    }
    return new TrailDraft.Across(typed.substring(0, sign).strip(), along, metres);
  }

  private static double number(String where, String typed) {
    return TypedNumber.number(typed.strip())
        .orElseThrow(() -> refused(where + ": \"" + typed.strip() + "\" is no number"))
        .doubleValue();
  }

  private void keep(Desk desk, TrailBook book, Trail trail) {
    int before = book.versions(trail.name()).size();
    KeptTrail kept = book.keep(trail);
    boolean fresh = book.versions(trail.name()).size() > before;
    did(fresh ? Done.TRAIL : Done.NOTHING);
    say(
        TrailWords.say(
            fresh ? "kept" : "kept.before",
            kept.title().name(),
            String.valueOf(kept.title().number())));
    if (out != null) {
      write(kept, out);
    }
    show(desk, book, kept);
  }

  private KeptTrail find(TrailBook book) {
    var found = version == 0 ? book.latest(name.strip()) : book.find(name.strip(), version);
    return found.orElseThrow(
        () -> {
          List<String> names = book.names();
          return new Complaint(
              ExitCode.BAD_INPUT,
              version != 0 && names.contains(name.strip())
                  ? name + " has no version " + version + "; nothing was changed."
                  : "There is no trail \""
                      + name
                      + "\" in the notebook. "
                      + (names.isEmpty()
                          ? TrailWords.say("empty")
                          : "There are: " + String.join(", ", names) + "."));
        });
  }

  private void write(KeptTrail kept, Path target) {
    Files.write(target, new String(TrailBook.geoJson(kept.trail()), StandardCharsets.UTF_8));
    did(Done.WRITTEN);
    say(
        TrailWords.say(
            "written", kept.title().name(), String.valueOf(kept.title().number()), target));
  }

  private void list(Desk desk, TrailBook book) {
    if (book.names().isEmpty()) {
      say(TrailWords.say("empty"));
    }
    for (String each : book.names()) {
      List<TrailTitle> versions = book.versions(each);
      say(
          TrailWords.say(
              "list",
              each,
              versions.size(),
              TrailWords.kept(versions.get(versions.size() - 1), desk.clock().getZone())));
    }
  }

  private void show(Desk desk, TrailBook book, KeptTrail kept) {
    TrailShape shape = TrailShape.of(TrailDraft.of(kept.trail()));
    say(
        TrailWords.say(
            "title",
            kept.title().name(),
            String.valueOf(kept.title().number()),
            String.valueOf(book.versions(kept.title().name()).size()),
            TrailWords.kept(kept.title(), desk.clock().getZone()),
            Figures.number(shape.length(), 0)));
    TrailWords.lines(shape.said()).forEach(line -> say("  " + line));
    TrailWords.uses(kept.title(), book.uses(kept.title())).forEach(line -> say("  " + line));
    say("  " + TrailWords.say("sha256", kept.title().sha256()));
  }
}
