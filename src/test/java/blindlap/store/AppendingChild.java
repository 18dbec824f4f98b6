package blindlap.store;

import blindlap.session.Fact;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A process that appends notes to one session for some seconds while others do the same; it decides
 * again whenever the session has moved on. It prints a line for every entry once it is saved.
 */
final class AppendingChild {
  private AppendingChild() {}

  /** Appends; args: notebook, name, seconds, session. */
  public static void main(String[] args) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    SessionId session = new SessionId(args[3]);
    long movedOn = 0;
    try (SqliteNotebook notebook =
        SqliteNotebook.open(Path.of(args[0]), new SeededBytes(1).next(16), Days.MORNING)) {
      long end = System.nanoTime() + Long.parseLong(args[2]) * 1_000_000_000;
      for (int i = 0; System.nanoTime() < end; i++) {
        Fact note = new Fact.NoteWritten(new LapId(1, 1), args[1] + " " + i);
        Optional<List<StoredEntry>> written = Optional.empty();
        while (written.isEmpty()) {
          written =
              notebook.append(
                  session, notebook.heads(session), List.of(note), Days.MORNING, Days.ZONE);
          movedOn += written.isEmpty() ? 1 : 0;
        }
        out.println("saved " + written.get().get(0).hash().hex());
      }
    }
    out.println("moved on " + movedOn);
  }
}
