package blindlap.command;

import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.desk.PlanPreview;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Setup;
import blindlap.seal.HelperPhrase;
import blindlap.seal.PhraseAsked;
import blindlap.seal.SessionKind;
import blindlap.session.SessionState;
import blindlap.wording.HistoryWords;
import blindlap.wording.PhraseWords;
import blindlap.wording.PlanSummary;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Fixes a plan, draws the order, seals the key. */
@Command(
    name = "commit",
    description = {
      "Fixes a plan, draws the order by lot and seals it.",
      "It asks whether the machine is with the helper, or at the level prepared with the friend;"
          + " then the phrase is shown, and two of its words are asked back before anything is"
          + " drawn.",
      "Where the rider swaps alone, the order is covered instead, and there is no phrase.",
      "The fingerprint goes to someone else before riding: it proves later that plan and order were"
          + " fixed by then."
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
      description =
          "Asks which setup is ridden under all names, for a concealed null run; an empty answer"
              + " conceals none. Known to the helper only, until unsealing.")
  boolean nullRun;

  @Option(
      names = "--yes",
      description =
          "For scripts: writes the helper phrase out and seals at once, without asking whether the"
              + " helper has the machine and without asking for two words. Needed where there is no"
              + " terminal.")
  boolean yes;

  CommitCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    String text = ReadFile.PLAN.text(java.util.Objects.requireNonNull(file));
    try (Desk desk = open()) {
      PlanPreview preview = desk.planning().preview(text);
      if (!preview.problems().isEmpty()) {
        throw complaint(preview.problems());
      }
      Plan plan = preview.plan().orElseThrow();
      if (!yes && hasPhrase(plan) && !setting().terminal().present()) {
        throw new Complaint(
            ExitCode.BAD_INPUT, PhraseWords.of(plan.level()).say("commit.no.terminal"));
      }
      if (plan.kind().drawn()) {
        HistoryWords.ahead(desk.questions().before(plan)).forEach(this::say);
      }
      checkNullRun(desk, plan);
      if (talked(plan)) {
        new PhraseTalk(this, setting().terminal(), plan.level()).handedOver(plan);
      }
      commit(desk, plan);
      say(Words.of("cautions").say("short"));
      if (talked(plan)) {
        say(PhraseWords.of(plan.level()).say("commit.clear"));
      }
      return ExitCode.DONE;
    }
  }

  private void commit(Desk desk, Plan plan) {
    SessionKind kind = kind(plan);
    Committing.Begun begun = desk.committing().begin(plan, signedBy);
    if (begun instanceof Committing.Begun.Refused refused) {
      throw complaint(refused.problems());
    }
    if (begun instanceof Committing.Begun.Phrase drawn) {
      seal(desk, plan, kind, drawn.asked());
    } else if (begun instanceof Committing.Begun.Alone) {
      cover(desk, plan);
    } else {
      SessionState state = desk.committing().fix(plan, signedBy).state();
      did(Done.FIXED);
      say(Words.of("series").say("noise.committed", state.id().brief()));
    }
  }

  private static boolean hasPhrase(Plan plan) {
    return plan.kind().drawn() && !plan.blinding().level().shown();
  }

  /** True if a helper sits at the terminal of whom the rider must see nothing. */
  private boolean talked(Plan plan) {
    return plan.kind().drawn() && !plan.unblinded() && !yes;
  }

  /** The phrase first: there is no order, sealed or not, before it is out. */
  private void seal(Desk desk, Plan plan, SessionKind kind, PhraseAsked asked) {
    PhraseTalk talk = new PhraseTalk(this, setting().terminal(), plan.level());
    HelperPhrase phrase = yes ? talk.unasked(asked) : talk.confirmed(asked);
    Committing.Result result = desk.committing().seal(plan, kind, signedBy, phrase);
    if (result instanceof Committing.Result.Refused refused) {
      throw complaint(refused.problems());
    }
    did(Done.SEALED);
    Committing.Result.Committed committed = (Committing.Result.Committed) result;
    say("Committed and sealed: session " + committed.state().id());
    fingerprint(committed.state());
  }

  /** Nothing is kept from anyone but by accident: there is no phrase. */
  private void cover(Desk desk, Plan plan) {
    Committing.Result result = desk.committing().cover(plan, signedBy);
    if (result instanceof Committing.Result.Refused refused) {
      throw complaint(refused.problems());
    }
    did(Done.COVERED);
    SessionState state = ((Committing.Result.Covered) result).state();
    say(Words.of("alone").say("committed", state.id()));
    say(PlanSummary.level(plan.blinding()));
    say(Words.of("alone").say("committed." + PlanJson.word(plan.blinding().level())));
    fingerprint(state);
  }

  private void fingerprint(SessionState state) {
    say("Fingerprint of the plan (give it to someone else now):");
    say("  " + state.planFingerprint().grouped());
  }

  private void checkNullRun(Desk desk, Plan plan) {
    if (nullRun && (plan.unblinded() || plan.kind() == Plan.Kind.NOISE_RUN)) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "--null-run: the session is %s, so nothing can be concealed. Nothing was sealed."
              .formatted(plan.unblinded() ? plan.level().title() : "an open noise run"));
    }
    if (nullRun) {
      desk.seriesPlans()
          .refuseNullRun(plan)
          .ifPresent(
              problem -> {
                throw complaint(List.of(problem));
              });
    }
  }

  private SessionKind kind(Plan plan) {
    if (!nullRun) {
      return SessionKind.comparison();
    }
    List<String> names = plan.setups().stream().map(Setup::name).toList();
    String setups = String.join(", ", names);
    Optional<String> typed =
        setting().terminal().answer(PhraseWords.of(plan.level()).say("commit.null.ask", setups));
    if (typed.isEmpty()) {
      throw new Complaint(ExitCode.BAD_INPUT, PlanWords.say("commit.null.none"));
    }
    String name = typed.get().strip();
    if (name.isEmpty()) {
      return SessionKind.comparison();
    }
    int setup = names.indexOf(name);
    if (setup < 0) {
      throw new Complaint(ExitCode.BAD_INPUT, PlanWords.say("commit.null.unknown", setups));
    }
    return SessionKind.nullRun(setup);
  }
}
