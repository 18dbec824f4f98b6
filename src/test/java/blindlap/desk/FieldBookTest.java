package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.compute.CalculationRequest;
import blindlap.compute.Calculations;
import blindlap.plan.Setup;
import blindlap.review.FieldFinding;
import blindlap.review.FieldFinding.Standing;
import blindlap.review.FieldSessions;
import blindlap.review.TakenLook;
import blindlap.seal.SessionKind;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.FieldRowWords;
import blindlap.wording.FieldWords;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Fields of notebooks whose truth is known. */
class FieldBookTest {
  private static final ObjectMapper JSON = new ObjectMapper();

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

  private FieldBook.Result.Found result(String reference) {
    FieldBook.Result result =
        season.desk().field().find(new FieldBook.Wanted(null, null, null, reference));
    assertThat(result).isInstanceOf(FieldBook.Result.Found.class);
    return (FieldBook.Result.Found) result;
  }

  private FieldFinding found(String reference) {
    return result(reference).finding();
  }

  private FieldFinding found() {
    return found(null);
  }

  private FieldFinding whole() {
    season.whole();
    return found();
  }

  private static FieldFinding.Pair row(FieldFinding finding, String id) {
    return finding.rows().stream().filter(p -> p.second().equals(id)).findFirst().orElseThrow();
  }

  @Test
  void rowsStandInTheOrderInWhichSetupsCameInAfterTheReference() {
    FieldFinding finding = whole();
    assertThat(finding.setups())
        .extracting(Setup::name)
        .containsExactly("Shock K", "Shock N", "Shock L", "Shock M", "Shock P");
    assertThat(finding.rows()).extracting(FieldFinding.Pair::first).containsOnly("shock-k");
    assertThat(finding.rows())
        .extracting(FieldFinding.Pair::standing)
        .containsExactly(Standing.RIDDEN, Standing.RIDDEN, Standing.RIDDEN, Standing.FOLLOWS);
    assertThat(row(finding, "shock-p").over()).containsExactly("shock-m");
    assertThat(row(finding, "shock-p").own()).isEmpty();
    assertThat(row(finding, "shock-l").own()).hasSize(1);
    assertThat(row(finding, "shock-l").own().get(0).verdict()).isPresent();
    assertThat(finding.others()).hasSize(6);
    assertThat(finding.days()).hasSize(5);
    assertThat(finding.out()).isEmpty();
    assertThat(finding.worthwhile().orElseThrow().high()).isEqualTo(0.5);
    assertThat(row(finding, "shock-l").estimate().getAsDouble()).isCloseTo(-2, within(0.7));
  }

  /** The request that is printed gives every number again, by another way in. */
  @Test
  void theRequestGivesTheNumbersAgain() throws Exception {
    season.whole();
    JsonNode told = JSON.readTree(FieldBook.json(result(null)));
    JsonNode again =
        JSON.readTree(
                Calculations.standard()
                    .answer(
                        CalculationRequest.parse(told.path("request").toString()).requests().get(0))
                    .print())
            .path("result");
    assertThat(again.path("df").asInt()).isEqualTo(told.path("df").asInt());
    assertThat(again.path("agreement").path("p").doubleValue())
        .isCloseTo(told.path("agreement").path("p").doubleValue(), within(1e-12));
    int seen = 0;
    for (String table : List.of("against_reference", "between_others")) {
      for (JsonNode pair : told.path(table)) {
        String first = pair.path("first").asText();
        String second = pair.path("second").asText();
        boolean flipped = first.compareTo(second) > 0;
        String name = flipped ? second + "-" + first : first + "-" + second;
        for (JsonNode other : again.path("pairs")) {
          if (other.path("pair").asText().equals(name)) {
            seen++;
            double estimate = other.path("estimate").doubleValue();
            assertThat(pair.path("estimate").doubleValue())
                .isCloseTo(flipped ? -estimate : estimate, within(1e-12));
            JsonNode wide = other.path("interval_95");
            assertThat(pair.path("interval_95").path(0).doubleValue())
                .isCloseTo(
                    flipped ? -wide.path(1).doubleValue() : wide.path(0).doubleValue(),
                    within(1e-12));
          }
        }
      }
    }
    assertThat(seen).isEqualTo(10);
  }

