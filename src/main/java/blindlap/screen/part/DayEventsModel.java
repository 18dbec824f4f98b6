package blindlap.screen.part;

import blindlap.desk.day.RiderDays;
import blindlap.ride.DayEvents;
import blindlap.session.day.Day;
import java.util.function.Consumer;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** What may be said of the day at any time, as properties, for the pages of rider and helper. */
public final class DayEventsModel extends DayEvents {
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private Supplier<String> awaited = () -> "";

  /**
   * Events whose words everyone may read.
   *
   * @param stint the stint the page speaks of, 0 for the warm-up; negative for the one that is
   *     ridden now
   * @param then takes the day as it stands afterwards
   */
  public DayEventsModel(
      RiderDays days, Background background, IntSupplier stint, Consumer<Day> then) {
    this(days, background, stint, then, (event, at, words) -> Sealed.NOT);
  }

  /**
   * @param sealing takes the words on an event where they can be sealed
   */
  public DayEventsModel(
      RiderDays days,
      Background background,
      IntSupplier stint,
      Consumer<Day> then,
      Sealing sealing) {
    super(days, background::run, stint, then, sealing);
  }

  /**
   * From now on it is also said what is waited for before the day is closed.
   *
   * @param sentences empty if nothing is
   */
  public void awaits(Supplier<String> sentences) {
    awaited = sentences;
  }

  /** What is not ridden yet, and what is waited for. */
  @Override
  public String missing() {
    return (super.missing() + " " + awaited.get()).strip();
  }

  /** What the latest event does to the result; else empty. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** One sentence if an event was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  @Override
  public void say(String words) {
    said.set(words);
  }

  @Override
  public void refuse(String why) {
    trouble.set(why);
  }
}
