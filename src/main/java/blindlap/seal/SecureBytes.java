package blindlap.seal;

/**
 * Where secrets come from. The real one reads the system's secure source and is made where the
 * program is put together; tests give fixed bytes.
 */
@FunctionalInterface
public interface SecureBytes {

  /**
   * The next bytes of this source.
   *
   * @param count how many, at least 1
   * @return a fresh array of exactly that length
   */
  byte[] next(int count);

  /**
   * The next bytes, refused when the source gives another number of them.
   *
   * @throws IllegalStateException if the source breaks its promise
   */
  default byte[] exactly(int count) {
    byte[] bytes = next(count);
    if (bytes.length != count) {
      throw new IllegalStateException(
          "the secure source was asked for "
              + count
              + " bytes and gave "
              + bytes.length
              + "; nothing was sealed");
    }
    return bytes;
  }
}