  @Test
  void anotherReferenceTurnsThePairAndKeepsItsSize() {
    FieldFinding ofK = whole();
    FieldFinding ofL = found("shock l");
    assertThat(ofL.reference().orElseThrow().id()).isEqualTo("shock-l");
    assertThat(row(ofL, "shock-k").estimate().getAsDouble())
        .isEqualTo(-row(ofK, "shock-l").estimate().getAsDouble());
    assertThat(row(ofL, "shock-k").own().get(0).estimate())
        .isEqualTo(-row(ofK, "shock-l").own().get(0).estimate());
    assertThat(row(ofL, "shock-m").standing()).isEqualTo(Standing.FOLLOWS);
    assertThat(row(ofL, "shock-p").over()).containsExactly("shock-k", "shock-m");
    assertThat(season.desk().field().find(new FieldBook.Wanted(null, null, null, "Shock Z")))
        .isInstanceOfSatisfying(
            FieldBook.Result.Refused.class,
            refused ->
                assertThat(refused.problems().get(0).fault())
                    .isEqualTo(DeskFault.NO_SUCH_REFERENCE));
  }

  @Test
  void wordsNeverNameAPlaceAndSayTheCautionsInEveryTable() {
    FieldWords words = new FieldWords(whole());
    String all = String.join("\n", words.lines());
    assertThat(all)
        .contains("All days together hold only if a setup's lead does not change from day to day.")
        .contains("about 8 times in 10, at one noise SD 4 in 10")
        .contains("Follows only, over Shock M: Shock P was")
        .contains("EUR 600; 882 g")
        .contains("On 14 Nov 2026 by itself:");
    assertThat(all.toLowerCase(java.util.Locale.ROOT))
        .doesNotContainPattern("best(?! estimate)")
        .doesNotContain("rank")
        .doesNotContain("winner")
        .doesNotContain("first place");
    assertThat(words.headline().phrase()).contains("Shock L").doesNotContain("Shock P");
    assertThat(words.headline().after()).contains("Shock P").contains("only if leads hold");
    FieldRowWords last = words.rows().get(3);
    assertThat(last.ridden()).isEqualTo("no: it only follows");
    assertThat(last.below()).containsExactly("over Shock M");
  }

  @Test
  void theReportHasEveryRowItsCautionsAndTheRequestAndIsTheSameEachTime() {
    season.whole();
    FieldBook.Result.Found found = result(null);
    Map<String, byte[]> files = season.desk().field().report(found, false);
    assertThat(files.keySet())
        .containsExactly("field-R_Lind-Quarry_loop.html", "field-R_Lind-Quarry_loop.pdf");
    String html = new String(files.get("field-R_Lind-Quarry_loop.html"), StandardCharsets.UTF_8);
    assertThat(html)
        .contains("Shock L and Shock M were faster", "at one noise SD 4 in 10", "EUR 600", "882 g")
        .contains("that day: real and worthwhile", "Which day next", "&quot;calculation&quot;")
        .contains(
            season.state(season.desk().sessions().all().get(0).id()).planFingerprint().grouped());
    assertThat(html.indexOf("at one noise SD 4 in 10")).isLessThan(html.indexOf("882 g</"));
    assertThat(season.desk().field().report(found, false).get("field-R_Lind-Quarry_loop.html"))
        .isEqualTo(files.get("field-R_Lind-Quarry_loop.html"));
  }

  @Test
  void aStarCannotBeChecked() {
    season.ride("KL", "2026-08-29");
    season.ride("KM", "2026-09-12");
    FieldFinding finding = found();
    assertThat(finding.agreement()).isEmpty();
    assertThat(finding.told()).isTrue();
    assertThat(String.join(" ", new FieldWords(finding).cautions())).contains("cannot be checked");
    FieldFinding.Next next = finding.next().orElseThrow();
    assertThat(List.of(next.first(), next.second())).containsExactly("shock-l", "shock-m");
    assertThat(next.then()).isLessThan(next.now());
    assertThat(next.stints()).isEqualTo(12);
  }

