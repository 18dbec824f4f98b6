package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;

class NothingLeaksTest {
  private final Sealing sealing = Golden.sealing();
  private final Sealed sealed =
      Golden.sealed(sealing, Golden.BLOCKS_OF_FOUR, SessionKind.nullRun(1));
  private final Opening opening = sealing.open(sealed.key(), sealed.phrase());
  private final OpenKey key = ((Opening.Opened) opening).key();

  private List<Object> everything() {
    SheetReading fromSheet =
        sealing.openFromSheet(sealed.sheet().text(), Golden.PLAN, sealed.fingerprint());
    SheetReading mistyped =
        sealing.openFromSheet(
            sealed.sheet().text().replace("0809", "0808"), Golden.PLAN, sealed.fingerprint());
    List<Object> all = new ArrayList<>(sealed.schedule().fits());
    all.addAll(
        List.of(
            sealed,
            sealed.key(),
            sealed.phrase(),
            sealing.drawPhrase(Golden.BLOCKS_OF_FOUR),
            new PhraseAsked.Back.Right(sealed.phrase()),
            sealed.schedule(),
            sealed.sheet(),
            sealed.lock(),
            opening,
            key,
            key.sealedPart(),
            SessionKind.nullRun(1),
            fromSheet,
            mistyped,
            PhraseReading.of(sealed.phrase().text()),
            PhraseReading.of(sealed.phrase().text().replace("ablaze", "ablazx")),
            PhraseReading.of(sealed.phrase().text() + " zoom"),
            sealing.record(sealed.lock(), Golden.SESSION, 1, "fitted B")));
    return all;
  }

  @Test
  void noTypeOfThisPackagePrintsWhatIsSealed() {
    List<String> secrets = new ArrayList<>(List.of(sealed.phrase().text().split(" ")));
    for (int i = 0; i + 4 <= key.order().length(); i++) {
      secrets.add(key.order().substring(i, i + 4));
    }
    key.codes().forEach(code -> secrets.add(String.valueOf(code)));
    HexFormat hex = HexFormat.of();
    secrets.add(hex.formatHex(key.seed()).substring(0, 12));
    secrets.add(hex.formatHex(key.nonce()).substring(0, 12));
    secrets.addAll(List.of("ridden", "warm", "REAL", "DUMMY", "fitted", "null", "ablazx"));
    for (Object any : everything()) {
      String printed =
          any.toString()
              .replace(sealed.fingerprint().hex(), "")
              .replace(sealed.key().planHash().hex(), "");
      for (String secret : secrets) {
        assertThat(printed).as("%s", any.getClass()).doesNotContain(secret);
      }
    }
  }

  @Test
  void whatIsSealedIsTrulyThereAndOnlyNotPrinted() {
    assertThat(sealed.sheet().text()).contains("ABAB").contains("*");
    assertThat(sealed.phrase().text()).contains("ablaze");
    assertThat(sealed.toString()).isEqualTo("Sealed[" + sealed.fingerprint().hex() + "]");
    assertThat(sealed.key().toString()).contains(Golden.SESSION).doesNotContain("iphertext");
  }

  @Test
  void hashCodesOfSecretsAreTheSameForEverySecret() {
    assertThat(HelperPhrase.draw(FixedBytes.stream("a")))
        .isNotEqualTo(HelperPhrase.draw(FixedBytes.stream("b")))
        .hasSameHashCodeAs(HelperPhrase.draw(FixedBytes.stream("b")));
  }

  @Test
  void changingWhatAnOpenKeyGaveAwayDoesNotChangeTheKey() {
    key.seed()[0] = 99;
    key.nonce()[0] = 99;
    key.setups()[0] = 1 - key.setups()[0];
    assertThat(Golden.sealing().fingerprint(Golden.PLAN, key)).isEqualTo(sealed.fingerprint());
  }
}
