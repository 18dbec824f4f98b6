package blindlap.fault;

import org.jspecify.annotations.Nullable;

/** An exception that carries what people are told of it as values, for {@code wording} to say. */
public interface Told {
  /** Why, with its details. */
  Problem problem();

  /**
   * What lies behind it; its sentence is the last detail of the problem's. Null if nothing does.
   */
  @Nullable Problem behind();
}
