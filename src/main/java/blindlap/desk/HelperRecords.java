package blindlap.desk;

import blindlap.exchange.HelperEntryText;
import blindlap.plan.Plan;
import blindlap.seal.HelperLock;
import blindlap.seal.HelperRecord;
import blindlap.seal.Sealing;
import blindlap.session.HelperEntry;
import blindlap.session.Notebook;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * The helper's records of one session, and the draft of the one in hand, opened with the lock that
 * the phrase gave. The draft is one row of one length, whatever is in it.
 */
final class HelperRecords {
  private static final String DRAFT = "helper/";

  private final SessionId id;
  private final Plan plan;
  private final HelperLock lock;
  private final Sealing sealing;
  private final Notebook notebook;

  /** Records that were opened before, by their IVs: no record ever changes. */
  private final Map<String, HelperEntry> opened = new ConcurrentHashMap<>();

  HelperRecords(SessionState state, HelperLock lock, Sealing sealing, Notebook notebook) {
    this.id = state.id();
    this.plan = state.plan();
    this.lock = lock;
    this.sealing = sealing;
    this.notebook = notebook;
  }

  /** The entries in order of their stints; what cannot be read is left out. */
  List<HelperEntry> of(SessionState state) {
    return state.helperRecords().values().stream()
        .map(this::opened)
        .flatMap(Optional::stream)
        .toList();
  }

  private Optional<HelperEntry> opened(HelperRecord record) {
    HelperEntry known = opened.get(record.iv());
    if (known != null) {
      return Optional.of(known);
    }
    Optional<HelperEntry> read = read(record);
    read.ifPresent(entry -> opened.put(record.iv(), entry));
    return read;
  }

  private Optional<HelperEntry> read(HelperRecord record) {
    return lock.decrypt(id.text(), record).flatMap(text -> HelperEntryText.read(text, plan));
  }

  /** True if a stint's entry was made of paper. */
  boolean keptOnPaper(SessionState state, int stint) {
    return of(state).stream().anyMatch(e -> e.stint() == stint && e.paper() != null);
  }

  /** The draft as it is stored; null if there is none. */
  @Nullable String stored() {
    return notebook.drafts().get(DRAFT + id.text());
  }

  /** What is unfinished, of whichever stint it is, with the steps that were ticked. */
  Optional<HelperDraft> unfinished() {
    String kept = stored();
    String[] parts = kept == null ? new String[0] : kept.split(" ", -1);
    return parts.length != 3 || !parts[0].matches("\\d{1,4}")
        ? Optional.empty()
        : lock.decrypt(id.text(), new HelperRecord(Integer.parseInt(parts[0]), parts[1], parts[2]))
            .flatMap(text -> HelperDraft.read(text, plan));
  }

  /** The entry that is unfinished. */
  Optional<HelperEntry> draft() {
    return unfinished().map(HelperDraft::entry);
  }

  /** Corrections that stand in the draft and in no record yet. */
  List<HelperEntry.Correction> pending(SessionState state) {
    List<HelperEntry.Correction> sealed =
        of(state).stream().flatMap(entry -> entry.corrections().stream()).toList();
    return draft().map(HelperEntry::corrections).stream()
        .flatMap(List::stream)
        .filter(each -> !sealed.contains(each))
        .toList();
  }

  /** An entry as the record that it becomes. */
  HelperRecord sealed(HelperEntry entry) {
    return sealing.record(lock, id.text(), entry.stint(), HelperEntryText.write(entry, plan));
  }

  /** What a look computed as the record that it becomes. */
  HelperRecord sealed(int number, String text) {
    return sealing.record(lock, id.text(), number, text);
  }

  /** Keeps what is unfinished in place of what was kept before; what is stored now. */
  String keep(HelperDraft draft) {
    int stint = draft.entry().stint();
    HelperRecord record = sealing.record(lock, id.text(), stint, draft.text(plan));
    String kept = stint + " " + record.iv() + " " + record.ciphertext();
    notebook.putDraft(DRAFT + id.text(), kept);
    return kept;
  }

  /** Takes the draft away. */
  void forget() {
    notebook.deleteDraft(DRAFT + id.text());
  }

  /** See {@link HelperDay#raised}. */
  Duration raised(SessionState latest, int stint) {
    for (HelperEntry entry : of(latest)) {
      HelperEntry.Timing timing = entry.timing();
      Duration given = timing == null ? null : timing.given();
      if (entry.stint() >= stint || timing == null || given == null) {
        continue;
      }
      if (!timing.declared() && !timing.overrun().isZero()) {
        Duration most = given.dividedBy(4);
        return timing.overrun().compareTo(most) > 0 ? most : timing.overrun();
      }
    }
    return Duration.ZERO;
  }

  @Override
  public String toString() {
    return "HelperRecords[" + id + "]";
  }
}
