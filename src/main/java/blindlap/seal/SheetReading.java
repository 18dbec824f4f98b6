package blindlap.seal;

/** What became of a key sheet that was typed in or scanned. */
public sealed interface SheetReading {

  /** The sheet is complete and gives the fingerprint of this plan. */
  record Opened(OpenKey key) implements SheetReading {}

  /**
   * A row that cannot be read or does not fit its check.
   *
   * @param row the row's name as printed, or {@code "sheet"} for the whole
   * @param slip what is wrong there
   * @param detail what the sentence needs besides the row; may be empty
   */
  record Mistyped(String row, SheetSlip slip, String detail) implements SheetReading {}

  /**
   * The sheet is complete but does not give the fingerprint: another session's sheet, or another
   * plan.
   *
   * @param computed the fingerprint that this plan and this sheet give
   */
  record OfAnother(Fingerprint computed) implements SheetReading {}
}
