package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.SeriesBook;
import blindlap.desk.SeriesReports;
import blindlap.review.SeriesFinding;
import blindlap.wording.SeriesWords;
import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Lists series, or says what one found. */
@Command(
    name = "series",
    description = {
      "Lists the series of a notebook and repeats that were decided after seeing a result; with"
          + " SERIES says what that one found.",
      "A plan joins a series with its fields series and series_sessions."
    })
final class SeriesCommand extends SessionCommand {
  @Parameters(arity = "0..1", paramLabel = "SERIES", description = "Id of a series.")
  @Nullable String series;

  @Option(names = "--json", description = "Print the numbers of a series as JSON.")
  boolean json;

  @Option(
      names = "--report",
      paramLabel = "DIR",
      description = "Write the report of a series at its end: a PDF, and one HTML file.")
  @Nullable Path report;

  @Option(
      names = "--package",
      paramLabel = "DIR",
      description =
          "Write the data package of a series at its end: the package of every session, the answer,"
              + " and scripts for Python and R that compute every number of it again.")
  @Nullable Path packaged;

  @Option(names = "--black", description = "The report black on white instead of colour.")
  boolean black;

  @Option(
      names = "--next",
      description =
          "Make the plan of the next session of SERIES, as a draft of the notebook: what the series"
              + " declared, and everything else but the day as its latest session has it.")
  boolean next;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "With --next: writes a plan file instead of a draft. An existing file is kept.")
  @Nullable Path out;

  SeriesCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    check();
    try (Desk desk = open()) {
      String wanted = series;
      if (wanted != null && next) {
        List<String> lines = PlanLike.next(desk, wanted, out);
        did(out == null ? Done.DRAFTED : Done.WRITTEN);
        lines.forEach(this::say);
        return ExitCode.DONE;
      }
      if (wanted == null) {
        list(desk);
        return ExitCode.DONE;
      }
      SeriesFinding finding =
          desk.series()
              .finding(wanted)
              .orElseThrow(
                  () -> new Complaint(ExitCode.BAD_INPUT, SeriesWords.say("unknown", wanted)));
      if (report != null || packaged != null) {
        written(desk, wanted);
        return ExitCode.DONE;
      }
      if (json) {
        say(desk.series().json(wanted).orElseThrow());
        return ExitCode.DONE;
      }
      new SeriesWords(finding).lines().forEach(this::say);
      say(Words.of("cautions").say("trust.series"));
      return ExitCode.DONE;
    }
  }

  private void check() {
    if (next && series == null) {
      throw new Complaint(ExitCode.BAD_INPUT, SeriesWords.say("next.which"));
    }
    if (series == null && (json || report != null || packaged != null)) {
      throw new Complaint(ExitCode.BAD_INPUT, SeriesWords.say("which"));
    }
    if (next && (json || black || report != null || packaged != null)) {
      throw new Complaint(ExitCode.BAD_INPUT, SeriesWords.say("next.alone"));
    }
    if (out != null && !next) {
      throw new Complaint(ExitCode.BAD_INPUT, SeriesWords.say("next.out"));
    }
    AskedReport.check(report != null, report != null || packaged != null, json, black);
  }

  private void written(Desk desk, String wanted) {
    Path folder = report;
    if (folder != null) {
      made(desk.seriesReports().of(wanted, black), folder)
          .forEach(name -> say("Report written to " + folder.resolve(name)));
    }
    Path into = packaged;
    if (into != null) {
      made(desk.seriesPackages().of(wanted), into);
      say(SeriesWords.say("package.written", into, into.resolve("recompute-series.py")));
    }
  }

  private Set<String> made(SeriesReports.Result result, Path folder) {
    if (result instanceof SeriesReports.Result.Refused refused) {
      throw complaint(refused.problems());
    }
    Map<String, byte[]> files = ((SeriesReports.Result.Made) result).files();
    Files.write(folder, files);
    did(Done.WRITTEN);
    return files.keySet();
  }

  private void list(Desk desk) {
    List<SeriesBook.Line> lines = desk.series().all();
    if (lines.isEmpty()) {
      say(SeriesWords.say("list.none"));
    }
    for (SeriesBook.Line line : lines) {
      say(
          SeriesWords.say(
              "list",
              line.id(),
              line.question(),
              SeriesWords.progress(line.progress()),
              line.abandoned()));
    }
    for (SeriesBook.Repeat repeat : desk.series().repeats()) {
      say(
          SeriesWords.say(
              "repeat",
              repeat.later().id().brief(),
              repeat.later().day(),
              repeat.earlier().id().brief(),
              repeat.earlier().day()));
    }
  }
}
