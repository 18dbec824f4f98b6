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
   * What a run found.
   *
   * @param passed number of checks that passed
   * @param failed number of checks that fell short or could not be computed
   * @param lines one line per failed check
   */
  public record Report(int passed, int failed, List<String> lines) {
    public Report {
      lines = List.copyOf(lines);
    }

    /** The closing line. */
    public String closing() {
      return passed + " passed, " + failed + " failed";
    }
  }

  /**
   * Runs all checks; folders are walked in alphabetical order.
   *
   * @throws IOException if a file or folder cannot be read
   */
  public Report over(List<Path> filesAndFolders) throws IOException {
    List<String> lines = new ArrayList<>();
    int passed = 0;
    int failed = 0;
    for (Path file : files(filesAndFolders)) {
      List<String> failures = new ArrayList<>();
      int checks = check(file, failures);
      failed += failures.size();
      passed += checks - failures.size();
      lines.addAll(failures);
    }
    return new Report(passed, failed, lines);
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

  /** Number of checks in the file; adds one line to {@code failures} per check that fails. */
  private int check(Path file, List<String> failures) throws IOException {
    List<CheckFile> checks;
    try {
      byte[] bytes = bytes(file);
      if (bytes.length > MOST_BYTES) {
        failures.add(
            file + ": is larger than the " + MOST_BYTES / 1_000_000 + " MB that checks may have.");
        return 1;
      }
      checks =
          CheckFile.parse(
              StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
    } catch (RequestException e) {
      failures.add(file + ": " + e.sentence());
      return 1;
    } catch (CharacterCodingException e) {
      failures.add(file + ": is not text in UTF-8.");
      return 1;
    }
    for (CheckFile check : checks) {
      shortfall(check).ifPresent(why -> failures.add(file + ": " + check.id() + ": " + why));
    }
    return checks.size();
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
