package blindlap.desk;

import blindlap.session.Notebook;
import blindlap.session.TrailTitle;

/** What stands beside the record of a notebook and belongs to its sessions: trails, positions. */
final class Beside {
  private Beside() {}

  /**
   * Brings what another notebook has into this one. A text that is here already is left alone; a
   * version that is new gets the next number here, and keeps the time at which it was made.
   *
   * @return how many versions of trails were new
   */
  static int bring(Notebook from, Notebook to) {
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
    return to.trails().titles().size() - before;
  }
}
