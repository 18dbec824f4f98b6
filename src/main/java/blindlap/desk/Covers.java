package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.seal.Cover;
import blindlap.seal.OpenKey;
import blindlap.session.Notebook;
import blindlap.session.SessionState;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** Opens covered orders, a place at a time; it keeps nothing and prints nothing. */
final class Covers {
  private final Notebook notebook;

  Covers(Notebook notebook) {
    this.notebook = notebook;
  }

  /** A place, or why it stays covered. */
  record Opened<T>(@Nullable T value, List<Problem> problems) {
    T orElseThrow() {
      return java.util.Objects.requireNonNull(value);
    }

    /** Says nothing of what is inside. */
    @Override
    public String toString() {
      return "Opened[]";
    }
  }

  /** What is to be mounted for a stint; 0 = the warm-up. */
  Opened<Integer> setup(SessionState state, int stint) {
    Cover cover = notebook.cover(state.id()).orElse(null);
    if (cover == null || cover.stints() < stint) {
      return closed(DeskFault.NO_COVER);
    }
    OptionalInt setup = cover.setup(stint);
    return setup.isPresent()
        ? new Opened<>(setup.getAsInt(), List.of())
        : closed(DeskFault.COVER_CHANGED);
  }

  /** The whole key. */
  Opened<OpenKey> key(SessionState state) {
    Cover cover = notebook.cover(state.id()).orElse(null);
    if (cover == null) {
      return closed(DeskFault.NO_COVER);
    }
    Optional<OpenKey> key = cover.key();
    return key.isPresent() ? new Opened<>(key.get(), List.of()) : closed(DeskFault.COVER_CHANGED);
  }

  private static <T> Opened<T> closed(DeskFault fault) {
    return new Opened<>(null, List.of(Problem.of(fault, "")));
  }
}
