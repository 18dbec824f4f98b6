package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.seal.Fingerprint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A package with another value and with hashes that were made to fit it. */
class AlteredPackageTest {
  @TempDir Path folder;
  private Path packed = Path.of("");

  @BeforeEach
  void place() {
    packed = folder.resolve("packed");
  }

  private CommandLineSession ridden() {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    day.run("record", session, day.file("laps.csv", Plans.laps(8)).toString());
    day.run("close-day", session);
    day.run("close-review", session);
    day.run("unseal", session);
    assertThat(day.run("export", session, "--out", packed.toString()).code()).isZero();
    return day;
  }

  private void forge(String name, String from, String to) throws IOException {
    Path file = packed.resolve(name);
    byte[] before = Files.readAllBytes(file);
    Files.writeString(file, Files.readString(file).replaceFirst(from, to));
    byte[] after = Files.readAllBytes(file);
    assertThat(after).isNotEqualTo(before);
    Path descriptor = packed.resolve("datapackage.json");
    String text = Files.readString(descriptor);
    String forged = text.replace(Fingerprint.sha256(before).hex(), Fingerprint.sha256(after).hex());
    assertThat(forged).isNotEqualTo(text);
    Files.writeString(descriptor, forged);
  }

  @Test
  void whatDiffersIsNamedByFileRowAndFieldAndNoFindingIsPrinted() throws IOException {
    CommandLineSession day = ridden();
    forge("laps.csv", ",91\\.1,", ",81.1,");
    CommandLineSession.Ran ran = day.run("review", "--from", packed.toString());
    assertThat(ran.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err())
        .contains("was altered, so no finding is printed")
        .contains(
            "laps.csv, row 1, lap time: \"81.1\" stands there; from the session inside follows \"91.1\".")
        .doesNotContain("does not give its hash");
  }

  @Test
  void anywayItIsPrintedUnderTheWordAltered() throws IOException {
    CommandLineSession day = ridden();
    forge("laps.csv", ",91\\.1,", ",81.1,");
    CommandLineSession.Ran ran = day.run("review", "--from", packed.toString(), "--anyway");
    assertThat(ran.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(ran.out()).startsWith("Altered: this package does not say what the session inside");
    assertThat(ran.out()).contains("laps.csv, row 1, lap time");
  }

  @Test
  void aChangedFindingIsComputedAgainAndNamed() throws IOException {
    CommandLineSession day = ridden();
    forge("finding.json", "\"p\" : 0\\.\\d+", "\"p\" : 0.001");
    CommandLineSession.Ran ran = day.run("review", "--from", packed.toString());
    assertThat(ran.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(ran.err())
        .containsPattern("finding\\.json, .*p: 0\\.001 stands there; computed again it is 0\\.");
  }

  @Test
  void aPackageAsItWasWrittenSaysThatBothFingerprintsMatchThisFile() throws IOException {
    CommandLineSession day = ridden();
    CommandLineSession.Ran ran = day.run("review", "--from", packed.toString());
    assertThat(ran.code()).isZero();
    assertThat(ran.out())
        .contains("Both fingerprints match this file; compare with what the receiver holds: plan ")
        .contains("Only a fingerprint that somebody was given before shows")
        .doesNotContain("Altered");
  }
}
