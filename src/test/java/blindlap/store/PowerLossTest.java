package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.session.Fact;
import blindlap.session.NotebookException;
import blindlap.session.NotebookId;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteCommitListener;
import org.sqlite.SQLiteConnection;

/**
 * Power loss, played with the files a crash can leave. A commit goes: journal written, synced,
 * marked, synced, notebook written, notebook synced, journal emptied, that synced, "saved" said
 * (SQLite's rollback journal with synchronous EXTRA; sqlite.org/atomiccommit.html). Between two
 * syncs a disk may have written any part of what it was given, in any order. So at each of these
 * points the files are cut, mixed and reordered, and what opens must be a state that was
 * acknowledged, or the damage must be named. {@link SyncTest} shows that the syncs come in that
 * order, the journal's twice: first what it holds, then the mark that it counts.
 */
class PowerLossTest {
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", 8);
  private static final SessionId SESSION = Days.session(1);
  private static final int PAGE = 4096;

  private static final long MAGIC = 0xd9d505f920a163d7L;

  /**
   * Journal header: magic of 8 bytes, number of records, nonce, pages before, sector, page size.
   */
  private static final int RECORDS_AT = 8;

  private static final int NONCE_AT = 12;
  private static final int SECTOR_AT = 20;

  /** Page number, page, checksum. */
  private static final int RECORD = 4 + PAGE + 4;

  @TempDir private Path folder;

  /** Before the commit, after it, and the journal as it was just before its sync. */
  private byte[] before;

  private byte[] after;
  private byte[] journal;
  private List<StoredEntry> acknowledged;
  private List<StoredEntry> attempted;
  private int images;
  private int named;

  @BeforeEach
  void takeImages() throws Exception {
    Path file = folder.resolve("notebook.blindlap");
    try (SqliteNotebook notebook = Books.open(file)) {
      Books.put(notebook, SESSION, Days.committed(PLAN, SESSION, 1));
      for (int i = 0; i < 20; i++) {
        Books.put(notebook, SESSION, note(i));
      }
      acknowledged = notebook.entries(SESSION);
    }
    before = Files.readAllBytes(file);
    Connection connection = Connections.open(file, 300);
    try (SqliteNotebook notebook =
        SqliteNotebook.on(connection, file, new SeededBytes(77).next(16), Days.MORNING)) {
      // Called when everything is in the journal and nothing is synced yet.
      connection
          .unwrap(SQLiteConnection.class)
          .addCommitListener(
              new SQLiteCommitListener() {
                @Override
                public void onCommit() {
                  journal = read(folder.resolve("notebook.blindlap-journal"));
                }

                @Override
                public void onRollback() {}
              });
      attempted = Books.put(notebook, SESSION, Days.lap(PLAN, 1, new Random(1)));
    }
    after = Files.readAllBytes(file);
  }

  private static Fact note(int number) {
    return new Fact.NoteWritten(new LapId(1, 1), "wind from the west " + "~".repeat(100 * number));
  }

