package blindlap.session;

import java.util.stream.Stream;

/** The invented sessions of {@link RandomDay}, for tests of what leaves a notebook. */
public final class RandomSessions {
  private RandomSessions() {}

  /** Each as its entries tell it, whoever of its notebooks wrote them. */
  public static Stream<SessionState> all() {
    return RandomDay.all().map(day -> SessionState.of(day.entries()));
  }
}
