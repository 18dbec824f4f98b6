package blindlap.exchange;

import blindlap.compute.BesideJson;
import blindlap.compute.RequestException;
import blindlap.compute.StrictJson;
import blindlap.exchange.PackageTables.Column;
import blindlap.fault.Unreadable;
import blindlap.plan.PlanJson;
import blindlap.review.Beside;
import blindlap.review.Edition;
import blindlap.review.QuestionHistory;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.util.List;
import java.util.Map;

/**
 * What a data package keeps beside the finding: the edition that computed it, what the session was
 * found to be at unsealing, the history of its question. Read from {@code finding.json}; the table
 * {@code history.csv} says the history once more, for spreadsheets.
 *
 * @param edition that computed the package's finding
 * @param beside what stands beside it
 */
public record PackageBeside(int edition, Beside beside) {
  private static final String FINDING = "finding.json";

  /**
   * Reads it; a package without a finding has nothing to be held against.
   *
   * @throws Unreadable if its finding is not one that was written by this program or an earlier one
   */
  public static PackageBeside read(Map<String, byte[]> files) {
    byte[] bytes = files.get(FINDING);
    if (bytes == null) {
      return new PackageBeside(Edition.CURRENT, Beside.NOTHING);
    }
    try {
      JsonNode root = StrictJson.parse(new String(bytes, StandardCharsets.UTF_8));
      int edition = BesideJson.edition(root, Edition.FIRST);
      return new PackageBeside(edition, BesideJson.read(root, edition));
    } catch (RequestException e) {
      throw because(e, PackageFault.NOT_JSON);
    } catch (IllegalArgumentException | DateTimeException e) {
      throw because(e, PackageFault.NOT_A_FINDING);
    }
  }

  private static Unreadable because(Exception cause, PackageFault fault) {
    Unreadable refusal = new Unreadable(fault, FINDING);
    refusal.initCause(cause);
    return refusal;
  }

  /** The history as a table. */
  static void history(PackageTables tables, QuestionHistory history) {
    tables.table(
        "history",
        List.of(
            Column.of("session", "string", "id of another session of the same question"),
            Column.of("day", "date", "its day"),
            Column.of("rider", "string", "its rider"),
            Column.of("trail", "string", "its trail"),
            Column.of("state", "string", "where it stood when this package was written"),
            Column.of("reason", "string", "why it was abandoned"),
            Column.of("primary", "string", "its primary measure"),
            Column.of("told", "string", "sealed, series (unfinished), null run, found"),
            Column.of("verdict", "string", "its verdict, where it is told and has one"),
            Column.of(
                "alike",
                "boolean",
                "same rider, trail and setups, or setting; else only the same words"),
            Column.of(
                "known_before", "boolean", "its result was known when this one was committed")),
        history.past().stream().map(PackageBeside::row).toList());
  }

  private static List<String> row(QuestionHistory.Past past) {
    return List.of(
        past.session(),
        past.day().toString(),
        past.rider(),
        past.trail(),
        PlanJson.word(past.step()),
        past.reason(),
        past.primary(),
        PlanJson.word(past.told()),
        past.verdictText().orElse(""),
        String.valueOf(past.alike()),
        String.valueOf(past.knownBefore()));
  }
}
