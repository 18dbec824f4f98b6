package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.DeskFault;
import blindlap.desk.SafeKeeping;
import blindlap.desk.Sessions;
import blindlap.fault.Problem;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookTrouble;
import blindlap.session.SessionState;
import blindlap.wording.PhraseWords;
import blindlap.wording.day.Problems;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** What commands on a notebook share: opening it, finding a session, complaining in sentences. */
abstract class SessionCommand implements Callable<Integer> {
  /** What can stand for a session, said by the help of every command that takes one. */
  static final String WHICH =
      "Id of the session or its beginning, or latest: the session last committed that is not an old"
          + " day brought in.";

  private final CommandSetting setting;
  private Done done = Done.NOTHING;

  @Spec @Nullable CommandSpec spec;

  @Option(
      names = "--notebook",
      paramLabel = "FILE",
      scope = ScopeType.LOCAL,
      description =
          "The notebook to use; your own notebook in the user's data folder if not given.")
  @Nullable Path notebook;

  @Option(
      names = "--new",
      scope = ScopeType.LOCAL,
      description = "Begin the notebook that --notebook names, if there is none.")
  boolean fresh;

  SessionCommand(CommandSetting setting) {
    this.setting = setting;
  }

  CommandSetting setting() {
    return setting;
  }

  /** The phrase as its holder types it; a covered order has none, so nobody is asked for one. */
  String phrase(SessionState state) {
    if (state.covered()) {
      throw complaint(List.of(Problem.of(DeskFault.NO_PHRASE, "")));
    }
    return setting.terminal().secret(PhraseWords.of(state.plan().level()).say("phrase.ask"));
  }

  Path notebookFile() {
    return notebook == null ? setting.defaultNotebook() : notebook;
  }

  Desk open() {
    requireThere(setting, notebookFile(), fresh);
    return setting.opener().open(notebookFile());
  }

  /**
   * A notebook that was named and is not there was mistyped more often than it is meant to begin:
   * an empty one in its place would look as if all were lost. One's own begins by itself.
   */
  static void requireThere(CommandSetting setting, Path notebook, boolean fresh) {
    if (!fresh
        && !notebook.equals(setting.defaultNotebook())
        && java.nio.file.Files.notExists(notebook)) {
      throw new NotebookException(Kind.NOT_FOUND, NotebookTrouble.NO_NOTEBOOK, null, notebook);
    }
  }

  SafeKeeping keeping() {
    return new SafeKeeping(setting.files(), notebookFile());
  }

  PrintWriter out() {
    return java.util.Objects.requireNonNull(spec).commandLine().getOut();
  }

  void say(String line) {
    out().println(line);
    out().flush();
  }

  /** Says what is wrong where the command goes on nevertheless. */
  void complain(String line) {
    PrintWriter err = java.util.Objects.requireNonNull(spec).commandLine().getErr();
    err.println(line);
    err.flush();
  }

  static SessionState find(Desk desk, String typed) {
    Sessions.Found found = desk.sessions().find(typed);
    return found.state().orElseThrow(() -> complaint(found.problems()));
  }

  Sessions.Result.Done done(Sessions.Result result) {
    if (result instanceof Sessions.Result.Refused refused) {
      throw complaint(refused.problems());
    }
    Sessions.Result.Done accepted = (Sessions.Result.Done) result;
    if (!accepted.written().isEmpty()) {
      did(Done.SAVED);
    }
    return accepted;
  }

  /** Notes what is done, as soon as it is: it is said even where nothing else can be. */
  void did(Done now) {
    done = now;
  }

  /** What was done last. */
  Done done() {
    return done;
  }

  static Complaint complaint(List<Problem> problems) {
    return new Complaint(ExitCode.BAD_INPUT, Problems.sentences(problems));
  }
}
