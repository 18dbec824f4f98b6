package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.ListedRow;
import blindlap.screen.part.Look;
import blindlap.screen.part.RecordTable;
import blindlap.wording.ProfilesFoundWords;
import java.util.List;
import javafx.scene.layout.VBox;

/**
 * Who should look at what: a row a profile, with the finding's own sentences. With large text name,
 * measures and sentences stand below one another.
 */
final class ProfilesFoundView extends VBox {
  private static final double[] SHARES = {20, 20, 60};

  ProfilesFoundView(Look look, ProfilesFoundWords words) {
    setSpacing(10);
    setId("profiles-found");
    List<ListedRow> rows =
        words.rows().stream()
            .map(row -> new ListedRow(row.name(), row.mark(), row.measures(), row.sentences()))
            .toList();
    getChildren()
        .setAll(
            words(ProfilesFoundWords.title(), "h2"),
            new RecordTable(ProfilesFoundWords.heads(), look, SHARES, rows),
            words(ProfilesFoundWords.note(), "note", "second"));
  }
}
