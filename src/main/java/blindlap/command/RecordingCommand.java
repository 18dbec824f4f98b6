package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.RecordingFault;
import blindlap.desk.Recordings;
import blindlap.desk.Sessions;
import blindlap.desk.Settling;
import blindlap.fault.Problem;
import blindlap.session.SessionState;
import blindlap.wording.SettlingRow;
import blindlap.wording.SettlingWords;
import blindlap.wording.day.Problems;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Brings recordings of a day in: lap and sector times, without a timekeeper. */
@Command(
    name = "recording",
    description = {
      "Brings recordings (GPX or TCX) of a ridden day in, until the review is closed: lap and"
          + " sector times.",
      "Shows which pass is which lap, and asks about each that does not fit; all of a file is taken"
          + " in, or nothing.",
      "A recorder on the bike records the helper too: leave its file with helper or starter until"
          + " the day is closed."
    })
final class RecordingCommand extends SessionCommand {
  private static final Pattern SETTLED = Pattern.compile("(\\d{1,3}) *= *(.*)");
  private static final Pattern LAP = Pattern.compile("lap *(\\d{1,4})");

  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Parameters(index = "1..*", arity = "1..*", paramLabel = "FILE", description = "The recordings.")
  List<Path> files = List.of();

  @Option(
      names = "--trail",
      paramLabel = "NAME",
      description =
          "A trail of the trail book, where the plan fixes none: all that comes of it is"
              + " exploratory.")
  @Nullable String trail;

  @Option(
      names = "--trail-version",
      paramLabel = "NUMBER",
      description = "With --trail: which version; the latest if not given.")
  @Nullable Integer version;

  @Option(
      names = "--settle",
      split = ",",
      paramLabel = "PASS=ANSWER",
      description = {
        "What a pass of the table is: 5=keep or 5=out for a doubtful one, 7=none for one that is no"
            + " lap,",
        "7=lap9 for one that is lap 9. More than one with commas between."
      })
  List<String> settle = List.of();

  @Option(names = "--no-positions", description = "Keep no positions, only times.")
  boolean noPositions;

  RecordingCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    if (files.size() > 1 && !settle.isEmpty()) {
      throw complaint(List.of(Problem.of(RecordingFault.SETTLE_ONE_FILE, "")));
    }
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      for (Path file : files) {
        bringIn(desk, desk.sessions().state(state.id()).orElse(state), file);
      }
      return ExitCode.DONE;
    }
  }

  private void bringIn(Desk desk, SessionState state, Path file) {
    Recordings recordings = desk.recordings();
    refuse(file, recordings.problems(state));
    byte[] bytes = ReadFile.RECORDING.bytes(file);
    Recordings.Read read =
        recordings.read(state, file.getFileName().toString(), bytes, trail, version);
    if (read instanceof Recordings.Read.Refused refused) {
      refuse(file, refused.problems());
      return;
    }
    Settling settling = answered(((Recordings.Read.Table) read).settling());
    show(settling);
    settling = asked(settling);
    Sessions.Result.Done taken = done(recordings.take(settling, !noPositions));
    long laps = settling.rows().stream().filter(row -> row.match().taken()).count();
    if (!taken.written().isEmpty()) {
      say(SettlingWords.say("taken", settling.fileName(), laps));
      say(SettlingWords.say(noPositions ? "positions.none" : "positions.kept"));
      say(SettlingWords.say("keeps"));
    }
  }

  private static void refuse(Path file, List<Problem> problems) {
    if (!problems.isEmpty()) {
      throw new Complaint(
          ExitCode.BAD_INPUT, file + ": " + String.join(" ", Problems.sentences(problems)));
    }
  }

  /** With what was answered beforehand. */
  private Settling answered(Settling settling) {
    Settling now = settling;
    for (String typed : settle) {
      Matcher parts = SETTLED.matcher(typed.strip());
      Optional<Settling.Answer> answer =
          parts.matches() ? answer(parts.group(2)) : Optional.empty();
      if (answer.isEmpty()) {
        throw complaint(List.of(Problem.of(RecordingFault.NOT_AN_ANSWER, "", typed)));
      }
      int pass = Integer.parseInt(parts.group(1));
      List<Problem> problems = now.problems(pass, answer.get());
      if (!problems.isEmpty()) {
        throw complaint(problems);
      }
      now = now.with(pass, answer.get());
    }
    return now;
  }

  private static Optional<Settling.Answer> answer(String typed) {
    String word = typed.strip().toLowerCase(Locale.ROOT);
    Matcher lap = LAP.matcher(word);
    if (lap.matches()) {
      return Optional.of(Settling.Answer.lap(Integer.parseInt(lap.group(1))));
    }
    return switch (word) {
      case "keep" -> Optional.of(Settling.Answer.KEEP);
      case "out" -> Optional.of(Settling.Answer.LEAVE_OUT);
      case "none" -> Optional.of(Settling.Answer.NO_LAP);
      default -> Optional.empty();
    };
  }

  private void show(Settling settling) {
    List<SettlingRow> rows = settling.rows();
    List<String> lines = new ArrayList<>();
    lines.add(
        SettlingWords.say(
            settling.planned() ? "by.plan" : "by.book", settling.trail(), settling.version()));
    if (!settling.line()) {
      lines.add(SettlingWords.say("no.line"));
    }
    lines.add(SettlingWords.offset(settling.offset()));
    if (settling.again()) {
      lines.add(SettlingWords.say("again"));
    }
    lines.addAll(SettlingWords.lines(rows));
    lines.add(SettlingWords.sum(rows));
    if (settling.warmUps() > 0) {
      lines.add(SettlingWords.say("warm", settling.warmUps()));
    }
    lines.add(SettlingWords.say("recorder"));
    lines.forEach(this::say);
  }

  /** Asks about each pass that waits, in the order of the table. */
  private Settling asked(Settling settling) {
    Settling now = settling;
    while (now.waiting() > 0) {
      SettlingRow row =
          now.rows().stream().filter(each -> each.match().waits()).findFirst().orElseThrow();
      Optional<String> typed = setting().terminal().answer(SettlingWords.ask(row) + " ");
      if (typed.isEmpty() || typed.get().isBlank()) {
        say(SettlingWords.say("settle", row.pass()));
        throw complaint(List.of(Problem.of(RecordingFault.WAITS, "", now.waiting())));
      }
      Optional<Settling.Answer> answer = answer(typed.get());
      if (answer.isEmpty()) {
        complain(
            Problems.sentence(Problem.of(RecordingFault.NOT_AN_ANSWER, "", typed.get().strip())));
        continue;
      }
      List<Problem> problems = now.problems(row.pass(), answer.get());
      if (problems.isEmpty()) {
        now = now.with(row.pass(), answer.get());
      } else {
        Problems.sentences(problems).forEach(this::complain);
      }
    }
    return now;
  }
}