  @Test
  void whereDaysDoNotAgreeNothingOfThemTogetherIsTold() throws Exception {
    season.ride("KL", "2026-08-29");
    season.ride("KM", "2026-09-12");
    season.rideChanged("LM", "2026-09-26", "M", 4);
    FieldFinding finding = found();
    assertThat(finding.withheld()).isTrue();
    assertThat(finding.rows()).allMatch(pair -> pair.estimate().isEmpty());
    assertThat(finding.others()).allMatch(pair -> pair.interval95().isEmpty());
    assertThat(finding.next()).isEmpty();
    FieldWords words = new FieldWords(finding);
    assertThat(words.headline().text()).isEqualTo("The days do not agree.");
    assertThat(words.headline().phrase()).isEmpty();
    assertThat(String.join(" ", words.cautions()))
        .startsWith("The days do not agree (p")
        .doesNotContain("these intervals");
    assertThat(String.join("\n", words.lines()))
        .contains("On 29 Aug 2026 by itself:")
        .doesNotContain("for all pairs at once");
    JsonNode json = JSON.readTree(FieldBook.json(result(null)));
    assertThat(json.path("withheld").asBoolean()).isTrue();
    assertThat(json.path("against_reference").path(0).path("estimate").isNull()).isTrue();
  }

  @Test
  void aPieceThatNoDaysLeadToHasNoDifference() {
    season.ride("KL", "2026-08-29");
    season.ride("QR", "2026-09-12");
    season.ride("KL", "2026-09-26");
    FieldFinding finding = found();
    assertThat(finding.rows())
        .extracting(FieldFinding.Pair::standing)
        .containsExactly(Standing.RIDDEN, Standing.APART, Standing.APART);
    assertThat(row(finding, "shock-q").estimate()).isEmpty();
    assertThat(row(finding, "shock-l").own()).hasSize(2);
    assertThat(new FieldWords(finding).rows().get(0).below())
        .hasSize(2)
        .allMatch(
            line -> line.matches("(29 Aug|26 Sept) 2026: .* s faster \\(95 % interval .*\\)"));
    assertThat(finding.apart()).isTrue();
    FieldFinding.Next next = finding.next().orElseThrow();
    assertThat(next.now()).isInfinite();
    assertThat(next.then()).isFinite();
    assertThat(String.join("\n", new FieldWords(finding).lines()))
        .contains("No days lead from Shock K to Shock Q")
        .contains("leads to every setup");
  }

  @Test
  void aDayOfThreeSetupsIsQuotedByItsOwnPairs() {
    season.ride("KLM", "2026-08-29");
    season.ride("KL", "2026-09-12");
    FieldFinding finding = found();
    FieldFinding.OwnDay own = row(finding, "shock-m").own().get(0);
    assertThat(own.many()).isTrue();
    assertThat(own.verdict()).isEmpty();
    assertThat(row(finding, "shock-l").own()).hasSize(2);
    assertThat(finding.agreement()).isPresent();
    assertThat(String.join("\n", new FieldWords(finding).lines()))
        .contains("told apart among its setups");
  }

  @Test
  void oneDayIsNoField() {
    season.ride("KL", "2026-08-29");
    FieldFinding finding = found();
    assertThat(finding.numbers()).isEmpty();
    assertThat(new FieldWords(finding).headline().text()).isEqualTo("One day is no field yet.");
    assertThat(new FieldWords(finding).cautions()).isEmpty();
    assertThat(String.join("\n", new FieldWords(finding).lines())).contains("by itself:");
  }

