package blindlap.compute;

import blindlap.plan.PlanJson;
import blindlap.review.Finding;
import blindlap.review.ProfileOnDay;
import blindlap.wording.ProfilesFoundWords;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;

/**
 * Profiles beside a finding as JSON. They belong to the notebook of whoever reads, so that a data
 * package holds none.
 */
final class ProfilesJson {
  private ProfilesJson() {}

  /** Nothing where no profile stands beside the finding. */
  static void put(ObjectNode root, Finding finding, List<ProfileOnDay> profiles) {
    Optional<ProfilesFoundWords> words = ProfilesFoundWords.of(finding, profiles);
    if (words.isEmpty()) {
      return;
    }
    ArrayNode all = root.putArray("profiles");
    List<ProfilesFoundWords.Row> rows = words.get().rows();
    for (int i = 0; i < rows.size(); i++) {
      ProfileOnDay on = profiles.get(i);
      ObjectNode node = all.addObject();
      node.put("name", rows.get(i).name());
      node.put("version", on.number());
      node.put("made_at", on.at().toString());
      node.put("declared_before", on.stands().declared());
      node.put("stands", PlanJson.word(on.stands()));
      measures(node, rows.get(i));
    }
  }

  /** What was found of each measure of a profile, into its node. */
  static void measures(ObjectNode node, ProfilesFoundWords.Row row) {
    ArrayNode measures = node.putArray("measures");
    for (ProfilesFoundWords.Found found : row.found()) {
      ArrayNode sentences = measures.addObject().put("measure", found.measure()).putArray("found");
      found.sentences().forEach(sentences::add);
    }
  }
}
