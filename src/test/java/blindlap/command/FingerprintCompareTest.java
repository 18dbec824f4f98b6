package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Numbers that somebody was given, held against files. */
class FingerprintCompareTest {
  @TempDir Path folder;
  private CommandLineSession day;
  private String session;
  private String plan;

  @BeforeEach
  void commit() {
    day = new CommandLineSession(folder);
    session = day.commit(Plans.SMALL);
    plan = number("plan");
  }

  private String number(String label) {
    return day.run("fingerprint", session)
        .out()
        .lines()
        .filter(line -> line.startsWith(label))
        .findFirst()
        .orElseThrow()
        .substring(label.length())
        .strip();
  }

  private CommandLineSession.Ran compare(String held) {
    return day.run("fingerprint", session, "--compare", held);
  }

  private void closeReview() {
    day.run("record", session, day.file("laps.csv", Plans.laps(8)).toString());
    day.run("close-day", session);
    day.run("close-review", session);
  }

  @Test
  void theNumberIsFoundHoweverItWasTypedOrScanned() {
    for (String held :
        List.of(
            plan,
            plan.replace(" ", ""),
            plan.toUpperCase(java.util.Locale.ROOT),
            plan.replace(' ', '\n'),
            plan.replace(" ", " - "),
            "\uFEFF" + plan.replace(' ', '\u00a0') + "\r\n",
            "plan    " + plan,
            plan.substring(0, 17),
            plan.substring(0, 17) + "\u2026")) {
      CommandLineSession.Ran ran = compare(held);
      assertThat(ran.code()).as(held).isZero();
      assertThat(ran.out())
          .startsWith("Yes: this file states that number")
          .contains("The order is still closed");
    }
  }

  @Test
  void aNumberOfAnotherFileIsNotFound() {
    char last = plan.charAt(plan.length() - 1);
    String other = plan.substring(0, plan.length() - 1) + (last == '0' ? '1' : '0');
    CommandLineSession.Ran ran = compare(other);
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.out()).startsWith("No: this file gives no such number.");
  }

  @Test
  void whatCannotBeComparedIsRefusedInOneSentence() {
    for (String held :
        List.of("", plan.substring(0, 16), plan + " " + plan, plan.replace('a', 'x') + "q")) {
      CommandLineSession.Ran ran = compare(held);
      assertThat(ran.code()).as(held).isEqualTo(2);
      assertThat(ran.out()).isEmpty();
      assertThat(ran.err().strip().lines()).hasSize(1);
      assertThat(ran.err()).contains("Nothing was compared");
    }
    assertThat(day.run("fingerprint", session, "--compare", plan, "--given-to", "X").code())
        .isEqualTo(2);
  }

  @Test
  void aNumberGivenBeforeTheReviewWasClosedIsStillThatOfThePlan() {
    assertThat(day.run("fingerprint", session, "--given-to", "S. Wirt").code()).isZero();
    closeReview();
    String review = number("review");
    day.run("unseal", session);
    assertThat(compare(plan).out()).startsWith("Yes: this file gives that number").contains("plan");
    assertThat(compare(review).out()).contains("closed review");
    assertThat(day.run("fingerprint", session).out())
        .contains("Fingerprint of the plan given to S. Wirt, ")
        .contains(": " + plan)
        .contains("Both fingerprints match this file; compare with what the receiver holds.");
  }

  /** Somebody changes a lap and makes every hash and the second fingerprint anew. */
  @Test
  void aFileWhoseChainWasWrittenAnewIsTakenForItselfAndFoundByTheNumberKept() throws IOException {
    closeReview();
    String kept = number("review");
    day.run("fingerprint", session, "--given-to", "S. Wirt");
    Path file = folder.resolve("moved.txt");
    day.run("export", session, "--session-file", file.toString());
    List<String> texts = new ArrayList<>(HostileSessions.entries(Files.readString(file)));
    int at = -1;
    for (int i = 0; i < texts.size(); i++) {
      at = texts.get(i).contains("\"measure\":\"grip\"") ? i : at;
    }
    texts.set(at, texts.get(at).replaceFirst("\"value\":\"\\d+\"", "\"value\":\"99\""));
    Path forged = folder.resolve("forged.txt");
    Files.writeString(forged, HostileSessions.rewritten(texts, true), StandardCharsets.UTF_8);
    CommandLineSession other =
        new CommandLineSession(Files.createDirectory(folder.resolve("o")), 3);
    assertThat(other.run("bring-in", forged.toString()).code()).as("it matches itself").isZero();
    assertThat(other.run("fingerprint", session).out()).contains("review matches this file");
    CommandLineSession.Ran ran = other.run("fingerprint", session, "--compare", kept);
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.out()).startsWith("No: this file notes that the number was given to someone");
  }
}
