package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.FactKinds;
import org.junit.jupiter.api.Test;

/** An entry that came too late is called by what it is about, not by a name of the program. */
class EntryWordsTest {
  @Test
  void everyFactHasAWordForPeople() {
    assertThat(FactKinds.all())
        .isNotEmpty()
        .allSatisfy(
            fact ->
                assertThat(EntryWords.entry(fact.getSimpleName()))
                    .doesNotContain(fact.getSimpleName())
                    .matches("(a|an|the|conditions)\\b.*"));
  }

  @Test
  void aFactOfAnotherProgramKeepsItsName() {
    assertThat(EntryWords.entry("StintSlept")).isEqualTo("StintSlept");
  }
}
