package blindlap.seal;

import java.util.ArrayList;
import java.util.List;

/**
 * What the helper may see: what to fit for each stint, whether the swap is real, the codes, and the
 * setup of the warm-up laps. Never shown to the rider; it prints nothing of what it holds.
 */
public final class HelperSchedule {

  /** Whether a swap changes what is fitted. A dummy takes as long and sounds alike. */
  public enum Swap {
    REAL,
    DUMMY
  }

  /**
   * The helper's work before one stint.
   *
   * @param stint from 1
   * @param named the setup the order names, 0 = A
   * @param fitted the setup to fit; another than named only in a null run
   * @param swap real if what is fitted changes; before stint 1, from the warm-up setup
   * @param code the code on everything the rider sees of this stint
   */
  public record Fit(int stint, int named, int fitted, Swap swap, int code) {
    /** Says which stint only. */
    @Override
    public String toString() {
      return "Fit[stint " + stint + "]";
    }
  }

  private final int warmUp;
  private final boolean nullRun;
  private final List<Fit> fits;

  private HelperSchedule(int warmUp, boolean nullRun, List<Fit> fits) {
    this.warmUp = warmUp;
    this.nullRun = nullRun;
    this.fits = fits;
  }

  static HelperSchedule of(OpenKey key) {
    SealedPart part = key.sealedPart();
    int warmUp = part.fitted(part.warmUp());
    int before = warmUp;
    List<Fit> fits = new ArrayList<>(key.stints());
    for (int stint = 1; stint <= key.stints(); stint++) {
      int named = key.setup(stint);
      int fitted = part.fitted(named);
      Swap swap = fitted == before ? Swap.DUMMY : Swap.REAL;
      fits.add(new Fit(stint, named, fitted, swap, key.code(stint)));
      before = fitted;
    }
    return new HelperSchedule(warmUp, part.nullRun(), List.copyOf(fits));
  }

  /** The setup to fit for the warm-up laps, 0 = A. */
  public int warmUp() {
    return warmUp;
  }

  /** True if one setup is fitted throughout, and only the helper knows. */
  public boolean nullRun() {
    return nullRun;
  }

  /** The work before each stint, in ridden order. */
  public List<Fit> fits() {
    return fits;
  }

  /**
   * The work before one stint.
   *
   * @param stint from 1
   */
  public Fit fit(int stint) {
    if (stint < 1 || stint > fits.size()) {
      throw new IndexOutOfBoundsException(
          "there is no stint " + stint + "; the schedule has stints 1 to " + fits.size());
    }
    return fits.get(stint - 1);
  }

  /** Says nothing of what is inside. */
  @Override
  public String toString() {
    return "HelperSchedule[" + fits.size() + " stints]";
  }
}
