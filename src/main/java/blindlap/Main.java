package blindlap;

import blindlap.command.Blindlap;
import blindlap.command.CommandSetting;
import blindlap.command.ConsoleTerminal;
import blindlap.desk.Desk;
import blindlap.desk.MistakeLog;
import blindlap.desk.RememberedWindow;
import blindlap.desk.SafeKeeping;
import blindlap.phone.PhoneMaker;
import blindlap.phone.PhoneServer;
import blindlap.sample.Demo;
import blindlap.screen.BlindlapApp;
import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.session.NotebookException;
import blindlap.session.NotebookFiles;
import blindlap.session.NotebookTrouble;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.SecureRandom;
import java.time.Clock;
import org.jspecify.annotations.Nullable;

/**
 * The composition root: the only place that knows the clock, the secure source and the environment.
 */
public final class Main {
  private static final SecureRandom RANDOM = new SecureRandom();

  private static final NotebookFiles FILES =
      new SqliteFiles(Clock.systemDefaultZone(), () -> random(16));

  private static final MistakeLog MISTAKES =
      new MistakeLog(
          defaultNotebook().resolveSibling("mistakes.log"), Clock.systemUTC(), Blindlap.version());

  private Main() {}

  public static void main(String[] args) {
    // Read once by the platform's HTTP server: a phone need not wait 40 ms for an answer's body.
    System.setProperty("sun.net.httpserver.nodelay", "true");
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    int code = Blindlap.run(setting(), out, err, args);
    out.flush();
    err.flush();
    System.exit(code);
  }

  private static CommandSetting setting() {
    return new CommandSetting(
        Main::open,
        Main::demo,
        defaultNotebook(),
        new ConsoleTerminal(),
        FILES,
        Main::window,
        Main::phones,
        MISTAKES);
  }

  private static boolean window(Path notebook) {
    if (!display()) {
      return false;
    }
    BlindlapApp.show(
        Main::open,
        new SafeKeeping(FILES, notebook),
        System::nanoTime,
        MISTAKES,
        new RememberedWindow(defaultNotebook().resolveSibling("window.properties")),
        Main::phones,
        Main::samples);
    return true;
  }

  /** The notebook of invented days, beside the usual one; made whole or not at all. */
  private static Path samples() throws IOException {
    Path file = defaultNotebook().resolveSibling("samples.blindlap");
    if (!Files.exists(file)) {
      dataFolder(file);
      Path making = Files.createTempDirectory(file.getParent(), "samples-");
      Path made = making.resolve("samples.blindlap");
      new Demo(Main::demo, line -> {}).days(made);
      Files.move(made, file, StandardCopyOption.ATOMIC_MOVE);
      // The closed notebook has left an empty journal.
      Files.deleteIfExists(making.resolve("samples.blindlap-journal"));
      Files.deleteIfExists(making);
    }
    return file;
  }

  private static Desk demo(Path file, Clock clock, SealingSources sources, SecureBytes ids) {
    return new Desk(
        SqliteNotebook.open(file, ids.exactly(16), clock.instant()),
        clock,
        sources,
        SealParameters.standard(),
        ids);
  }

  /** Only X11 and Wayland can be absent; other systems always have a display. */
  private static boolean display() {
    String system = System.getProperty("os.name", "").toLowerCase(java.util.Locale.ROOT);
    if (system.contains("win") || system.contains("mac")) {
      return true;
    }
    return isSet(System.getenv("DISPLAY")) || isSet(System.getenv("WAYLAND_DISPLAY"));
  }

  private static boolean isSet(@Nullable String variable) {
    return variable != null && !variable.isBlank();
  }

  private static Desk open(Path file) {
    SecureBytes random = Main::random;
    Clock clock = Clock.systemDefaultZone();
    requireTemporaryFolder();
    if (file.equals(defaultNotebook())) {
      dataFolder(file);
    }
    return new Desk(
        SqliteNotebook.open(file, random.exactly(16), clock.instant()),
        clock,
        SealingSources.allFrom(random),
        SealParameters.standard(),
        random);
  }

  private static PhoneMaker phones(Desk desk) {
    return new Networks(
        session ->
            new PhoneServer(
                desk.phoneDays(),
                desk.phoneBook(),
                session,
                desk.clock(),
                System::nanoTime,
                Main::random));
  }

  /** The database's own library is unpacked there, and fails with pages of text if it cannot be. */
  private static void requireTemporaryFolder() {
    Path folder = Path.of(System.getProperty("java.io.tmpdir", ""));
    if (!Files.isDirectory(folder) || !Files.isWritable(folder)) {
      throw new NotebookException(
          NotebookException.Kind.OTHER, NotebookTrouble.NO_TEMPORARY_FOLDER, null, folder);
    }
  }

  private static void dataFolder(Path file) {
    Path folder = java.util.Objects.requireNonNull(file.getParent());
    try {
      // Without a home Java says "?", and a relative folder of that name helps nobody.
      if (!folder.isAbsolute()) {
        throw new IOException("no home");
      }
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new NotebookException(
          NotebookException.Kind.NOT_FOUND, NotebookTrouble.NO_DATA_FOLDER, e, folder);
    }
  }

  private static byte[] random(int count) {
    byte[] bytes = new byte[count];
    RANDOM.nextBytes(bytes);
    return bytes;
  }

  /** The notebook in the user's data folder, after each system's custom. */
  private static Path defaultNotebook() {
    String home = System.getProperty("user.home");
    String system = System.getProperty("os.name", "").toLowerCase(java.util.Locale.ROOT);
    String data = System.getenv("XDG_DATA_HOME");
    String local = System.getenv("LOCALAPPDATA");
    Path folder;
    if (system.contains("win") && local != null) {
      folder = Path.of(local);
    } else if (system.contains("mac")) {
      folder = Path.of(home, "Library", "Application Support");
    } else if (data != null && !data.isBlank()) {
      folder = Path.of(data);
    } else {
      folder = Path.of(home, ".local", "share");
    }
    return folder.resolve("blindlap").resolve("notebook.blindlap");
  }
}
