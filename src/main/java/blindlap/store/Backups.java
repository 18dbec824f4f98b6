package blindlap.store;

import blindlap.session.Damage;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookId;
import blindlap.session.NotebookReport;
import blindlap.session.NotebookTrouble;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * Backups of a notebook in a folder of their own: whole notebooks, each checked in full before it
 * counts, thinned by {@link BackupRule}. A backup has an id of its own: opened and gone on with, it
 * starts chains of its own beside the original's, and both can still be merged.
 */
public final class Backups {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);
  private static final String END = ".blindlap";

  private final Path notebook;
  private final Path folder;
  private final Clock clock;
  private final Supplier<byte[]> ids;

  /**
   * Backups of one notebook.
   *
   * @param notebook the file
   * @param folder where they go; made when the first is written
   * @param clock names them and says when days begin
   * @param ids 16 random bytes for each
   */
  public Backups(Path notebook, Path folder, Clock clock, Supplier<byte[]> ids) {
    this.notebook = notebook;
    this.folder = folder;
    this.clock = clock;
    this.ids = ids;
  }

  /** The folder beside the notebook that is usual, also of one that is opened through a link. */
  public static Path usualFolder(Path notebook) {
    return NotebookPlace.beside(notebook, "-backups");
  }

  /** True if there are files in the usual folder of a notebook. */
  static boolean areThere(Path notebook) {
    String[] names = usualFolder(notebook).toFile().list();
    return names != null && names.length > 0;
  }

  /**
   * Looks from time to time and makes a backup when something has changed since the last.
   *
   * @param executor does the work, one look at a time
   * @param every pause between two looks
   * @param trouble is told, once for each failed look, why there is no backup
   */
  public ScheduledFuture<?> watch(
      ScheduledExecutorService executor, Duration every, Consumer<NotebookException> trouble) {
    return executor.scheduleWithFixedDelay(
        () -> {
          try {
            ifChanged();
          } catch (NotebookException e) {
            trouble.accept(e);
          }
        },
        every.toMillis(),
        every.toMillis(),
        TimeUnit.MILLISECONDS);
  }

  /**
   * Makes a backup unless the latest one holds the same entries, drafts and trails.
   *
   * @return the new backup; empty if nothing has changed
   * @throws NotebookException if none could be made; those that are there stay
   */
  public synchronized Optional<Path> ifChanged() {
    TreeMap<Instant, Path> there = list();
    if (!there.isEmpty() && holdsTheSame(there.lastEntry().getValue())) {
      return Optional.empty();
    }
    return Optional.of(now());
  }

  /**
   * Makes a backup, and then thins those that are there.
   *
   * @return the new backup
   * @throws NotebookException if none could be made; those that are there stay
   */
  public synchronized Path now() {
    Path target = folder.resolve(name(clock.instant()));
    try {
      NotebookPlace.folder(folder);
      try (Connection connection = openExisting()) {
        Copies.write(connection, target, this::finish);
      }
      thin();
      return target;
    } catch (SQLException e) {
      throw Connections.explain(e, notebook);
    } catch (IOException e) {
      throw Copies.failed(target, e);
    }
  }

  private Connection openExisting() {
    if (Files.notExists(notebook)) {
      throw new NotebookException(
          Kind.NOT_FOUND, NotebookTrouble.NOTHING_TO_BACK_UP, null, notebook);
    }
    return Connections.open(notebook, Connections.BUSY_MILLISECONDS);
  }

  private void finish(Path copy) throws SQLException {
    try (Connection connection = Connections.connect(copy, Connections.BUSY_MILLISECONDS)) {
      NotebookReport report = NotebookCheck.run(connection, new SummaryTable(connection));
      if (!report.sound()) {
        throw NotebookException.damaged(notebook, null, Damage.NO_BACKUP, folder);
      }
    }
    Copies.rename(copy, NotebookId.of(ids.get()));
  }

  private String start() {
    String name = String.valueOf(NotebookPlace.real(notebook).getFileName());
    return (name.endsWith(END) ? name.substring(0, name.length() - END.length()) : name) + "-";
  }

  private String name(Instant time) {
    return start() + TIME.format(time) + END;
  }

  /** The backups that are there, by time; other files in the folder are not among them. */
  public TreeMap<Instant, Path> list() {
    TreeMap<Instant, Path> found = new TreeMap<>();
    if (Files.notExists(folder)) {
      return found;
    }
    try (var files = Files.list(folder)) {
      for (Path file : files.toList()) {
        time(String.valueOf(file.getFileName())).ifPresent(time -> found.put(time, file));
      }
      return found;
    } catch (IOException e) {
      throw Copies.failed(folder, e);
    }
  }

  private Optional<Instant> time(String name) {
    if (!name.startsWith(start()) || !name.endsWith(END)) {
      return Optional.empty();
    }
    try {
      String time = name.substring(start().length(), name.length() - END.length());
      Instant read = TIME.parse(time, Instant::from).truncatedTo(ChronoUnit.SECONDS);
      return name.equals(name(read)) ? Optional.of(read) : Optional.empty();
    } catch (java.time.DateTimeException e) {
      return Optional.empty();
    }
  }

  /** What was left half-made, because the machine or the program ended, goes after a day. */
  private void sweep() throws IOException {
    Instant yesterday = clock.instant().minus(1, ChronoUnit.DAYS);
    try (var files = Files.list(folder)) {
      for (Path file : files.toList()) {
        String name = String.valueOf(file.getFileName());
        if (name.startsWith(start())
            && name.contains(END + ".")
            && name.endsWith(".part")
            && Files.getLastModifiedTime(file).toInstant().isBefore(yesterday)) {
          Files.deleteIfExists(file);
        }
      }
    }
  }

  private void thin() throws IOException {
    sweep();
    TreeMap<Instant, Path> there = list();
    Set<Instant> kept = BackupRule.kept(there.keySet(), clock.getZone());
    for (var backup : there.entrySet()) {
      if (!kept.contains(backup.getKey())) {
        Files.deleteIfExists(backup.getValue());
        Files.deleteIfExists(
            backup.getValue().resolveSibling(backup.getValue().getFileName() + "-journal"));
      }
    }
  }

  /** A backup that cannot be read is worth nothing, so it holds nothing. */
  private boolean holdsTheSame(Path backup) {
    String now = signature(notebook);
    try {
      return signature(backup).equals(now);
    } catch (NotebookException unreadable) {
      return false;
    }
  }

  /**
   * What tells whether something has changed: the last entry that arrived, drafts, trails,
   * profiles.
   */
  private String signature(Path file) {
    try (Connection connection = Connections.connect(file, Connections.BUSY_MILLISECONDS)) {
      String last = "the " + EntryTable.lastArrived(connection);
      return last
          + " "
          + new TreeMap<>(new DraftTable(connection).all())
          + new TrailTable(connection).titles()
          + new ProfileTable(connection).all()
          + new ContentTable(connection).names();
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    }
  }
}
