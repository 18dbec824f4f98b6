package blindlap.screen.ride;

import blindlap.desk.day.RiderDays;
import blindlap.ride.RideDay;
import blindlap.ride.RideSheet;
import blindlap.screen.part.Background;
import blindlap.screen.part.DayEventsModel;
import blindlap.screen.part.Deaf;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.VoidEvent;
import java.time.Clock;
import java.util.Collections;
import java.util.SortedMap;
import java.util.function.LongSupplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** The rider's day as properties, for the Ride page. */
public final class RideModel extends RideDay {
  private final ReadOnlyObjectWrapper<RideSheet> sheet =
      new ReadOnlyObjectWrapper<>(RideSheet.NONE);
  private final ReadOnlyStringWrapper saved = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper open = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper lastAnswer = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper question = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper saving = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<SortedMap<LapId, VoidEvent>> voids =
      new ReadOnlyObjectWrapper<>(Collections.emptySortedMap());
  private final LongSupplier monotonic;
  private final DayEventsModel events;
  private final KeyInModel keyIn;

  /**
   * @param days the rider's use cases
   * @param version grows whenever any window writes to the notebook
   * @param clock wall clock of watches and of "saved"
   * @param monotonic nanoseconds that only ever grow
   */
  public RideModel(
      RiderDays days,
      LongSupplier version,
      Background background,
      Clock clock,
      LongSupplier monotonic) {
    super(days, version, background::run, clock, monotonic);
    this.monotonic = monotonic;
    this.keyIn = new KeyInModel(days.keyingIn(), days, background);
    this.events = new DayEventsModel(days, background, this::stintSpokenOf, this::show);
  }

  /** What is asked now. */
  public ReadOnlyObjectProperty<RideSheet> sheetProperty() {
    return sheet.getReadOnlyProperty();
  }

  /** "Saved 11:44:07", once the disk has it. */
  public ReadOnlyStringProperty savedProperty() {
    return saved.getReadOnlyProperty();
  }

  /** What is still open on the sheet, in words. */
  public ReadOnlyStringProperty openProperty() {
    return open.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /**
   * True while an answer is on its way to the disk: what is shown is then ahead of what is on
   * record.
   */
  public ReadOnlyBooleanProperty savingProperty() {
    return saving.getReadOnlyProperty();
  }

  /** Asks whether the rider is done though something is open; else empty. */
  public ReadOnlyStringProperty questionProperty() {
    return question.getReadOnlyProperty();
  }

  /** Ears for what the page has just shown. */
  public Deaf deaf() {
    return new Deaf(monotonic);
  }

  /** Nanoseconds that only ever grow. */
  public LongSupplier monotonic() {
    return monotonic;
  }

  /** The name of the last answer that can be taken back; empty if none can. */
  public ReadOnlyStringProperty lastAnswerProperty() {
    return lastAnswer.getReadOnlyProperty();
  }

  /** Laps that are void by which event, as far as a void can still be taken back. */
  public ReadOnlyObjectProperty<SortedMap<LapId, VoidEvent>> voidsProperty() {
    return voids.getReadOnlyProperty();
  }

  /** Keying in from paper. */
  public KeyInModel keyIn() {
    return keyIn;
  }

  /** What may be said of the day at any time. */
  public DayEventsModel events() {
    return events;
  }

  @Override
  protected void shows(RideSheet now) {
    sheet.set(now);
  }

  @Override
  protected void showsOpen(String words) {
    open.set(words);
  }

  @Override
  protected void showsSaved(String words) {
    saved.set(words);
  }

  @Override
  protected void showsTrouble(String words) {
    trouble.set(words);
  }

  @Override
  protected void says(String words) {
    events.say(words);
  }

  @Override
  protected void showsSaving(boolean now) {
    saving.set(now);
  }

  @Override
  protected void offersToTakeBack(String what) {
    lastAnswer.set(what);
  }

  @Override
  protected void showsVoids(SortedMap<LapId, VoidEvent> standing) {
    voids.set(standing);
  }

  @Override
  protected void asksWhetherDone(String words) {
    question.set(words);
  }

  @Override
  protected void opened(SessionId session) {
    events.open(session);
  }
}
