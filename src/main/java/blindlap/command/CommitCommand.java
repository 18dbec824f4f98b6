package blindlap.command;

import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.desk.PlanPreview;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.seal.SessionKind;
import blindlap.wording.HistoryWords;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Fixes a plan, draws the order, seals the key. */
@Command(
    name = "commit",
    description = {
      "Fixes a plan, draws the order by lot and seals it. Hand the machine to the helper first: the helper phrase is shown once.",
      "The fingerprint goes to someone else before riding: it proves later that plan and order were fixed by then."
    })
final class CommitCommand extends SessionCommand {
  @Parameters(paramLabel = "FILE", description = "The plan file.")
  @Nullable Path file;

  @Option(
      names = "--signed-by",
      paramLabel = "NAME",
      description = "Someone who has read the plan; may be given several times.")
  List<String> signedBy = List.of();

  @Option(
      names = "--null-run",
      paramLabel = "SETUP",
      description =
          "Conceal a null run: this setup is ridden under all names. Known to the helper only, until unsealing.")
  @Nullable String nullRun;

  CommitCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    String text = ReadFile.PLAN.text(java.util.Objects.requireNonNull(file));
    try (Desk desk = open()) {
      PlanPreview preview = PlanPreview.of(text);
      if (!preview.problems().isEmpty()) {
        throw complaint(preview.problems());
      }
      Plan plan = preview.plan().orElseThrow();
      if (plan.kind() == Plan.Kind.COMPARISON) {
        HistoryWords.ahead(desk.questions().before(plan)).forEach(this::say);
      }
      Committing.Result result = desk.committing().commit(plan, kind(plan), signedBy);
      if (result instanceof Committing.Result.Refused refused) {
        throw complaint(refused.problems());
      }
      if (result instanceof Committing.Result.Open open) {
        say(Words.of("series").say("noise.committed", open.state().id().brief()));
        say(Words.of("cautions").say("short"));
        return ExitCode.DONE;
      }
      Committing.Result.Committed committed = (Committing.Result.Committed) result;
      say("Committed and sealed: session " + committed.state().id());
      if (plan.unblinded()) {
        say(PlanWords.say("sum.unblinded"));
      }
      say("Fingerprint of the plan (give it to someone else now):");
      say("  " + committed.sealed().fingerprint().grouped());
      say("Helper phrase, for the helper alone, shown this once:");
      say("  " + committed.sealed().phrase().text());
      say(Words.of("cautions").say("short"));
      return ExitCode.DONE;
    }
  }

  private SessionKind kind(Plan plan) {
    if (nullRun == null) {
      return SessionKind.comparison();
    }
    if (plan.unblinded()) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "--null-run: the session is unblinded, so nothing can be concealed. Nothing was sealed.");
    }
    List<String> names = plan.setups().stream().map(Setup::name).toList();
    int setup = names.indexOf(nullRun);
    if (setup < 0) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "No setup is called \"" + nullRun + "\". Setups are: " + String.join(", ", names));
    }
    return SessionKind.nullRun(setup);
  }
}
