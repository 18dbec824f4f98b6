package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Profile;
import blindlap.review.ProfileOnDay;
import blindlap.review.ProfileOnDay.Stands;
import blindlap.session.KeptProfile;
import blindlap.session.SessionState;
import blindlap.wording.FindingText;
import blindlap.wording.ProfilesFoundWords;
import blindlap.wording.ProfilesFoundWords.Row;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Profiles beside the findings of whole invented days: their words, marks, and what is left out.
 */
class ProfilesFoundTest {
  private static final Instant OPENED = Instant.parse("2026-11-14T17:00:00Z");
  private static final Profile ONE = new Profile("Fast and steep", List.of("lap time"));
  private static final Profile TWO = new Profile("Fast and steep", List.of("lap time", "trust"));
  private static final Profile GONE = Profile.removed("Fast and steep");

  private static List<Stands> stands(KeptProfile... versions) {
    return ProfileOnDay.of(List.of(versions), OPENED).stream().map(ProfileOnDay::stands).toList();
  }

  private static KeptProfile at(Profile profile, int number, int seconds) {
    return new KeptProfile(profile, number, OPENED.plusSeconds(seconds));
  }

  @Test
  void whatWasDeclaredBeforeADayWasOpenedStaysWithItAndWhatCameLaterIsMarked() {
    assertThat(stands(at(ONE, 1, -5))).containsExactly(Stands.BEFORE);
    assertThat(stands(at(ONE, 1, 0))).containsExactly(Stands.BEFORE);
    assertThat(stands(at(ONE, 1, 1))).containsExactly(Stands.AFTER);
    assertThat(stands(at(ONE, 1, -5), at(TWO, 2, -1))).containsExactly(Stands.BEFORE);
    assertThat(stands(at(ONE, 1, -5), at(TWO, 2, 1)))
        .containsExactly(Stands.BEFORE_CHANGED_SINCE, Stands.AFTER);
    assertThat(stands(at(ONE, 1, -5), at(GONE, 2, 1))).containsExactly(Stands.BEFORE_REMOVED_SINCE);
    assertThat(stands(at(ONE, 1, -5), at(GONE, 2, -1))).isEmpty();
    assertThat(stands(at(ONE, 1, -5), at(GONE, 2, -1), at(TWO, 3, 1)))
        .containsExactly(Stands.AFTER);
    assertThat(stands(at(ONE, 1, 1), at(GONE, 2, 2))).isEmpty();
    assertThat(
            ProfileOnDay.of(
                List.of(at(ONE, 1, -5), at(TWO, 2, -1), at(ONE, 3, 4), at(TWO, 4, 5)), OPENED))
        .extracting(ProfileOnDay::number)
        .containsExactly(2, 4);
  }

  private static Map<String, Row> rows(Desk desk, SessionState state) {
    return ProfilesFoundWords.of(
            desk.reviews().finding(state), desk.reviews().beside(state).profiles())
        .orElseThrow()
        .rows()
        .stream()
        .collect(Collectors.toMap(Row::name, Function.identity()));
  }

  @Test
  void everySentenceIsTheFindingsOwnAndWhatADayDoesNotHaveIsSaid() {
    SampleDays.ride(
        "shocks-on-quarry-loop",
        (desk, state) -> {
          desk.profiles()
              .keep("Everything: LAP  time, grip in corners, climbing time, mass, price");
          FindingText text = new FindingText(desk.reviews().finding(state));
          Row row = rows(desk, state).get("Everything");
          assertThat(row.mark()).isEqualTo("made after this day was opened");
          assertThat(row.found().get(0).sentences())
              .first()
              .isEqualTo("lap time: " + text.sentence());
          assertThat(row.measures())
              .isEqualTo("LAP  time; grip in corners; climbing time; mass; price");
          assertThat(row.found().get(1).sentences()).isNotEmpty();
          assertThat(text.others()).containsAll(row.found().get(1).sentences());
          assertThat(row.found().get(2).sentences())
              .containsExactly("climbing time: not measured on this day.");
          assertThat(row.found().get(3).sentences())
              .containsExactly("Mass: Shock K 742 g, Shock L 882 g.");
          assertThat(row.found().get(4).sentences())
              .containsExactly("Price: Shock K EUR 420, Shock L EUR 600.");
          // Nothing is said in text that is not said in the report and to other programs.
          String said = String.join("\n", desk.reviews().text(state));
          assertThat(said)
              .contains("Who looks for \"Everything\" (made after this day was opened) looks at ")
              .contains("no verdict of a profile");
          assertThat(desk.reviews().html(state, false))
              .contains("Who should look at what", "climbing time: not measured on this day.")
              .contains("made after this day was opened");
          asJson(desk, state);
        });
  }

