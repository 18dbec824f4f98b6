package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Amendments after the opening: dated, with a reason, beside an original that never changes. */
class AmendTest {
  @TempDir Path folder;
  private CommandLineSession day;
  private String session;

  @BeforeEach
  void rideADay() {
    day = new CommandLineSession(folder);
    session = day.commit(Plans.SMALL);
    day.run("record", session, day.file("laps.csv", Plans.laps(8)).toString());
    day.run("close-day", session);
    day.run("close-review", session);
  }

  private CommandLineSession.Ran amend(String text, String reason) {
    return day.run("amend", session, "--text", text, "--reason", reason);
  }

  @Test
  void anAmendmentIsRefusedWhileSealedAndWithoutAReason() {
    assertThat(amend("The gauge read low.", "found later").err()).contains("is not opened yet");
    day.run("unseal", session);
    assertThat(amend("The gauge read low.", " ").code()).isEqualTo(2);
    assertThat(amend(" ", "found later").code()).isEqualTo(2);
    assertThat(day.run("review", session).out()).doesNotContain("mended");
  }

  @Test
  void anAmendmentIsDatedAndStandsBesideTheOriginalEverywhere() throws IOException {
    day.run("unseal", session);
    String before = day.run("review", session, "--json").out();
    String text = day.run("review", session).out();
    day.later(90_000);

    CommandLineSession.Ran ran = amend("The gauge read 0.05 bar low.", "found in the workshop");

    String line =
        "2026-11-15 10:00 CET, amendment: The gauge read 0.05 bar low. (reason: found in the"
            + " workshop)";
    assertThat(ran.out()).contains(line).contains("original analysis stays");
    assertThat(day.run("review", session, "--json").out()).isEqualTo(before);
    String after = day.run("review", session).out();
    assertThat(after).contains("Amended after the opening, once.").contains(line);
    assertThat(after.lines().toList()).containsAll(text.lines().toList());

    Path out = folder.resolve("out");
    day.run("report", session, "--out", out.toString());
    String html;
    try (var files = Files.list(out)) {
      html =
          Files.readString(
              files.filter(f -> f.toString().endsWith(".html")).findFirst().orElseThrow());
    }
    assertThat(html.indexOf("Amended after the opening, once."))
        .as("on the first page, before the plan")
        .isBetween(0, html.indexOf("Plan as committed"));
    assertThat(html).contains("Amendments after the opening").contains(line);

    Path packed = folder.resolve("package");
    day.run("export", session, "--out", packed.toString());
    assertThat(Files.readString(packed.resolve("amendments.csv")))
        .contains("2026-11-15T09:00:00Z,The gauge read 0.05 bar low.,found in the workshop");
    assertThat(Files.readString(packed.resolve("finding.json")).strip()).isEqualTo(before.strip());
    assertThat(day.run("review", "--from", packed.toString(), "--json").out()).isEqualTo(before);
    assertThat(day.run("review", "--from", packed.toString()).out())
        .contains("Amended after the opening, once.")
        .contains("2026-11-15 09:00 UTC, amendment: The gauge read 0.05 bar low.");

    Files.writeString(packed.resolve("amendments.csv"), "at,text,reason\nsoon,so,because\n");
    CommandLineSession.Ran broken = day.run("review", "--from", packed.toString());
    assertThat(broken.code()).isEqualTo(2);
    assertThat(broken.err()).contains("amendments.csv has \"soon\" where a time is wanted");
  }

  @Test
  void aDataPackageTellsPeopleWhatItIsAndCarriesTheCautions() throws IOException {
    day.run("unseal", session);
    Path packed = folder.resolve("package");
    day.run("export", session, "--out", packed.toString());
    assertThat(Files.readString(packed.resolve("README.md")))
        .contains("# Shock K against Shock L")
        .contains("approves no part and no setting")
        .contains("maker's manual")
        .contains("may stop at any time")
        .doesNotContain("Unblinded");
  }
}
