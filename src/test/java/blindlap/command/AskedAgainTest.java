package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.seal.Fingerprint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One question asked again, seal by seal, on two machines; and what a data package keeps of it. */
class AskedAgainTest {
  private static final String REPEAT = "Repeat decided after seeing a result: session ";

  @TempDir Path folder;
  private CommandLineSession hut;
  private CommandLineSession home;

  @BeforeEach
  void twoMachines() throws IOException {
    hut = new CommandLineSession(Files.createDirectory(folder.resolve("hut")), 1);
    home = new CommandLineSession(Files.createDirectory(folder.resolve("home")), 2);
  }

  private static String ok(CommandLineSession machine, String... arguments) {
    CommandLineSession.Ran ran = machine.run(arguments);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.code()).isZero();
    return ran.out();
  }

  private static void ride(CommandLineSession machine, String session) {
    ok(machine, "record", session, machine.file("laps.csv", Plans.laps(8)).toString());
    ok(machine, "close-day", session);
    ok(machine, "close-review", session);
  }

  private static Path sessionFile(CommandLineSession machine, String session) {
    Path file = machine.folder.resolve("moved.session.txt");
    ok(machine, "export", session, "--session-file", file.toString());
    return file;
  }

  @Test
  void aRepeatIsKnownOnceTheSessionBeforeItIsBroughtInFromAnotherNotebook() {
    String first = hut.commit(Plans.SMALL);
    ride(hut, first);
    ok(hut, "unseal", first);

    home.later(86_400);
    Path again = home.file("again.yaml", Plans.SMALL.replace("R. Lind", "r. lind"));
    assertThat(ok(home, "commit", again.toString()))
        .startsWith("No other session of this question is in this notebook.");
    String second = home.commit(Plans.SMALL.replace("R. Lind", "r. lind"));
    ride(home, second);
    ok(home, "unseal", second);
    assertThat(ok(home, "review", second)).doesNotContain(REPEAT);

    ok(home, "bring-in", sessionFile(hut, first).toString());
    assertThat(ok(home, "review", second).lines().skip(1).limit(2))
        .anyMatch(line -> line.startsWith(REPEAT + first.substring(0, 8)));
    String third = ok(home, "commit", again.toString());
    assertThat(third).contains("Other sessions of this question in this notebook: 3.");
    assertThat(third.indexOf("This would be a repeat decided after seeing a result"))
        .isBetween(0, third.indexOf("Committed and sealed"));
  }

  @Test
  void theCommitOfARepeatSaysTheSameOfASealedSessionWhateverItsOrder() throws IOException {
    TreeSet<String> said = new TreeSet<>();
    TreeSet<String> orders = new TreeSet<>();
    for (long seed = 1; seed <= 4; seed++) {
      CommandLineSession machine =
          CommandLineSession.ofOrder(Files.createDirectory(folder.resolve("o" + seed)), seed);
      String first = machine.commit(Plans.SMALL);
      ride(machine, first);
      String phrase = machine.phrase();
      String again = ok(machine, "commit", machine.file("plan.yaml", Plans.SMALL).toString());
      said.add(again.substring(0, again.indexOf("Committed and sealed")));
      machine.types(phrase);
      String unsealed = ok(machine, "unseal", first);
      orders.add(unsealed.substring(unsealed.indexOf("Order ridden")));
    }
    assertThat(orders).as("the orders differ, or this shows nothing").hasSizeGreaterThan(1);
    assertThat(said).hasSize(1);
    assertThat(said.first()).contains("review closed; primary measure lap time; still sealed.");
  }

  @Test
  void twoMachinesThatBothOpenedTheSealAgreeOnWhatWasFoundInWhateverOrderTheyMeet() {
    String session = hut.commit(Plans.SMALL);
    ride(hut, session);
    ok(home, "bring-in", sessionFile(hut, session).toString());
    home.types(hut.phrase());
    ok(hut, "unseal", session);
    home.later(60);
    ok(home, "unseal", session);
    ok(home, "bring-in", sessionFile(hut, session).toString());
    ok(hut, "bring-in", sessionFile(home, session).toString());
    assertThat(ok(hut, "review", session, "--json"))
        .contains("\"source\" : \"recorded\"")
        .isEqualTo(ok(home, "review", session, "--json"));
    assertThat(ok(hut, "review", session)).doesNotContain("Under method");
    assertThat(ok(hut, "notebook", "--verify")).contains("1 session");
  }

  @Test
  void aDataPackageOfAnEarlierMethodIsCalledOlderAndNeverAltered() throws Exception {
    String session = hut.commit(Plans.SMALL);
    ride(hut, session);
    ok(hut, "unseal", session);
    Path packed = folder.resolve("package");
    ok(hut, "export", session, "--out", packed.toString());
    String today = ok(hut, "review", "--from", packed.toString());
    assertThat(today).startsWith(ok(hut, "review", session)).doesNotContain("older");

    Path finding = packed.resolve("finding.json");
    String text = Files.readString(finding);
    int from = text.indexOf("\"unsealed_under\"");
    String first = text.substring(0, from) + text.substring(text.indexOf("\"requests\"", from));
    written(packed, first.replaceFirst("\"edition\" : \\d+,", ""));
    String older = "This data package was computed by an older method (1); the finding above is by";
    assertThat(ok(hut, "review", "--from", packed.toString()))
        .contains(older)
        .doesNotContain("Under method")
        .doesNotContain("altered");

    written(
        packed,
        first
            .replaceFirst("\"edition\" : \\d+,", "")
            .replaceFirst("(\"role\" : \"primary\"[^}]*?\"p\" : )[0-9.]+", "$10.77"));
    assertThat(ok(hut, "review", "--from", packed.toString()))
        .contains(older, "Under method 1: ", "p = .77 (as this data package has it)")
        .doesNotContain("altered");

    // Packages of that time had no hashes at all.
    Files.delete(packed.resolve("datapackage.json"));
    assertThat(ok(hut, "review", "--from", packed.toString()))
        .contains(older, "Under method 1: ")
        .doesNotContain("altered");

    Files.writeString(finding, text.replace("\"told\"", "\"tolled\"").replace("recorded\"", "x\""));
    CommandLineSession.Ran broken = hut.run("review", "--from", packed.toString());
    assertThat(broken.err()).contains("finding.json is not a finding as Blindlap writes it.");
    assertThat(broken.code()).isEqualTo(ExitCode.BAD_INPUT);
  }

  /** A finding as a program of another method wrote it, with its hash in the descriptor. */
  private static void written(Path packed, String text) throws IOException {
    Path finding = packed.resolve("finding.json");
    String before = Fingerprint.sha256(Files.readAllBytes(finding)).hex();
    Files.writeString(finding, text);
    Path descriptor = packed.resolve("datapackage.json");
    String named = Files.readString(descriptor);
    assertThat(named).contains(before);
    Files.writeString(
        descriptor, named.replace(before, Fingerprint.sha256(Files.readAllBytes(finding)).hex()));
  }
}
