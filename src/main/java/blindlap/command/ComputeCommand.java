package blindlap.command;

import blindlap.compute.Calculations;
import blindlap.compute.CheckRun;
import blindlap.compute.ComputeRun;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/**
 * {@code blindlap compute FILE…}: answers calculation requests; {@code --check} runs check files.
 *
 * <p>Exit codes: 0 all well, 1 a check failed, 2 a request cannot be computed (nothing is printed
 * but the reason), 3 a file cannot be read.
 */
@Command(
    name = "compute",
    description = {
      "Recomputes numbers: reads calculation requests as JSON and prints the answers as JSON.",
      "With --check, runs files that hold a request and the answer expected."
    })
public final class ComputeCommand implements Callable<Integer> {
  /** A day's largest request has some thousand numbers. */
  static final int MOST_BYTES = CheckRun.MOST_BYTES;

  private final Calculations calculations;
  private final InputStream input;

  @Spec
  @SuppressWarnings("NullAway.Init") // set by picocli before call()
  private CommandSpec spec;

  @Option(
      names = "--check",
      description =
          "Compare with the expectation in each file; a folder stands for its .json files. Checks"
              + " from outside and own reference vectors are counted apart; one whose calculation"
              + " is not built here is named, and is no failure.")
  private boolean check;

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description = "File with one request or an array of them; - reads standard input.")
  private List<String> files = new ArrayList<>();

  public ComputeCommand(Calculations calculations) {
    this(calculations, System.in);
  }

  /**
   * @param input where {@code -} reads from
   */
  public ComputeCommand(Calculations calculations, InputStream input) {
    this.calculations = calculations;
    this.input = input;
  }

  @Override
  public Integer call() {
    try {
      return check ? check() : compute();
    } catch (NotTextException e) {
      return complain(ExitCode.BAD_INPUT, e.file + ": is not text in UTF-8.");
    } catch (TooLargeException e) {
      return complain(
          ExitCode.BAD_INPUT,
          e.file
              + ": is larger than the "
              + MOST_BYTES / 1_000_000
              + " MB that requests may have.");
    } catch (NoSuchFileException e) {
      return complain(ExitCode.FILE_TROUBLE, e.getFile() + ": there is no such file.");
    } catch (FileSystemException e) {
      return complain(ExitCode.FILE_TROUBLE, e.getFile() + ": cannot be read: " + reason(e));
    } catch (IOException e) {
      return complain(ExitCode.FILE_TROUBLE, "A file cannot be read: " + e.getMessage());
    }
  }

  private int compute() throws IOException {
    List<ComputeRun.Source> sources = new ArrayList<>();
    for (String file : files) {
      sources.add(new ComputeRun.Source(file, read(file)));
    }
    ComputeRun.Outcome outcome = new ComputeRun(calculations).over(sources);
    if (outcome instanceof ComputeRun.Refused refused) {
      return complain(ExitCode.BAD_INPUT, refused.sentence());
    }
    if (outcome instanceof ComputeRun.Computed computed) {
      print(computed.json());
    }
    return ExitCode.DONE;
  }

  private int check() throws IOException {
    if (files.contains("-")) {
      return complain(ExitCode.BAD_INPUT, "--check: reads files and folders, not standard input.");
    }
    CheckRun.Report report = new CheckRun(calculations).over(files.stream().map(Path::of).toList());
    if (report.empty()) {
      return complain(
          ExitCode.BAD_INPUT, String.join(", ", files) + ": holds no check (no .json file).");
    }
    report.lines().forEach(this::print);
    report.closing().forEach(this::print);
    return report.failed() == 0 ? ExitCode.DONE : ExitCode.CHECK_FAILED;
  }

  private String read(String file) throws IOException {
    byte[] bytes = bytes(file);
    if (bytes.length > MOST_BYTES) {
      throw new TooLargeException(file);
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw new NotTextException(file, e);
    }
  }

  /** No more than one byte above the bound, whatever the file says of its size. */
  private byte[] bytes(String file) throws IOException {
    if (file.equals("-")) {
      return input.readNBytes(MOST_BYTES + 1);
    }
    try (InputStream in = Files.newInputStream(Path.of(file))) {
      return in.readNBytes(MOST_BYTES + 1);
    }
  }

  private static String reason(FileSystemException e) {
    return e.getReason() == null ? e.getClass().getSimpleName() : e.getReason();
  }

  private void print(String line) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(line);
    out.flush();
  }

  private int complain(int exitCode, String sentence) {
    PrintWriter err = spec.commandLine().getErr();
    err.println(sentence);
    err.flush();
    return exitCode;
  }

  /** More than anyone asks at once. */
  private static final class TooLargeException extends IOException {
    private static final long serialVersionUID = 1L;

    private final String file;

    TooLargeException(String file) {
      super(file);
      this.file = file;
    }
  }

  /** Bytes that are no text. */
  private static final class NotTextException extends IOException {
    private static final long serialVersionUID = 1L;

    private final String file;

    NotTextException(String file, CharacterCodingException cause) {
      super(file, cause);
      this.file = file;
    }
  }
}
