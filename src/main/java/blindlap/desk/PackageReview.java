package blindlap.desk;

import blindlap.compute.Engine;
import blindlap.compute.FindingJson;
import blindlap.compute.StrictJson;
import blindlap.compute.TellingJson;
import blindlap.exchange.DataPackage;
import blindlap.exchange.DataPackageReader;
import blindlap.exchange.PackageBeside;
import blindlap.exchange.PackageDifferences;
import blindlap.exchange.PackageFault;
import blindlap.exchange.PackageProof;
import blindlap.exchange.PackageScripts;
import blindlap.exchange.SessionFile;
import blindlap.exchange.SessionMeaning;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import blindlap.fault.Unusable;
import blindlap.plan.PlanJson;
import blindlap.review.Analysis;
import blindlap.review.Beside;
import blindlap.review.DayRecord;
import blindlap.review.Edition;
import blindlap.review.Finding;
import blindlap.review.RecordedFinding;
import blindlap.review.TellingAnalysis;
import blindlap.seal.SealParameters;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.AmendmentWords;
import blindlap.wording.EditionWords;
import blindlap.wording.FindingText;
import blindlap.wording.FingerprintWords;
import blindlap.wording.TellingText;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The finding of a data package, computed again from its tables, and whether the package says one
 * thing throughout: its files give their hashes, its tables follow from the session inside, its
 * finding follows from its tables.
 */
public final class PackageReview {
  /** Files that an answer comes from. */
  private static final Set<String> USED =
      Set.of(
          "plan.json",
          "key.json",
          "laps.csv",
          "stints.csv",
          "trials.csv",
          "helper.csv",
          "record.csv",
          "waits.csv",
          "sectors.csv",
          "pieces.csv",
          "amendments.csv",
          "finding.json");

  /** What another program may word otherwise. */
  private static final Set<String> WORDED = Set.of("engine", "sentence", "why", "requests");

  private static final Words WORDS = Words.of("package");
  private static final int SHOWN = 20;

  private final Map<String, byte[]> files;
  private final DayRecord day;
  private final Optional<Finding> finding;
  private final Optional<TellingAnalysis> telling;
  private final PackageBeside kept;
  private final PackageProof.Held held;
  private final List<DataPackage.Amendment> amendments;
  private final List<Problem> altered = new ArrayList<>();
  private @Nullable SessionState session;

  private PackageReview(Map<String, byte[]> files) {
    this.files = files;
    this.day = DataPackageReader.read(files);
    boolean trials = TellingAnalysis.is(day.plan());
    this.finding = trials ? Optional.empty() : Optional.of(Analysis.of(day));
    this.telling = trials ? Optional.of(TellingAnalysis.of(day)) : Optional.empty();
    this.kept = PackageBeside.read(files);
    this.amendments = DataPackageReader.amendments(files);
    this.held = PackageProof.held(files, USED);
    altered.addAll(held.problems());
    session();
    found();
  }

  /**
   * Reads a package and holds it against itself.
   *
   * @param files contents by file name
   * @throws Unreadable if it cannot be read
   * @throws Unusable if what it holds cannot be compared
   */
  public static PackageReview of(Map<String, byte[]> files) {
    return new PackageReview(files);
  }

  private void session() {
    byte[] bytes = files.get(PackageProof.SESSION);
    if (bytes == null) {
      if (held.hashed()
          && altered.stream().noneMatch(p -> p.where().equals(PackageProof.SESSION))) {
        altered.add(Problem.of(PackageFault.FILE_GONE, PackageProof.SESSION));
      }
      return;
    }
    SessionFile.Reading reading = SessionFile.read(bytes);
    List<Problem> problems = new ArrayList<>(reading.problems());
    if (problems.isEmpty()) {
      problems.addAll(
          SessionMeaning.problems(reading.entries(), reading.entries(), new SealParameters(1)));
    }
    problems.stream().map(PackageReview::unreadable).forEach(altered::add);
    if (problems.isEmpty()) {
      SessionState state = SessionState.of(reading.entries());
      session = state;
      follow(state);
    }
  }

  private static Problem unreadable(Problem why) {
    return Problem.of(
        PackageFault.SESSION_UNREADABLE, PackageProof.SESSION, Problems.sentence(why));
  }

  /** Every table and the key, made again from the session. */
  private void follow(SessionState state) {
    if (!state.unsealed()) {
      altered.add(Problem.of(PackageFault.SESSION_SEALED, PackageProof.SESSION));
      return;
    }
    if (held.hashed()) {
      altered.addAll(PackageProof.session(files, state));
    }
    String text =
        new String(files.getOrDefault("finding.json", new byte[0]), StandardCharsets.UTF_8);
    Map<String, byte[]> again = Reviews.open(state, text, kept.beside().history());
    again.forEach(
        (name, wanted) -> {
          byte[] there = files.get(name);
          boolean missing = there == null && held.hashed() && !PackageScripts.isOne(name);
          if (there != null && name.endsWith(".csv") && (current() || !name.equals("units.csv"))) {
            altered.addAll(PackageDifferences.table(name, there, wanted));
          } else if (there != null && name.equals("plan.json")) {
            altered.addAll(plan(there, wanted, state));
          } else if (there != null && name.equals("key.json")) {
            altered.addAll(
                PackageDifferences.json(name, there, wanted, Set.of(DataPackage.ABOUT), false));
          } else if (missing && altered.stream().noneMatch(p -> p.where().equals(name))) {
            altered.add(Problem.of(PackageFault.FILE_GONE, name));
          }
        });
  }

