package blindlap.phone;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The rules of docs/phones.md by which a message is entered once, and nothing else. */
final class RulesOfSending implements Laptop {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** A message that is in the notebook. */
  record Entered(String client, long number, String words) {}

  private final List<Entered> entries = new ArrayList<>();
  private final Map<String, Long> decided = new HashMap<>();
  private final boolean looksAtRun;
  private int run = 1;

  /**
   * @param looksAtRun false for a laptop that also takes what was meant for an earlier run of it
   */
  RulesOfSending(boolean looksAtRun) {
    this.looksAtRun = looksAtRun;
  }

  List<Entered> entries() {
    return entries;
  }

  private long last(String client) {
    return entries.stream()
        .filter(e -> e.client().equals(client))
        .mapToLong(Entered::number)
        .max()
        .orElse(0);
  }

  private String stateText(String client) {
    return "{\"run\":\"r%d\",\"last\":\"%d\",\"version\":\"%d\",\"now\":\"0\"}"
        .formatted(run, last(client), entries.size() + 1);
  }

  @Override
  public Answer state(String client, int unsent) {
    return new Answer(200, stateText(client));
  }

  @Override
  public Answer send(String client, String message) {
    JsonNode said = read(message);
    if (looksAtRun && !said.get("run").asText().equals("r" + run)) {
      return new Answer(409, "{\"why\":\"run\",\"run\":\"r" + run + "\"}");
    }
    long number = said.get("number").asLong();
    if (number > last(client)) {
      if (number <= decided.getOrDefault(client, 0L)) {
        return new Answer(409, "{\"why\":\"number\"}");
      }
      decided.put(client, number);
      String words = said.get("act").get("text").asText();
      if (words.startsWith("refused") && run % 2 == 1) { // what is refused now may be taken later
        return new Answer(200, "{\"refused\":\"No.\",\"state\":" + stateText(client) + "}");
      }
      if (!words.startsWith("nothing")) {
        entries.add(new Entered(client, number, words));
      }
    }
    return new Answer(200, "{\"done\":true,\"state\":" + stateText(client) + "}");
  }

  private static JsonNode read(String json) {
    try {
      return JSON.readTree(json);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void startAgain() {
    run++;
    decided.clear();
  }
}
