package blindlap.screen.book;

import blindlap.desk.SafeKeeping;
import blindlap.desk.SessionExchange;
import blindlap.screen.part.Background;
import blindlap.session.day.SessionId;
import blindlap.wording.KeepingWords;
import blindlap.wording.TwoValuesWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** Sessions from and for other notebooks, and backups: each ends in a plain line. */
public final class KeepingModel {
  private final SessionExchange exchange;
  private final SafeKeeping keeping;
  private final Background background;
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper working = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyBooleanWrapper unsound = new ReadOnlyBooleanWrapper(false);

  /**
   * @param exchange of the open notebook
   * @param keeping of the same
   * @param background of its own, so that nobody who records waits for a large notebook
   */
  public KeepingModel(SessionExchange exchange, SafeKeeping keeping, Background background) {
    this.exchange = exchange;
    this.keeping = keeping;
    this.background = background;
  }

  /** What became of the last thing that was done; several lines for several files. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** True while something is under way. */
  public ReadOnlyBooleanProperty workingProperty() {
    return working.getReadOnlyProperty();
  }

  /** The name that a session's file gets if nobody chooses another. */
  public static String fileName(NotebookModel.Row row) {
    return row.day() + "-" + row.id().brief() + ".session.txt";
  }

  /** Brings in session files and other notebooks. */
  public void bringIn(List<Path> files) {
    String first = KeepingWords.say("working.bring", KeepingWords.counted("file", files.size()));
    run(
        first,
        () -> {
          List<String> lines = new ArrayList<>();
          for (Path file : files) {
            lines.addAll(bringIn(file));
          }
          return String.join("\n", lines);
        });
  }

  private List<String> bringIn(Path file) {
    String name = String.valueOf(file.getFileName());
    SessionExchange.Brought brought;
    try {
      brought = exchange.bringIn(file);
    } catch (blindlap.session.NotebookException e) {
      return List.of(Trouble.sentence(e));
    }
    List<String> lines = new ArrayList<>();
    if (brought.notebook() && brought.arrived().size() != 1) {
      lines.add(many(name, brought.arrived()));
    } else {
      brought
          .arrived()
          .forEach(
              one ->
                  lines.add(
                      name
                          + ": "
                          + KeepingWords.arrived(
                              one.summary(), one.added(), one.known(), one.late())));
    }
    brought
        .arrived()
        .forEach(one -> TwoValuesWords.arrived(one.summary(), one.apart()).ifPresent(lines::add));
    beside(name, "brought.trails", brought.trails()).ifPresent(lines::add);
    beside(name, "brought.profiles", brought.profiles()).ifPresent(lines::add);
    for (SessionExchange.Refused refused : brought.refused()) {
      refused
          .problems()
          .forEach(
              problem ->
                  lines.add(
                      KeepingWords.refused(name, refused.session(), Problems.sentence(problem))));
    }
    return lines;
  }

  private static Optional<String> beside(String name, String key, int fresh) {
    return fresh == 0 ? Optional.empty() : Optional.of(name + ": " + KeepingWords.say(key, fresh));
  }

  private static String many(String name, List<SessionExchange.Arrived> arrived) {
    long fresh = arrived.stream().filter(one -> one.known() == 0).count();
    long more = arrived.stream().filter(one -> one.known() > 0 && one.added() > 0).count();
    return KeepingWords.say(
        "brought.notebook",
        name,
        KeepingWords.counted("session", fresh),
        more,
        arrived.size() - fresh - more);
  }

  /** Writes a session to a file that another notebook can bring in. */
  public void save(NotebookModel.Row row, Path target) {
    SessionId session = row.id();
    run(
        KeepingWords.say("working.save"),
        () -> {
          exchange.write(session, target);
          return KeepingWords.say("saved", row.title(), target);
        });
  }

  /** Makes a backup now. */
  public void backUp() {
    run(
        KeepingWords.say("working.backup"),
        () -> {
          Path backup = keeping.backUp();
          return KeepingWords.say(
              "backup.window", backup.getFileName(), String.valueOf(backup.getParent()));
        });
  }

  /** Reads and hashes everything again; says what is wrong, and that the rest can be saved. */
  public void check() {
    working.set(true);
    said.set(KeepingWords.say("working.check"));
    background.run(
        keeping::verify,
        report -> {
          unsound.set(!report.sound());
          end(String.join("\n", KeepingWords.verifiedInBrief(report, keeping.notebook())));
        },
        problem -> end(Trouble.sentence(problem)));
  }

  /** True once a check has found something wrong. */
  public ReadOnlyBooleanProperty unsoundProperty() {
    return unsound.getReadOnlyProperty();
  }

  /** Where what still verifies could go. */
  public Path suggested() {
    return keeping.beside();
  }

  /** Puts everything that still verifies into a new notebook; this one is only read. */
  public void recover(Path target) {
    run(
        KeepingWords.say("trouble.working"),
        () -> {
          List<String> lines =
              new ArrayList<>(KeepingWords.recovered(keeping.recover(target), target));
          lines.add(KeepingWords.say("recover.open", target));
          return String.join("\n", lines);
        });
  }

  /** Says that the backup in the background failed; from any thread. */
  public void backupFailed(Exception why) {
    background.onScreen(() -> said.set(KeepingWords.say("backup.trouble", Trouble.sentence(why))));
  }

  private void run(String first, Callable<String> work) {
    working.set(true);
    said.set(first);
    background.run(work, this::end, problem -> end(Trouble.sentence(problem)));
  }

  private void end(String line) {
    working.set(false);
    said.set(line);
  }
}
