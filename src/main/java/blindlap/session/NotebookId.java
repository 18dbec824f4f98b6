package blindlap.session;

import blindlap.session.day.SessionId;

/** Name of one notebook file, given when it is made: a random UUID in lower case. */
public record NotebookId(String text) implements Comparable<NotebookId> {
  public NotebookId {
    new SessionId(text);
  }

  /** An id of 16 random bytes. */
  public static NotebookId of(byte[] random) {
    return new NotebookId(SessionId.uuid(random));
  }

  /** Its beginning, by which people tell notebooks apart. */
  public String brief() {
    return text.substring(0, 8);
  }

  @Override
  public int compareTo(NotebookId other) {
    return text.compareTo(other.text);
  }

  @Override
  public String toString() {
    return text;
  }
}
