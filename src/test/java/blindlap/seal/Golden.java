package blindlap.seal;

import blindlap.plan.Rule;
import blindlap.plan.TellingTask;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** One sealed session whose every byte is fixed; docs/sealing.md replays it. */
final class Golden {
  static final byte[] PLAN =
      "{\"plan\":\"golden case of docs/sealing.md\"}".getBytes(StandardCharsets.UTF_8);
  static final String SESSION = "golden-session";
  static final Rule BLOCKS_OF_FOUR = Rule.blocks(2, 16, 4);
  static final Rule EIGHT_STINT_SET = new Rule(2, 8, 8, List.of(), 3, 0.8);

  static final Rule FIVE_TRIANGLES = Rule.trials(TellingTask.TRIANGLE, 5);

  /** Few rounds, so that tests are quick; the real number is tested apart. */
  static final SealParameters QUICK = new SealParameters(1000);

  private Golden() {}

  static SealingSources sources() {
    return sources(FixedBytes.counting(0));
  }

  static SealingSources sources(String seedHex) {
    return new SealingSources(
        FixedBytes.hex(seedHex),
        FixedBytes.stream("codes"),
        FixedBytes.hex(FixedBytes.counting(32)),
        FixedBytes.hex("01"),
        FixedBytes.hex("000100020003000400050006"),
        FixedBytes.hex("404142434445464748494a4b4c4d4e4f"),
        FixedBytes.hex("505152535455565758595a5b"));
  }

  static Sealing sealing() {
    return new Sealing(sources(), QUICK);
  }

  static Sealed sealed(Rule rule) {
    return sealed(sealing(), rule, SessionKind.comparison());
  }

  /** Both steps of a sealing, with nobody to ask for the phrase. */
  static Sealed sealed(Sealing sealing, Rule rule, SessionKind kind) {
    HelperPhrase phrase = sealing.drawPhrase(rule).unasked();
    return sealing.seal(PLAN, rule, SESSION, kind, phrase);
  }

  static OpenKey key(Rule rule) {
    Sealed sealed = sealed(rule);
    return ((Opening.Opened) sealing().open(sealed.key(), sealed.phrase())).key();
  }
}
