package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.DeskFault;
import blindlap.desk.RecordingFault;
import blindlap.exchange.FileFault;
import blindlap.exchange.PackageFault;
import blindlap.exchange.SessionFileFault;
import blindlap.fault.DayFault;
import blindlap.fault.Fault;
import blindlap.fault.Problem;
import blindlap.fault.RuleFault;
import blindlap.fault.TextFault;
import blindlap.phone.SwitchFault;
import blindlap.plan.PlanFault;
import blindlap.plan.PlanHint;
import blindlap.seal.DrawFault;
import blindlap.seal.SheetSlip;
import blindlap.session.ChainFault;
import blindlap.session.Damage;
import blindlap.session.EntryFault;
import blindlap.session.MeaningFault;
import blindlap.session.NotebookException;
import blindlap.session.NotebookFault;
import blindlap.session.NotebookTrouble;
import blindlap.session.ReasonFor;
import blindlap.session.SessionFault;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import blindlap.wording.day.Words;
import blindlap.workshop.WorkshopFault;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class ProblemsTest {
  /** A lone apostrophe is a quote to the formatter: it would vanish from what people read. */
  @Test
  void everyApostropheIsWrittenTwice() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/resources/blindlap/wording"))) {
      List<Path> bundles = files.filter(file -> file.toString().endsWith(".properties")).toList();
      assertThat(bundles).hasSizeGreaterThan(20);
      for (Path bundle : bundles) {
        Properties said = new Properties();
        try (Reader reader = Files.newBufferedReader(bundle)) {
          said.load(reader);
        }
        said.forEach(
            (key, value) ->
                assertThat(value.toString().replace("''", "").replaceAll("'[{}]'", ""))
                    .as("%s of %s", key, bundle)
                    .doesNotContain("'"));
      }
    }
  }

  static Stream<Fault> faults() {
    return Stream.<Fault[]>of(
            PlanFault.values(),
            PlanHint.values(),
            SessionFault.values(),
            FileFault.values(),
            SessionFileFault.values(),
            ChainFault.values(),
            MeaningFault.values(),
            NotebookFault.values(),
            DeskFault.values(),
            RecordingFault.values(),
            DayFault.values(),
            RuleFault.values(),
            TextFault.values(),
            DrawFault.values(),
            PackageFault.values(),
            WorkshopFault.values(),
            SheetSlip.values(),
            SwitchFault.values(),
            NotebookTrouble.values())
        .flatMap(Stream::of);
  }

  @ParameterizedTest
  @MethodSource("faults")
  void everyFaultHasASentenceThatUsesItsDetails(Fault fault) {
    String sentence =
        Problems.sentence(new Problem(fault, "line 3", List.of("one", "two", "three", "four")));

    assertThat(sentence).startsWith("Line 3: ").matches("(?s).*([.?]|FILE|notebook)$");
    // A null run is a term of the method; any other "null" is a detail that was not there.
    assertThat(sentence.replace("null run", "")).doesNotContain("{", "null", "''");
  }

  @ParameterizedTest
  @EnumSource(Damage.class)
  void everyDamageIsSaidWithinTheSentenceOfTheFile(Damage damage) {
    String sentence =
        Trouble.sentence(
            NotebookException.damaged(Path.of("my quarry"), null, damage, "one", "two"));

    assertThat(sentence)
        .startsWith("The notebook my quarry is damaged (")
        .contains("blindlap notebook --recover \"my quarry\" --out NEW")
        .doesNotContain(damage.name())
        .doesNotContain("{");
  }

  @ParameterizedTest
  @EnumSource(EntryFault.class)
  void whateverIsNoEntryIsSaidInWords(EntryFault fault) {
    assertThat(Words.of("problems").has("detail.NOT_AN_ENTRY." + fault.name())).isTrue();
    assertThat(Problems.sentence(Problem.of(SessionFileFault.NOT_AN_ENTRY, "line 3", fault.name())))
        .startsWith("Line 3: This line is not an entry as Blindlap writes it (")
        .doesNotContain(fault.name());
  }

  @ParameterizedTest
  @EnumSource(ReasonFor.class)
  void whateverAReasonIsMissingForIsSaidInWords(ReasonFor what) {
    String sentence = Problems.sentence(Problem.of(SessionFault.REASON_MISSING, "", what));

    assertThat(sentence)
        .startsWith("A reason is missing for this: ")
        .doesNotContain(what.name())
        .doesNotContain("_");
  }

  @ParameterizedTest
  @MethodSource("faults")
  void noSentenceLeavesOutAnApostropheOrABrace(Fault fault) {
    String raw = Words.of("problems").say(Problems.key(fault), "", "1", "2", "3", "4");

    assertThat(raw).doesNotContainPattern("\\b(dont|helpers entry|setups name)\\b");
  }
}
