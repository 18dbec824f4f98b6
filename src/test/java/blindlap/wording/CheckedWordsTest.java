package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import blindlap.session.ChainFault;
import blindlap.session.NotebookReport;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a full check says. */
class CheckedWordsTest {
  private static NotebookReport report(List<Problem> problems) {
    return new NotebookReport(1, 10, problems);
  }

  @Test
  void breaksBetweenEntriesAreSaidAsFoundNotAsRefused() {
    for (ChainFault fault : ChainFault.values()) {
      List<String> lines =
          KeepingWords.verified(
              report(List.of(Problem.of(fault, "entry 3 of notebook f9ccd9fe", "7", "aa"))),
              Path.of("shed.blindlap"));
      assertThat(lines.get(0))
          .startsWith("entry 3 of notebook f9ccd9fe: ")
          .doesNotContain("Nothing was added", "{", "??");
    }
  }

  @Test
  void inBriefTheFirstProblemsAndTheNumberOfTheOthersAreTold() {
    List<Problem> problems = new ArrayList<>();
    for (int i = 0; i < 7; i++) {
      problems.add(Problem.of(ChainFault.GAP, "entry " + i));
    }
    List<String> lines = KeepingWords.verifiedInBrief(report(problems), Path.of("shed.blindlap"));

    assertThat(lines).hasSize(5);
    assertThat(lines.get(1)).startsWith("entry 1: ");
    assertThat(lines.get(2)).startsWith("… and 5 more").endsWith("--notebook shed.blindlap");
    assertThat(lines.get(3)).startsWith("7 problems found in 1 session, 10 entries");
    assertThat(KeepingWords.verifiedInBrief(report(problems.subList(0, 2)), Path.of("x")))
        .hasSize(4);
  }
}
