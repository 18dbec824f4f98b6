package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.mozilla.javascript.NativeArray;
import org.mozilla.javascript.NativeObject;

/**
 * One phone and one laptop with a bad network between them, drawn from a seed. Requests and answers
 * are lost, doubled, late and out of order; the page is reloaded, with all that was not written to
 * the phone lost; the laptop's program is started again, or killed between entering and answering.
 */
final class SendingHistory {
  private static final String CLIENT = "00112233445566778899aabbccddeeff";
  private static final int CALM = 400;

  private record Request(int page, int id, String path, String body) {}

  private record Reply(int page, int id, Laptop.Answer answer) {}

  private final PhoneModule outbox;
  private final Laptop laptop;
  private final Random random;
  private final List<Request> requests = new ArrayList<>();
  private final List<Reply> replies = new ArrayList<>();

  /** Copies on their way to the phone's memory, as the page made them, and as text. */
  private final Deque<Object> writing = new ArrayDeque<>();

  /** What was given to a page, by words; true once the page said that it was kept. */
  final Map<String, Boolean> given = new HashMap<>();

  private Object box;
  private String disk = "null";
  private int page;
  private int said;
  private long now = 1_000_000;

  SendingHistory(PhoneModule outbox, Laptop laptop, long seed) {
    this.outbox = outbox;
    this.laptop = laptop;
    this.random = new Random(seed);
    this.box = outbox.call("openBox", (Object) null);
  }

  /** Lets it happen, then lets the network heal. */
  void run(int events) {
    for (int i = 0; i < events; i++) {
      now += random.nextInt(500);
      event();
    }
    for (int i = 0; i < CALM && (unsent() > 0 || !writing.isEmpty()); i++) {
      now += 10;
      calm();
    }
  }

  private void event() {
    switch (random.nextInt(16)) {
      case 0, 1 -> give();
      case 2, 3, 4 -> write();
      case 5, 6, 7 -> ask(random.nextInt(4) == 0);
      case 8, 9, 10 -> arrive();
      case 11, 12 -> reply();
      case 13 -> lose();
      case 14 -> giveUp();
      default -> {
        switch (random.nextInt(3)) {
          case 0 -> reload();
          case 1 -> laptop.startAgain();
          default -> giveUp();
        }
      }
    }
  }

  private void give() {
    String kind = List.of("said", "said", "said", "refused", "nothing").get(random.nextInt(5));
    String words = kind + " " + ++said;
    given.put(words, false);
    Object act = outbox.value("{\"do\":\"note\",\"text\":\"" + words + "\"}");
    box = outbox.call("give", box, act, now);
    keep();
  }

  private void keep() {
    writing.add(outbox.call("toKeep", box));
  }

  private void write() {
    Object copy = writing.poll();
    if (copy == null) {
      return;
    }
    disk = outbox.json(copy);
    if (random.nextInt(10) == 0) {
      reload(); // it is written, and the page never heard
      return;
    }
    box = outbox.call("written", box, copy);
    for (Object each : (NativeArray) outbox.call("unsentAndKept", box)) {
      given.put(words(each), true);
    }
  }

  private static String words(Object message) {
    return String.valueOf(((NativeObject) ((NativeObject) message).get("act")).get("text"));
  }

  private void ask(boolean poll) {
    NativeArray asked = (NativeArray) outbox.call("ask", box, now, poll);
    box = asked.get(0);
    if (asked.get(1) instanceof NativeObject exchange) {
      Object body = exchange.get("body");
      requests.add(
          new Request(
              page,
              ((Number) exchange.get("id")).intValue(),
              String.valueOf(exchange.get("path")),
              body == null ? "" : outbox.json(body)));
    }
  }

  private <T> T any(List<T> all, boolean again) {
    int at = random.nextInt(all.size());
    return again ? all.get(at) : all.remove(at);
  }

  private void arrive() {
    if (!requests.isEmpty()) {
      Request request = any(requests, random.nextInt(4) == 0);
      Laptop.Answer answer =
          request.path().startsWith("/state")
              ? laptop.state(CLIENT, 0)
              : laptop.send(CLIENT, request.body());
      if (random.nextInt(20) == 0) {
        laptop.startAgain(); // killed between entering and answering
      } else {
        replies.add(new Reply(request.page(), request.id(), answer));
      }
    }
  }

  private void reply() {
    if (!replies.isEmpty()) {
      Reply reply = any(replies, random.nextInt(6) == 0);
      if (reply.page() == page) { // a page that is gone hears nothing
        Object body = outbox.value(reply.answer().body());
        box = outbox.call("answer", box, reply.id(), reply.answer().status(), body, now);
        keep();
      }
    }
  }

  private void lose() {
    if (random.nextBoolean() && !requests.isEmpty()) {
      any(requests, false);
    } else if (!replies.isEmpty()) {
      any(replies, false);
    }
  }

  private void giveUp() {
    if (((NativeObject) box).get("under") instanceof NativeObject under) {
      box = outbox.call("fail", box, under.get("id"));
    }
  }

  private void reload() {
    page++;
    writing.clear();
    box = outbox.call("openBox", outbox.value(disk));
  }

  private void calm() {
    write();
    ask(false);
    arrive();
    reply();
    if (requests.isEmpty() && replies.isEmpty()) {
      giveUp();
    }
  }

  private int unsent() {
    return ((NativeArray) outbox.call("unsent", box)).size();
  }

  /** Words of what the page lists as not taken. */
  private List<String> away() {
    List<String> words = new ArrayList<>();
    for (Object each : (NativeArray) ((NativeObject) box).get("away")) {
      words.add(words(each));
    }
    return words;
  }

  /** Entered once, in order, none lost, and nothing left on the phone. */
  void check(List<RulesOfSending.Entered> entries, String what) {
    assertThat(unsent()).as("left unsent, %s", what).isZero();
    List<Long> numbers = entries.stream().map(RulesOfSending.Entered::number).toList();
    assertThat(numbers).as("numbers, %s", what).isSorted().doesNotHaveDuplicates();
    List<String> words = entries.stream().map(RulesOfSending.Entered::words).toList();
    assertThat(words).as("entered, %s", what).doesNotHaveDuplicates();
    assertThat(words.stream().map(w -> Integer.parseInt(w.split(" ")[1])).toList())
        .as("order, %s", what)
        .isSorted();
    List<String> away = away();
    assertThat(away)
        .as("not taken, %s", what)
        .doesNotHaveDuplicates()
        .doesNotContainAnyElementsOf(words);
    assertThat(away).as("not taken, %s", what).noneMatch(w -> w.startsWith("said"));
    given.forEach(
        (each, kept) -> {
          if (kept && each.startsWith("said")) {
            assertThat(words).as("said and kept, %s", what).contains(each);
          } else if (kept && each.startsWith("refused")) {
            assertThat(away.contains(each) || words.contains(each))
                .as("refused or entered, %s: %s", what, each)
                .isTrue();
          }
        });
  }
}