  private static byte[] read(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /**
   * The journal as it is synced. After the moment at which it was read, SQLite adds the old first
   * page, whose change counter every commit raises; the sync puts magic and number of records into
   * the header last of all (sqlite.org/fileformat2.html, section 3).
   */
  private byte[] syncedJournal() {
    ByteBuffer synced = ByteBuffer.allocate(journal.length + RECORD).put(journal);
    assertThat(synced.getLong(0)).as("not yet synced").isZero();
    int sector = synced.getInt(SECTOR_AT);
    int records = (journal.length - sector) / RECORD;
    Set<Integer> pages = new TreeSet<>();
    for (int i = 0; i < records; i++) {
      pages.add(synced.getInt(sector + i * RECORD));
    }
    synced.position(sector + records * RECORD);
    if (pages.add(1)) {
      synced.putInt(1).put(before, 0, PAGE).putInt(checksum(synced.getInt(NONCE_AT), before));
      records++;
    }
    synced.putLong(0, MAGIC).putInt(RECORDS_AT, records);
    for (int page = 1; page <= before.length / PAGE; page++) {
      int from = (page - 1) * PAGE;
      boolean same = Arrays.equals(before, from, from + PAGE, after, from, from + PAGE);
      assertThat(same || pages.contains(page))
          .as("page %d was not changed, or is in the journal", page)
          .isTrue();
    }
    return Arrays.copyOf(synced.array(), sector + records * RECORD);
  }

  private static int checksum(int nonce, byte[] page) {
    int sum = nonce;
    for (int i = PAGE - 200; i > 0; i -= 200) {
      sum += page[i] & 0xff;
    }
    return sum;
  }

  private enum State {
    BEFORE,
    AFTER,
    NAMED
  }

  /** Opens what a crash left and says which state it is; anything else fails. */
  private State open(byte[] notebookBytes, byte[] journalBytes) throws IOException {
    Path file = folder.resolve("image-" + images++ + ".blindlap");
    Files.write(file, notebookBytes);
    Files.write(file.resolveSibling(file.getFileName() + "-journal"), journalBytes);
    try (SqliteNotebook notebook = Books.open(file)) {
      if (!notebook.verify().sound()) {
        named++;
        return State.NAMED;
      }
      assertThat(notebook.id()).isEqualTo(NotebookId.of(new SeededBytes(77).next(16)));
      List<StoredEntry> found = notebook.entries(SESSION);
      if (found.equals(acknowledged)) {
        return State.BEFORE;
      }
      List<StoredEntry> both = new ArrayList<>(acknowledged);
      both.addAll(attempted);
      assertThat(found).isEqualTo(both);
      return State.AFTER;
    } catch (NotebookException refusal) {
      assertThat(refusal.kind())
          .as(refusal.getMessage())
          .isIn(NotebookException.Kind.DAMAGED, NotebookException.Kind.NOT_A_NOTEBOOK);
      named++;
      return State.NAMED;
    }
  }

  /** Any mixture of the old and the new pages; what is new at the end may be missing. */
  private byte[] mixture(Random random) {
    int pages = after.length / PAGE;
    int kept = before.length / PAGE + random.nextInt(pages - before.length / PAGE + 1);
    byte[] mixed = Arrays.copyOf(before, kept * PAGE);
    for (int page = 0; page < kept; page++) {
      if (random.nextBoolean()) {
        int length = random.nextInt(8) == 0 ? random.nextInt(PAGE) : PAGE;
        System.arraycopy(after, page * PAGE, mixed, page * PAGE, length);
      }
    }
    return mixed;
  }

  @Test
  void while_the_journal_is_being_written_the_notebook_is_as_it_was() throws IOException {
    Random random = new Random(1);
    for (int i = 0; i < 60; i++) {
      int length = i == 0 ? journal.length : random.nextInt(journal.length);
      assertThat(open(before, Arrays.copyOf(journal, length))).isEqualTo(State.BEFORE);
    }
  }

  @Test
  void while_the_journal_is_being_synced_any_part_of_it_leaves_the_notebook_as_it_was()
      throws IOException {
    Random random = new Random(2);
    byte[] unmarked = syncedJournal();
    ByteBuffer.wrap(unmarked).putLong(0, 0).putInt(RECORDS_AT, 0);
    for (int i = 0; i < 60; i++) {
      byte[] partly = unmarked.clone();
      int from = random.nextInt(partly.length);
      int to = from + random.nextInt(partly.length - from);
      Arrays.fill(partly, from, to, (byte) 0);
      assertThat(open(before, partly)).isEqualTo(State.BEFORE);
    }
    // Magic and number of records are written after a first sync of the rest, and synced on their
    // own.
    for (int bytes = 0; bytes <= NONCE_AT; bytes++) {
      byte[] partly = unmarked.clone();
      System.arraycopy(syncedJournal(), 0, partly, 0, bytes);
      assertThat(open(before, partly)).isEqualTo(State.BEFORE);
    }
  }

  @Test
  void while_the_notebook_is_being_written_any_mixture_of_pages_is_rolled_back()
      throws IOException {
    Random random = new Random(3);
    for (int i = 0; i < 150; i++) {
      assertThat(open(mixture(random), syncedJournal())).isEqualTo(State.BEFORE);
    }
  }

  @Test
  void until_the_emptying_of_the_journal_is_synced_it_is_one_state_or_the_other()
      throws IOException {
    assertThat(open(after, syncedJournal())).isEqualTo(State.BEFORE);
    Random random = new Random(4);
    byte[] synced = syncedJournal();
    for (int i = 0; i < 60; i++) {
      // The new length is on the disk, or the old one; a journal whose header is gone says nothing.
      int length = random.nextInt(ByteBuffer.wrap(journal).getInt(SECTOR_AT));
      assertThat(open(after, Arrays.copyOf(synced, length))).isEqualTo(State.AFTER);
    }
  }

  @Test
  void once_saved_was_said_the_entry_is_there() throws IOException {
    assertThat(open(after, new byte[0])).isEqualTo(State.AFTER);
  }

  @Test
  void a_disk_that_lies_about_its_syncs_is_found_out_or_gives_a_state_that_was_acknowledged()
      throws IOException {
    Random random = new Random(5);
    byte[] synced = syncedJournal();
    for (int i = 0; i < 200; i++) {
      byte[] lost =
          Arrays.copyOf(synced, random.nextInt(4) == 0 ? 0 : random.nextInt(synced.length));
      Arrays.fill(lost, random.nextInt(lost.length + 1), lost.length, (byte) 0);
      open(mixture(random), lost);
    }
    assertThat(named).as("of %d images", images).isPositive();
  }

  @Test
  void a_whole_day_cut_between_its_saves_opens_at_each_of_them() throws Exception {
    Path file = folder.resolve("day.blindlap");
    List<byte[]> saves = new ArrayList<>();
    List<Integer> counts = new ArrayList<>();
    Random random = new Random(6);
    try (SqliteNotebook notebook = Books.open(file)) {
      Books.put(notebook, SESSION, Days.committed(PLAN, SESSION, 1));
      for (int stint = 1; stint <= 8; stint++) {
        Books.put(notebook, SESSION, Days.lap(PLAN, stint, random));
        Books.put(notebook, SESSION, Days.guess(stint, random));
        saves.add(Files.readAllBytes(file));
        counts.add(notebook.entries(SESSION).size());
      }
    }
    for (int i = 0; i < saves.size(); i++) {
      Path image = folder.resolve("save-" + i + ".blindlap");
      Files.write(image, saves.get(i));
      try (SqliteNotebook notebook = Books.open(image)) {
        assertThat(notebook.entries(SESSION)).hasSize(counts.get(i));
      }
    }
  }
}
