package blindlap.exchange;

import blindlap.compute.Engine;
import blindlap.compute.RequestException;
import blindlap.compute.StrictJson;
import blindlap.fault.Problem;
import blindlap.seal.Fingerprint;
import blindlap.session.Head;
import blindlap.session.SessionState;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * What a data package says of itself: the hash of every file in its descriptor, heads of the chains
 * and both fingerprints. It shows that nobody changed a file without making the hashes anew, and no
 * more.
 */
public final class PackageProof {
  /** The description of a package. */
  public static final String DESCRIPTOR = "datapackage.json";

  /** The session itself, sealed if it is sealed. */
  public static final String SESSION = "session.txt";

  private static final String PROOF = "proof";
  private static final String FORM = "blindlap-package-1";
  private static final String SERIES = "blindlap-series-package-1";
  private static final String SHA256 = "sha256:";

  private PackageProof() {}

  /** Adds to a descriptor what follows from a session. */
  static void write(ObjectNode root, SessionState state) {
    ObjectNode proof = root.putObject(PROOF);
    proof.put("form", FORM);
    proof.put("engine", Engine.version());
    proof.put("plan_fingerprint", state.planFingerprint().hex());
    state.reviewFingerprint().ifPresent(f -> proof.put("review_fingerprint", f.hex()));
    ArrayNode heads = proof.putArray("heads");
    for (Head head : state.heads()) {
      ObjectNode node = heads.addObject();
      node.put("notebook", head.notebook().text());
      node.put("number", head.number());
      node.put("hash", head.hash().hex());
    }
  }

  /** The same for the package of a series: each session's own description has the rest. */
  static void series(ObjectNode root) {
    root.putObject(PROOF).put("form", SERIES).put("engine", Engine.version());
  }

  /** The hash of a file as the descriptor has it. */
  static String hash(byte[] file) {
    return SHA256 + Fingerprint.sha256(file).hex();
  }

  /**
   * What came of holding the files against the descriptor.
   *
   * @param hashed true if the descriptor has hashes; an older program wrote none
   * @param problems files that are not as it says
   * @param unnamed files that it does not name, and that no answer comes from
   */
  public record Held(boolean hashed, List<Problem> problems, List<String> unnamed) {
    public Held {
      problems = List.copyOf(problems);
      unnamed = List.copyOf(unnamed);
    }
  }

  /**
   * Holds files against the descriptor among them.
   *
   * @param files contents by name
   * @param used names of files that an answer comes from
   */
  public static Held held(Map<String, byte[]> files, Set<String> used) {
    byte[] bytes = files.get(DESCRIPTOR);
    JsonNode root;
    try {
      root =
          bytes == null
              ? StrictJson.NODES.objectNode()
              : StrictJson.parse(new String(bytes, StandardCharsets.UTF_8));
    } catch (RequestException e) {
      return new Held(true, List.of(Problem.of(PackageFault.NOT_JSON, "", DESCRIPTOR)), List.of());
    }
    boolean hashed = root.has(PROOF);
    Set<String> named = new HashSet<>();
    List<Problem> problems = new ArrayList<>();
    for (JsonNode resource : root.path("resources")) {
      String path = resource.path("path").asText();
      named.add(path);
      hashed |= resource.has("hash");
    }
    if (!hashed) {
      return new Held(false, List.of(), List.of());
    }
    for (JsonNode resource : root.path("resources")) {
      file(resource, files).ifPresent(problems::add);
    }
    if (!root.path(PROOF).path("form").asText().equals(FORM)) {
      problems.add(Problem.of(PackageFault.NO_PROOF, DESCRIPTOR));
    }
    Set<String> unnamed = new TreeSet<>(files.keySet());
    unnamed.removeAll(named);
    unnamed.remove(DESCRIPTOR);
    unnamed.stream()
        .filter(used::contains)
        .forEach(name -> problems.add(Problem.of(PackageFault.FILE_ADDED, name)));
    unnamed.removeAll(used);
    return new Held(true, problems, List.copyOf(unnamed));
  }

  private static java.util.Optional<Problem> file(JsonNode resource, Map<String, byte[]> files) {
    String path = resource.path("path").asText();
    byte[] bytes = files.get(path);
    if (bytes == null) {
      return java.util.Optional.of(Problem.of(PackageFault.FILE_GONE, path));
    }
    String wanted = resource.path("hash").asText();
    if (hash(bytes).equals(wanted)) {
      return java.util.Optional.empty();
    }
    // One letter a byte, so that no byte is changed but the line ends.
    String lines = new String(bytes, StandardCharsets.ISO_8859_1).replace("\r\n", "\n");
    boolean ends =
        Stream.of(lines, lines.replace("\n", "\r\n"))
            .anyMatch(text -> hash(text.getBytes(StandardCharsets.ISO_8859_1)).equals(wanted));
    return java.util.Optional.of(
        Problem.of(ends ? PackageFault.LINE_ENDS_CHANGED : PackageFault.FILE_CHANGED, path));
  }

  /** Where the descriptor says something else of the session than the session does. */
  public static List<Problem> session(Map<String, byte[]> files, SessionState state) {
    List<Problem> problems = new ArrayList<>();
    ObjectNode wanted = StrictJson.NODES.objectNode();
    write(wanted, state);
    JsonNode stated =
        StrictJson.parse(new String(files.get(DESCRIPTOR), StandardCharsets.UTF_8)).path(PROOF);
    for (String field : List.of("plan_fingerprint", "review_fingerprint", "heads")) {
      if (!stated.path(field).equals(wanted.path(PROOF).path(field))
          && !stated.path(field).toString().equals(wanted.path(PROOF).path(field).toString())) {
        problems.add(Problem.of(PackageFault.OTHER_SESSION, DESCRIPTOR + ", " + field));
      }
    }
    return problems;
  }
}
