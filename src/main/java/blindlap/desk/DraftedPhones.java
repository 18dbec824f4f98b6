package blindlap.desk;

import blindlap.desk.day.PhoneBook;
import blindlap.session.Notebook;
import blindlap.session.day.SessionId;
import java.util.Optional;

/** Phones that were let in, kept among the drafts of the notebook. */
final class DraftedPhones implements PhoneBook {
  private final Notebook notebook;

  DraftedPhones(Notebook notebook) {
    this.notebook = notebook;
  }

  private static String name(SessionId id) {
    return "phones/" + id.text();
  }

  @Override
  public Optional<String> kept(SessionId id) {
    return Optional.ofNullable(notebook.drafts().get(name(id)));
  }

  @Override
  public void keep(SessionId id, String text) {
    notebook.putDraft(name(id), text);
  }

  @Override
  public void forget(SessionId id) {
    notebook.deleteDraft(name(id));
  }
}
