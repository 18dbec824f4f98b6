package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A command line that cannot be read gets one sentence and no usage. */
class MisuseTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "moun | blindlap has no command \"moun\"; mount is near it.",
        "nosuch | blindlap has no command \"nosuch\".",
        "--nope | blindlap has no option --nope.",
        "mount --nope x | blindlap mount has no option --nope.",
        "mount --noteb x | blindlap mount has no option --noteb; --notebook is near it.",
        "mount x y | blindlap mount takes no more than it has got, and \"y\" is left over.",
        "mount | blindlap mount needs SESSION.",
        "void x | blindlap void needs --reason EVENT and LAP.",
        "blind-broken x --stint | blindlap blind-broken needs STINT behind --stint.",
        "blind-broken x --stint a --what y | --stint: 'a' is not a whole number.",
        "blind-broken x --stint 1 --stint 2 --what y | blindlap blind-broken got --stint more than"
            + " once.",
        "masks x | blindlap masks needs one of --seal, --guess, --read, --marks, and one alone.",
        "masks x --seal --guess | needs one of --seal, --guess, --read, --marks, and one alone.",
        "sheets x --out d --paper A9 | --paper takes one of A4, LETTER, and \"A9\" is none",
        "--notebook f mount x | --notebook stands after the command: blindlap mount --notebook",
      })
  void whatIsWrongIsSaidInOneLineWithoutUsage(String typed, String says) {
    CommandLineSession day = new CommandLineSession(folder);
    CommandLineSession.Ran ran = day.run(typed.split(" "));
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err().strip().lines()).hasSize(1);
    assertThat(ran.err()).contains(says, "Nothing was done").doesNotContain("Usage");
    assertThat(ran.out()).isEmpty();
  }

  @Test
  void theHelpThatASentenceNamesIsThere() {
    CommandLineSession.Ran ran = new CommandLineSession(folder).run("mount", "--help");
    assertThat(ran.code()).isZero();
    assertThat(ran.out()).contains("Usage: blindlap mount");
  }
}
