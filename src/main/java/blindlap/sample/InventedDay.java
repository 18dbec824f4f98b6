package blindlap.sample;

import blindlap.recording.Position;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * A whole invented day with a recorder on the bike: laps of a trail by a rider who tires and
 * varies, setups whose true effect is known piece by piece, and between the laps the way back up
 * and the stand at the van, where a real or a dummy swap takes its time. Nothing that lies between
 * laps changes anything about a lap but when it begins.
 */
public final class InventedDay {
  /** Metres a second at which the bike rolls from the van to where the trail begins. */
  private static final double ROLL = 4;

  /** Metres by which the way back up keeps clear of the trail, and the van of its beginning. */
  private static final double CLEAR = 100;

  private static final double BEFORE = 30;

  /**
   * How a rider goes.
   *
   * @param drift share of the time by which the last lap takes longer than the first
   * @param lapNoise standard deviation of the share by which a lap as a whole takes longer
   * @param pieceNoise the same of a stretch of a lap, independent from stretch to stretch
   * @param stretch metres of such a stretch
   * @param climb metres a second on the way back up
   */
  public record Rider(
      double drift, double lapNoise, double pieceNoise, double stretch, double climb) {
    /** Tires by 2 % over the day, and is back up within minutes. */
    public static final Rider USUAL = new Rider(0.02, 0.01, 0.03, 25, 6);
  }

  /**
   * Where setup B takes longer than A.
   *
   * @param from metres from the beginning of the line
   * @param to metres from its beginning
   * @param share of the time that the ground allows
   */
  public record Effect(double from, double to, double share) {}

  /**
   * The stand at the van before a lap.
   *
   * @param seconds how long it lasts
   * @param swapped true if parts are swapped: the bike is carried to a stand and back; false for a
   *     dummy swap, in which it stays where it is
   */
  public record Stand(double seconds, boolean swapped) {}

  /** A stretch of the day in one movement, from a true second on. */
  private record Leg(double from, double to, Movement movement) {}

  /** Where somebody is, by seconds from the beginning of a leg. */
  private interface Movement {
    Spot at(double seconds);
  }

  /**
   * A place with its height.
   *
   * @param height metres above the sea
   */
  public record Spot(Position at, double height) {}

  private final InventedTrail trail;
  private final List<Effect> effects;
  private final List<InventedRide> rides = new ArrayList<>();
  private final List<Leg> legs = new ArrayList<>();
  private final double[] began;
  private double clock;

  /**
   * Rides it.
   *
   * @param seed of the rider's noise; the same day is ridden with the same seed
   * @param setups of the laps: 0 for A, 1 for B
   * @param effects what B does
   * @param stands one before each lap
   */
  public InventedDay(
      long seed,
      InventedTrail trail,
      int[] setups,
      List<Effect> effects,
      Rider rider,
      List<Stand> stands) {
    if (stands.size() != setups.length) {
      throw new IllegalArgumentException("a stand before each lap");
    }
    this.trail = trail;
    this.effects = List.copyOf(effects);
    this.began = new double[setups.length];
    Position van = trail.aside(0, -BEFORE);
    for (int lap = 0; lap < setups.length; lap++) {
      Stand stand = stands.get(lap);
      add(stand.seconds(), carried(van, stand));
      go(List.of(van, trail.line().at(0)), ROLL);
      began[lap] = clock;
      double tired = setups.length == 1 ? 0 : rider.drift() * lap / (setups.length - 1);
      InventedRide ride = ride(Streams.of(seed, lap), setups[lap], tired, rider);
      rides.add(ride);
      add(ride.end(), seconds -> spot(ride.metresAt(seconds)));
      go(wayBack(van), rider.climb());
    }
  }

  private InventedRide ride(Random random, int setup, double tired, Rider rider) {
    double form = tired + rider.lapNoise() * random.nextGaussian();
    int count = (int) Math.ceil(trail.line().length() / rider.stretch()) + 1;
    double[] stretches = new double[count];
    Arrays.setAll(stretches, i -> rider.pieceNoise() * random.nextGaussian());
    return new InventedRide(
        trail,
        metre ->
            form + stretches[(int) (metre / rider.stretch())] + (setup == 0 ? 0 : effect(metre)));
  }

