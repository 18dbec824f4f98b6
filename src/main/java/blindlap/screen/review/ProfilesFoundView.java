package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.Look;
import blindlap.screen.part.RecordTable;
import blindlap.wording.ProfilesFoundWords;
import java.util.List;
import javafx.scene.layout.VBox;

/** Who should look at what: a row a profile, with the finding's own sentences. */
final class ProfilesFoundView extends VBox {
  private static final double[] SHARES = {20, 20, 60};

  ProfilesFoundView(Look look, ProfilesFoundWords words) {
    setSpacing(10);
    setId("profiles-found");
    getChildren()
        .addAll(
            words(ProfilesFoundWords.title(), "h2"),
            new RecordTable(
                look,
                SHARES,
                ProfilesFoundWords.heads(),
                words.rows().stream().map(ProfilesFoundView::cells).toList()),
            words(ProfilesFoundWords.note(), "note", "second"));
  }

  private static List<String> cells(ProfilesFoundWords.Row row) {
    String mark = row.mark().isEmpty() ? "" : "\n" + row.mark();
    return List.of(row.name() + mark, row.measures(), String.join("\n", row.sentences()));
  }
}
