package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.fault.Unreadable;
import blindlap.sample.SampleSession;
import blindlap.sample.SampleSources;
import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.session.SessionState;
import blindlap.store.SqliteNotebook;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** While a session is sealed, review, report and export give nothing of its key. */
class SealedReviewTest {
  private static final String NAME = "shocks-on-quarry-loop";
  @TempDir Path folder;

  @Test
  void aFindingOfASealedSessionIsRefusedInOneSentence() {
    SampleDays.sealed(
        NAME,
        (desk, state, phrase) -> {
          var problems = desk.reviews().refuse(state).orElseThrow();
          assertThat(Problems.sentences(problems)).hasSize(1);
          assertThat(Problems.sentences(problems).get(0)).contains("is not opened yet");
          assertThat(desk.reviews().verdict(state)).isEmpty();
          assertThat(desk.reviews().headline(state)).isEmpty();
          assertThatThrownBy(() -> desk.reviews().text(state))
              .isInstanceOf(IllegalStateException.class);
          assertThatThrownBy(() -> desk.reviews().json(state))
              .isInstanceOf(IllegalStateException.class);
          assertThatThrownBy(() -> desk.reviews().report(state, false))
              .isInstanceOf(IllegalStateException.class);
        });
  }

  @Test
  void aBlindPackageHoldsCodesAndNothingOfSetups() {
    SampleDays.sealed(
        NAME,
        (desk, state, phrase) -> {
          Map<String, byte[]> files = desk.reviews().export(state);
          assertThat(files)
              .containsOnlyKeys(
                  "datapackage.json", "laps.csv", "measures.csv", "README.md", "session.txt");
          // The session inside is the sealed one: its key and the helper's records are encrypted.
          assertThat(new String(files.get("session.txt"), StandardCharsets.UTF_8))
              .contains("\"ciphertext\":")
              .doesNotContain("SealOpened")
              .doesNotContain("order=")
              .doesNotContain("seed=");
          files.forEach(
              (name, bytes) -> {
                if (!name.equals("session.txt")) {
                  assertThat(new String(bytes, StandardCharsets.UTF_8))
                      .as(name)
                      .doesNotContain("Shock")
                      .doesNotContainIgnoringCase("guess");
                }
              });
          assertThat(new String(files.get("laps.csv"), StandardCharsets.UTF_8))
              .contains(String.valueOf(state.code(1)));
          assertThatThrownBy(() -> Reviews.fromPackage(files))
              .isInstanceOfSatisfying(
                  Unreadable.class,
                  refusal ->
                      assertThat(Problems.sentence(refusal.problem()))
                          .contains("whose order is not opened has no finding"));
        });
  }

  @Test
  void aBlindPackageIsTheSameWhateverTheOrder() {
    Map<String, String> one = blindPackage("order");
    Map<String, String> other = blindPackage("another order");
    assertThat(order).as("the two orders differ, or this shows nothing").hasSize(2);
    assertThat(other).isEqualTo(one);
  }

  /** Hashes, and what is encrypted: nobody can read it without the phrase, and its length stays. */
  private static String masked(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    Matcher sealed = Pattern.compile("\"ciphertext\":\"([^\"]+)\"").matcher(text);
    return sealed
        .replaceAll(found -> "\"ciphertext\":" + found.group(1).length())
        .replaceAll("[0-9a-f]{64}", "*");
  }

  private final java.util.Set<String> order = new java.util.HashSet<>();

  /** The blind package of the sample with the order drawn from another stream. */
  private Map<String, String> blindPackage(String stream) {
    SealingSources fixed = SampleSources.of(NAME);
    SealingSources sources =
        new SealingSources(
            SampleSources.stream(NAME, stream),
            fixed.codes(),
            fixed.nonce(),
            fixed.warmUp(),
            fixed.phrase(),
            fixed.salt(),
            fixed.iv());
    Clock clock = Clock.fixed(Instant.parse("2026-11-14T08:00:00Z"), ZoneId.of("UTC"));
    var ids = SampleSources.stream(NAME, "id");
    try (Desk desk =
        new Desk(
            SqliteNotebook.open(
                folder.resolve(stream + ".blindlap"), ids.exactly(16), clock.instant()),
            clock,
            sources,
            new SealParameters(1_000),
            ids)) {
      SampleSession sample = new SampleSession(NAME, desk);
      Committing.Result.Committed committed = sample.commit();
      order.add(
          committed.sealed().schedule().fits().stream()
              .map(fit -> String.valueOf(fit.fitted()))
              .collect(java.util.stream.Collectors.joining()));
      SessionState state = sample.closeDay(sample.record(committed.state()));
      Map<String, String> texts = new TreeMap<>();
      desk.reviews().export(state).forEach((name, bytes) -> texts.put(name, masked(bytes)));
      return texts;
    }
  }
}
