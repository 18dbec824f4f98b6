package blindlap.command;

import blindlap.fault.Problem;
import blindlap.fault.TextFault;
import blindlap.fault.TypedText;
import blindlap.wording.day.Problems;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Files that a command was given, whole; one that is too large is refused by its size. */
enum ReadFile {
  PLAN(1_000_000),
  /** Laps of a day, or of old days. */
  LAPS(10_000_000),
  /** What was typed from a helper's sheet. */
  SHEET(1_000_000),
  /** One file of a data package. */
  PACKAGE(50_000_000),
  /** A trail as GeoJSON. */
  TRAIL(16_000_000),
  /** A track. */
  RECORDING(100_000_000);

  private final int most;

  ReadFile(int most) {
    this.most = most;
  }

  /** The bytes of a file. */
  byte[] bytes(Path file) {
    if (Files.isDirectory(file)) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE,
          file + " is a folder, where a file is wanted. Nothing was changed.");
    }
    try {
      long size = Files.size(file);
      if (size > most) {
        throw tooLarge(file, size);
      }
      // What grows meanwhile, or has no size (a device, a pipe), is bounded as it is read.
      try (InputStream in = Files.newInputStream(file)) {
        byte[] bytes = in.readNBytes(most + 1);
        if (bytes.length > most) {
          throw tooLarge(file, bytes.length);
        }
        return bytes;
      }
    } catch (NoSuchFileException e) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE, "There is no file " + file + ". Nothing was changed.");
    } catch (IOException e) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE, "The file " + file + " cannot be read. Nothing was changed.");
    }
  }

  /**
   * The text of a file, or of standard input for {@code -}.
   *
   * @param input standard input
   */
  String text(Path file, InputStream input) {
    if (!file.toString().equals("-")) {
      return text(file);
    }
    try {
      byte[] bytes = input.readNBytes(most + 1);
      if (bytes.length > most) {
        throw tooLarge(file, bytes.length);
      }
      return decoded(file, bytes);
    } catch (IOException e) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE, "Standard input cannot be read. Nothing was changed.");
    }
  }

  private Complaint tooLarge(Path file, long size) {
    return refused(Problem.of(TextFault.FILE_TOO_LARGE, file.toString(), size, most));
  }

  /** The text of a file. */
  String text(Path file) {
    return decoded(file, bytes(file));
  }

  private static String decoded(Path file, byte[] bytes) {
    return TypedText.decoded(bytes)
        .orElseThrow(() -> refused(Problem.of(TextFault.NOT_UTF8, file.toString())));
  }

  private static Complaint refused(Problem problem) {
    return new Complaint(ExitCode.BAD_INPUT, Problems.sentence(problem));
  }
}
