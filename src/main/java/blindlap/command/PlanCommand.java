package blindlap.command;

import blindlap.desk.BundledProtocols;
import blindlap.desk.PlanPreview;
import blindlap.plan.Plan;
import blindlap.wording.PreviewWords;
import blindlap.wording.Words;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** What a planned day can show; commits nothing. */
@Command(
    name = "plan",
    description = {
      "Says what a planned day can show, before anything is committed.",
      "The plan is a YAML or JSON file; docs/plan-file.md describes it. All mistakes are named with their place."
    })
final class PlanCommand extends SessionCommand {
  @Parameters(paramLabel = "FILE", description = "The plan file.")
  @Nullable Path file;

  PlanCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    String text = new String(read(java.util.Objects.requireNonNull(file)), StandardCharsets.UTF_8);
    PlanPreview preview = PlanPreview.of(text, BundledProtocols.load());
    Plan plan = preview.plan().orElse(null);
    if (plan == null || !preview.problems().isEmpty()) {
      preview.orders().ifPresent(orders -> PreviewWords.lines(orders).forEach(this::say));
      throw complaint(preview.problems());
    }
    say(plan.title() + ", " + plan.trail() + ", " + plan.rider() + ", " + plan.day());
    preview.orders().ifPresent(orders -> PreviewWords.lines(orders).forEach(this::say));
    say(Words.of("cautions").say("short"));
    say("Nothing is committed yet. To fix the plan and seal the order: blindlap commit " + file);
    return ExitCode.DONE;
  }
}
