package blindlap.wording.day;

/**
 * A setting to dial anew, as a page shows it.
 *
 * @param name its name
 * @param aim value aimed at, with unit and tolerance
 * @param measured as typed; empty if not yet
 * @param outside by how much and which way it lies outside; empty if it does not
 * @param reason why it is ridden all the same; may be empty
 */
public record SettingRow(String name, String aim, String measured, String outside, String reason) {
  /** Says its name only. */
  @Override
  public String toString() {
    return "SettingRow[" + name + "]";
  }
}
