package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.SessionSummary;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** A session without a helper is called unblinded on every surface; a blind one nowhere. */
class UnblindedSessionTest {
  private static final String OPEN = "grips-on-moor-path";
  private static final String BLIND = "bearings-on-clay-steps";

  private static String file(Desk desk, blindlap.session.SessionState state, String name) {
    return new String(desk.reviews().export(state).get(name), StandardCharsets.UTF_8);
  }

  @Test
  void theFindingSaysSoInHeadlineSentenceCircumstanceAndCaveatOfRatings() {
    SampleDays.ride(
        OPEN,
        (desk, state) -> {
          assertThat(desk.reviews().text(state).subList(0, 2))
              .allMatch(line -> line.startsWith("Unblinded (open): "));
          assertThat(desk.reviews().text(state))
              .anyMatch(line -> line.contains("the rider knew, or could know, what was fitted"))
              .anyMatch(line -> line.startsWith("sore hands: the rider knew what was fitted"))
              .noneMatch(line -> line.startsWith("lap time: the rider knew"))
              .anyMatch(line -> line.contains("no blind to hold"));
          assertThat(desk.reviews().json(state))
              .contains("\"blinded\" : false")
              .contains("\"level\" : \"open\"")
              .contains("\"sentence\" : \"Unblinded (open): ");
        });
  }

  @Test
  void theReportTheListAndTheDataPackageSaySo() {
    SampleDays.ride(
        OPEN,
        (desk, state) -> {
          String html = desk.reviews().html(state, false);
          assertThat(html)
              .contains("Grip P against Grip Q, unblinded (open) ·")
              .contains("<h1>Unblinded (open): ")
              .contains("Unblinded: an open comparison of 2 setups")
              .contains("Blind level")
              .doesNotContain("A blind comparison")
              .doesNotContain("still blind");
          while (desk.sessionList().keepVerdicts(10)) {
            // the list works its verdicts out one after the other
          }
          assertThat(desk.sessionList().find(""))
              .extracting(SessionSummary::verdict)
              .allMatch(
                  verdict ->
                      verdict.startsWith(
                          "unblinded (open): no worthwhile difference as ridden, effort and belief"
                              + " are not excluded; "));
          assertThat(file(desk, state, "README.md")).contains("Unblinded (open): the rider knew");
          assertThat(file(desk, state, "datapackage.json"))
              .contains("Unblinded (open): the rider knew");
        });
  }

  @Test
  void theBlindPackageOfAnUnblindedSessionSaysSoToo() {
    SampleDays.sealed(
        OPEN,
        (desk, state, phrase) ->
            assertThat(file(desk, state, "README.md"))
                .contains("Unblinded (open): the rider knew"));
  }

  @Test
  void aBlindSessionIsNowhereCalledUnblinded() {
    SampleDays.ride(
        BLIND,
        (desk, state) -> {
          assertThat(String.join("\n", desk.reviews().text(state)))
              .doesNotContainIgnoringCase("unblinded");
          assertThat(desk.reviews().html(state, false)).doesNotContainIgnoringCase("unblinded:");
          desk.reviews()
              .export(state)
              .forEach(
                  (name, bytes) ->
                      assertThat(new String(bytes, StandardCharsets.UTF_8))
                          .as(name)
                          .doesNotContainIgnoringCase("unblinded:"));
        });
  }
}