  private Spot spot(double metre) {
    return new Spot(trail.line().at(Math.min(metre, trail.line().length())), trail.height(metre));
  }

  private double effect(double metre) {
    return effects.stream()
        .filter(each -> metre >= each.from() && metre < each.to())
        .mapToDouble(Effect::share)
        .sum();
  }

  /** Some metres aside to the stand for a real swap, a quarter of the time there and back. */
  private Movement carried(Position van, Stand stand) {
    Position there = trail.aside(6, -BEFORE);
    return seconds -> {
      double share = seconds / stand.seconds();
      boolean away = stand.swapped() && share > 0.2 && share < 0.8;
      return new Spot(away ? there : van, trail.height(0));
    };
  }

  private List<Position> wayBack(Position van) {
    Position end = trail.line().at(trail.line().length());
    double east = trail.eastmost() + CLEAR;
    double top = trail.northOf(end) + BEFORE;
    return List.of(end, trail.aside(east, top), trail.aside(east, -BEFORE), van);
  }

  private void go(List<Position> way, double speed) {
    double low = trail.height(0);
    double fall = way.size() > 2 ? trail.height(trail.line().length()) - low : 0;
    double whole = 0;
    for (int i = 1; i < way.size(); i++) {
      whole += way.get(i - 1).to(way.get(i)).metres();
    }
    double done = 0;
    for (int i = 1; i < way.size(); i++) {
      Position from = way.get(i - 1);
      Position to = way.get(i);
      double metres = from.to(to).metres();
      double before = done;
      double all = whole;
      add(
          metres / speed,
          seconds -> {
            double share = seconds * speed / metres;
            return new Spot(
                between(from, to, share), low + fall * (1 - (before + share * metres) / all));
          });
      done += metres;
    }
  }

  private static Position between(Position from, Position to, double share) {
    return new Position(
        from.latitude() + share * (to.latitude() - from.latitude()),
        from.longitude() + share * (to.longitude() - from.longitude()));
  }

  private void add(double seconds, Movement movement) {
    legs.add(new Leg(clock, clock + seconds, movement));
    clock += seconds;
  }

  /** How many laps. */
  public int laps() {
    return rides.size();
  }

  /** The truth: when the day ends, in seconds from its beginning. */
  public double end() {
    return clock;
  }

  /** The truth: when a lap was so many metres along the line, in seconds of the day. */
  public double passed(int lap, double metres) {
    return began[lap] + rides.get(lap).secondsTo(metres);
  }

  /**
   * The truth: what a lap took for pieces.
   *
   * @param borders metres from the beginning of the line, rising
   */
  public double[] pieces(int lap, double[] borders) {
    double[] seconds = new double[borders.length - 1];
    Arrays.setAll(seconds, i -> passed(lap, borders[i + 1]) - passed(lap, borders[i]));
    return seconds;
  }

  /** The truth: seconds by which B takes longer than A for pieces. */
  public double[] difference(double[] borders) {
    InventedRide plain = new InventedRide(trail, metre -> 0);
    InventedRide slower = new InventedRide(trail, this::effect);
    double[] seconds = new double[borders.length - 1];
    Arrays.setAll(
        seconds,
        i ->
            slower.secondsTo(borders[i + 1])
                - slower.secondsTo(borders[i])
                - plain.secondsTo(borders[i + 1])
                + plain.secondsTo(borders[i]));
    return seconds;
  }

  /** Index of the leg of the day at a true second: a recorder begins its errors anew on each. */
  int leg(double second, int from) {
    int leg = from;
    while (leg < legs.size() - 1 && second >= legs.get(leg).to()) {
      leg++;
    }
    return leg;
  }

  Spot spot(int leg, double second) {
    Leg on = legs.get(leg);
    return on.movement().at(Math.min(second, on.to()) - on.from());
  }
}
