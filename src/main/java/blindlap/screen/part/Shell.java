package blindlap.screen.part;

import blindlap.session.day.SessionId;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
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
    TRAIL,
    REVIEW
  }

  private final ReadOnlyObjectWrapper<Page> page = new ReadOnlyObjectWrapper<>(Page.NOTEBOOK);
  private final ReadOnlyObjectWrapper<Optional<String>> draft =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<SessionId>> planOf =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<Beginning> beginning = Optional.empty();
  private Optional<String> copied = Optional.empty();
  private final Set<Page> helpers = EnumSet.of(Page.SWAP);
  private final ReadOnlyBooleanWrapper helper = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Optional<SessionId>> session =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  /** How a page asks before it is left, and lets go of what would be lost. */
  private record Guard(Supplier<Optional<Question>> question, Runnable drop) {}

  private final Map<Page, Guard> guards = new EnumMap<>(Page.class);
  private final ReadOnlyObjectWrapper<Optional<Question>> question =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Runnable afterwards = () -> {};
  private Supplier<Optional<Question>> beforeClosing = Optional::empty;

  /**
   * What is asked before a page is left, or the window closed.
   *
   * @param words what would be lost
   * @param leave what leaving is called; empty while it is not possible
   */
  public record Question(String words, String leave) {
    /** The question, of which there is one. */
    public static Optional<Question> of(String words, String leave) {
      return Optional.of(new Question(words, leave));
    }
  }

  /**
   * From now on a page is asked before it is left.
   *
   * @param question empty while nothing would be lost
   * @param drop lets go of it
   */
  public void guard(Page of, Supplier<Optional<Question>> question, Runnable drop) {
    guards.put(of, new Guard(question, drop));
  }

  /** What is being asked; empty mostly. */
  public ReadOnlyObjectProperty<Optional<Question>> questionProperty() {
    return question.getReadOnlyProperty();
  }

  /** The answer is to stay. */
  public void stay() {
    question.set(Optional.empty());
  }

  /** The answer is to leave; asked again if meanwhile something else would be lost. */
  public void leave() {
    Optional<Question> answered = question.get();
    Optional<Question> lost = lost();
    if (lost.isPresent() && (!lost.equals(answered) || lost.get().leave().isEmpty())) {
      question.set(lost);
      return;
    }
    question.set(Optional.empty());
    Guard guard = guards.get(page.get());
    if (guard != null && lost.isPresent()) {
      guard.drop().run();
    }
    afterwards.run();
  }

  /**
   * The window is to be closed.
   *
   * @param close run at once, or once it is answered that nothing of it matters
   */
  public void close(Runnable close) {
    leaving(
        () -> {
          afterwards = close;
          question.set(beforeClosing.get());
          if (question.get().isEmpty()) {
            close.run();
          }
        });
  }

  /**
   * From now on it is asked before the window is closed, whichever page is in view; once each time.
   *
   * @param asks empty while nothing is to be said
   */
  public void beforeClosing(Supplier<Optional<Question>> asks) {
    beforeClosing = asks;
  }

  private Optional<Question> lost() {
    Guard guard = guards.get(page.get());
    return guard == null ? Optional.empty() : guard.question().get();
  }

  private void leaving(Runnable then) {
    Optional<Question> lost = lost();
    afterwards = then;
    question.set(lost);
    if (lost.isEmpty()) {
      then.run();
    }
  }

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

  /** Goes to the Plan page with a draft that is a copy of a committed plan. */
  public void openCopy(String name) {
    copied = Optional.of(name);
    openDraft(name);
  }

  /** True, once, for the draft that was last opened as a copy. */
  public boolean takeCopied(String name) {
    boolean is = copied.equals(Optional.of(name));
    copied = is ? Optional.empty() : copied;
    return is;
  }

  /** The session whose committed plan was last asked for; empty before. */
  public ReadOnlyObjectProperty<Optional<SessionId>> planOfProperty() {
    return planOf.getReadOnlyProperty();
  }

  /** Goes to the Notebook page, to read the committed plan of a session. */
  public void readPlan(SessionId of) {
    open(Page.NOTEBOOK, of);
    planOf.set(Optional.empty());
    planOf.set(Optional.of(of));
  }

  /** What a new plan begins as. */
  public enum Beginning {
    COMPARISON,
    NOISE_RUN,
    TELLING_RUN
  }

  /** Goes to the Plan page with a new plan. */
  public void beginPlan(Beginning as) {
    beginning = Optional.of(as);
    go(Page.PLAN);
  }

  /** What the Plan page was asked to begin, once; empty if nothing was. */
  public Optional<Beginning> takeBeginning() {
    Optional<Beginning> asked = beginning;
    beginning = Optional.empty();
    return asked;
  }

  /** Goes to a page, staying with the session; asks first if something would be lost. */
  public void go(Page to) {
    if (to == page.get()) {
      turn(to);
    } else {
      leaving(() -> turn(to));
    }
  }

  private void turn(Page to) {
    // Told first, so that whoever is told of the page knows whose it is.
    helper.set(helpers.contains(to));
    page.set(to);
  }

  /** Goes to a page of a session; asks first if something would be lost. */
  public void open(Page to, SessionId about) {
    Runnable open =
        () -> {
          session.set(Optional.of(about));
          turn(to);
        };
    if (to == page.get()) {
      open.run();
    } else {
      leaving(open);
    }
  }
}
