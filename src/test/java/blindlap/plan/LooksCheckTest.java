package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanReader;
import blindlap.fault.Problem;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LooksCheckTest {
  private static final String DAY = "{timetable: null, looks: %s, stints: 24%s}";

  private static List<Problem> ofLooks(String looks, String more) {
    String day = DAY.formatted(looks, more);
    String shorter = more.contains("stints: 16") ? day.replace("stints: 24, ", "") : day;
    return PlanCheck.problems(Plans.with(shorter)).stream()
        .filter(problem -> problem.where().equals("looks"))
        .toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"[16, 20]", "\"16, 20\"", "\"16 20\"", "16", "[12, \"16\", 20]", "[]"})
  void looksAtTheEndsOfBlocksHoldHoweverTheyAreTyped(String looks) {
    assertThat(PlanCheck.problems(Plans.with(DAY.formatted(looks, "")))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[8] | ', stints: 16' | LOOKS_SHORT_DAY | need a day planned at 20 stints or more; this one has 16",
        "[4, 8, 12, 16] | '' | LOOKS_TOO_MANY | 4 looks are declared; at most 3",
        "[15] | '' | LOOK_INSIDE_BLOCK | inside a block of 4: a look is possible at the end of a block only, such as after stint 12",
        "[24] | '' | LOOK_RANGE | looks come before the end, which is stint 24",
        "[0] | '' | LOOK_RANGE | There is no look after stint 0",
        "[20, 16] | '' | LOOKS_ORDER | declare looks in the order in which they are taken",
        "[16, 16] | '' | LOOKS_ORDER | each once",
        "[16] | ', series: after-1' | LOOKS_IN_SERIES | every one of its days ridden to the end",
        "[12] | ', rule: {stints: 24, block: 24}' | LOOKS_ONE_BLOCK | no look before its end is possible",
        "[16] | ', kind: noise run, setups: [{name: A}]' | LOOKS_TWO_SETUPS | two setups only",
      })
  void looksThatCannotBeAreRefusedInOneSentence(
      String looks, String more, PlanFault fault, String says) {
    String rest = more == null ? "" : more;
    List<Problem> found = ofLooks(looks, rest);
    assertThat(found).extracting(Problem::fault).containsExactly(fault);
    assertThat(Problems.sentence(found.get(0))).contains(says);
  }

  @Test
  void aPlanWithoutLooksKeepsItsBytesAndOneWithLooksIsReadAgain() {
    String without = new String(PlanJson.bytes(Plans.with("")), StandardCharsets.UTF_8);
    assertThat(without).doesNotContain("looks");
    Plan plan = Plans.with(DAY.formatted("[12, 16]", ""));
    String with = new String(PlanJson.bytes(plan), StandardCharsets.UTF_8);
    assertThat(with).contains("\"looks\":\"12, 16\"");
    assertThat(PlanReader.stored(with)).isEqualTo(plan);
  }

  @Test
  void whatIsNoListOfStintsIsNamedWithItsPlace() {
    PlanReader.Reading read =
        PlanReader.read(Plans.text("{looks: after lunch}"), Plans.protocols());
    assertThat(read.problems()).hasSize(1);
    assertThat(Problems.sentence(read.problems().get(0)))
        .contains("looks")
        .contains("after lunch")
        .contains("numbers of stints, parted by commas, such as 16, 20");
  }

  @Test
  void aPlanWithLooksIsToldWhichCanNeverStopItAndWhatTheySave() {
    Plan plan = Plans.with(DAY.formatted("[12, 16]", ""));
    LooksShow shows = new LooksBook(RuleBook.ofProgram()).of(plan).orElseThrow();
    assertThat(shows.never()).containsExactly(12);
    assertThat(shows.simulated().meanStints()).isBetween(19.0, 20.4);
    assertThat(new LooksBook(RuleBook.ofProgram()).of(Plans.with(""))).isEmpty();
  }
}
