package blindlap.desk;

import blindlap.desk.day.PhoneBook;
import blindlap.desk.day.PhoneDays;
import blindlap.desk.day.RiderDays;
import blindlap.exchange.Protocols;
import blindlap.seal.MaskSealing;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.seal.StintViews;
import blindlap.session.Notebook;
import java.time.Clock;
import org.jspecify.annotations.Nullable;

/** Everything that window and command line can do with one notebook. */
public final class Desk implements AutoCloseable {
  private final Notebook notebook;
  private final Clock clock;

  /** Read when first asked for: most commands, and the first page, plan nothing. */
  private @Nullable Protocols protocols;

  private final Sessions sessions;
  private final Committing committing;
  private final Keys keys;
  private final Reviews reviews;
  private final Planning planning;
  private final HelperDays helperDays;
  private final Sheets sheets;
  private final PaperKeying keyingIn;
  private final RiderDays riderDays;
  private final RiderHistory history;
  private final SeriesBook series;
  private final SeriesPlans seriesPlans;
  private final QuestionBook questions;
  private final SealParameters parameters;
  private final MaskSealing masking;
  private final StintViews stintViews;

  /**
   * @param notebook the open notebook; closed with the desk
   * @param clock time and zone of the writer
   * @param sources secure sources of everything sealed
   * @param parameters strength of the key derivation
   * @param ids source of session ids
   */
  public Desk(
      Notebook notebook,
      Clock clock,
      SealingSources sources,
      SealParameters parameters,
      SecureBytes ids) {
    this.notebook = notebook;
    this.parameters = parameters;
    this.clock = clock;
    this.sessions = new Sessions(notebook, clock);
    Sealing sealing = new Sealing(sources, parameters);
    this.masking = new MaskSealing(sources, parameters);
    this.stintViews = new StintViews(sources, parameters);
    this.series = new SeriesBook(notebook, sessions);
    this.seriesPlans = new SeriesPlans(notebook, series);
    this.committing = new Committing(sessions, sealing, ids, seriesPlans);
    this.keys = new Keys(sessions, sealing, series, notebook);
    this.questions = new QuestionBook(notebook, series);
    this.reviews = new Reviews(sessions, questions, series, notebook.profiles());
    this.history = new RiderHistory(notebook, sessions, series);
    this.planning =
        new Planning(
            notebook, sessions, committing, questions, seriesPlans, history, this::protocols);
    this.helperDays = new HelperDays(keys, sessions, sealing, notebook, clock, ids, parameters);
    this.keyingIn = new PaperKeying(sessions, notebook);
    this.riderDays = new RecordedDays(sessions, keyingIn, clock);
    this.sheets = new Sheets();
  }

  /** Opens a desk on a notebook file; made in the composition root. */
  @FunctionalInterface
  public interface Opener {
    /**
     * @throws blindlap.session.NotebookException if the file cannot be used
     */
    Desk open(java.nio.file.Path notebook);
  }

  /** The notebook itself. */
  public Notebook notebook() {
    return notebook;
  }

  /** Changes whenever any window or program has written to the notebook. */
  public long dataVersion() {
    return notebook.dataVersion();
  }

  /** Time and zone of the writer. */
  public Clock clock() {
    return clock;
  }

  /** Protocols that plans may name. */
  public synchronized Protocols protocols() {
    Protocols read = protocols;
    if (read == null) {
      read = BundledProtocols.load();
      protocols = read;
    }
    return read;
  }

  /** Finding sessions and writing to them. */
  public Sessions sessions() {
    return sessions;
  }

  /** Planning: drafts and what days can show. */
  public Planning planning() {
    return planning;
  }

  /** Writing the helper's sheet. */
  public HelperSheets helperSheets() {
    return new HelperSheets(keys, sheets, sessions);
  }

  /** Committing plans. */
  public Committing committing() {
    return committing;
  }

  /** Opening keys. */
  public Keys keys() {
    return keys;
  }

  /** Keying in paper. */
  public PaperKeying keyingIn() {
    return keyingIn;
  }

  /** Sheets to print. */
  public Sheets sheets() {
    return sheets;
  }

  /** The helper's days, against the phrase. */
  public HelperDays helperDays() {
    return helperDays;
  }

  /** Days of riders who swap alone. */
  public AloneDays aloneDays() {
    return new AloneDays(sessions, notebook, clock);
  }

  /** Masked labels: sealed by a friend, guessed once, read. */
  public MaskKeeping masks() {
    return new MaskKeeping(sessions, masking);
  }

  /** Views of one stint for somebody who is not the helper. */
  public OneStints oneStints() {
    return new OneStints(sessions, stintViews, notebook, clock);
  }

  /** Bringing recordings in. */
  public Recordings recordings() {
    return new Recordings(sessions, notebook.trails(), notebook.contents());
  }

  /** The rider's days. */
  public RiderDays riderDays() {
    return riderDays;
  }

  /** What phones say on the day. */
  public PhoneDays phoneDays() {
    return new RecordedPhones(sessions, notebook, keyingIn, clock);
  }

  /** Phones that were let in. */
  public PhoneBook phoneBook() {
    return new DraftedPhones(notebook);
  }

  /** What is known of riders on trails. */
  public RiderHistory history() {
    return history;
  }

  /** Another day like an earlier one, or a series from it on. */
  public AnotherDay anotherDay() {
    return new AnotherDay(planning, sessions, history, series, seriesPlans);
  }

  /** Plans that follow from a steps day. */
  public AfterSteps afterSteps() {
    return new AfterSteps(reviews, anotherDay());
  }

  /** Old days brought in from files. */
  public PlainDays plainDays() {
    return new PlainDays(notebook, sessions, committing);
  }

  /** Trails, their lines and gates. */
  public TrailBook trails() {
    return new TrailBook(notebook, sessions, clock);
  }

  /** Who should look at what. */
  public ProfileBook profiles() {
    return new ProfileBook(notebook.profiles(), clock);
  }

  /** How often a question was asked. */
  public QuestionBook questions() {
    return questions;
  }

  /** Series: declared, under way, found. */
  public SeriesBook series() {
    return series;
  }

  /** Setups over several days. */
  public FieldBook field() {
    return new FieldBook(notebook, sessions, series);
  }

  /** Plans held against what their series declared. */
  public SeriesPlans seriesPlans() {
    return seriesPlans;
  }

  /** Reports of series. */
  public SeriesReports seriesReports() {
    return new SeriesReports(series);
  }

  /** Data packages of series. */
  public SeriesPackages seriesPackages() {
    return new SeriesPackages(series, reviews());
  }

  /** The list of sessions. */
  public SessionList sessionList() {
    return new SessionList(notebook, sessions, reviews, seriesPlans, clock);
  }

  /**
   * Sessions from and for other notebooks.
   *
   * @param keeping of this notebook
   */
  public SessionExchange exchange(SafeKeeping keeping) {
    return new SessionExchange(notebook, sessions, keeping, parameters);
  }

  /** Findings and reports. */
  public Reviews reviews() {
    return reviews;
  }

  @Override
  public void close() {
    notebook.close();
  }
}
