package blindlap.screen.phones;

import blindlap.desk.day.RiderDays;
import blindlap.fault.Problem;
import blindlap.phone.Awaited;
import blindlap.phone.PhoneAddress;
import blindlap.phone.PhoneMaker;
import blindlap.phone.Phones;
import blindlap.phone.Switching;
import blindlap.plot.Qr;
import blindlap.plot.surface.Spoken;
import blindlap.screen.part.Background;
import blindlap.session.day.Day;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.SessionId;
import blindlap.wording.day.PhonesWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.net.InetSocketAddress;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.jspecify.annotations.Nullable;

/**
 * The phones of the session in hand: off until they are switched on, ended with its day and with
 * the window. Those of another session stay as they are while this one is in hand.
 */
public final class PhonesModel implements AutoCloseable {
  private final PhoneMaker maker;
  private final RiderDays days;
  private final LongSupplier version;
  private final Background background;
  private final Clock clock;
  private final Map<SessionId, Phones> all = new ConcurrentHashMap<>();
  private final ReadOnlyObjectWrapper<PhonesShown> shown =
      new ReadOnlyObjectWrapper<>(PhonesShown.NONE);
  private final ReadOnlyStringWrapper state =
      new ReadOnlyStringWrapper(PhonesWords.state(false, 0, 0));
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<List<PhoneAddress>> addresses =
      new ReadOnlyObjectWrapper<>(List.of());
  private final SimpleObjectProperty<@Nullable PhoneAddress> address = new SimpleObjectProperty<>();
  private final SimpleStringProperty port =
      new SimpleStringProperty(String.valueOf(Switching.PORT));
  private final Set<SessionId> served = ConcurrentHashMap.newKeySet();
  private final Map<SessionId, Boolean> open = new ConcurrentHashMap<>();
  private @Nullable SessionId id;

  /** Read and written where the work is done, one piece at a time. */
  private volatile long seen = Long.MIN_VALUE;

  private volatile boolean closed;

  /**
   * @param days tells whether the day is still open
   * @param version grows whenever anybody writes to the notebook
   */
  public PhonesModel(
      PhoneMaker maker, RiderDays days, LongSupplier version, Background background, Clock clock) {
    this.maker = maker;
    this.days = days;
    this.version = version;
    this.background = background;
    this.clock = clock;
  }

  /** What the page shows. */
  ReadOnlyObjectProperty<PhonesShown> shownProperty() {
    return shown.getReadOnlyProperty();
  }

