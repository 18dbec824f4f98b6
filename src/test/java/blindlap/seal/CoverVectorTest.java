package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The bytes of a cover are those of docs/sealing.md. */
class CoverVectorTest {
  private static final String SESSION = "00000000-0000-4000-8000-000000000001";
  private static final String VECTOR = "fwNG4zSqWpN0AE/GzAlPfos=";

  private static byte[] filled(int value) {
    byte[] bytes = new byte[32];
    Arrays.fill(bytes, (byte) value);
    return bytes;
  }

  private static Cover cover() {
    byte[] letter = {'B'};
    return Cover.of(
        SESSION,
        Fingerprint.of(filled(0x22)),
        filled(0x11),
        List.of(letter, letter, letter, letter, "no key".getBytes()));
  }

  @Test
  void thePlaceOfTheDocumentIsWhatThisProgramWrites() throws IOException {
    assertThat(cover().places().split(" ")[3]).isEqualTo(VECTOR);
    assertThat(Files.readString(Path.of("docs", "sealing.md"))).contains(VECTOR, Cover.VERSION);
    assertThat(cover().setup(3)).hasValue(1);
  }

  @Test
  void underAnotherEntryOrInAnotherSessionNothingOpens() {
    Cover kept = cover();
    Fingerprint end = Fingerprint.of(filled(0x22));
    assertThat(Cover.read(SESSION, end, kept.k0(), kept.places()).setup(1)).hasValue(1);
    assertThat(Cover.read(SESSION, Fingerprint.of(filled(0x23)), kept.k0(), kept.places()).setup(1))
        .isEmpty();
    assertThat(Cover.read(SESSION.replace('1', '2'), end, kept.k0(), kept.places()).setup(1))
        .isEmpty();
    assertThat(kept.under(Fingerprint.of(filled(0x23))).orElseThrow().setup(2)).hasValue(1);
    assertThatThrownBy(() -> Cover.read(SESSION, end, kept.k0(), "AAAA"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Cover.read(SESSION, end, "11", kept.places()))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
