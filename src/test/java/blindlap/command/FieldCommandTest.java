package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.compute.CalculationRequest;
import blindlap.compute.Calculations;
import blindlap.desk.FieldSeason;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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

  /** Neither is silently left out; nothing is written before the refusal. */
  @Test
  void numbersAndAReportAreNotAskedForAtOnceNorItsLookAlone() {
    new FieldSeason(folder).whole().close();
    CommandLineSession session = new CommandLineSession(folder);
    String into = folder.resolve("out").toString();
    for (String what : List.of("field", "series")) {
      List<String> which = what.equals("series") ? List.of(what, "some") : List.of(what);
      refused(session, which, List.of("--report", into, "--json"), "--json prints numbers");
      refused(session, which, List.of("--black"), "--black is how a report looks");
      refused(session, which, List.of("--black", "--json"), "--black is how a report looks");
    }
    refused(
        session,
        List.of("series", "some"),
        List.of("--package", into, "--json"),
        "--json prints numbers");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  private void refused(
      CommandLineSession session, List<String> which, List<String> options, String sentence) {
    List<String> all = new ArrayList<>(which);
    all.addAll(List.of("--notebook", notebook()));
    all.addAll(options);
    CommandLineSession.Ran ran = session.run(all.toArray(String[]::new));
    assertThat(ran.code()).as(all.toString()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err()).contains(sentence).contains("Nothing was written.");
  }
}
