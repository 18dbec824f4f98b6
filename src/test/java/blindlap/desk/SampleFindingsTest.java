package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.compute.ReviewJsonPage;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.review.TellingAnalysis;
import blindlap.sample.SampleSession;
import blindlap.session.SessionState;
import blindlap.stats.compare.Verdict;
import blindlap.stats.tell.TellingVerdict;
import blindlap.wording.FindingText;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the invented sessions come to: their findings, reports and data packages. */
class SampleFindingsTest {
  /** Findings as JSON, worked out once, by sample. */
  private static final Map<String, String> JSON = new TreeMap<>();

  private static final Map<String, Verdict> VERDICTS = new TreeMap<>();

  static {
    VERDICTS.put("shocks-on-quarry-loop", Verdict.REAL_AND_WORTHWHILE);
    VERDICTS.put("pressures-on-beech-descent", Verdict.NO_WORTHWHILE_DIFFERENCE);
    VERDICTS.put("bars-on-mill-track", Verdict.NOT_SETTLED);
    VERDICTS.put("bearings-on-clay-steps", Verdict.REAL_BUT_SMALL);
    VERDICTS.put("springs-on-ridge-line", Verdict.DIRECTION_KNOWN);
    VERDICTS.put("pads-on-long-drop", Verdict.COULD_NOT_SHOW);
    VERDICTS.put("tyres-on-root-garden", Verdict.REAL_AND_WORTHWHILE);
    VERDICTS.put("null-run-on-quarry-loop", Verdict.NOT_SETTLED);
    VERDICTS.put("clicks-on-wet-steps", Verdict.REAL_AND_WORTHWHILE);
    VERDICTS.put("dampers-on-dust-track", Verdict.REAL_AND_WORTHWHILE);
    VERDICTS.put("levers-on-flat-lap", Verdict.NO_VARIATION);
    VERDICTS.put("oils-on-larch-line", Verdict.DIRECTION_KNOWN);
    VERDICTS.put("grips-on-moor-path", Verdict.NO_WORTHWHILE_DIFFERENCE);
    VERDICTS.put("wheels-on-windy-ridge", Verdict.DIRECTION_KNOWN);
    VERDICTS.put("saddles-on-stone-ladder", Verdict.REAL_AND_WORTHWHILE);
    VERDICTS.put("pedals-on-gravel-bowl", Verdict.REAL_AND_WORTHWHILE);
    VERDICTS.put("inserts-on-chalk-cutting", Verdict.REAL_AND_WORTHWHILE);
    VERDICTS.put("forks-on-juniper-chute", Verdict.DIRECTION_KNOWN);
    VERDICTS.put("rebound-on-heron-line", Verdict.REAL_AND_WORTHWHILE);
    VERDICTS.put("air-on-otter-traverse", Verdict.NOT_SETTLED);
  }

  private static final Map<String, TellingVerdict> TOLD =
      Map.of(
          "clicks-told-on-alder-bank", TellingVerdict.CAN_TELL,
          "pads-told-on-slate-run", TellingVerdict.CANNOT_AS_OFTEN,
          "same-dial-on-alder-bank", TellingVerdict.CANNOT_AS_OFTEN);

  static List<String> samples() {
    return SampleSession.ALL;
  }

  /** Walked once the tests have worked the findings out, which takes far longer than walking. */
  @AfterAll
  static void everyFieldOfASampleIsOnItsPageAndNoOtherUnmarked() throws IOException {
    if (JSON.keySet().containsAll(samples())) {
      ReviewJsonPage.read("An open noise run").agreesWith(JSON.values());
    }
  }

  @Test
  void theSamplesCoverEveryVerdict() {
    assertThat(VERDICTS.values()).contains(Verdict.values());
  }

  @ParameterizedTest
  @MethodSource("samples")
  void everySampleReadsAsItsGoldenFileSays(String name) {
    SampleDays.ride(
        name,
        (desk, state) -> {
          if (TellingAnalysis.is(state.plan())) {
            assertThat(desk.reviews().telling(state).finding().telling().verdict())
                .isEqualTo(TOLD.get(name));
          } else {
            Finding finding = desk.reviews().finding(state);
            Optional<Verdict> verdict = finding.primary().flatMap(Comparison::verdict);
            assertThat(verdict).isEqualTo(Optional.ofNullable(VERDICTS.get(name)));
          }
          golden(name, text(desk, state));
        });
  }

