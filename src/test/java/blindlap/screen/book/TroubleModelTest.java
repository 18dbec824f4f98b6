package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.SafeKeeping;
import blindlap.desk.TestDay;
import blindlap.screen.part.Background;
import blindlap.seal.SecureBytes;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookTrouble;
import blindlap.session.day.LapId;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A notebook that cannot be opened. */
class TroubleModelTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-15T08:00:00Z"), ZoneOffset.UTC);
  private static final SecureBytes IDS = byte[]::new;

  @TempDir Path folder;
  private Path notebook;
  private SafeKeeping keeping;
  private final List<Path> opened = new ArrayList<>();

  @BeforeEach
  void keepADay() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      for (int stint = 1; stint <= 8; stint++) {
        for (int note = 0; note < 40; note++) {
          day.desk().riderDays().note(day.id(), new LapId(stint, 1), "note " + note);
        }
      }
    }
    notebook = folder.resolve("day-1.blindlap");
    keeping = new SafeKeeping(new SqliteFiles(CLOCK, () -> IDS.exactly(16)), notebook);
  }

  private byte[] cutInHalf() throws IOException {
    byte[] whole = Files.readAllBytes(notebook);
    byte[] half = Arrays.copyOf(whole, whole.length / 2 / 4096 * 4096);
    Files.write(notebook, half);
    return half;
  }

  private void open(Path file) {
    SqliteNotebook.open(file, IDS.exactly(16), CLOCK.instant()).close();
    opened.add(file);
  }

  private TroubleModel model() {
    try {
      open(notebook);
    } catch (NotebookException why) {
      return TroubleModel.of(keeping, why, Background.immediate(), this::open).orElseThrow();
    }
    throw new AssertionError("it could be opened");
  }

  @Test
  void whatStillVerifiesIsSavedAndOpenedAndTheDamagedFileStaysAsItIs() throws IOException {
    keeping.backUp();
    byte[] half = cutInHalf();
    TroubleModel model = model();

    assertThat(model.damagedProperty().get()).isTrue();
    assertThat(model.sentenceProperty().get()).contains("is damaged").contains("day-1.blindlap");
    assertThat(model.backups()).hasSize(1).allMatch(line -> line.startsWith("15 Nov 2026 08:00"));
    assertThat(model.suggested()).isEqualTo(folder.resolve("day-1-saved.blindlap"));

    Path fresh = model.suggested();
    model.recover(fresh);
    assertThat(model.workingProperty().get()).isFalse();
    assertThat(model.saidProperty().get()).contains("saved to " + fresh);
    assertThat(model.freshProperty().get()).isEqualTo(fresh);
    assertThat(Files.readAllBytes(notebook)).isEqualTo(half);

    model.openFresh();
    assertThat(opened).containsExactly(fresh);
    assertThat(model.suggested()).isEqualTo(folder.resolve("day-1-saved-2.blindlap"));
  }

  @Test
  void somethingInTheWayIsToldAndNothingIsWrittenOver() throws IOException {
    cutInHalf();
    TroubleModel model = model();
    Path there = Files.writeString(folder.resolve("there.txt"), "mine");

    model.recover(there);

    assertThat(model.saidProperty().get()).contains("there.txt");
    assertThat(model.freshProperty().get()).isNull();
    assertThat(Files.readString(there)).isEqualTo("mine");
  }

  @Test
  void tryingAgainOpensItOnceTheTroubleIsGone() throws IOException {
    byte[] whole = Files.readAllBytes(notebook);
    Files.writeString(notebook, "A letter, and no notebook at all.");
    TroubleModel model = model();
    assertThat(model.damagedProperty().get())
        .as("another file was named, none is damaged")
        .isFalse();

    model.tryAgain();
    assertThat(opened).isEmpty();
    assertThat(model.sentenceProperty().get()).isNotEmpty();

    Files.write(notebook, whole);
    model.tryAgain();
    assertThat(opened).containsExactly(notebook);
  }

  @Test
  void onlyADamagedFileIsSaidToNeedSaving() {
    for (Kind kind : Kind.values()) {
      TroubleModel model =
          TroubleModel.of(
                  keeping,
                  new NotebookException(kind, NotebookTrouble.HELD, null, "quarry"),
                  Background.immediate(),
                  this::open)
              .orElseThrow();
      assertThat(model.damagedProperty().get()).isEqualTo(kind == Kind.DAMAGED);
      assertThat(model.sentenceProperty().get())
          .startsWith("The notebook quarry is held by another program");
    }
    assertThat(
            TroubleModel.of(
                keeping, new IllegalStateException(), Background.immediate(), this::open))
        .isEmpty();
  }
}
