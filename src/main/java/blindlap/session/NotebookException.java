package blindlap.session;

import org.jspecify.annotations.Nullable;

/** The notebook file cannot be used; the message is one sentence for the user. */
public final class NotebookException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Why a file could not be used. */
  public enum Kind {
    NOT_A_NOTEBOOK,
    TOO_NEW,
    LOCKED,
    READ_ONLY,
    FULL,
    DAMAGED,
    NOT_FOUND,
    OTHER
  }

  private final Kind kind;

  public NotebookException(Kind kind, String message) {
    super(message);
    this.kind = kind;
  }

  public NotebookException(Kind kind, String message, @Nullable Throwable cause) {
    super(message, cause);
    this.kind = kind;
  }

  public Kind kind() {
    return kind;
  }
}
