package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.plan.Rule;
import blindlap.seal.HelperSchedule.Swap;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SealingTest {
  private static final Rule RULE = Golden.BLOCKS_OF_FOUR;

  private static Opening open(SealedKey key) {
    return Golden.sealing().open(key, Golden.sealed(RULE).phrase());
  }

  private static SealedKey with(SealedKey key, String field, String value) {
    Map<String, String> fields = new LinkedHashMap<>(key.fields());
    assertThat(fields).containsKey(field);
    fields.put(field, value);
    return SealedKey.of(fields);
  }

  /** The text with another character of the alphabet at a place. */
  private static String changed(String text, int at) {
    char other = text.charAt(at) == 'a' ? 'b' : 'a';
    return text.substring(0, at) + other + text.substring(at + 1);
  }

  @Test
  void theGoldenSessionHasTheBytesOfAnIndependentProgram() {
    // Reference: Python hashlib, hmac and the package cryptography 48, written from
    // docs/sealing.md.
    Sealed sealed = Golden.sealed(RULE);
    SealedKey key = sealed.key();
    assertThat(sealed.fingerprint().hex())
        .isEqualTo("3d256d4426b9ff588edc1abdf38b094b8125d688a53573e8cc48c3aee04b85cf");
    assertThat(sealed.codes())
        .containsExactly(
            731, 158, 404, 702, 351, 854, 104, 353, 373, 323, 492, 189, 328, 837, 974, 480);
    assertThat(key.phraseCheck()).isEqualTo("2c772e58425526d10d4c92bf9861ef3f");
    assertThat(key.planHash().hex())
        .isEqualTo("11bdbf73ba090a73f0cafa8f8a0c6b25fe337687cd0ccb85062ce82be83e08e8");
    assertThat(key.ciphertextBytes()).hasSize(363);
    assertThat(Fingerprint.sha256(key.ciphertextBytes()).hex())
        .isEqualTo("09c769ddb0f4daa8d22fa91990993da3115fa1b21e9cb53006459b2d2bae3cc4");
    assertThat(key.fields().keySet())
        .containsExactly(
            "version",
            "session",
            "plan_sha256",
            "derivation",
            "rounds",
            "salt",
            "phrase_check",
            "cipher",
            "iv",
            "ciphertext");
  }

  @Test
  void realSessionsUseAtLeast600000RoundsAndRecordThem() {
    Sealed sealed =
        Golden.sealed(
            new Sealing(Golden.sources(), SealParameters.standard()),
            RULE,
            SessionKind.comparison());
    assertThat(sealed.key().fields()).containsEntry("rounds", "600000");
    assertThat(SealParameters.standard().strong()).isTrue();
    assertThat(Golden.QUICK.strong()).isFalse();
    // Opening uses the recorded number, not that of the program that opens.
    assertThat(Golden.sealing().open(sealed.key(), sealed.phrase()))
        .isInstanceOf(Opening.Opened.class);
  }

  @Test
  void thePhraseOpensTheKeyAlsoAfterItsFieldsWentThroughAFile() {
    Sealed sealed = Golden.sealed(RULE);
    SealedKey read = SealedKey.of(sealed.key().fields());
    assertThat(read).isEqualTo(sealed.key());
    OpenKey key = ((Opening.Opened) open(read)).key();
    assertThat(key.order()).isEqualTo("ABABBABAAABBBABA");
    assertThat(key.setup(1)).isZero();
    assertThat(key.setup(2)).isEqualTo(1);
    assertThat(key.code(16)).isEqualTo(480);
    assertThat(key.codes()).isEqualTo(sealed.codes());
    assertThat(Golden.sealing().fingerprint(Golden.PLAN, key)).isEqualTo(sealed.fingerprint());
    assertThatThrownBy(() -> key.setup(17)).hasMessageContaining("no stint 17");
    assertThatThrownBy(() -> key.code(0)).hasMessageContaining("no stint 0");
  }

  @Test
  void anotherPhraseIsNamedAsWrong() {
    HelperPhrase other = HelperPhrase.draw(FixedBytes.stream("other"));
    assertThat(Golden.sealing().open(Golden.sealed(RULE).key(), other))
        .isEqualTo(new Opening.WrongPhrase());
  }

  @Test
  void aChangeAnywhereInTheSealedKeyIsNoticed() {
    SealedKey key = Golden.sealed(RULE).key();
    int last = key.ciphertext().length() - 1;
    Opening damaged = new Opening.Damaged();
    assertThat(open(with(key, "ciphertext", changed(key.ciphertext(), 10)))).isEqualTo(damaged);
    assertThat(open(with(key, "ciphertext", changed(key.ciphertext(), last)))).isEqualTo(damaged);
    assertThat(open(with(key, "ciphertext", key.ciphertext().substring(4)))).isEqualTo(damaged);
    assertThat(open(with(key, "ciphertext", ""))).isEqualTo(damaged);
    assertThat(open(with(key, "iv", changed(key.iv(), 0)))).isEqualTo(damaged);
    assertThat(open(with(key, "session", "another-session"))).isEqualTo(damaged);
    assertThat(open(with(key, "plan_sha256", changed(key.planHash().hex(), 5)))).isEqualTo(damaged);
    Opening wrong = new Opening.WrongPhrase();
    assertThat(open(with(key, "salt", changed(key.salt(), 0)))).isEqualTo(wrong);
    assertThat(open(with(key, "rounds", "999"))).isEqualTo(wrong);
    assertThat(open(with(key, "phrase_check", changed(key.phraseCheck(), 0)))).isEqualTo(wrong);
  }

  @Test
  void aSealedKeyThatCannotBeReadNamesTheField() {
    SealedKey key = Golden.sealed(RULE).key();
    Map<String, String> missing = new LinkedHashMap<>(key.fields());
    missing.remove("salt");
    assertThatThrownBy(() -> SealedKey.of(missing)).hasMessageContaining("salt is missing");
    Map<String, String> more = new LinkedHashMap<>(key.fields());
    more.put("hint", "x");
    assertThatThrownBy(() -> SealedKey.of(more)).hasMessageContaining("hint is not known");
    assertThatThrownBy(() -> with(key, "version", "blindlap-sealed-key-2"))
        .hasMessageContaining("version is \"blindlap-sealed-key-2\"");
    assertThatThrownBy(() -> with(key, "rounds", "many")).hasMessageContaining("rounds");
    assertThatThrownBy(() -> with(key, "rounds", "0")).hasMessageContaining("rounds");
    assertThatThrownBy(() -> with(key, "iv", "00")).hasMessageContaining("iv is not 12 bytes");
    assertThatThrownBy(() -> with(key, "ciphertext", "*")).hasMessageContaining("ciphertext");
  }

  @Test
  void whateverTheOrderOnlyCiphertextAndFingerprintDifferAndAllLengthsAreEqual() {
    Set<String> orders = new HashSet<>();
    Set<Map<String, String>> open = new HashSet<>();
    Set<Integer> lengths = new HashSet<>();
    Set<String> phrases = new HashSet<>();
    Set<List<Integer>> codes = new HashSet<>();
    for (int i = 0; orders.size() < 50; i++) {
      Sealed sealed = sealedWithSeed(i, SessionKind.comparison());
      Map<String, String> fields = new LinkedHashMap<>(sealed.key().fields());
      lengths.add(fields.remove("ciphertext").length());
      open.add(fields);
      phrases.add(sealed.phrase().text());
      codes.add(sealed.codes());
      orders.add(sealed.sheet().payload().replaceAll(".*O1:([AB]+).*", "$1"));
    }
    lengths.add(sealedWithSeed(0, SessionKind.nullRun(1)).key().ciphertext().length());
    assertThat(open).hasSize(1);
    assertThat(lengths).hasSize(1);
    assertThat(phrases).hasSize(1);
    assertThat(codes).as("codes come from a source of their own").hasSize(1);
  }

  private static Sealed sealedWithSeed(int number, SessionKind kind) {
    String seed = Fingerprint.sha256(new byte[] {(byte) number, (byte) (number >> 8)}).hex();
    return Golden.sealed(
        new Sealing(Golden.sources(seed), new SealParameters(1)), Golden.EIGHT_STINT_SET, kind);
  }

  @Test
  void codesAreDistinctThreeDigitNumbersAndAllOfThemComeUp() {
    List<Integer> all = Codes.draw(900, FixedBytes.stream("all codes"));
    assertThat(all).hasSize(900).doesNotHaveDuplicates();
    assertThat(all).allMatch(code -> code >= 100 && code <= 999);
    // fd20 = 64 800 is the first value beyond the last multiple of 900; fd1f the last before.
    assertThat(Codes.draw(2, FixedBytes.hex("fd20fd1fffff0000"))).containsExactly(999, 100);
    assertThatThrownBy(() -> Codes.draw(901, FixedBytes.stream("x"))).hasMessageContaining("900");
  }

  @Test
  void eachSecretAsksItsOwnSourceForTheDocumentedBytes() {
    List<String> asked = new ArrayList<>();
    SealingSources fixed = Golden.sources();
    SealingSources sources =
        new SealingSources(
            noting("seed", fixed.orderSeed(), asked),
            noting("codes", fixed.codes(), asked),
            noting("nonce", fixed.nonce(), asked),
            noting("warm-up", fixed.warmUp(), asked),
            noting("phrase", fixed.phrase(), asked),
            noting("salt", fixed.salt(), asked),
            noting("iv", fixed.iv(), asked));
    Sealing sealing = new Sealing(sources, Golden.QUICK);
    Sealed sealed = Golden.sealed(sealing, Rule.blocks(2, 4, 2), SessionKind.comparison());
    sealing.record(sealed.lock(), Golden.SESSION, 1, "{}");
    assertThat(asked)
        .containsExactly(
            "phrase 12",
            "phrase 1",
            "seed 32",
            "codes 2",
            "codes 2",
            "codes 2",
            "codes 2",
            "nonce 32",
            "warm-up 1",
            "salt 16",
            "iv 12",
            "iv 12");
  }

  private static SecureBytes noting(String name, SecureBytes source, List<String> asked) {
    return count -> {
      asked.add(name + " " + count);
      return source.next(count);
    };
  }

  @Test
  void aSourceThatGivesTooFewBytesStopsTheSealing() {
    SecureBytes broken = count -> new byte[count - 1];
    Sealing sealing = new Sealing(SealingSources.allFrom(broken), Golden.QUICK);
    assertThatThrownBy(() -> Golden.sealed(sealing, RULE, SessionKind.comparison()))
        .hasMessageContaining("asked for 12 bytes and gave 11; nothing was sealed");
  }

  @Test
  void verifyingTellsAnotherPlanAnotherKeyAndAnOrderThatWasNotDrawn() {
    Sealed sealed = Golden.sealed(RULE);
    OpenKey key = Golden.key(RULE);
    Sealing sealing = Golden.sealing();
    assertThat(sealing.verify(Golden.PLAN, RULE, key, sealed.fingerprint()))
        .isEqualTo(Verification.MATCHES);
    byte[] otherPlan = Golden.PLAN.clone();
    otherPlan[3] ^= 1;
    assertThat(sealing.verify(otherPlan, RULE, key, sealed.fingerprint()))
        .isEqualTo(Verification.OTHER_FINGERPRINT);
    OpenKey picked = replaced(key, "ABBABAABABBABAAB", key.algorithm());
    assertThat(sealing.verify(Golden.PLAN, RULE, picked, sealed.fingerprint()))
        .isEqualTo(Verification.OTHER_FINGERPRINT);
    assertThat(sealing.verify(Golden.PLAN, RULE, picked, PlanFingerprint.of(Golden.PLAN, picked)))
        .isEqualTo(Verification.NOT_THE_DRAW);
    OpenKey newer = replaced(key, key.order(), "blindlap-draw-2");
    assertThat(sealing.verify(Golden.PLAN, RULE, newer, PlanFingerprint.of(Golden.PLAN, newer)))
        .isEqualTo(Verification.UNKNOWN_DRAW);
  }

  private static OpenKey replaced(OpenKey key, String order, String algorithm) {
    return OpenKey.of(algorithm, order, key.codes(), key.seed(), key.nonce(), key.sealedPart());
  }

  @Test
  void everyFieldOfTheKeyIsInTheFingerprint() {
    OpenKey key = Golden.key(Golden.EIGHT_STINT_SET);
    List<Integer> codes = new ArrayList<>(key.codes());
    codes.set(7, 999);
    byte[] seed = key.seed();
    seed[0] ^= 1;
    byte[] nonce = key.nonce();
    nonce[31] ^= 1;
    SealedPart part = key.sealedPart();
    Set<Fingerprint> distinct = new HashSet<>();
    for (OpenKey variant :
        List.of(
            key,
            OpenKey.of("x", key.order(), key.codes(), key.seed(), key.nonce(), part),
            OpenKey.of(key.algorithm(), "AAABBBBA", key.codes(), key.seed(), key.nonce(), part),
            OpenKey.of(key.algorithm(), key.order(), codes, key.seed(), key.nonce(), part),
            OpenKey.of(key.algorithm(), key.order(), key.codes(), seed, key.nonce(), part),
            OpenKey.of(key.algorithm(), key.order(), key.codes(), key.seed(), nonce, part),
            OpenKey.of(
                key.algorithm(),
                key.order(),
                key.codes(),
                key.seed(),
                key.nonce(),
                SealedPart.nullRun(0, part.warmUp())))) {
      distinct.add(PlanFingerprint.of(Golden.PLAN, variant));
    }
    assertThat(distinct).hasSize(7);
  }

  @Test
  void theScheduleTellsRealFromDummySwapsFromTheWarmUpOn() {
    HelperSchedule schedule = Golden.sealed(RULE).schedule(); // ABABBABAAABBBABA, warm-up on B
    assertThat(schedule.warmUp()).isEqualTo(1);
    assertThat(schedule.nullRun()).isFalse();
    assertThat(schedule.fit(1).swap()).isEqualTo(Swap.REAL);
    assertThat(schedule.fit(2).swap()).isEqualTo(Swap.REAL);
    assertThat(schedule.fit(5).swap()).isEqualTo(Swap.DUMMY);
    assertThat(schedule.fit(5).fitted()).isEqualTo(1);
    assertThat(schedule.fit(16).code()).isEqualTo(480);
    assertThat(schedule.fits()).allMatch(fit -> fit.named() == fit.fitted());
    assertThat(Golden.sealing().schedule(Golden.key(RULE)).fits()).isEqualTo(schedule.fits());
    assertThatThrownBy(() -> schedule.fit(17)).hasMessageContaining("no stint 17");
  }

  @Test
  void inANullRunOneSetupIsFittedThroughoutAndEverySwapIsADummy() {
    Sealed sealed = Golden.sealed(Golden.sealing(), RULE, SessionKind.nullRun(0));
    HelperSchedule schedule = sealed.schedule();
    assertThat(schedule.nullRun()).isTrue();
    assertThat(schedule.warmUp()).isZero();
    assertThat(schedule.fits()).allMatch(fit -> fit.fitted() == 0 && fit.swap() == Swap.DUMMY);
    assertThat(schedule.fits()).anyMatch(fit -> fit.named() == 1);
    OpenKey key = ((Opening.Opened) Golden.sealing().open(sealed.key(), sealed.phrase())).key();
    assertThat(key.sealedPart().nullRun()).isTrue();
    assertThat(key.sealedPart().ridden()).hasValue(0);
    assertThatThrownBy(() -> Golden.sealed(Golden.sealing(), RULE, SessionKind.nullRun(2)))
        .hasMessageContaining("one of the plan's 2 setups");
  }

  @Test
  void everySetupCanBeDrawnForTheWarmUpWithoutBias() {
    // Three setups: 255 is rejected, and the other 255 values fall on each setup 85 times.
    int[] seen = new int[3];
    for (int value = 0; value < 255; value++) {
      seen[
          SessionKind.comparison()
              .seal(3, FixedBytes.hex(String.format("ff%02x", value)))
              .warmUp()]++;
    }
    assertThat(seen).containsExactly(85, 85, 85);
  }

  @Test
  void theSealedPartIsAlwaysOfOneLengthAndReadsBack() {
    for (SealedPart part :
        List.of(SealedPart.ordinary(0), SealedPart.ordinary(3), SealedPart.nullRun(1, 0))) {
      assertThat(part.padded()).hasSize(SealedPart.PADDED_BYTES);
      assertThat(SealedPart.parse(part.padded())).isEqualTo(part);
    }
    assertThatThrownBy(() -> SealedPart.parse(new byte[64])).hasMessageContaining("sealed part");
  }
}