  /** One line for the other pages of the day, such as "Phones: on, 2 connected". */
  public ReadOnlyStringProperty stateProperty() {
    return state.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Addresses of this machine, the likeliest first. */
  ReadOnlyObjectProperty<List<PhoneAddress>> addressesProperty() {
    return addresses.getReadOnlyProperty();
  }

  /** The one that is chosen. */
  SimpleObjectProperty<@Nullable PhoneAddress> addressProperty() {
    return address;
  }

  /** The port, as typed. */
  StringProperty portProperty() {
    return port;
  }

  /** Opens a session. */
  public void open(SessionId session) {
    if (!session.equals(id)) {
      trouble.set("");
    }
    id = session;
    look();
  }

  /** The page comes into view: networks may have come or gone. */
  void lookForAddresses() {
    run(maker::addresses, this::offer);
  }

  private void offer(List<PhoneAddress> found) {
    PhoneAddress chosen = address.get();
    addresses.set(List.copyOf(found));
    if (chosen == null || !found.contains(chosen)) {
      address.set(found.isEmpty() ? null : found.get(0));
    }
  }

  /** Switches on at the chosen address and port; refused in a sentence. */
  void on() {
    SessionId session = id;
    PhoneAddress at = address.get();
    if (session == null || at == null) {
      refuse(Switching.choose(addresses.get(), null).problem());
      return;
    }
    String typed = port.get();
    run(
        () -> {
          served.add(session);
          return Switching.on(phones(session), at, typed);
        },
        this::refuse);
    look();
  }

  private void refuse(Optional<Problem> problem) {
    trouble.set(problem.map(Problems::sentence).orElse(""));
  }

  /** Switches off; phones keep what they have. */
  void off() {
    act(Phones::off);
  }

  /** Lets a phone in that waits. */
  void letIn(String phone) {
    act(phones -> phones.letIn(phone));
  }

  /** Throws a phone out. */
  void throwOut(String phone) {
    act(phones -> phones.throwOut(phone));
  }

  private void act(Consumer<Phones> act) {
    SessionId session = id;
    if (session != null) {
      run(
          () -> {
            act.accept(phones(session));
            return true;
          },
          done -> trouble.set(""));
      look();
    }
  }

  private Phones phones(SessionId session) {
    return all.computeIfAbsent(session, maker::phones);
  }

  /** Once a second: who came, who was heard, whether the day is over. */
  public void tick() {
    if (!closed) {
      look();
    }
  }

  /** Once a second while no page of the day is in view. */
  public void tickUnseen() {
    if (!served.isEmpty()) {
      tick();
    }
  }

  private void look() {
    SessionId session = id;
    if (session != null) {
      run(() -> looked(session), now -> show(session, now));
    }
  }

  private PhonesShown looked(SessionId session) {
    long now = version.getAsLong();
    if (now != seen) {
      seen = now;
      open.clear();
      List.copyOf(all.keySet()).forEach(this::again);
    }
    if (closed || !dayOpen(session)) {
      return over();
    }
    Phones phones = phones(session);
    Optional<InetSocketAddress> at = phones.at();
    List<PhonesShown.Code> codes = new ArrayList<>();
    if (at.isPresent()) {
      for (PhoneRole role : PhoneRole.values()) {
        phones.link(role).ifPresent(link -> codes.add(code(role, link)));
      }
    }
    Instant when = clock.instant();
    List<Phones.Known> known = phones.known();
    return new PhonesShown(
        at.isPresent() ? PhonesShown.Stage.ON : PhonesShown.Stage.OFF,
        at.map(each -> each.getAddress().getHostAddress() + ":" + each.getPort()).orElse(""),
        codes,
        known.stream().map(each -> phone(each, when)).toList(),
        known.stream().filter(each -> Awaited.connected(each, when)).count(),
        known.stream().filter(each -> !each.in()).count(),
        at.filter(each -> !ours(each)).isPresent());
  }

  private static PhonesShown over() {
    return new PhonesShown(PhonesShown.Stage.OVER, "", List.of(), List.of(), 0, 0, false);
  }

  /** A hotspot that was switched on again may have given another address. */
  private boolean ours(InetSocketAddress at) {
    return maker.addresses().stream().anyMatch(each -> each.address().equals(at.getAddress()));
  }

  /** Read once for each time that somebody wrote to the notebook. */
  private boolean dayOpen(SessionId session) {
    return open.computeIfAbsent(
        session, id -> days.day(id).filter(day -> day.step().day()).isPresent());
  }

  /**
   * Where phones were never on in this window, another program may have let some in. Those that are
   * on end by themselves with their day, once they were told of it.
   */
  private void again(SessionId session) {
    if (!served.contains(session)) {
      Optional.ofNullable(all.remove(session)).ifPresent(Phones::close);
    }
  }

  private static PhonesShown.Code code(PhoneRole role, URI link) {
    String words = PhonesWords.say("page.code.spoken", PhonesWords.role(role));
    return new PhonesShown.Code(
        role, link.toString(), Qr.of(link.toString(), new Spoken(words, "")));
  }

  private static PhonesShown.Phone phone(Phones.Known phone, Instant now) {
    return new PhonesShown.Phone(
        phone.id(),
        PhonesWords.phone(phone.role(), phone.id()),
        phone.in(),
        PhonesWords.stands(
            phone.in(), Awaited.connected(phone, now), Awaited.heard(phone, now), phone.unsent()));
  }

  private void show(SessionId session, PhonesShown now) {
    if (session.equals(id)) {
      shown.set(now);
      state.set(PhonesWords.state(now.on(), now.connected(), now.waiting()));
    }
  }

  /**
   * What is waited for before the day of the session in hand is closed, in sentences; empty if
   * nothing is, or no phone ever came.
   */
  public String awaited() {
    SessionId session = id;
    Phones phones = session == null ? null : all.get(session);
    if (session == null || phones == null || phones.known().isEmpty()) {
      return "";
    }
    Optional<Day> day = days.day(session);
    return day.map(now -> Awaited.sentences(now, phones.known(), clock.instant()))
        .map(waits -> String.join(" ", waits))
        .orElse("");
  }

  /** How many phones would be left alone if the window closed now, over all sessions. */
  public long connected() {
    Instant now = clock.instant();
    return all.values().stream()
        .filter(each -> each.at().isPresent() && !Boolean.FALSE.equals(open.get(each.session())))
        .flatMap(each -> each.known().stream())
        .filter(each -> Awaited.connected(each, now))
        .count();
  }

  /** The window closes: all phones are off. */
  @Override
  public void close() {
    closed = true;
    all.values().forEach(Phones::close);
    all.clear();
  }

  private <T> void run(Callable<T> work, Consumer<T> done) {
    background.run(work, done, thrown -> trouble.set(Trouble.sentence(thrown)));
  }
}
