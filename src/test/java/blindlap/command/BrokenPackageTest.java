package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Data packages that somebody has changed, or that lack something, as their reader is told. */
class BrokenPackageTest {
  @TempDir Path folder;
  private CommandLineSession day;
  private Path packed;
  private String session;

  @BeforeEach
  void packADay() {
    day = new CommandLineSession(folder);
    session = day.commit(Plans.SMALL);
    day.run("record", session, day.file("laps.csv", Plans.laps(8)).toString());
    day.run("close-day", session);
    day.run("close-review", session);
    packed = folder.resolve("package");
  }

  private String reviewed() {
    CommandLineSession.Ran ran = day.run("review", "--from", packed.toString());
    assertThat(ran.out()).isEmpty();
    assertThat(ran.code()).isEqualTo(2);
    return ran.err().strip();
  }

  private String refused(String why) {
    return "The data package " + packed + " cannot be reviewed. " + why;
  }

  @Test
  void aSealedPackageHasNoFinding() {
    day.run("export", session, "--out", packed.toString());
    assertThat(reviewed())
        .isEqualTo(
            refused(
                "There is no key.json in it: a package of a session whose order is not opened has"
                    + " no finding."));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "key.json | ^\\{ | { , | key.json is not JSON. Export the package again.",
        "plan.json | ^\\{ | {\"moon\":\"new\", | plan.json is not a plan as Blindlap writes it;"
            + " look at moon (line 1, column 9), or export the package again.",
        "key.json | \"order\" : \"[AB]{8}\" | \"order\" : \"ABBA\" | The order \"ABBA\" in key.json"
            + " does not name a setup of the plan for each of its 8 stints.",
        "key.json | \"order\" : \"[AB]{8}\" | \"order\" : \"AAAAAAAA\" | The order ridden,"
            + " AAAAAAAA, could not have been drawn under the rule of the plan.",
        "key.json | \"session\" : \"[0-9a-f-]+\" | \"session\" : \"zz\" | The key in key.json is"
            + " said to be of session \"zz\", which is not the id of a session as Blindlap writes"
            + " it. Export the package again.",
        "key.json | \"session\" : \"[0-9a-f-]+\", | ` ` | The key in key.json does not say which"
            + " session it is of. Export the package again.",
        "key.json | blindlap-draw-1 | dice | The order in key.json was drawn by \"dice\", a way of"
            + " drawing that this program does not know. Use the program that wrote the package, or"
            + " export it again.",
        "laps.csv | lap_in_stint | lap_of_stint | The column \"lap_in_stint\" is missing.",
        "laps.csv | ,41, | ,high, | \"high\" is not a number for \"grip\".",
        "laps.csv | ,41, | ,41,, | laps.csv, row 5: 15 cells under 14 columns.",
        "stints.csv | \\n1, | `\n12,` | stints.csv names stint 12; the plan has stints 1 to 8.",
        "helper.csv | \\z | `0,E,,,\n` | \"E\" is not the letter of a setup.",
      })
  void whatIsWrongIsToldInAWholeSentence(String file, String from, String to, String sentence)
      throws IOException {
    day.run("unseal", session);
    day.run("export", session, "--out", packed.toString());
    Path broken = packed.resolve(file);
    String text = Files.readString(broken);
    String changed = text.replaceFirst(from, to);
    assertThat(changed).isNotEqualTo(text);
    Files.writeString(broken, changed);
    assertThat(reviewed()).isEqualTo(refused(sentence));
  }

  @Test
  void aPackageWhoseLineEndsAloneWereChangedIsToldSoFileByFile() throws IOException {
    day.run("unseal", session);
    day.run("export", session, "--out", packed.toString());
    for (String name : new String[] {"laps.csv", "stints.csv", "session.txt"}) {
      Path file = packed.resolve(name);
      Files.writeString(file, Files.readString(file).replace("\n", "\r\n"));
    }
    CommandLineSession.Ran ran = day.run("review", "--from", packed.toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("laps.csv: The line ends of the file were changed");
    assertThat(ran.err()).contains("stints.csv: The line ends of the file were changed");
    assertThat(ran.err()).contains("session.txt: The line ends of the file were changed");
    assertThat(ran.err()).doesNotContain("does not give its hash");
    assertThat(ran.err().lines().filter(line -> line.contains(": "))).hasSize(3);
  }

  @Test
  void aPackageWithAnotherValueIsNotExcusedByItsLineEnds() throws IOException {
    day.run("unseal", session);
    day.run("export", session, "--out", packed.toString());
    Path file = packed.resolve("laps.csv");
    Files.writeString(file, Files.readString(file).replace(",41,", ",42,").replace("\n", "\r\n"));
    CommandLineSession.Ran ran = day.run("review", "--from", packed.toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("laps.csv: The file was changed").doesNotContain("line ends");
  }

  @Test
  void aMissingTableIsNamed() throws IOException {
    day.run("unseal", session);
    day.run("export", session, "--out", packed.toString());
    Files.delete(packed.resolve("laps.csv"));
    assertThat(reviewed()).isEqualTo(refused("There is no laps.csv in it."));
  }
}
