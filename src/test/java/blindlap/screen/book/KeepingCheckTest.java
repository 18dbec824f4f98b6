package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.SafeKeeping;
import blindlap.desk.TestDay;
import blindlap.screen.part.Background;
import blindlap.session.day.LapId;
import blindlap.store.SqliteFiles;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The full check in the window, and saving what it leaves. */
class KeepingCheckTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-15T08:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  private KeepingModel keeping(Desk desk) {
    SafeKeeping safe =
        new SafeKeeping(
            new SqliteFiles(CLOCK, () -> new byte[16]), folder.resolve("day-1.blindlap"));
    return new KeepingModel(desk.exchange(safe), safe, Background.immediate());
  }

  @Test
  void aSoundNotebookIsSaidToBeSound() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      KeepingModel model = keeping(day.desk());
      model.check();
      assertThat(model.saidProperty().get()).contains("1 session").contains("every chain holds");
      assertThat(model.unsoundProperty().get()).isFalse();
      assertThat(model.workingProperty().get()).isFalse();
    }
  }

  @Test
  void aChangedEntryIsFoundAndTheRestIsSaved() throws IOException {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      day.desk().riderDays().note(day.id(), new LapId(1, 1), "gust");
      day.desk().riderDays().note(day.id(), new LapId(2, 1), "puddle");
      Path file = folder.resolve("day-1.blindlap");
      String text = Files.readString(file, StandardCharsets.ISO_8859_1);
      byte[] changed = text.replace("puddle", "puzzle").getBytes(StandardCharsets.ISO_8859_1);
      assertThat(changed).isNotEqualTo(text.getBytes(StandardCharsets.ISO_8859_1));
      Files.write(file, changed);

      KeepingModel model = keeping(day.desk());
      model.check();
      assertThat(model.unsoundProperty().get()).isTrue();
      assertThat(model.saidProperty().get().lines().count()).isLessThanOrEqualTo(5);
      assertThat(model.saidProperty().get())
          .contains("problem", "--recover")
          .doesNotContain("StreamReadFeature");

      Path fresh = model.suggested();
      model.recover(fresh);
      assertThat(model.saidProperty().get())
          .contains("Known to be missing")
          .endsWith("Open it with: blindlap --notebook " + fresh);
      assertThat(Files.readAllBytes(file)).isEqualTo(changed);
      assertThat(fresh).exists();
    }
  }
}
