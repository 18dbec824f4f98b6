package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import blindlap.seal.Fingerprint;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What {@code verify.py} in a data package says of a session that somebody changed: of the plan, a
 * lap, the order or a helper's record, with hashes left as they were or made anew. Skipped where
 * there is no python3; {@code .ci/run} runs the script over every sample and fails without one.
 */
class VerifyScriptTest {
  /** How far whoever changes something goes. */
  enum Anew {
    /** The text alone. */
    NOTHING,
    /** Every entry after it, the file's hash, and that of the file in the package. */
    CHAIN,
    /** The fingerprint of the review as well. */
    REVIEW
  }

  @TempDir static Path folder;
  private static Path packed = Path.of("");
  private static String session = "";
  private static String planFingerprint = "";
  private static String reviewFingerprint = "";

  @TempDir Path own;

  private record Ran(int code, List<String> lines) {
    /** Names of the checks that failed, in the order of the script. */
    List<String> failed() {
      return lines.stream()
          .filter(line -> line.startsWith("FAILED "))
          .map(line -> line.substring(12, line.indexOf(':')))
          .toList();
    }

    String line(String start) {
      return lines.stream().filter(line -> line.startsWith(start)).findFirst().orElse("");
    }
  }

  @BeforeAll
  static void aDayWithAHelpersPage() throws IOException {
    CommandLineSession day = new CommandLineSession(Files.createDirectory(folder.resolve("day")));
    String id = day.commit(Plans.SMALL);
    StringBuilder paper = new StringBuilder("stint;fitted;safe: brakes;confirmed by\n");
    for (int stint = 0; stint <= 8; stint++) {
      paper.append(stint).append(";as scheduled;x;J. Ask\n");
    }
    ok(day, "catch-up", id, day.file("paper.csv", paper.toString()).toString());
    ok(day, "record", id, day.file("laps.csv", Plans.laps(8)).toString());
    ok(day, "helper", id, "--day-over");
    ok(day, "fingerprint", id, "--given-to", "M. Oster");
    ok(day, "close-day", id);
    ok(day, "close-review", id);
    ok(day, "unseal", id);
    packed = folder.resolve("packed");
    ok(day, "export", id, "--out", packed.toString());
    session = Files.readString(packed.resolve("session.txt"));
    String descriptor = Files.readString(packed.resolve("datapackage.json"));
    planFingerprint = found(descriptor, "\"plan_fingerprint\" : \"([0-9a-f]{64})\"");
    reviewFingerprint = found(descriptor, "\"review_fingerprint\" : \"([0-9a-f]{64})\"");
  }

  private static void ok(CommandLineSession day, String... typed) {
    CommandLineSession.Ran ran = day.run(typed);
    assertThat(ran.code()).as(ran.err()).isZero();
  }

  private static String found(String text, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    assertThat(matcher.find()).as(pattern).isTrue();
    return matcher.group(1);
  }