  /** Earlier programs wrote an old plan with the fields that it did not have yet, left empty. */
  private static List<Problem> plan(byte[] there, byte[] stored, SessionState state) {
    List<Problem> differs = PackageDifferences.json("plan.json", there, stored, Set.of(), false);
    byte[] filled = PlanJson.bytes(state.plan());
    boolean same =
        differs.isEmpty()
            || PackageDifferences.json("plan.json", there, filled, Set.of(), false).isEmpty();
    return same ? List.of() : differs;
  }

  private boolean current() {
    return kept.edition() == Edition.CURRENT;
  }

  /** The finding inside against the one that its tables give now; of another method nothing. */
  private void found() {
    byte[] there = files.get("finding.json");
    if (there == null || !current()) {
      return;
    }
    SessionState state = session;
    Beside beside =
        state == null || !state.unsealed()
            ? kept.beside()
            : new Beside(
                kept.beside().history(),
                unsealed(state),
                kept.beside().look(),
                kept.beside().series());
    byte[] now = json(beside).getBytes(StandardCharsets.UTF_8);
    boolean same =
        held.hashed()
            && StrictJson.parse(new String(there, StandardCharsets.UTF_8))
                .path("engine")
                .asText()
                .equals(Engine.version());
    altered.addAll(
        PackageDifferences.json(
            "finding.json", there, now, same ? Set.of("engine") : WORDED, !same));
  }

  private static Optional<RecordedFinding> unsealed(SessionState state) {
    DayRecord day = Reviews.day(state);
    return RecordedFinding.atUnsealing(state, day);
  }

  /** The session inside, if it can be read. */
  public Optional<SessionId> id() {
    return Optional.ofNullable(session).map(SessionState::id);
  }

  /** What differs, by file, row and field; nothing if the package says one thing throughout. */
  public List<Problem> altered() {
    return List.copyOf(altered);
  }

  /** The same in sentences, the first ones. */
  public List<String> differences() {
    List<String> lines =
        new ArrayList<>(altered.stream().limit(SHOWN).map(Problems::sentence).toList());
    if (altered.size() > SHOWN) {
      lines.add(WORDS.say("altered.more", altered.size() - SHOWN));
    }
    return lines;
  }

  /** What the package proves, and files that are not part of it. */
  public List<String> notes() {
    List<String> notes = new ArrayList<>();
    if (!held.hashed()) {
      notes.add(WORDS.say("unproven"));
    } else if (altered.isEmpty()) {
      notes.add(WORDS.say(current() ? "proven" : "proven.older"));
    }
    held.unnamed().forEach(name -> notes.add(WORDS.say("unnamed", name)));
    return notes;
  }

  /** The finding in sentences, with what was added after unsealing. */
  public List<String> text() {
    List<String> lines = new ArrayList<>();
    finding.ifPresent(found -> lines.addAll(new FindingText(found).lines(kept.beside())));
    telling.ifPresent(run -> lines.addAll(new TellingText(run).lines(kept.beside())));
    EditionWords.ofPackage(kept.edition()).ifPresent(lines::add);
    AmendmentWords.mark(amendments.size()).ifPresent(lines::add);
    amendments.forEach(
        a -> lines.add(AmendmentWords.line(a.at().atZone(ZoneId.of("UTC")), a.text(), a.reason())));
    Optional.ofNullable(session).map(FingerprintWords::file).ifPresent(lines::add);
    lines.add(Words.of("cautions").say("trust"));
    return lines;
  }

  /** The text of a package that was altered, marked as such. */
  public List<String> markedText() {
    List<String> lines = new ArrayList<>(List.of(WORDS.say("altered.mark")));
    lines.addAll(text());
    lines.addAll(differences());
    return lines;
  }

  /** The finding as JSON, computed by this program's edition. */
  public String json() {
    return json(kept.beside());
  }

  private String json(Beside beside) {
    return telling
        .map(run -> TellingJson.write(run, beside))
        .orElseGet(() -> FindingJson.write(finding.orElseThrow(), beside));
  }

  /** The JSON of a package that was altered: with what differs under the name "altered". */
  public String markedJson() {
    ObjectNode root = (ObjectNode) StrictJson.parse(json());
    ArrayNode marks = StrictJson.NODES.arrayNode();
    differences().forEach(marks::add);
    root.set("altered", marks);
    return StrictJson.print(root);
  }
}
