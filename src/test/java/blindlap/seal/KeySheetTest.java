package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import blindlap.plan.Rule;
import blindlap.wording.day.Problems;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class KeySheetTest {
  private static final Rule RULE = Golden.BLOCKS_OF_FOUR;
  private final Sealed sealed = Golden.sealed(RULE);
  private final String text = sealed.sheet().text();

  private SheetReading read(String sheet) {
    return Golden.sealing().openFromSheet(sheet, Golden.PLAN, sealed.fingerprint());
  }

  private static SheetReading.Mistyped mistyped(SheetReading reading) {
    assertThat(reading).isInstanceOf(SheetReading.Mistyped.class);
    return (SheetReading.Mistyped) reading;
  }

  private void assertOpens(String sheet) {
    assertThat(read(sheet)).isEqualTo(new SheetReading.Opened(Golden.key(RULE)));
  }

  @Test
  void theSheetIsWhatTheDocumentSays() {
    assertThat(text.lines())
        .startsWith(
            "V: 1 *20C7.",
            "A: BLINDLAP-DRAW-1 *502C.",
            "O1: ABAB BABA AABB BABA *EF78.",
            "C1: 731 158 404 702 351 854 104 353 *5F89.")
        .endsWith("N4: 3839 3A3B 3C3D 3E3F *4B39.", "P: N-B *44B3.", "Z: 231DE5D0 *FA39.");
    assertThat(sealed.sheet().payload())
        .as("only characters of the QR code's alphanumeric mode")
        .matches("[0-9A-Z $%*+\\-./:]+");
  }

  @Test
  void textAndPayloadOpenTheSessionWithoutThePhrase() {
    assertOpens(text);
    assertOpens(sealed.sheet().payload());
  }

  @Test
  void lineBreaksSpacesCapitalsAndLookalikesDoNotMatter() {
    assertOpens(text.toLowerCase(Locale.ROOT).replace("\n", "  "));
    assertOpens(text.replace(" ", "\n"));
    assertOpens(text.replace(" ", "\t\r\n"));
    assertOpens(text.replace("S1: 0001", "Sl: OOoI").replace("O1:", "01:").replace("N-B", "N–B"));
  }

  @Test
  void theRowsMayComeInAnyOrder() {
    List<String> rows = text.lines().sorted().toList();
    assertOpens(String.join("\n", rows));
  }

  @Test
  void everySingleMistypedCharacterIsFoundInItsRow() {
    int tried = 0;
    for (int i = 0; i < text.length() - 1; i++) {
      char typed = text.charAt(i);
      String name = text.substring(rowStart(i), text.indexOf(':', rowStart(i)));
      boolean body = Character.isLetterOrDigit(typed) && i > rowStart(i) + name.length();
      if (!body) {
        continue;
      }
      char other = typed == '7' ? '2' : typed == 'A' ? 'B' : Character.isDigit(typed) ? '7' : 'A';
      String sheet = text.substring(0, i) + other + text.substring(i + 1);
      SheetReading.Mistyped slip = mistyped(read(sheet));
      assertThat(slip.row()).as("%s for %s in %s", other, typed, name).isEqualTo(name);
      assertThat(advice(slip)).contains("row " + name).contains("type it again");
      tried++;
    }
    assertThat(tried).isGreaterThan(250);
  }

  private static String advice(SheetReading.Mistyped slip) {
    return Problems.sentence(Problem.of(slip.slip(), "", slip.row(), slip.detail()));
  }

  private int rowStart(int at) {
    return text.lastIndexOf('\n', at - 1) + 1;
  }

  @Test
  void aLostCharacterASwappedPairAndALostFullStopAreFoundInTheirRow() {
    assertThat(mistyped(read(text.replace("0809 0A0B", "0809 A0B"))).row()).isEqualTo("S2");
    assertThat(mistyped(read(text.replace("0809 0A0B", "0890 0A0B"))).row()).isEqualTo("S2");
    assertThat(mistyped(read(text.replace("*56F5.", "*56F5"))).row()).isEqualTo("S2");
    assertThat(mistyped(read(text.replace("*56F5.", "*56F."))).row()).isEqualTo("S2");
  }

  @Test
  void aMissingOrDoubledRowIsNamed() {
    for (String row : List.of("V", "A", "O1", "C1", "S3", "N4", "P", "Z")) {
      String without = text.replaceAll("(?m)^" + row + ":.*\n", "");
      assertThat(without).isNotEqualTo(text);
      assertThat(mistyped(read(without)).row()).isEqualTo(row);
      assertThat(advice(mistyped(read(without)))).contains("row " + row + " is missing");
    }
    String lastCodes = text.replaceAll("(?m)^C2:.*\n", "");
    assertThat(mistyped(read(lastCodes)).row()).isEqualTo("sheet");
    assertThat(advice(mistyped(read(text + "P: N-B *44B3.")))).contains("twice");
    assertThat(mistyped(read("")).row()).isEqualTo("sheet");
    assertThat(advice(mistyped(read("hello")))).contains("no row");
  }

  @Test
  void rowsOfTwoSheetsDoNotMakeOne() {
    Sealed other =
        Golden.sealed(
            new Sealing(Golden.sources(FixedBytes.counting(100)), Golden.QUICK),
            RULE,
            SessionKind.comparison());
    String mixed = text.replaceAll("(?m)^S.:.*\n", "");
    String seeds =
        String.join("\n", other.sheet().text().lines().filter(r -> r.startsWith("S")).toList());
    assertThat(advice(mistyped(read(mixed + seeds)))).contains("not all of one sheet");
  }

  @Test
  void theSheetOfAnotherSessionOrPlanIsToldFromATypingError() {
    Sealed other =
        Golden.sealed(
            new Sealing(Golden.sources(FixedBytes.counting(100)), Golden.QUICK),
            RULE,
            SessionKind.comparison());
    assertThat(read(other.sheet().text()))
        .isEqualTo(new SheetReading.OfAnother(other.fingerprint()));
    assertThat(Golden.sealing().openFromSheet(text, new byte[] {1}, sealed.fingerprint()))
        .isInstanceOf(SheetReading.OfAnother.class);
  }

  @Test
  void sheetsOfEveryLengthAndKindReadBack() {
    for (Rule rule : List.of(Rule.blocks(2, 8, 2), Rule.blocks(3, 60, 6), Rule.blocks(4, 20, 4))) {
      for (SessionKind kind : List.of(SessionKind.comparison(), SessionKind.nullRun(1))) {
        Sealed any =
            Golden.sealed(
                new Sealing(SealingSources.allFrom(FixedBytes.stream("any")), Golden.QUICK),
                rule,
                kind);
        assertThat(
                Golden.sealing().openFromSheet(any.sheet().text(), Golden.PLAN, any.fingerprint()))
            .isInstanceOf(SheetReading.Opened.class);
      }
    }
  }

  @Test
  void aReprintFromTheOpenedKeyIsTheSameSheet() {
    assertThat(Golden.sealing().sheet(Golden.key(RULE)).text()).isEqualTo(text);
  }
}