  private static Ran verify(Path script, String... arguments) {
    List<String> command = new ArrayList<>(List.of("python3", script.toString()));
    command.addAll(Arrays.asList(arguments));
    try {
      ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
      builder.environment().put("PYTHONIOENCODING", "utf-8");
      Process python = builder.start();
      String said = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(python.waitFor(60, TimeUnit.SECONDS)).isTrue();
      return new Ran(python.exitValue(), said.lines().toList());
    } catch (IOException absent) {
      assumeTrue(false, "python3 is not on this machine");
      throw new UncheckedIOException(absent);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Path script(Path of) {
    return of.resolve("verify.py");
  }

  /** The session with one change to an entry of a kind. */
  private static String changed(String kind, String from, String to, Anew anew) {
    List<String> entries = new ArrayList<>(HostileSessions.entries(session));
    int at = 0;
    while (!entries.get(at).contains("\"kind\":\"" + kind + "\"")) {
      at++;
    }
    String before = entries.get(at);
    String after = before.replaceFirst(from, to);
    assertThat(after).as(from).isNotEqualTo(before);
    entries.set(at, after);
    return anew == Anew.NOTHING
        ? session.replace(before, after)
        : HostileSessions.rewritten(entries, anew == Anew.REVIEW);
  }

  /** A copy of the package with another session, whose hash stands in its description. */
  private Path forged(String other) throws IOException {
    Path copy = Files.createDirectory(own.resolve("forged"));
    try (Stream<Path> files = Files.list(packed)) {
      for (Path file : (Iterable<Path>) files::iterator) {
        Files.copy(file, copy.resolve(file.getFileName().toString()));
      }
    }
    byte[] bytes = other.getBytes(StandardCharsets.UTF_8);
    Files.write(copy.resolve("session.txt"), bytes);
    String old = Fingerprint.sha256(session.getBytes(StandardCharsets.UTF_8)).hex();
    String description = Files.readString(copy.resolve("datapackage.json"));
    String size = "\"bytes\" : \\d+,(\\s+\"hash\" : \"sha256:)" + old;
    String made = description.replaceFirst(size, "\"bytes\" : " + bytes.length + ",$1NEW");
    assertThat(made).isNotEqualTo(description);
    Files.writeString(
        copy.resolve("datapackage.json"), made.replace("NEW", Fingerprint.sha256(bytes).hex()));
    return copy;
  }

  @Test
  void thePackageAsItWasWrittenHoldsFromItsOwnFolder() {
    Ran ran = verify(script(packed));
    assertThat(ran.failed()).isEmpty();
    assertThat(ran.code()).as("%s", ran.lines()).isZero();
    assertThat(ran.lines()).filteredOn(line -> line.startsWith("ok ")).hasSizeGreaterThan(17);
    assertThat(ran.line("not checked helper's records"))
        .contains(
            "that the helper's opened records equal their ciphertexts (needs the phrase and"
                + " AES-GCM)");
    assertThat(ran.line("ok          helper.csv")).contains("that of 9 opened records");
    assertThat(ran.lines().get(ran.lines().size() - 1)).isEqualTo("All checks hold.");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "plan | PlanCommitted | R. Lind | R. Lund | NOTHING | session file, chains, plan,"
            + " fingerprint of the plan, plan.json",
        "plan | PlanCommitted | R. Lind | R. Lund | CHAIN | plan, fingerprint of the plan,"
            + " fingerprint of the review, last entries, plan.json",
        "plan | PlanCommitted | R. Lind | R. Lund | REVIEW | plan, fingerprint of the plan, last"
            + " entries, plan.json",
        "rule | PlanCommitted | max_run\\\\\":\\\\\"3 | max_run\\\\\":\\\\\"2 | REVIEW | plan,"
            + " replayed order, fingerprint of the plan, last entries, plan.json, rule.csv",
        "lap | ScoreGiven | \"value\":\"9 | \"value\":\"8 | NOTHING | session file, chains,"
            + " laps.csv, units.csv",
        "lap | ScoreGiven | \"value\":\"9 | \"value\":\"8 | CHAIN | fingerprint of the review,"
            + " last entries, laps.csv, units.csv",
        "lap | ScoreGiven | \"value\":\"9 | \"value\":\"8 | REVIEW | last entries, laps.csv,"
            + " units.csv",
        "order | SealOpened | order=([AB]*?)AB | order=$1BA | NOTHING | session"
            + " file, chains, replayed order, fingerprint of the plan, key.json, laps.csv,"
            + " stints.csv, units.csv",
        "order | SealOpened | order=([AB]*?)AB | order=$1BA | REVIEW | replayed"
            + " order, fingerprint of the plan, last entries, key.json, laps.csv, stints.csv,"
            + " units.csv",
        "record | StintHandled | \"ciphertext\":\"..... | \"ciphertext\":\"AAAAA | NOTHING |"
            + " session file, chains",
        "record | StintHandled | \"ciphertext\":\"..... | \"ciphertext\":\"AAAAA | CHAIN |"
            + " fingerprint of the review, last entries",
        "opened record | SealOpened | fitted(.{5})shock-[kl] | fitted$1shock-x | CHAIN | last"
            + " entries, helper.csv",
      })
  void whatWasChangedIsNamedAndNothingElse(
      String what, String kind, String from, String to, Anew anew, String failed)
      throws IOException {
    Ran ran =
        verify(script(forged(changed(kind, from, java.util.Objects.requireNonNull(to), anew))));
    assertThat(ran.failed()).as("%s: %s", what, ran.lines()).isEqualTo(List.of(failed.split(", ")));
    assertThat(ran.code()).isEqualTo(1);
  }

  @Test
  void aFileWrittenAnewAsAWholeIsTakenOnlyByTheNumberThatWasGiven() throws IOException {
    String other = changed("ScoreGiven", "\"value\":\"9", "\"value\":\"8", Anew.REVIEW);
    Path file = Files.writeString(own.resolve("anew.txt"), other);
    Path script = script(packed);
    assertThat(verify(script, file.toString()).failed()).isEmpty();
    Ran plan = verify(script, file.toString(), "--compare", planFingerprint.substring(0, 16));
    assertThat(plan.failed()).as("the plan was left as it was").isEmpty();
    assertThat(plan.code()).isZero();
    Ran review = verify(script, file.toString(), "--compare", reviewFingerprint);
    assertThat(review.failed()).containsExactly("compare");
    assertThat(review.code()).isEqualTo(1);
    Ran before = verify(script, packed.toString(), "--compare", reviewFingerprint);
    assertThat(before.line("ok          compare")).contains("the fingerprint of the closed review");
    assertThat(before.code()).isZero();
  }

  /** What no script without the phrase can find: it says so, and its answer here is the proof. */
  @Test
  void anOpenedRecordThatIsNotItsCiphertextIsWhatItDoesNotCheck() throws IOException {
    String other = changed("SealOpened", "fitted(.{5})shock-[kl]", "fitted$1shock-x", Anew.REVIEW);
    Ran ran = verify(script(packed), Files.writeString(own.resolve("x.txt"), other).toString());
    assertThat(ran.failed()).isEmpty();
    assertThat(ran.line("not checked helper's records")).isNotEmpty();
  }

  @Test
  void aSealedSessionIsCheckedAsFarAsItIsOpen() throws IOException {
    CommandLineSession day = new CommandLineSession(own, 5);
    String id = day.commit(Plans.SMALL);
    ok(day, "record", id, day.file("laps.csv", Plans.laps(8)).toString());
    Path out = own.resolve("sealed");
    ok(day, "export", id, "--out", out.toString());
    Ran ran = verify(script(packed), out.toString());
    assertThat(ran.code()).as("%s", ran.lines()).isZero();
    assertThat(ran.line("not yet     fingerprint of the plan")).contains("still sealed");
    assertThat(ran.line("not yet     fingerprint of the review")).contains("is not closed");
    assertThat(ran.line("ok          files")).isNotEmpty();
  }

  /** Without its description a table is still held against the session. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "datapackage.json | files, last entries",
        "units.csv | files, units.csv",
        "key.json | files",
      })
  void aFileThatIsGoneIsNamed(String gone, String failed) throws IOException {
    Path copy = forged(session + "\n");
    Files.delete(copy.resolve(gone));
    Ran ran = verify(script(copy));
    assertThat(ran.failed()).as("%s", ran.lines()).isEqualTo(List.of(failed.split(", ")));
    assertThat(ran.code()).isEqualTo(1);
  }

  @Test
  void wrongCallsAndMissingFilesHaveTheirExitCodes() throws IOException {
    Path script = script(packed);
    assertThat(verify(script, "--help").code()).isEqualTo(2);
    assertThat(verify(script, "--compare", "3dbf").code()).isEqualTo(2);
    assertThat(verify(script, "--compare").code()).isEqualTo(2);
    assertThat(verify(script, "a", "b").code()).isEqualTo(2);
    Ran gone = verify(script, own.resolve("gone").toString());
    assertThat(gone.code()).isEqualTo(3);
    assertThat(gone.lines()).hasSize(1).allMatch(line -> line.contains("Nothing was changed."));
    Path text = Files.writeString(own.resolve("words.txt"), "Nothing of the kind\n");
    Ran words = verify(script, text.toString());
    assertThat(words.code()).isEqualTo(1);
    assertThat(words.lines()).noneMatch(line -> line.contains("Traceback"));
  }
}
