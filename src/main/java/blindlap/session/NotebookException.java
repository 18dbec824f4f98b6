package blindlap.session;

import blindlap.fault.Problem;
import blindlap.fault.Told;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The notebook file cannot be used; {@code wording} says why in one sentence. */
public final class NotebookException extends RuntimeException implements Told {
  private static final long serialVersionUID = 2L;

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
  private final NotebookTrouble trouble;
  private final List<String> details;
  private final @Nullable Damage damage;

  /**
   * @param details what the sentence needs, the file first
   */
  public NotebookException(
      Kind kind, NotebookTrouble trouble, @Nullable Throwable cause, Object... details) {
    this(kind, Problem.of(trouble, "", details).details(), trouble, null, cause);
  }

  private NotebookException(
      Kind kind,
      List<String> details,
      NotebookTrouble trouble,
      @Nullable Damage damage,
      @Nullable Throwable cause) {
    super(trouble + (damage == null ? " " : " " + damage + " ") + details, cause);
    this.kind = kind;
    this.details = details;
    this.trouble = trouble;
    this.damage = damage;
  }

  /**
   * A damaged file.
   *
   * @param details what the words for the damage need
   */
  public static NotebookException damaged(
      Path file, @Nullable Throwable cause, Damage damage, Object... details) {
    List<String> all = new java.util.ArrayList<>(List.of(file.toString()));
    all.addAll(Problem.of(damage, "", details).details());
    return new NotebookException(Kind.DAMAGED, all, NotebookTrouble.DAMAGED, damage, cause);
  }

  public Kind kind() {
    return kind;
  }

  /** Of a damage: the file, and the file as it is typed in a command. */
  @Override
  public Problem problem() {
    if (damage == null) {
      return new Problem(trouble, "", details);
    }
    String file = details.get(0);
    String typed = file.contains(" ") ? "\"" + file + "\"" : file;
    return Problem.of(trouble, "", file, typed);
  }

  /** What is damaged, if the file is. */
  @Override
  public @Nullable Problem behind() {
    return damage == null ? null : new Problem(damage, "", details.subList(1, details.size()));
  }
}
