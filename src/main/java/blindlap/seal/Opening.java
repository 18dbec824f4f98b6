package blindlap.seal;

/** What became of an attempt to open a sealed key with a phrase. */
public sealed interface Opening {

  /** The key is open. */
  record Opened(OpenKey key, HelperLock lock) implements Opening {}

  /** The words are of the list, but not the words of this session. */
  record WrongPhrase() implements Opening {}

  /** The phrase is right, but the sealed key was changed after it was sealed. */
  record Damaged() implements Opening {}
}
