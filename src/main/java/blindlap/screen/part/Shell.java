package blindlap.screen.part;

import blindlap.session.day.SessionId;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
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
  private final ReadOnlyObjectWrapper<Optional<String>> draft =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Set<Page> helpers = EnumSet.of(Page.SWAP);
  private final ReadOnlyBooleanWrapper helper = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Optional<SessionId>> session =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  /** The page in view. */
  public ReadOnlyObjectProperty<Page> pageProperty() {
    return page.getReadOnlyProperty();
  }

  /** True while the page in view is the helper's: it covers the whole window, which says so. */
  public ReadOnlyBooleanProperty helperProperty() {
    return helper.getReadOnlyProperty();
  }

  /** Hands a page to the helper, or takes it back. */
  public void lend(Page lent, boolean toHelper) {
    if (toHelper) {
      helpers.add(lent);
    } else {
      helpers.remove(lent);
    }
    helper.set(helpers.contains(page.get()));
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

  /** The draft that the Plan page was last asked to show; empty before. */
  public ReadOnlyObjectProperty<Optional<String>> draftProperty() {
    return draft.getReadOnlyProperty();
  }

  /** Goes to the Plan page with a draft that was kept. */
  public void openDraft(String name) {
    draft.set(Optional.of(name));
    go(Page.PLAN);
  }

  /** Goes to a page, staying with the session. */
  public void go(Page to) {
    // Told first, so that whoever is told of the page knows whose it is.
    helper.set(helpers.contains(to));
    page.set(to);
  }

  /** Goes to a page of a session. */
  public void open(Page to, SessionId about) {
    session.set(Optional.of(about));
    go(to);
  }
}
