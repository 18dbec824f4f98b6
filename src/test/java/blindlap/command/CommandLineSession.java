package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.MistakeLog;
import blindlap.phone.FakeMaker;
import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Types commands as a user would, on a real notebook in a temporary folder. */
final class CommandLineSession {
  /** Few rounds keep tests quick; the product's own number is tested with the seal. */
  private static final SealParameters QUICK = new SealParameters(1_000);

  final Path folder;
  final Path notebook;
  private final SplittableRandom random;
  private final SecureBytes order;
  private String phrase = "";
  private Instant now = Instant.parse("2026-11-14T08:00:00Z");

  /** An answer that never comes. */
  static final String NOBODY = "nobody is there";

  static final String SHOWN = "shown this once:";

  /** What a command printed and answered. */
  record Ran(int code, String out, String err) {
    /** The word after a marker in the output. */
    String after(String marker) {
      int at = out.indexOf(marker);
      return out.substring(at + marker.length()).strip().split("\\s+")[0];
    }
  }

  CommandLineSession(Path folder) {
    this(folder, 42);
  }

  /** Another seed gives other session ids, orders and phrases. */
  CommandLineSession(Path folder, long seed) {
    this.random = new SplittableRandom(seed);
    this.order = this::bytes;
    this.folder = folder;
    this.notebook = folder.resolve("test.blindlap");
  }

  /** Only the order follows from the seed; everything else is the same for all seeds. */
  static CommandLineSession ofOrder(Path folder, long orderSeed) {
    return new CommandLineSession(folder, new SplittableRandom(orderSeed));
  }

  private CommandLineSession(Path folder, SplittableRandom orders) {
    this.random = new SplittableRandom(42);
    this.order =
        count -> {
          byte[] bytes = new byte[count];
          orders.nextBytes(bytes);
          return bytes;
        };
    this.folder = folder;
    this.notebook = folder.resolve("test.blindlap");
  }

  /** Without a display no window opens. */
  boolean display;

  /** The notebooks on which windows were opened. */
  final List<Path> windows = new ArrayList<>();

  /** Phones of all sessions, without a network. */
  final FakeMaker phones = new FakeMaker();

  /** What is typed while phones are on, line by line as it comes; null if it is "off" at once. */
  @Nullable BlockingQueue<String> typedBeside;

