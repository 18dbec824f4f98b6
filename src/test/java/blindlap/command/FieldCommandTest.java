package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.compute.CalculationRequest;
import blindlap.compute.Calculations;
import blindlap.desk.FieldSeason;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The field by the command line, and its request asked again there. */
class FieldCommandTest {
  @TempDir Path folder;

  private String notebook() {
    return folder.resolve("quarry.blindlap").toString();
  }

  @Test
  void theFieldIsSaidWithItsCautionAndItsRequestIsTakenByCompute() throws Exception {
    new FieldSeason(folder).whole().close();
    CommandLineSession session = new CommandLineSession(folder);
    CommandLineSession.Ran said = session.run("field", "--notebook", notebook());
    assertThat(said.err()).isEmpty();
    assertThat(said.code()).isZero();
    assertThat(said.out())
        .startsWith("The field of R. Lind on Quarry loop by lap time: 5 days, 5 setups")
        .contains("A field holds for this rider, this trail and these days.");
    CommandLineSession.Ran json =
        session.run("field", "--notebook", notebook(), "--reference", "Shock L", "--json");
    JsonNode told = new ObjectMapper().readTree(json.out());
    assertThat(told.path("reference").asText()).isEqualTo("shock-l");
    CalculationRequest request =
        CalculationRequest.parse(told.path("request").toString()).requests().get(0);
    JsonNode again = new ObjectMapper().readTree(Calculations.standard().answer(request).print());
    assertThat(again.path("result").path("residual_sd")).isEqualTo(told.path("residual_sd"));
  }

  @Test
  void whatCannotBeAnsweredIsRefusedInOneSentenceThatNamesWhatThereIs() {
    FieldSeason season = new FieldSeason(folder);
    season.ride("KL", "2026-08-29");
    season.unseal(
        season.close(
            FieldSeason.plan("KM", "2026-09-12").replace("rider: R. Lind", "rider: M. Oster")));
    season.close();
    CommandLineSession session = new CommandLineSession(folder);
    CommandLineSession.Ran several = session.run("field", "--notebook", notebook());
    assertThat(several.code()).isEqualTo(2);
    assertThat(several.out()).isEmpty();
    assertThat(several.err())
        .contains("M. Oster on Quarry loop by lap time; R. Lind on Quarry loop by lap time")
        .contains("--rider");
    CommandLineSession.Ran none =
        session.run("field", "--notebook", notebook(), "--rider", "J. Brand");
    assertThat(none.code()).isEqualTo(2);
    assertThat(none.err()).contains("Nothing was written; there are: M. Oster");
    CommandLineSession.Ran reference =
        session.run(
            "field", "--notebook", notebook(), "--rider", "r. lind", "--reference", "Shock Z");
    assertThat(reference.code()).isEqualTo(2);
    assertThat(reference.err()).contains("\"Shock Z\" is no setup").contains("Shock K, Shock L");
    CommandLineSession.Ran empty = session.run("field");
    assertThat(empty.code()).isEqualTo(2);
    assertThat(empty.err()).contains("No day of this notebook enters a field");
  }
}
