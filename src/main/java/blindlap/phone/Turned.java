package blindlap.phone;

/** What came in is turned away; the answer is ready. */
final class Turned extends Exception {
  private static final long serialVersionUID = 1;

  private final transient Reply reply;
  private final Refusal why;

  Turned(Refusal why, Reply reply) {
    super(why.name(), null, false, false);
    this.why = why;
    this.reply = reply;
  }

  Refusal why() {
    return why;
  }

  Reply reply() {
    return reply;
  }

  /** No message of a phone. */
  static Turned form() {
    return new Turned(Refusal.FORM, Reply.why(400, "form"));
  }
}
