package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;

import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.review.Beside;
import blindlap.seal.OpenKey;
import blindlap.session.SessionState;
import blindlap.wording.EditionWords;
import blindlap.wording.FingerprintWords;
import blindlap.wording.HistoryWords;
import java.util.HexFormat;
import java.util.List;

/** The full record, last part: fingerprints, the opened key, and how to recompute everything. */
final class ReportSeal {
  private final ReportPage page;
  private final SessionState state;
  private final OpenKey opened;
  private final Beside beside;
  private final String engine;

  /**
   * @param state the unsealed session
   * @param opened its key
   * @param beside other sessions of the question, and what this one was at unsealing
   * @param engine version of the program
   */
  ReportSeal(SessionState state, OpenKey opened, Beside beside, String engine, ReportPage page) {
    this.page = page;
    this.state = state;
    this.opened = opened;
    this.beside = beside;
    this.engine = engine;
  }

  void write() {
    page.h2("seal").p(WORDS.say("seal.text"));
    String plan = state.covered() ? "fingerprint.plan.covered" : "fingerprint.plan";
    page.raw("<p>" + Html.text(WORDS.say(plan)) + "</p>\n");
    page.code(state.planFingerprint().grouped());
    state
        .reviewFingerprint()
        .ifPresent(
            f -> {
              page.raw("<p>" + Html.text(WORDS.say("fingerprint.review")) + "</p>\n");
              page.code(f.grouped());
            });
    page.p(FingerprintWords.beside(state)).list(given());
    key();
    page.h2("earlier").p(WORDS.say("earlier.text"));
    List<String> history = HistoryWords.lines(beside.history());
    page.list(history.isEmpty() ? List.of(WORDS.say("earlier.none")) : history);
    String script = state.plan().telling() == null ? "recompute" : "recompute-trials";
    page.h2("recompute").p(WORDS.say("recompute.text", script + ".R"));
    page.pre("python3 verify.py\npython3 " + script + ".py\n");
    page.p(WORDS.say("recompute.blindlap", engine));
    String id = state.id().text();
    page.pre("blindlap export " + id + " --out DIR\nblindlap review --from DIR\n");
    page.p(EditionWords.both(beside.edition()));
    EditionWords.look(beside).ifPresent(page::p);
    page.h2("plan.text").p(WORDS.say("plan.text.words"));
    page.pre(state.planText());
    page.raw("</main>\n");
  }

  private List<String> given() {
    List<String> lines = FingerprintWords.given(state);
    return lines.isEmpty() ? List.of(WORDS.say("given.none")) : lines;
  }

  private String opened() {
    String key = "opened." + state.openedWith().map(Enum::name).orElse("NONE");
    String friend = key + ".friend";
    return WORDS.say(state.plan().level().friend() && WORDS.has(friend) ? friend : key);
  }

  private void key() {
    OpenKey key = opened;
    Plan plan = state.plan();
    page.h3("key")
        .facts(
            "key.opened", opened(),
            "key.algorithm", key.algorithm(),
            "key.order", order(plan, key.order()),
            "key.codes", String.join(", ", key.codes().stream().map(String::valueOf).toList()),
            "key.warmup", Labels.name(plan, key.warmUp()),
            "key.null",
                key.nullRun()
                    .map(s -> WORDS.say("key.null.yes", plan.setups().get(s).name()))
                    .orElse(WORDS.say("no")),
            "key.seed", HexFormat.of().formatHex(key.seed()),
            "key.nonce", HexFormat.of().formatHex(key.nonce()));
  }

  /** The letters that were hashed, and where labels were ridden what they stand for. */
  private static String order(Plan plan, String order) {
    String labels = Labels.order(plan, order);
    return labels.equals(order) ? order : WORDS.say("key.order.labels", order, labels);
  }
}
