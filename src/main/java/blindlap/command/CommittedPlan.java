package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import blindlap.wording.CommittedPlanWords;
import blindlap.wording.PlanSummary;
import blindlap.wording.day.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A committed plan to be read at a terminal, and written as a plan file. */
final class CommittedPlan {
  private CommittedPlan() {}

  /**
   * @param out the plan file to write, too; null for none
   * @return what was fixed, a line each
   */
  static List<String> lines(Desk desk, SessionState state, @Nullable Path out) {
    List<String> lines = new ArrayList<>();
    lines.add(CommittedPlanWords.headline(state, desk.clock().getZone()).text());
    lines.addAll(CommittedPlanWords.lead(state));
    add(lines, CommittedPlanWords.fingerprint(state));
    CommittedPlanWords.parts(state, desk.planning().answers().quick(state.plan()))
        .forEach(part -> add(lines, part));
    if (out != null) {
      lines.add(CommittedPlanWords.say("written", write(desk, state, out)));
    }
    lines.add(Words.of("cautions").say("short"));
    return lines;
  }

  private static void add(List<String> lines, PlanSummary.Part part) {
    lines.add("");
    lines.add(part.title());
    part.lines().forEach(line -> lines.add("  " + line));
  }

  private static Path write(Desk desk, SessionState state, Path out) {
    if (Files.exists(out)) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE,
          "There is a file " + out + " already. It was kept; give another name.");
    }
    try {
      desk.planning().writeFileOf(state, out);
      return out;
    } catch (IOException e) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE, "The file " + out + " cannot be written. Nothing was written.");
    }
  }
}