  /** The finding in lines, then the words of the report without its markup and pictures. */
  private static String text(Desk desk, SessionState state) {
    String html = html(desk, state);
    String words =
        html.substring(html.indexOf("<main>"))
            .replaceAll("(?s)<svg.*?</svg>", "(picture)")
            .replaceAll("</(td|th)>", " | ")
            .replaceAll("<[^>]*>", "")
            .replace("&quot;", "\"")
            .replace("&lt;", "<")
            .replace("&gt;", ">")
            .replace("&amp;", "&")
            .replace('\u00a0', ' ')
            .replaceAll("(?m)[ |]+$", "")
            .replaceAll("\n{2,}", "\n");
    return String.join("\n", desk.reviews().text(state)) + "\n\nReport\n" + words;
  }

  private static String html(Desk desk, SessionState state) {
    return desk.reviews().html(state, false);
  }

  private static void golden(String name, String text) {
    Path file = Path.of("src", "test", "resources", "blindlap", "golden", name + ".txt");
    try {
      if (Boolean.getBoolean("blindlap.write")) {
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
      }
      assertThat(text)
          .as("run with -Dblindlap.write=true and read the difference")
          .isEqualTo(Files.readString(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void theReportOfACoveredOrderClaimsNoSeal() throws IOException {
    Path golden = Path.of("src", "test", "resources", "blindlap", "golden");
    for (String name : List.of("pedals-on-gravel-bowl", "inserts-on-chalk-cutting")) {
      List<String> said =
          Files.readAllLines(golden.resolve(name + ".txt")).stream()
              .map(
                  line ->
                      line.replace("covered and not sealed", "").replace("covered, not sealed", ""))
              .filter(line -> !line.contains("opened with the phrase under which it was sealed"))
              .toList();
      assertThat(said).noneMatch(line -> line.toLowerCase(Locale.ROOT).contains("seal"));
      assertThat(said).anyMatch(line -> line.contains("accidental sight only"));
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void aDataPackageGivesTheSameFindingAsTheNotebook(String name) {
    SampleDays.ride(
        name,
        (desk, state) -> {
          java.util.Map<String, byte[]> files = desk.reviews().export(state);
          String json = desk.reviews().json(state);
          assertThat(PackageReview.of(files).json()).isEqualTo(json);
          JSON.put(name, json);
          assertThat(PackageReview.of(files).text()).isEqualTo(desk.reviews().text(state));
        });
  }

  @ParameterizedTest
  @MethodSource("samples")
  void everySurfaceThatAsksToBeTrustedCarriesTheCautionAndTheLimits(String name) {
    String trust = "It approves no part and no setting.";
    SampleDays.ride(
        name,
        (desk, state) -> {
          String limits = FindingText.limits(state.plan());
          assertThat(limits).contains("One rider, one trail, one day.");
          String readme =
              new String(
                  desk.reviews().export(state).get("README.md"),
                  java.nio.charset.StandardCharsets.UTF_8);
          assertThat(readme).contains(trust, "maker's manual", "may stop at any time", limits);
          assertThat(html(desk, state))
              .contains(trust, "maker's manual", "may stop at any time", limits);
          assertThat(desk.reviews().text(state)).last().asString().contains(trust);
        });
  }

  @Test
  void aReportNamesNoAddressOutsideItself() {
    SampleDays.ride(
        "shocks-on-quarry-loop",
        (desk, state) -> {
          String html = html(desk, state);
          assertThat(html).doesNotContain("http:").doesNotContain("https:").doesNotContain("//www");
          assertThat(html).doesNotContainPattern("(src|href)=\"(?!#)");
          assertThat(html).doesNotContainPattern("url\\((?!data:)");
          assertThat(html).contains("lang=\"en\"");
        });
  }

  @Test
  void theReportSaysWhoReceivedWhichFingerprintAndOtherSessionsOfTheQuestion() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) -> {
          desk.reviews().given(state, "S. Wirt");
          SessionState again = new SampleSession("bearings-on-clay-steps", desk).commit().state();
          desk.sessions()
              .act(again.id(), s -> new blindlap.session.LifeCommands(s).abandon("snow"));
          SessionState now = desk.sessions().state(state.id()).orElseThrow();
          String html = html(desk, now);
          assertThat(html).contains("Fingerprint of the review given to S. Wirt");
          assertThat(html).contains("abandoned (snow); primary measure lap time; still sealed.");
        });
  }

  @Test
  void anAmendmentStandsBesideTheOriginalAndChangesNoNumber() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) -> {
          String before = desk.reviews().json(state);
          desk.sessions()
              .act(
                  state.id(),
                  s ->
                      new blindlap.session.LifeCommands(s)
                          .amend("The gauge read low.", "found in the workshop"));
          SessionState now = desk.sessions().state(state.id()).orElseThrow();
          assertThat(desk.reviews().json(now)).isEqualTo(before);
          assertThat(html(desk, now))
              .contains("The gauge read low. (reason: found in the workshop)");
        });
  }
}
