package blindlap.store;

import blindlap.session.Fact;
import java.nio.file.Path;

/** A process of its own that writes to a notebook: whole sessions, or that one is abandoned. */
final class SessionsChild {
  private SessionsChild() {}

  /** Writes; args: notebook, "add" or "abandon", from, before. */
  public static void main(String[] args) throws Exception {
    Path file = Path.of(args[0]);
    int from = Integer.parseInt(args[2]);
    int before = Integer.parseInt(args[3]);
    if (args[1].equals("add")) {
      ManySessions.add(file, from, before);
      return;
    }
    try (SqliteNotebook notebook = Books.open(file)) {
      for (int number = from; number < before; number++) {
        Books.put(
            notebook,
            ManySessions.session(number),
            new Fact.SessionAbandoned("fog on the hill", ""));
      }
    }
  }
}