  @Test
  void everySessionThatDoesNotEnterIsListedWithOneReason() {
    season.whole();
    season.commit(FieldSeason.plan("KL", "2026-12-01"), SessionKind.comparison());
    season.commit(
        FieldSeason.plan("KL", "2026-12-02") + "blinding: {level: open}\n",
        SessionKind.comparison());
    String other =
        FieldSeason.plan("KL", "2026-12-03")
            .replace("name: lap time, kind: lap time", "name: top half, kind: sector time");
    season.unseal(season.close(other));
    season.unseal(
        season.close(
            FieldSeason.plan("KL", "2026-12-04")
                .replace("worthwhile: 0.5", "scale: ratio, worthwhile: 0.5")));
    season.unseal(
        season.close(
            FieldSeason.plan("KL", "2026-12-05") + "laps: {warm_up: 0, settling: 0, scored: 2}\n"));
    season.unseal(
        season.close(
            FieldSeason.plan("KL", "2026-12-06")
                .replace("worthwhile: 0.5", "worthwhile: 0.5, better: higher")));
    SessionId nullRun = season.commit(FieldSeason.plan("KL", "2026-12-07"), SessionKind.nullRun(0));
    season.unseal(season.closed(nullRun));
    SessionId given = season.commit(FieldSeason.plan("KL", "2026-12-08"), SessionKind.comparison());
    season.desk().sessions().act(given, latest -> new LifeCommands(latest).abandon("rain"));
    season.commit(
        FieldSeason.plan("KL", "2026-12-09") + "blinding: {level: masked, prepared_by: M. Oster}\n",
        SessionKind.comparison());
    FieldFinding finding =
        ((FieldBook.Result.Found)
                season
                    .desk()
                    .field()
                    .find(new FieldBook.Wanted("r. lind ", "QUARRY LOOP", "Lap time", null)))
            .finding();
    assertThat(finding.days()).hasSize(5);
    assertThat(finding.out())
        .extracting(FieldFinding.Out::why)
        .containsExactly(
            FieldFinding.Why.SEALED,
            FieldFinding.Why.KNEW,
            FieldFinding.Why.OTHER_PRIMARY,
            FieldFinding.Why.OTHER_SCALE,
            FieldFinding.Why.OTHER_LAPS,
            FieldFinding.Why.OTHER_MEASURE,
            FieldFinding.Why.NULL_RUN,
            FieldFinding.Why.ABANDONED,
            FieldFinding.Why.KNEW);
    assertThat(new FieldWords(finding).out()).hasSize(9).allMatch(line -> !line.contains("{"));
  }

  /** No comparison of setups, whatever its kind; prepared units are as good as a helper. */
  @Test
  void stepsDaysStayOutAndPreparedUnitsMayEnter() {
    season.ride("KL", "2026-08-29");
    season.commit(
        FieldSeason.plan("K", "2026-12-01")
            .replace("protocol: three-setups", "protocol: three-levels")
            .replace("question:", "kind: steps day\nquestion:")
            .replace("measures:", "steps_day: {setting: rebound, levels: [4, 8, 12]}\nmeasures:"),
        SessionKind.comparison());
    season.commit(
        FieldSeason.plan("KL", "2026-12-02")
            + "blinding: {level: prepared, prepared_by: M. Oster, prepared_on: 2026-12-01}\n",
        SessionKind.comparison());
    assertThat(found().out())
        .extracting(FieldFinding.Out::why)
        .containsExactly(FieldFinding.Why.NO_COMPARISON, FieldFinding.Why.SEALED);
  }

  /** A look's stop is known of the record alone; the same day without its looks enters. */
  @Test
  void aDayThatALookStoppedDoesNotEnter() {
    season.ride("KL", "2026-08-29");
    SessionId cut = season.cutShort(FieldSeason.plan("KM", "2026-09-12"), 8);
    List<SessionState> sessions =
        season.desk().notebook().summaries().stream().map(each -> season.state(each.id())).toList();
    FieldFinding.Asked asked = new FieldFinding.Asked("R. Lind", "Quarry loop", "lap time");
    FieldSessions plain = new FieldSessions(state -> false, OpenedDays::of);
    FieldFinding entered = plain.finding(asked, Optional.empty(), sessions);
    assertThat(entered.out()).isEmpty();
    assertThat(entered.days().get(1).remarks()).containsExactly(FieldFinding.Remark.CUT_SHORT);
    TakenLook look = new TakenLook(8, true, new TreeMap<>());
    FieldSessions stopped =
        new FieldSessions(
            state -> false,
            state ->
                state.id().equals(cut)
                    ? OpenedDays.of(state).with(List.of(look))
                    : OpenedDays.of(state));
    FieldFinding finding = stopped.finding(asked, Optional.empty(), sessions);
    assertThat(finding.out())
        .extracting(FieldFinding.Out::why)
        .containsExactly(FieldFinding.Why.STOPPED_EARLY);
    assertThat(finding.numbers()).isEmpty();
    FieldSessions hidden = new FieldSessions(state -> state.id().equals(cut), OpenedDays::of);
    assertThat(hidden.finding(asked, Optional.empty(), sessions).out())
        .extracting(FieldFinding.Out::why)
        .containsExactly(FieldFinding.Why.SERIES);
  }
}
