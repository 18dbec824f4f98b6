package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class HelperRecordTest {
  private final Sealing sealing = Golden.sealing();
  private final HelperLock lock = Golden.sealed(Golden.BLOCKS_OF_FOUR).lock();

  @Test
  void aRecordHasTheBytesOfAnIndependentProgramAndReadsBack() {
    // Reference: Python hashlib, hmac and the package cryptography 48, written from
    // docs/sealing.md.
    HelperRecord record = sealing.record(lock, Golden.SESSION, 3, "{\"fitted\":\"A\"}");
    assertThat(Fingerprint.sha256(Base64.getDecoder().decode(record.ciphertext())).hex())
        .isEqualTo("ed8f1c4115a9a5da5ac84950dee36f0aabe0028af5c1208d52990f57b35a091b");
    assertThat(lock.decrypt(Golden.SESSION, record)).contains("{\"fitted\":\"A\"}");
  }

  @Test
  void theLockDerivedOnOpeningReadsWhatTheLockOfTheSealingWrote() {
    HelperRecord record = sealing.record(lock, Golden.SESSION, 1, "29,5 °C");
    Sealed sealed = Golden.sealed(Golden.BLOCKS_OF_FOUR);
    Opening.Opened opened = (Opening.Opened) sealing.open(sealed.key(), sealed.phrase());
    assertThat(opened.lock().decrypt(Golden.SESSION, record)).contains("29,5 °C");
  }

  @Test
  void allRecordsAreOfOneLengthWhateverIsInside() {
    Set<Integer> lengths = new HashSet<>();
    for (String text : List.of("", "{}", "é".repeat(4094), "x".repeat(HelperRecord.ROOM))) {
      HelperRecord record = sealing.record(lock, Golden.SESSION, 1, text);
      lengths.add(record.ciphertext().length());
      assertThat(lock.decrypt(Golden.SESSION, record)).contains(text);
    }
    assertThat(lengths).hasSize(1);
  }

  @Test
  void aTextThatIsTooLongIsRefusedWithTheNumberOfBytesToTakeAway() {
    String text = "é".repeat(4095);
    assertThat(HelperRecord.length(text)).isEqualTo(8190);
    assertThatThrownBy(() -> sealing.record(lock, Golden.SESSION, 1, text))
        .isInstanceOf(RecordTooLong.class)
        .hasMessageContaining("8190 bytes long and the room is 8188")
        .hasMessageContaining("shorten the notes by 2 bytes");
  }

  @Test
  void aRecordOpensOnlyUnchangedInItsOwnSessionAndStint() {
    HelperRecord record = sealing.record(lock, Golden.SESSION, 3, "{}");
    assertThat(lock.decrypt("another-session", record)).isEmpty();
    assertThat(lock.decrypt(Golden.SESSION, new HelperRecord(4, record.iv(), record.ciphertext())))
        .isEmpty();
    String changed =
        (record.ciphertext().startsWith("A") ? "B" : "A") + record.ciphertext().substring(1);
    assertThat(lock.decrypt(Golden.SESSION, new HelperRecord(3, record.iv(), changed))).isEmpty();
    HelperLock other =
        HelperLock.derive(
            HelperPhrase.draw(FixedBytes.stream("other")), new byte[16], Golden.QUICK);
    assertThat(other.decrypt(Golden.SESSION, record)).isEmpty();
  }

  @Test
  void everyRecordHasAFreshIv() {
    SealingSources sources = SealingSources.allFrom(FixedBytes.stream("fresh"));
    Sealing fresh = new Sealing(sources, Golden.QUICK);
    HelperRecord first = fresh.record(lock, Golden.SESSION, 1, "{}");
    HelperRecord second = fresh.record(lock, Golden.SESSION, 1, "{}");
    assertThat(first.iv()).isNotEqualTo(second.iv());
    assertThat(first.ciphertext()).isNotEqualTo(second.ciphertext());
  }

  @Test
  void aRecordThatCannotBeReadNamesStintAndField() {
    HelperRecord record = sealing.record(lock, Golden.SESSION, 3, "{}");
    assertThatThrownBy(() -> new HelperRecord(3, "00", record.ciphertext()))
        .hasMessageContaining("stint 3")
        .hasMessageContaining("iv");
    assertThatThrownBy(() -> new HelperRecord(3, record.iv(), "AAAA"))
        .hasMessageContaining("stint 3")
        .hasMessageContaining("ciphertext is not 8208 bytes");
    assertThatThrownBy(() -> new HelperRecord(-1, record.iv(), record.ciphertext()))
        .hasMessageContaining("-1");
  }
}
