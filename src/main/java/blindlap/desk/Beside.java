package blindlap.desk;

import blindlap.session.Notebook;
import blindlap.session.TrailTitle;

/**
 * What stands beside the record of a notebook and belongs to its sessions: trails, profiles,
 * positions.
 */
final class Beside {
  private Beside() {}

  /**
   * What was new.
   *
   * @param trails versions of trails
   * @param profiles versions of profiles
   */
  record Came(int trails, int profiles) {}

  /**
   * Brings what another notebook has into this one. A text that is here already is left alone; a
   * version that is new gets the next number here, and keeps the time at which it was made.
   * Versions of profiles keep their times too, and are numbered by them.
   *
   * @return what was new
   */
  static Came bring(Notebook from, Notebook to) {
    int before = to.trails().titles().size();
    for (TrailTitle title : from.trails().titles()) {
      if (to.trails().find(title.sha256()).isEmpty()) {
        from.trails()
            .find(title.sha256())
            .ifPresent(kept -> to.trails().keep(kept.trail(), title.at()));
      }
    }
    for (String name : from.contents().names()) {
      if (to.contents().find(name).isEmpty()) {
        from.contents().find(name).ifPresent(to.contents()::put);
      }
    }
    int profiles = to.profiles().bring(from.profiles().all());
    return new Came(to.trails().titles().size() - before, profiles);
  }
}
