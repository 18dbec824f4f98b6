package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mozilla.javascript.NativeArray;
import org.mozilla.javascript.NativeObject;

/**
 * Whatever the network loses, doubles, delays or reorders, and whoever is started again: what was
 * kept on a phone is entered once, in order, and none is lost. Long: {@code
 * -Dphone.histories=10000}.
 */
class SendingTest {
  private static final int HISTORIES = Integer.getInteger("phone.histories", 400);
  private static final int EVENTS = 150;

  private static int entered(String source, boolean looksAtRun) {
    int entered = 0;
    try (PhoneModule outbox = new PhoneModule("outbox", source)) {
      for (int seed = 1; seed <= HISTORIES; seed++) {
        RulesOfSending laptop = new RulesOfSending(looksAtRun);
        SendingHistory history = new SendingHistory(outbox, laptop, seed);
        history.run(EVENTS);
        history.check(laptop.entries(), "history " + seed);
        entered += laptop.entries().size();
      }
    }
    return entered;
  }

  @Test
  void eachMessageIsEnteredOnceInOrderAndNoneIsLost() {
    assertThat(entered(PhoneModule.text("outbox"), true)).isGreaterThan(5 * HISTORIES);
  }

  /** A protocol without one of its rules fails in some history: the test would notice. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "an answer to an exchange given up|box.under.id !== id|false",
        "sent before it is kept|head.number < box.kept &&|",
        "the next one sent before a refusal is kept|&& box.told === box.refusals|",
        "a refusal forgotten|away: [...box.away, ...box.queue|away: [...box.away, ...[]",
        "numbers that begin again|next: was.next|next: 1",
        "taken for done without an answer|{ ...box, under: null } : box|"
            + "{ ...without(box, box.under.number), under: null } : box",
      })
  void aProtocolWithoutOneOfItsRulesIsFound(String what, String rule, String instead) {
    String whole = PhoneModule.text("outbox");
    String broken = whole.replace(rule, instead == null ? "" : instead);
    assertThat(broken).as(what).isNotEqualTo(whole);
    assertThatThrownBy(() -> entered(broken, true)).as(what).isInstanceOf(AssertionError.class);
  }

  @Test
  void aLaptopThatDoesNotLookAtTheRunIsFound() {
    assertThatThrownBy(() -> entered(PhoneModule.text("outbox"), false))
        .isInstanceOf(AssertionError.class);
  }

  @Test
  void aPhoneThatLostItsLatestWritingGivesNewNumbersToWhatItNeverSent() {
    try (PhoneModule outbox = new PhoneModule("outbox")) {
      Object box = outbox.call("openBox", (Object) null); // numbers 1 to 3 were entered before
      box = outbox.call("give", box, outbox.value("{\"text\":\"a\"}"), 5);
      box = outbox.call("give", box, outbox.value("{\"text\":\"b\"}"), 6);
      box = outbox.call("written", box, outbox.call("toKeep", box));
      Object before = outbox.call("toKeep", box);
      NativeArray asked = (NativeArray) outbox.call("ask", box, 7, true);
      Object state = outbox.value("{\"run\":\"r\",\"last\":\"3\",\"version\":\"9\",\"now\":\"7\"}");
      box = outbox.call("answer", asked.get(0), 1, 200, state, 8);
      assertThat(outbox.json(outbox.call("unsent", box)))
          .contains("\"number\":4", "\"number\":5")
          .doesNotContain("\"number\":1,");
      box = outbox.call("written", box, before); // a copy of before the new numbers says nothing
      assertThat(((NativeArray) outbox.call("ask", box, 9, false)).get(1)).isNull();
      box = outbox.call("written", box, outbox.call("toKeep", box));
      assertThat(((NativeArray) outbox.call("ask", box, 9, false)).get(1)).isNotNull();
    }
  }

  @Test
  void theOffsetIsTakenFromTheExchangeThatTravelledLeastAndAnewOnceTheClockWasSet() {
    try (PhoneModule outbox = new PhoneModule("outbox")) {
      Object box = outbox.call("openBox", (Object) null);
      assertThat(outbox.call("offsetOf", box)).isNull();
      box = exchange(outbox, box, 1_000, 1_900, 6_000); // middle 1450: 4550
      box = exchange(outbox, box, 3_000, 3_020, 8_010); // middle 3010: 5000
      box = exchange(outbox, box, 5_000, 5_400, 10_350); // middle 5200: 5150
      assertThat(((Number) outbox.call("offsetOf", box)).intValue()).isEqualTo(5_000);
      box = exchange(outbox, box, 65_000, 65_400, 10_600); // the phone's clock went on by a minute
      assertThat(((Number) outbox.call("offsetOf", box)).intValue()).isEqualTo(-54_600);
    }
  }

  private static Object exchange(PhoneModule outbox, Object box, long sent, long got, long laptop) {
    NativeArray asked = (NativeArray) outbox.call("ask", box, sent, true);
    Object id = ((NativeObject) asked.get(1)).get("id");
    Object state =
        outbox.value("{\"run\":\"r\",\"last\":\"0\",\"version\":\"1\",\"now\":\"" + laptop + "\"}");
    return outbox.call("answer", asked.get(0), id, 200, state, got);
  }
}
