package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.TestDay;
import blindlap.session.Fact;
import blindlap.session.day.PhoneRole;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The phone's own rules against the server's and the notebook's: what {@link SendingTest} holds of
 * the rules alone. Long: {@code -Dphone.desk=500}.
 */
class SendingToTheDeskTest {
  private static final int HISTORIES = Integer.getInteger("phone.desk", 60);

  @TempDir Path folder;

  @Test
  void whatIsKeptOnAPhoneIsInTheNotebookOnceAndInOrder() throws IOException {
    int entered = 0;
    try (PhoneModule outbox = new PhoneModule("outbox")) {
      for (int seed = 1; seed <= HISTORIES; seed++) {
        try (DeskLaptop laptop =
            new DeskLaptop(Files.createDirectory(folder.resolve("h" + seed)))) {
          SendingHistory history = new SendingHistory(outbox, laptop, seed);
          history.run(150);
          List<RulesOfSending.Entered> entries = laptop.entries();
          history.check(entries, "history " + seed);
          entered += entries.size();
        }
      }
    }
    assertThat(entered).isGreaterThan(5 * HISTORIES);
  }

  /** A day whose messages are decided as the server decides them. */
  private static final class DeskLaptop implements Laptop, AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final TestDay day;
    private int run = 1;
    private Deciding deciding;

    DeskLaptop(Path folder) {
      day = new TestDay(folder, TestDay.EIGHT, 2);
      day.desk().riderDays().handedOver(day.id(), 1);
      deciding = deciding();
    }

    private Deciding deciding() {
      return new Deciding(day.desk().phoneDays(), day.id(), day.clock(), "r" + run);
    }

    private static Phone phone(String client) {
      return new Phone(
          client, PhoneRole.RIDER, Fingerprint.of(client), Phone.Place.IN, Instant.EPOCH);
    }

    @Override
    public Answer state(String client, int unsent) {
      return answer(Reply.json(200, deciding.state(phone(client), deciding.seen())));
    }

    private static Answer answer(Reply reply) {
      return new Answer(reply.status(), new String(reply.body(), StandardCharsets.UTF_8));
    }

    @Override
    public Answer send(String client, String message) {
      try {
        ObjectNode said = (ObjectNode) JSON.readTree(message);
        String words = said.at("/act/text").asText();
        said.set("act", act(words));
        return answer(deciding.decide(phone(client), new Given(said)));
      } catch (Turned turned) {
        throw new AssertionError("what the page sends is always in form", turned);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    /** What is entered, what is refused, and what leaves nothing to enter. */
    private static JsonNode act(String words) {
      ObjectNode act = JSON.createObjectNode();
      if (words.startsWith("nothing")) {
        return act.put("do", "handed-over").put("stint", "1");
      }
      String stint = words.startsWith("refused") ? "99" : "1";
      return act.put("do", "saw").put("stint", stint).put("what", words);
    }

    @Override
    public void startAgain() {
      run++;
      deciding = deciding();
    }

    List<RulesOfSending.Entered> entries() {
      return day.state().entries().stream()
          .map(stored -> stored.entry())
          .filter(entry -> entry.phone() != null)
          .map(
              entry ->
                  new RulesOfSending.Entered(
                      Objects.requireNonNull(entry.phone()).client(),
                      entry.phone().number(),
                      ((Fact.BlindBroken) entry.fact()).what()))
          .toList();
    }

    @Override
    public void close() {
      day.close();
    }
  }
}
