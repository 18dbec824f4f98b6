package blindlap.screen.plan;

import blindlap.wording.PlanWords;

/**
 * One thing that is still to mend before the plan can be committed.
 *
 * @param path the field, as in a plan file, such as "setups[2].name"; empty for the whole plan
 * @param words the place alone if something is missing there, else the sentence with its place
 * @param missing true if nothing was typed there yet
 */
public record PlanMend(String path, String words, boolean missing) {
  /** The place alone, where the sentence stands beside it. */
  String inShort() {
    return path.isEmpty() ? words : PlanWords.placeOnly(path);
  }
}
