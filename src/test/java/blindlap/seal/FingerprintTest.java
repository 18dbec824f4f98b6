package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class FingerprintTest {
  private static final Fingerprint PLAN =
      Fingerprint.parse("3d256d4426b9ff588edc1abdf38b094b8125d688a53573e8cc48c3aee04b85cf");

  private static Fingerprint hash(String text) {
    return Fingerprint.sha256(text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void theBytesOfTheReviewFingerprintAreThoseOfTheDocument() {
    // Reference: a few lines of Python hashlib written from docs/sealing.md.
    List<ChainHead> heads =
        List.of(new ChainHead("nb-b", 12, hash("b")), new ChainHead("nb-a", 7, hash("a")));
    assertThat(ReviewFingerprint.of(Golden.SESSION, PLAN, heads).hex())
        .isEqualTo("28bd0f5bd898d7d71785a1c103220597bced668cdde5dffb18b87c8a32a1d90b");
  }

  @Test
  void theReviewFingerprintDoesNotDependOnTheOrderOfTheChainsButOnEverythingElse() {
    ChainHead a = new ChainHead("a", 7, hash("x"));
    ChainHead b = new ChainHead("b", 8, hash("y"));
    Fingerprint review = ReviewFingerprint.of("s", PLAN, List.of(a, b));
    assertThat(ReviewFingerprint.of("s", PLAN, List.of(b, a))).isEqualTo(review);
    assertThat(ReviewFingerprint.of("t", PLAN, List.of(a, b))).isNotEqualTo(review);
    assertThat(ReviewFingerprint.of("s", hash("other plan"), List.of(a, b))).isNotEqualTo(review);
    assertThat(ReviewFingerprint.of("s", PLAN, List.of(a))).isNotEqualTo(review);
    assertThat(ReviewFingerprint.of("s", PLAN, List.of(a, new ChainHead("b", 9, hash("y")))))
        .isNotEqualTo(review);
    assertThat(ReviewFingerprint.of("s", PLAN, List.of(a, new ChainHead("b", 8, hash("z")))))
        .isNotEqualTo(review);
    assertThat(ReviewFingerprint.of("s", PLAN, List.of(a, new ChainHead("c", 8, hash("y")))))
        .isNotEqualTo(review);
  }

  @Test
  void twoHeadsOfOneNotebookOrNoneAreRefused() {
    ChainHead a = new ChainHead("a", 7, hash("x"));
    assertThatThrownBy(() -> ReviewFingerprint.of("s", PLAN, List.of(a, a)))
        .hasMessage("the chain of notebook a has two heads");
    assertThatThrownBy(() -> ReviewFingerprint.of("s", PLAN, List.of()))
        .hasMessageContaining("without entries");
  }

  @Test
  void peopleReadItInEightGroupsOfEightAndTypeItAsTheyLike() {
    assertThat(PLAN.grouped())
        .isEqualTo("3d256d44 26b9ff58 8edc1abd f38b094b 8125d688 a53573e8 cc48c3ae e04b85cf");
    assertThat(Fingerprint.parse(PLAN.grouped())).isEqualTo(PLAN);
    assertThat(Fingerprint.parse("  " + PLAN.grouped().toUpperCase().replace(' ', '-') + "\n"))
        .isEqualTo(PLAN);
  }

  @Test
  void aFingerprintWithADigitMissingOrWrongSaysSo() {
    assertThatThrownBy(() -> Fingerprint.parse(PLAN.hex().substring(1)))
        .hasMessageContaining("has 63 characters");
    assertThatThrownBy(() -> Fingerprint.parse(PLAN.hex().replace('3', 'g')))
        .hasMessageContaining("not all of them such digits");
    assertThatThrownBy(() -> Fingerprint.of(new byte[31])).hasMessageContaining("32 bytes");
  }

  @Test
  void fieldsThatRunIntoOneAnotherGiveOtherBytes() {
    assertThat(new LengthPrefixed().add("ab").add("c").bytes())
        .isNotEqualTo(new LengthPrefixed().add("a").add("bc").bytes());
    assertThat(new LengthPrefixed().add("é").bytes())
        .containsExactly(0, 0, 0, 0, 0, 0, 0, 2, 0xc3, 0xa9);
  }
}
