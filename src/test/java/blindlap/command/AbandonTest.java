package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.day.Step;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Nothing takes an abandoned session up again, so nobody abandons one by a slip. */
class AbandonTest {
  @TempDir private Path folder;
  private CommandLineSession session;
  private String id;

  @BeforeEach
  void committed() {
    session = new CommandLineSession(folder);
    id = session.commit(Plans.SMALL);
  }

  private Step step() {
    return session.desk().sessions().find(id).state().orElseThrow().step();
  }

  private CommandLineSession.Ran abandon(String... more) {
    String[] all = new String[4 + more.length];
    System.arraycopy(new String[] {"abandon", "latest", "--reason", "rain"}, 0, all, 0, 4);
    System.arraycopy(more, 0, all, 4, more.length);
    return session.run(all);
  }

  @Test
  void yesAbandonsIt() {
    session.handsOver.add("perhaps");
    session.handsOver.add("Yes ");
    CommandLineSession.Ran ran = abandon();
    assertThat(ran.code()).isZero();
    assertThat(ran.err()).isEqualToIgnoringNewLines("Type yes or no.");
    assertThat(ran.out()).contains("is abandoned; its entries are kept");
    assertThat(step()).isEqualTo(Step.ABANDONED);
  }

  @Test
  void noAndNoAnswerLetItBe() {
    for (String answer : new String[] {"no", "n", CommandLineSession.NOBODY}) {
      session.handsOver.add(answer);
      CommandLineSession.Ran ran = abandon();
      assertThat(ran.code()).as(answer).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(ran.err())
          .isEqualToIgnoringNewLines("Nothing was abandoned; the session stays as it is.");
      assertThat(step()).isEqualTo(Step.COMMITTED);
    }
  }

  @Test
  void whereNobodyCanBeAskedItRefusesInOneSentenceUnlessToldOtherwise() {
    session.present = false;
    CommandLineSession.Ran ran = abandon();
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err().strip().lines()).hasSize(1);
    assertThat(ran.err()).contains("no terminal", "nothing was abandoned", "--yes");
    assertThat(step()).isEqualTo(Step.COMMITTED);
    assertThat(abandon("--yes").code()).isZero();
    assertThat(step()).isEqualTo(Step.ABANDONED);
  }

  @Test
  void theQuestionNamesTheSession() {
    StringBuilder asked = new StringBuilder();
    session.asked = asked::append;
    abandon();
    assertThat(asked)
        .contains(id.substring(0, 8), "Shock K against Shock L", "R. Lind", "Quarry loop")
        .contains("2026-11-14", "cannot be taken up again");
  }

  @Test
  void whatIsRefusedAnywayIsNotAskedFirst() {
    StringBuilder asked = new StringBuilder();
    session.asked = asked::append;
    assertThat(session.run("abandon", id, "--reason", " ").code()).isEqualTo(ExitCode.BAD_INPUT);
    abandon("--yes");
    assertThat(abandon().err()).contains("was abandoned");
    assertThat(asked).isEmpty();
  }
}
