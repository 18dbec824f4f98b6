package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.MistakeLog;
import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.session.Notebook;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.io.PrintWriter;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Optional;

/**
 * A process that commits one plan after another until it is killed, as {@code commit --yes} does.
 * On standard error it says when an entry is on disk, so that it can be killed right then.
 */
final class CommittingChild {
  private CommittingChild() {}

  /** Commits; args: notebook, plan file. */
  public static void main(String[] args) {
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    Path notebook = Path.of(args[0]);
    CommandSetting setting = setting(notebook);
    int code = 0;
    while (code == 0) {
      code = Blindlap.run(setting, out, err, "commit", "--yes", args[1]);
    }
    System.exit(code);
  }

  private static CommandSetting setting(Path notebook) {
    SecureRandom random = new SecureRandom();
    SecureBytes bytes =
        count -> {
          byte[] next = new byte[count];
          random.nextBytes(next);
          return next;
        };
    Clock clock = Clock.systemDefaultZone();
    return new CommandSetting(
        file ->
            new Desk(
                telling(SqliteNotebook.open(file, bytes.exactly(16), clock.instant())),
                clock,
                SealingSources.allFrom(bytes),
                new SealParameters(1),
                bytes),
        (file, demoClock, sources, ids) -> {
          throw new IllegalStateException("no demo here");
        },
        notebook,
        new ConsoleTerminal(),
        new SqliteFiles(clock, () -> bytes.exactly(16)),
        file -> false,
        desk -> {
          throw new IllegalStateException("no phones here");
        },
        new MistakeLog(notebook.resolveSibling("mistakes.log"), clock, "of a test"));
  }

  /** The notebook, which says on standard error when something was appended. */
  private static Notebook telling(Notebook notebook) {
    return (Notebook)
        Proxy.newProxyInstance(
            CommittingChild.class.getClassLoader(),
            new Class<?>[] {Notebook.class},
            (proxy, method, arguments) -> {
              try {
                Object answer = method.invoke(notebook, arguments);
                if (method.getName().equals("append") && ((Optional<?>) answer).isPresent()) {
                  System.err.println("appended");
                }
                return answer;
              } catch (InvocationTargetException e) {
                throw e.getCause();
              }
            });
  }
}
