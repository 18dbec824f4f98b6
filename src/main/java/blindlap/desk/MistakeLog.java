package blindlap.desk;

import blindlap.fault.Told;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * What nobody foresaw, kept for whoever mends the program. The file lies on the rider's machine, so
 * it holds kinds of exceptions and places in the program only: no message, which may quote what was
 * typed, drawn or decrypted.
 */
public final class MistakeLog {
  private static final long MOST_BYTES = 1_000_000;
  private static final int MOST_CAUSES = 8;
  private static final int MOST_FRAMES = 60;
  private static final String OURS = "blindlap.";

  private final Path file;
  private final Clock clock;
  private final String version;

  /**
   * @param file where it is kept; made when first needed
   * @param version of the program
   */
  public MistakeLog(Path file, Clock clock, String version) {
    this.file = file;
    this.clock = clock;
    this.version = version;
  }

  /** True for what the program foresaw: it has a sentence of its own. */
  public static boolean foreseen(Throwable why) {
    return why instanceof Told;
  }

  /**
   * Keeps a mistake, unless it was foreseen.
   *
   * @return the file it stands in; empty if there is none, or none can be written
   */
  public synchronized Optional<Path> keep(Throwable why) {
    if (foreseen(why)) {
      return Optional.empty();
    }
    try {
      Path folder = file.toAbsolutePath().getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      boolean full = Files.exists(file) && Files.size(file) > MOST_BYTES;
      Files.writeString(
          file,
          entry(why),
          StandardCharsets.UTF_8,
          StandardOpenOption.CREATE,
          full ? StandardOpenOption.TRUNCATE_EXISTING : StandardOpenOption.APPEND);
      return Optional.of(file);
    } catch (IOException | RuntimeException nowhere) {
      return Optional.empty();
    }
  }

  private String entry(Throwable why) {
    StringBuilder out = new StringBuilder();
    out.append(clock.instant().truncatedTo(ChronoUnit.SECONDS));
    out.append(" blindlap ").append(version);
    out.append(", Java ").append(Runtime.version().feature()).append('\n');
    Throwable each = why;
    for (int i = 0; each != null && i < MOST_CAUSES; i++) {
      out.append(i == 0 ? "" : "because of ").append(each.getClass().getName()).append('\n');
      frames(each, out);
      each = each.getCause();
    }
    return out.append('\n').toString();
  }

  /** The first place, whosever it is, and those of this program. */
  private static void frames(Throwable why, StringBuilder out) {
    StackTraceElement[] frames = why.getStackTrace();
    int kept = 0;
    for (int i = 0; i < frames.length && kept < MOST_FRAMES; i++) {
      if (i == 0 || frames[i].getClassName().startsWith(OURS)) {
        out.append("  ").append(frames[i].getClassName()).append('.');
        out.append(frames[i].getMethodName()).append(':');
        out.append(frames[i].getLineNumber()).append('\n');
        kept++;
      }
    }
  }
}
