package blindlap.paper.sheet;

import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.wording.day.Words;
import org.jspecify.annotations.Nullable;

/** A sheet that goes on over as many pages as it needs, each with its head and its cautions. */
public abstract class SheetFlow {
  public static final Words WORDS = Words.of("sheets");
  public static final Words CAUTIONS = Words.of("cautions");
  public static final double MARGIN = 14;
  public static final double SMALL = 9;
  public static final double BODY = 10.5;
  private static final double FOOT_ROOM = 5;
  private static final double PAGE_ROOM = 26;
  private static final double TRIALS_ROOM = 72;

  public final SheetPen pen;
  public final String head;
  private final String caution;
  private final @Nullable TrialPages trials;
  private double foot;
  public double y;

  public SheetFlow(SheetPen pen, String head, String caution) {
    this(pen, head, caution, null);
  }

  /**
   * A sheet whose pages say which trials stand on them.
   *
   * @param run the trials; null of any other kind of session
   */
  public SheetFlow(SheetPen pen, String head, String caution, @Nullable TellingRun run) {
    this.pen = pen;
    this.head = head;
    this.caution = caution;
    this.trials = run == null ? null : new TrialPages(WORDS, run.trials());
  }

  /** True if pages say which trials stand on them, which {@link #finish} draws at the end. */
  public boolean ofTrials() {
    return trials != null;
  }

  /** A trial stands on this page. */
  public void stands(int trial) {
    if (trials != null) {
      trials.stands(pen.pages(), trial);
    }
  }

  /** Says on every page which trials stand there and of how many pages it is one. */
  public void finish() {
    TrialPages all = trials;
    if (all == null) {
      return;
    }
    int pages = pen.pages();
    for (int page = 1; page <= pages; page++) {
      String words = all.of(page, pages);
      pen.onPage(page, () -> pageWords(words));
    }
  }

  /** Draws the words of a page in its head. */
  public void pageWords(String words) {
    pen.textTo(right(), MARGIN + 3, SheetPen.Face.SANS, BODY, words);
  }

  public double left() {
    return MARGIN;
  }

  public double right() {
    return pen.width() - MARGIN;
  }

  public double width() {
    return right() - left();
  }

  private double footHeight() {
    if (foot == 0) {
      foot = measuredFoot();
    }
    return foot;
  }

  private double measuredFoot() {
    return pen.height(width(), SheetPen.Face.STRONG, SMALL, caution) + FOOT_ROOM;
  }

  /** Where content must end. */
  public double bottom() {
    return pen.height() - 9 - footHeight();
  }

  /** A head with trail, rider and day; a session without a helper is called so on every sheet. */
  public static String head(String key, Plan plan) {
    String head = WORDS.say(key, plan.trail(), plan.rider(), plan.day());
    String level = plan.level().title();
    return level.isEmpty() ? head : WORDS.say("head.level", head, level);
  }

  /** Begins a page with its head and its cautions. */
  public void page() {
    pen.newPage();
    y = top();
    double foot = bottom() + 2;
    pen.line(left(), foot, right(), foot, 0.4);
    pen.paragraph(left(), foot + 1.5, width(), SheetPen.Face.STRONG, SMALL, caution);
  }

  /** Draws the head; answers where content begins. */
  public double top() {
    String[] words = head.split("\\|", 2);
    double end = MARGIN + 3;
    pen.text(left(), end, SheetPen.Face.BOLD, 14, words[0].strip());
    double used = pen.width(SheetPen.Face.BOLD, 14, words[0].strip()) + 4;
    double under =
        words.length < 2
            ? 0
            : pen.paragraph(
                left() + used,
                MARGIN - 0.8,
                width() - used - (ofTrials() ? TRIALS_ROOM : PAGE_ROOM),
                SheetPen.Face.SANS,
                BODY,
                words[1].strip());
    if (!ofTrials()) {
      pageWords(WORDS.say("page", pen.pages()));
    }
    double line = Math.max(end + 3, MARGIN + under + 1);
    pen.line(left(), line, right(), line, 0.5);
    return line + 5;
  }

  /** Begins a new page if this much room is not left. */
  public boolean need(double height) {
    if (y + height > bottom()) {
      page();
      return true;
    }
    return false;
  }
}