  private Optional<String> beside() {
    BlockingQueue<String> lines = typedBeside;
    try {
      return Optional.of(lines == null ? "off" : lines.take()).filter(l -> !l.equals(NOBODY));
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Lets the clock of later commands run on. */
  void later(long seconds) {
    now = now.plusSeconds(seconds);
  }

  /** True if what was printed is on disk once that is asked for. */
  boolean settled = true;

  /** Done when that is asked for. */
  Runnable atSettling = () -> {};

  /** True if someone sits at the terminal. */
  boolean present = true;

  /** How long what was shown stayed on the screen, each time it was taken away. */
  final List<java.time.Duration> blanked = new ArrayList<>();

  /** Lines to answer with, the first first; after them the words of the phrase that is in sight. */
  final Deque<String> answers = new ArrayDeque<>();

  /** What is answered when it is asked whether the helper has the machine. */
  final Deque<String> handsOver = new ArrayDeque<>();

  /** Told what is asked. */
  Consumer<String> asked = prompt -> {};

  /** What the terminal shows. */
  private StringWriter sight = new StringWriter();

  /** Types the phrase where it is asked for, and of one that is shown the words that are asked. */
  private final class Typist implements CommandSetting.Terminal {
    @Override
    public String secret(String prompt) {
      return phrase;
    }

    @Override
    public Optional<String> answer(String prompt) {
      asked.accept(prompt);
      if (prompt.startsWith("in ID")) {
        return beside();
      }
      if (prompt.contains("Type yes or no")) {
        return Optional.of(handsOver.isEmpty() ? "yes" : handsOver.pop())
            .filter(line -> !line.equals(NOBODY));
      }
      if (!answers.isEmpty()) {
        return Optional.of(answers.pop()).filter(line -> !line.equals(NOBODY));
      }
      String seen = sight.toString();
      String shown = seen.contains(SHOWN) ? shownPhrase(seen) : "";
      return Optional.of(
          Pattern.compile("([1-6])(?:st|nd|rd|th)")
              .matcher(prompt)
              .results()
              .map(found -> shown.split(" ")[found.group(1).charAt(0) - '1'])
              .collect(Collectors.joining(" ")));
    }

    @Override
    public void blankAfter(java.time.Duration time) {
      blanked.add(time);
    }

    @Override
    public boolean settled() {
      atSettling.run();
      return settled;
    }

    @Override
    public boolean present() {
      return present;
    }
  }

  /** The phrase that a commit has shown. */
  static String shownPhrase(String out) {
    return out.substring(out.lastIndexOf(SHOWN) + SHOWN.length())
        .strip()
        .lines()
        .findFirst()
        .orElse("");
  }

  void types(String helperPhrase) {
    phrase = helperPhrase;
  }

  /** The phrase that is typed. */
  String phrase() {
    return phrase;
  }

  Ran run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    sight = out;
    int code = run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    return new Ran(code, out.toString(), err.toString());
  }

  /** Runs a line word for word: its notebook, unless it names one, is the user's own. */
  Ran runAsTyped(List<String> arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    sight = out;
    int code =
        Blindlap.run(
            setting(),
            new PrintWriter(out, true),
            new PrintWriter(err, true),
            arguments.toArray(String[]::new));
    return new Ran(code, out.toString(), err.toString());
  }

  /** The same with standard output and standard error of the caller. */
  int run(PrintWriter out, PrintWriter err, String... arguments) {
    List<String> all = new ArrayList<>(Arrays.asList(arguments));
    boolean bare = List.of("plan", "passes", "--help").contains(all.get(0));
    if (!all.contains("--notebook") && !bare) {
      all.add("--notebook");
      all.add(notebook.toString());
    }
    return Blindlap.run(setting(), out, err, all.toArray(String[]::new));
  }

  /** Names of all commands, each with the names of its options. */
  Map<String, Set<String>> commands() {
    Map<String, Set<String>> commands = new TreeMap<>();
    Blindlap.line(setting())
        .getSubcommands()
        .forEach(
            (name, command) -> {
              Set<String> options = new TreeSet<>();
              command.getCommandSpec().options().forEach(o -> options.add(o.longestName()));
              commands.put(name, options);
            });
    return commands;
  }

  CommandSetting setting() {
    Clock clock = Clock.fixed(now, ZoneId.of("Europe/Vienna"));
    SecureBytes bytes = this::bytes;
    return new CommandSetting(
        file -> desk(file, clock, sources(bytes), bytes),
        (file, demoClock, sources, ids) -> desk(file, demoClock, sources, ids),
        notebook,
        new Typist(),
        new SqliteFiles(clock, () -> bytes.exactly(16)),
        file -> display && windows.add(file),
        desk -> phones,
        new MistakeLog(folder.resolve("mistakes.log"), clock, "of a test"));
  }

  /** The desk on the notebook of the commands. */
  Desk desk() {
    SecureBytes bytes = this::bytes;
    return desk(notebook, Clock.fixed(now, ZoneId.of("Europe/Vienna")), sources(bytes), bytes);
  }

  private static Desk desk(Path file, Clock clock, SealingSources sources, SecureBytes ids) {
    return new Desk(
        SqliteNotebook.open(file, ids.exactly(16), clock.instant()), clock, sources, QUICK, ids);
  }

  private SealingSources sources(SecureBytes bytes) {
    return new SealingSources(order, bytes, bytes, bytes, bytes, bytes, bytes);
  }

  private byte[] bytes(int count) {
    byte[] bytes = new byte[count];
    random.nextBytes(bytes);
    return bytes;
  }

  Path file(String name, String text) {
    try {
      return Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /** Commits a plan and answers the session's id; the phrase is typed from then on. */
  String commit(String plan) {
    Ran ran = run("commit", file("plan.yaml", plan).toString());
    if (ran.code() != 0) {
      throw new AssertionError(ran.err());
    }
    if (ran.out().contains("covered: session")) {
      return ran.after("covered: session");
    }
    types(shownPhrase(ran.out()));
    return ran.after("sealed: session");
  }
}
