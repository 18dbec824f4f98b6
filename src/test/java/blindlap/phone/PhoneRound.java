package blindlap.phone;

import blindlap.desk.TestDay;
import blindlap.session.day.PhoneRole;
import java.nio.file.Path;

/** A rider's phone on a day of sixteen stints, ready to score its first lap over and over. */
public final class PhoneRound implements AutoCloseable {
  private final ServedDay served;
  private final TestPhone rider;

  public PhoneRound(Path folder) {
    served = new ServedDay(folder, TestDay.SIXTEEN, 1);
    rider = served.phone("1".repeat(32), PhoneRole.RIDER);
    rider.hello();
    rider.state();
    rider.say("plate", "stint", "0");
    rider.say("warm-up");
    rider.say("plate", "stint", "1");
  }

  /** Says one answer, other than the one before, and waits until it is in the notebook. */
  public void say(int which) {
    TestPhone.Heard heard;
    do {
      String value = String.valueOf(50 + which);
      heard =
          rider.say(
              "score", "stint", "1", "lap", "1", "measure", "grip in the rocks", "value", value);
    } while (heard.status() == 429);
    if (!heard.body().path("done").asBoolean()) {
      throw new IllegalStateException(heard.status() + " " + heard.body());
    }
  }

  @Override
  public void close() {
    served.close();
  }
}