  private static void asJson(Desk desk, SessionState state) {
    try {
      JsonNode json = new ObjectMapper().readTree(desk.reviews().json(state)).path("profiles");
      assertThat(json).hasSize(1);
      assertThat(json.get(0).path("name").asText()).isEqualTo("Everything");
      assertThat(json.get(0).path("declared_before").asBoolean()).isFalse();
      assertThat(json.get(0).path("stands").asText()).isEqualTo("after");
      assertThat(json.get(0).path("version").asInt()).isEqualTo(1);
      assertThat(json.get(0).path("measures")).hasSize(5);
      assertThat(json.get(0).path("measures").get(2).path("found").get(0).asText())
          .isEqualTo("climbing time: not measured on this day.");
      // A package is held against its own tables, which know no profile.
      Map<String, byte[]> files = desk.reviews().export(state);
      assertThat(new String(files.get("finding.json"), StandardCharsets.UTF_8))
          .doesNotContain("profiles");
      assertThat(PackageReview.of(files).altered()).isEmpty();
    } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void withoutProfilesNothingOfThemIsSaid() {
    SampleDays.ride(
        "bars-on-mill-track",
        (desk, state) -> {
          assertThat(String.join("\n", desk.reviews().text(state))).doesNotContain("Who looks for");
          assertThat(desk.reviews().json(state)).doesNotContain("\"profiles\"");
          assertThat(desk.reviews().html(state, false)).doesNotContain("Who should look at what");
        });
  }

  @Test
  void profilesDeclaredBeforeTheOpeningBearNoMark() {
    SampleDays.sealed(
        "tyres-on-root-garden",
        (desk, closed, phrase) -> {
          desk.profiles().keep("Fast and steep: lap time");
          assertThat(desk.reviews().refuse(closed)).isPresent();
          var before = (Sessions.Result.Done) desk.keys().closeReview(closed.id());
          var opened = (Sessions.Result.Done) desk.keys().unseal(before.state(), phrase);
          assertThat(rows(desk, opened.state()).get("Fast and steep").mark()).isEmpty();
          assertThat(desk.reviews().json(opened.state())).contains("\"declared_before\" : true");
          desk.profiles().remove("fast and steep");
          Row row = rows(desk, opened.state()).get("Fast and steep");
          assertThat(row.mark()).isEqualTo("removed after this day was opened");
          assertThat(row.sentences()).isNotEmpty();
        });
  }

  @Test
  void ofANullRunAndOfATellingRunNothingIsSaid() {
    for (String day : List.of("null-run-on-quarry-loop", "pads-told-on-slate-run")) {
      SampleDays.ride(
          day,
          (desk, state) -> {
            desk.profiles().keep("Fast and steep: lap time, mass");
            assertThat(String.join("\n", desk.reviews().text(state)))
                .doesNotContain("Fast and steep");
            assertThat(desk.reviews().json(state)).doesNotContain("Fast and steep");
            assertThat(desk.reviews().html(state, false)).doesNotContain("Fast and steep");
          });
    }
  }

  @Test
  void severalSetupsAndLevelsHaveTheirOwnSentences() {
    SampleDays.ride(
        "tyres-on-fern-trail",
        (desk, state) -> {
          desk.profiles().keep("All: " + names(state) + "; mass");
          Row row = rows(desk, state).get("All");
          FindingText text = new FindingText(desk.reviews().finding(state));
          List<String> said = row.sentences();
          assertThat(said).containsAll(text.others()).contains(text.sentence());
        });
    SampleDays.ride(
        "rebound-on-heron-line",
        (desk, state) -> {
          desk.profiles().keep("All: " + names(state) + "; mass; price");
          Row row = rows(desk, state).get("All");
          FindingText text = new FindingText(desk.reviews().finding(state));
          assertThat(row.sentences())
              .containsAll(text.others())
              .contains("Mass: all levels are of one setup.", "Price: all levels are of one setup.")
              .anyMatch(sentence -> sentence.endsWith(text.sentence()));
        });
  }

  private static String names(SessionState state) {
    return state.plan().measures().stream()
        .map(measure -> measure.name())
        .collect(Collectors.joining("; "));
  }
}
