package blindlap.compute;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Runs check files, or all {@code .json} files of folders, against the calculations. */
public final class CheckRun {
  /** Of one file of requests or of checks. */
  public static final int MOST_BYTES = 10_000_000;

  private final Calculations calculations;

  public CheckRun(Calculations calculations) {
    this.calculations = calculations;
  }

  /**
   * Checks of one kind.
   *
   * @param passed how many passed
   * @param failed how many fell short or could not be computed
   */
  public record Tally(int passed, int failed) {
    private static final Tally NONE = new Tally(0, 0);

    private Tally and(Tally other) {
      return new Tally(passed + other.passed, failed + other.failed);
    }

    @Override
    public String toString() {
      return passed + " passed, " + failed + " failed";
    }
  }

  /**
   * What a run found.
   *
   * @param outside checks whose figures come from outside
   * @param own reference vectors of our own
   * @param notChecks files that hold no check that could be read; they count as failed
   * @param notBuilt checks that ask for a calculation that this program has not; no failures
   * @param lines one line per check that failed or is not built
   */
  public record Report(Tally outside, Tally own, int notChecks, int notBuilt, List<String> lines) {
    private static final Report NOTHING = new Report(Tally.NONE, Tally.NONE, 0, 0, List.of());

    public Report {
      lines = List.copyOf(lines);
    }

    public int passed() {
      return outside.passed() + own.passed();
    }

    public int failed() {
      return outside.failed() + own.failed() + notChecks;
    }

    /** Whether there was nothing to check. */
    public boolean empty() {
      return passed() + failed() + notBuilt == 0;
    }

    /** The kinds that there were, each counted apart, and last all together. */
    public List<String> closing() {
      List<String> closing = new ArrayList<>();
      if (!outside.equals(Tally.NONE)) {
        closing.add("outside checks: " + outside);
      }
      if (!own.equals(Tally.NONE)) {
        closing.add("own reference vectors: " + own);
      }
      if (notBuilt > 0) {
        closing.add("not built: " + notBuilt);
      }
      closing.add(new Tally(passed(), failed()).toString());
      return closing;
    }

    private Report and(Report other) {
      List<String> both = new ArrayList<>(lines);
      both.addAll(other.lines);
      return new Report(
          outside.and(other.outside),
          own.and(other.own),
          notChecks + other.notChecks,
          notBuilt + other.notBuilt,
          both);
    }

    private static Report noCheck(String line) {
      return new Report(Tally.NONE, Tally.NONE, 1, 0, List.of(line));
    }
  }

  /**
   * Runs all checks; folders are walked in alphabetical order.
   *
   * @throws IOException if a file or folder cannot be read
   */
  public Report over(List<Path> filesAndFolders) throws IOException {
    Report report = Report.NOTHING;
    for (Path file : files(filesAndFolders)) {
      report = report.and(check(file));
    }
    return report;
  }

  /** Files as they are, folders replaced by the {@code .json} files below them, sorted. */
  private static List<Path> files(List<Path> filesAndFolders) throws IOException {
    List<Path> files = new ArrayList<>();
    for (Path path : filesAndFolders) {
      if (!Files.isDirectory(path)) {
        files.add(path);
        continue;
      }
      try (Stream<Path> below = Files.walk(path)) {
        below
            .filter(each -> each.toString().endsWith(".json") && Files.isRegularFile(each))
            .sorted()
            .forEach(files::add);
      }
    }
    return files;
  }

  private Report check(Path file) throws IOException {
    List<CheckFile> checks;
    try {
      byte[] bytes = bytes(file);
      if (bytes.length > MOST_BYTES) {
        return Report.noCheck(
            file + ": is larger than the " + MOST_BYTES / 1_000_000 + " MB that checks may have.");
      }
      checks =
          CheckFile.parse(
              StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
    } catch (RequestException e) {
      return Report.noCheck(file + ": " + e.sentence());
    } catch (CharacterCodingException e) {
      return Report.noCheck(file + ": is not text in UTF-8.");
    }
    Report report = Report.NOTHING;
    for (CheckFile check : checks) {
      report = report.and(run(file + ": " + check.id() + ": ", check));
    }
    return report;
  }

  private Report run(String where, CheckFile check) {
    String calculation = check.request().calculation();
    if (!calculations.names().contains(calculation)) {
      String line = where + "not built: there is no calculation \"" + calculation + "\" here.";
      return new Report(Tally.NONE, Tally.NONE, 0, 1, List.of(line));
    }
    Optional<String> why = shortfall(check);
    Tally one = new Tally(why.isEmpty() ? 1 : 0, why.isEmpty() ? 0 : 1);
    return new Report(
        check.own() ? Tally.NONE : one,
        check.own() ? one : Tally.NONE,
        0,
        0,
        why.map(reason -> where + reason).stream().toList());
  }

  /** No more than one byte above the bound, whatever the file says of its size. */
  private static byte[] bytes(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(MOST_BYTES + 1);
    }
  }

  /** What falls short, in one line; empty if the check passes. */
  private Optional<String> shortfall(CheckFile check) {
    try {
      List<String> places = check.shortfalls(calculations.answer(check.request()));
      if (places.isEmpty()) {
        return Optional.empty();
      }
      String more = places.size() == 1 ? "" : " (and " + (places.size() - 1) + " more)";
      return Optional.of(places.get(0) + more);
    } catch (RequestException e) {
      return Optional.of(e.sentence());
    }
  }
}
