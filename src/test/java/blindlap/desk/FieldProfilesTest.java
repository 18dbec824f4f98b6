package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.wording.FieldProfilesWords;
import blindlap.wording.FieldWords;
import blindlap.wording.ProfilesFoundWords.Found;
import blindlap.wording.ProfilesFoundWords.Row;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who should look at what, beside a field of a season whose truth is known. */
class FieldProfilesTest {
  @TempDir Path folder;
  private FieldSeason season;

  @BeforeEach
  void open() {
    season = new FieldSeason(folder);
  }

  @AfterEach
  void close() {
    season.close();
  }

  private FieldBook.Result.Found found() {
    return (FieldBook.Result.Found) season.desk().field().find(FieldBook.Wanted.ANY);
  }

  private static List<Row> rows(FieldBook.Result.Found found) {
    return FieldProfilesWords.of(found.finding(), found.beside()).orElseThrow().rows();
  }

  private void keep(String profile) {
    season.later();
    assertThat(season.desk().profiles().keep(profile)).isInstanceOf(ProfileBook.Result.Kept.class);
  }

  @Test
  void aRowSaysOfTheFieldsMeasureWhatTheFieldSaysAndOfAnotherWhatEachDayFound() {
    keep("Fast and steep: lap time, grip");
    keep("Long days: mass, price, climbing time");
    season.ride("KL", "2026-08-29");
    season.ride("KM", "2026-09-12");
    FieldBook.Result.Found found = found();
    List<Row> rows = rows(found);
    assertThat(rows).extracting(Row::name).containsExactly("Fast and steep", "Long days");
    assertThat(rows).extracting(Row::mark).containsOnly("");
    FieldWords words = new FieldWords(found.finding());
    List<Found> fast = rows.get(0).found();
    assertThat(fast.get(0).sentences().get(0)).isEqualTo(words.headline().text());
    assertThat(fast.get(0).sentences().subList(1, fast.get(0).sentences().size()))
        .isEqualTo(words.lead());
    assertThat(fast.get(1).sentences())
        .hasSize(2)
        .satisfiesExactly(
            first -> assertThat(first).startsWith("29 Aug 2026: ").contains("grip"),
            second -> assertThat(second).startsWith("12 Sept 2026: ").contains("grip"));
    assertThat(rows.get(1).sentences())
        .containsExactly(
            "Mass: Shock K 742 g, Shock L 882 g, Shock M 815 g.",
            "Price: Shock K EUR 420, Shock L EUR 600, Shock M EUR 510.",
            "climbing time: not measured on any of these days.");
  }

  @Test
  void aListThatWasMadeAfterSomeDaysWereOpenedSaysAfterHowMany() {
    keep("Kept: lap time");
    keep("Gone: lap time");
    season.ride("KL", "2026-08-29");
    keep("Later: lap time");
    season.ride("KM", "2026-09-12");
    keep("Kept: grip");
    season.desk().profiles().remove("gone");
    List<Row> rows = rows(found());
    assertThat(rows).extracting(Row::name).containsExactly("Kept", "Kept", "Gone", "Later");
    assertThat(rows)
        .extracting(Row::measures)
        .containsExactly("lap time", "grip", "lap time", "lap time");
    assertThat(rows)
        .extracting(Row::mark)
        .containsExactly(
            "changed since",
            "made or changed after 2 of these 2 days were opened",
            "removed since",
            "made or changed after 1 of these 2 days was opened");
  }

  @Test
  void commandsJsonAndReportSayTheSameAndNothingIsSaidWithoutAProfile() throws Exception {
    season.ride("KL", "2026-08-29");
    season.ride("KM", "2026-09-12");
    FieldBook.Result.Found without = found();
    assertThat(FieldProfilesWords.of(without.finding(), without.beside())).isEmpty();
    assertThat(new ObjectMapper().readTree(FieldBook.json(without)).has("profiles")).isFalse();
    keep("Fast and steep: lap time, grip");
    FieldBook.Result.Found found = found();
    Row row = rows(found).get(0);
    JsonNode told = new ObjectMapper().readTree(FieldBook.json(found)).path("profiles").path(0);
    assertThat(told.path("days_opened_before").asInt()).isEqualTo(2);
    assertThat(told.path("measures").path(1).path("found").path(0).asText())
        .isEqualTo(row.found().get(1).sentences().get(0));
    Map<String, byte[]> files = season.desk().field().report(found, false);
    String html = new String(files.get("field-R_Lind-Quarry_loop.html"), StandardCharsets.UTF_8);
    assertThat(html).contains("Who should look at what", row.mark(), "No weights, no sum");
    String lines =
        String.join(
            "\n", FieldProfilesWords.of(found.finding(), found.beside()).orElseThrow().lines());
    assertThat(lines).contains("Who looks for \"Fast and steep\"", row.mark(), "29 Aug 2026: ");
  }
}
