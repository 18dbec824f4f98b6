package blindlap.screen.model;

import blindlap.session.SessionId;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** What the window shows: which page, and which session the pages are about. */
public final class Shell {
  /** The pages, in the order of their names at the side. */
  public enum Page {
    NOTEBOOK,
    PLAN,
    SWAP,
    RIDE,
    REVIEW
  }

  private final ReadOnlyObjectWrapper<Page> page = new ReadOnlyObjectWrapper<>(Page.NOTEBOOK);
  private final ReadOnlyObjectWrapper<Optional<SessionId>> session =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  /** The page in view. */
  public ReadOnlyObjectProperty<Page> pageProperty() {
    return page.getReadOnlyProperty();
  }

  /** The session the pages are about; empty before one was chosen. */
  public ReadOnlyObjectProperty<Optional<SessionId>> sessionProperty() {
    return session.getReadOnlyProperty();
  }

  /** Opens the session in hand whenever a page comes into view. */
  public void whenShown(Page of, Consumer<SessionId> open) {
    Runnable now =
        () -> {
          if (page.get() == of) {
            session.get().ifPresent(open);
          }
        };
    page.addListener((o, before, after) -> now.run());
    session.addListener((o, before, after) -> now.run());
    now.run();
  }

  /** Goes to a page, staying with the session. */
  public void go(Page to) {
    page.set(to);
  }

  /** Goes to a page of a session. */
  public void open(Page to, SessionId about) {
    session.set(Optional.of(about));
    page.set(to);
  }
}
