package blindlap.phone;

/** Where bytes come from that nobody can guess. */
@FunctionalInterface
public interface Secrets {
  /** So many bytes. */
  byte[] bytes(int count);
}
