package blindlap.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What a data package holds for whoever has neither Blindlap nor its source: scripts that check the
 * session and compute every number again, and a page that says how. They are the same in every
 * package of one program, and lie in its source where docs/recompute.md names them.
 */
public final class PackageScripts {
  /** The page to begin with. */
  static final String PAGE = "check-a-report.md";

  /** By file name, the name of its line in the list of files. */
  private static final Map<String, String> NAMES = new LinkedHashMap<>();

  static {
    NAMES.put(PAGE, "check");
    NAMES.put("verify.py", "verify");
    NAMES.put("recompute.py", "python");
    NAMES.put("recompute.R", "r");
    NAMES.put("recompute-trials.py", "python");
    NAMES.put("recompute-trials.R", "r");
    NAMES.put("recompute-series.py", "python");
    NAMES.put("recompute-series.R", "r");
  }

  private static final Map<String, String> TYPES =
      Map.of("md", "text/markdown", "py", "text/x-python", "r", "text/x-r");

  private PackageScripts() {}

  /** True for a file that says nothing of its session: packages of earlier programs lack it. */
  public static boolean isOne(String name) {
    return NAMES.containsKey(name);
  }

  /** Those of an unsealed session: a telling run is counted otherwise. */
  static void session(PackageTables tables, boolean trials) {
    String own = trials ? "recompute-trials" : "recompute";
    List.of(PAGE, "verify.py", own + ".py", own + ".R").forEach(name -> add(tables, name));
  }

  /** Those of a series; each session's own package has its own. */
  static void series(PackageTables tables) {
    List.of("recompute-series.py", "recompute-series.R").forEach(name -> add(tables, name));
  }

  private static void add(PackageTables tables, String name) {
    String format = name.substring(name.lastIndexOf('.') + 1).toLowerCase(java.util.Locale.ROOT);
    String type = Objects.requireNonNull(TYPES.get(format));
    tables.text(Objects.requireNonNull(NAMES.get(name)), name, format, type, text(name));
  }

  private static String text(String name) {
    try (InputStream in =
        Objects.requireNonNull(
            PackageScripts.class.getResourceAsStream("/blindlap/exchange/" + name))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
