package blindlap.phone;

import blindlap.desk.Desk;
import blindlap.desk.day.DayResult;
import blindlap.desk.day.PhoneActs;
import blindlap.desk.day.PhoneDays;
import blindlap.session.day.ByPhone;
import blindlap.session.day.SessionId;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** The rider's days of a desk, with what phones said counted beside them in memory. */
final class DeskPhoneDays implements PhoneDays {
  private final Desk desk;
  private final SessionId only;
  private final PhoneActs acts;
  private final Map<String, Long> last = new HashMap<>();
  private final Set<String> entered = new HashSet<>();

  DeskPhoneDays(Desk desk, SessionId only) {
    this.desk = desk;
    this.only = only;
    acts =
        (PhoneActs)
            Proxy.newProxyInstance(
                PhoneActs.class.getClassLoader(),
                new Class<?>[] {PhoneActs.class},
                (proxy, method, given) -> {
                  try {
                    return method.getName().equals("plateRead")
                        ? desk.riderDays().handedOver((SessionId) given[0], (Integer) given[1])
                        : method.invoke(desk.riderDays(), given);
                  } catch (InvocationTargetException e) {
                    throw e.getCause();
                  }
                });
  }

  private Seen seen(SessionId id) {
    return new Seen(desk.riderDays().day(id).orElseThrow(), entries(id), last);
  }

  /** There is one notebook, so one chain. */
  private long entries(SessionId id) {
    return desk.sessions().state(id).orElseThrow().heads().get(0).number();
  }

  @Override
  public synchronized Optional<Seen> day(SessionId id) {
    return Optional.of(seen(id));
  }

  @Override
  public synchronized long version() {
    return entries(only);
  }

  @Override
  public synchronized Taken act(SessionId id, ByPhone by, Function<PhoneActs, DayResult> act) {
    if (entered.contains(by.client() + by.number())) {
      return new Taken.Already(seen(id));
    }
    DayResult result = act.apply(acts);
    if (result instanceof DayResult.Refused refused) {
      return new Taken.Refused(refused.problems());
    }
    entered.add(by.client() + by.number());
    last.merge(by.client(), by.number(), Math::max);
    return new Taken.Done(seen(id));
  }
}
