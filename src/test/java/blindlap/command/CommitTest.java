package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The phrase first: nothing is sealed before it is out and two of its words came back. */
class CommitTest {
  @TempDir Path folder;
  private CommandLineSession day;
  private String plan;

  @BeforeEach
  void plan() {
    day = new CommandLineSession(folder);
    plan = day.file("plan.yaml", Plans.SMALL).toString();
  }

  private boolean empty() {
    return day.run("notebook").out().contains("empty");
  }

  @Test
  void withoutATerminalNothingIsCommittedUnlessToldSo() {
    day.present = false;
    CommandLineSession.Ran ran = day.run("commit", plan);

    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err().strip().lines()).hasSize(1);
    assertThat(ran.err()).contains("There is no terminal", "nothing was committed", "--yes");
    assertThat(ran.out()).isEmpty();
    assertThat(empty()).isTrue();
    CommandLineSession.Ran told = day.run("commit", "--yes", plan);
    assertThat(told.code()).as(told.err()).isZero();
    day.types(CommandLineSession.shownPhrase(told.out()));
    assertThat(day.run("helper", "latest").code()).isZero();
  }

  @Test
  void thePhraseIsOutBeforeTheSessionIsAndOpensIt() {
    CommandLineSession.Ran ran = day.run("commit", plan);

    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out().indexOf("Helper phrase")).isPositive();
    assertThat(ran.out().indexOf("Committed and sealed"))
        .isGreaterThan(ran.out().indexOf("Helper phrase"));
    day.types(CommandLineSession.shownPhrase(ran.out()));
    assertThat(day.run("helper", "latest").code()).isZero();
  }

  @Test
  void aPhraseThatIsNotOnDiskWhereItWentToAFileSealsNothing() {
    day.settled = false;
    day.present = false;
    CommandLineSession.Ran ran = day.run("commit", "--yes", plan);

    assertThat(ran.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(ran.err()).contains("nothing was drawn and nothing sealed");
    assertThat(empty()).isTrue();
  }

  @Test
  void thePhraseIsPutOnDiskBeforeThereIsASession() {
    List<Boolean> emptyThen = new ArrayList<>();
    day.atSettling = () -> emptyThen.add(empty());
    day.present = false;

    assertThat(day.run("commit", "--yes", plan).code()).isZero();
    assertThat(emptyThen).containsExactly(true);
    assertThat(empty()).isFalse();
  }

  @Test
  void wrongWordsAreNamedByTheirPlaceAndThePhraseIsShownAgain() {
    day.answers.addAll(List.of("zebra", "zebra zebra"));
    CommandLineSession.Ran ran = day.run("commit", plan);

    assertThat(ran.code()).isZero();
    assertThat(ran.err().strip().lines())
        .hasSize(2)
        .allMatch(line -> line.matches("The [1-6].. and the [1-6].. word are not the ones .*"));
    String phrase = CommandLineSession.shownPhrase(ran.out());
    assertThat(ran.out().split(phrase, -1)).as("shown three times").hasSize(4);
  }

  @Test
  void whoeverAnswersNothingHasSealedNothingAndGetsAnotherPhraseNextTime() {
    day.answers.add(CommandLineSession.NOBODY);
    CommandLineSession.Ran ran = day.run("commit", plan);

    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("nothing was drawn and nothing sealed");
    assertThat(empty()).isTrue();
    assertThat(CommandLineSession.shownPhrase(day.run("commit", plan).out()))
        .isNotEqualTo(CommandLineSession.shownPhrase(ran.out()));
  }

  @Test
  void whatIsOnDiskWhileTheWordsAreAskedHoldsNoPhrase() throws Exception {
    StringWriter out = new StringWriter();
    day.answers.add(CommandLineSession.NOBODY);
    day.run(new PrintWriter(out, true), new PrintWriter(new StringWriter()), "commit", plan);
    String phrase = CommandLineSession.shownPhrase(out.toString());

    assertThat(phrase.split(" ")).hasSize(6);
    try (var files = Files.walk(folder)) {
      for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
        assertThat(Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1))
            .as(file.toString())
            .doesNotContain(phrase);
      }
    }
  }

  @Test
  void theSetupOfANullRunIsAskedForAndNeverTypedAsAnOption() {
    day.answers.add(" Shock K ");
    CommandLineSession.Ran ran = day.run("commit", "--yes", "--null-run", plan);
    assertThat(ran.code()).as(ran.err()).isZero();
    day.types(CommandLineSession.shownPhrase(ran.out()));

    assertThat(day.run("helper", "latest").out())
        .contains("Shock K (dummy swap)")
        .doesNotContain("Shock L");
  }

  @Test
  void anEmptyAnswerConcealsNothingAndNoAnswerCommitsNothing() {
    day.answers.add(CommandLineSession.NOBODY);
    CommandLineSession.Ran nobody = day.run("commit", "--yes", "--null-run", plan);
    assertThat(nobody.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(nobody.err()).contains("Nobody answered");
    day.answers.add("Shock X");
    CommandLineSession.Ran unknown = day.run("commit", "--yes", "--null-run", plan);
    assertThat(unknown.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(unknown.err()).contains("Shock K, Shock L", "nothing sealed");
    assertThat(empty()).isTrue();

    day.answers.add("");
    CommandLineSession.Ran none = day.run("commit", "--yes", "--null-run", plan);
    assertThat(none.code()).isZero();
    day.types(CommandLineSession.shownPhrase(none.out()));
    assertThat(day.run("helper", "latest").out()).contains("Shock L");
  }

  @Test
  void beforeThePhraseIsShownItIsAskedWhetherTheHelperHasTheMachine() {
    for (String answer : List.of("no", " N ", CommandLineSession.NOBODY)) {
      day.handsOver.add(answer);
      CommandLineSession.Ran ran = day.run("commit", "--null-run", plan);

      assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(ran.out()).contains("Hand the machine to the helper").doesNotContain("phrase");
      assertThat(ran.err().strip().lines()).hasSize(1);
      assertThat(ran.err()).contains("nothing was drawn or sealed", "type the command again");
      assertThat(empty()).isTrue();
    }
    day.handsOver.addAll(List.of("", "what?", "Yes"));
    CommandLineSession.Ran ran = day.run("commit", plan);

    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.err().strip().lines())
        .hasSize(2)
        .allMatch(line -> line.startsWith("That is neither yes nor no."));
    assertThat(ran.out().indexOf("Hand the machine")).isLessThan(ran.out().indexOf("phrase,"));
    assertThat(ran.out().strip()).endsWith("before you give the machine back.");
  }

  @Test
  void withoutAHelperNobodyIsAskedForOne() {
    String open = day.file("open.yaml", Plans.SMALL + "blinding: {blinded: no}\n").toString();
    day.handsOver.add("no");
    CommandLineSession.Ran ran = day.run("commit", open);

    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out()).doesNotContain("Hand the machine");
    assertThat(day.run("commit", "--yes", plan).out()).doesNotContain("Hand the machine");
    assertThat(day.handsOver).hasSize(1);
  }
}
