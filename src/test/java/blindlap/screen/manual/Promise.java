package blindlap.screen.manual;

/**
 * What a picture shows of the page it is taken of.
 *
 * @param from the heading it begins with; empty for the top of the window
 * @param to the heading before which it ends; empty for the end of the page
 */
record Promise(String from, String to) {
  /** The window with all of its page, however long that is. */
  static Promise whole() {
    return new Promise("", "");
  }

  /** From one heading up to another. */
  static Promise part(String from, String to) {
    return new Promise(from, to);
  }

  /** What stands in the table beside the picture. */
  String words() {
    if (from.isEmpty() && to.isEmpty()) {
      return "the whole page";
    }
    String begins = from.isEmpty() ? "from the top" : "from \"" + from + "\"";
    return to.isEmpty() ? begins + " to the end" : begins + " up to \"" + to + "\"";
  }
}
