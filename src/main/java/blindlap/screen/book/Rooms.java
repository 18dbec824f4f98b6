package blindlap.screen.book;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** What of the notebook is in view: its own page, or one of the rooms behind it. */
public final class Rooms {
  /** The page and its rooms, in the order of their doors. */
  public enum Room {
    NOTEBOOK,
    NOISE,
    SERIES,
    FIELD,
    PROFILES,
    OLD_DAY,
    /** Entered from a session, not by a door of its own. */
    COMMITTED_PLAN;

    /** True for a room with a door on the page. */
    boolean hasDoor() {
      return this != NOTEBOOK && this != COMMITTED_PLAN;
    }
  }

  private final ReadOnlyObjectWrapper<Room> room = new ReadOnlyObjectWrapper<>(Room.NOTEBOOK);

  /** The room in view. */
  public ReadOnlyObjectProperty<Room> roomProperty() {
    return room.getReadOnlyProperty();
  }

  /** Goes to a room. */
  public void go(Room to) {
    room.set(to);
  }
}
