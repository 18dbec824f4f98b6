package blindlap.command;

import java.util.List;

/** Ends a command with sentences for the user and an exit code. */
final class Complaint extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final int exitCode;

  Complaint(int exitCode, List<String> sentences) {
    super(String.join(System.lineSeparator(), sentences));
    this.exitCode = exitCode;
  }

  Complaint(int exitCode, String sentence) {
    this(exitCode, List.of(sentence));
  }

  int exitCode() {
    return exitCode;
  }
}
