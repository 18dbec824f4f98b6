package blindlap.seal;

/** The helper entered more for one stint than a record of fixed size holds; nothing was written. */
public final class RecordTooLong extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final int length;

  RecordTooLong(int length, int room) {
    super(
        "the helper's entry of this stint is "
            + length
            + " bytes long and the room is "
            + room
            + "; nothing was saved of it: shorten the notes by "
            + (length - room)
            + " bytes");
    this.length = length;
  }

  /** How long the text is, in bytes of UTF-8. */
  public int length() {
    return length;
  }
}
