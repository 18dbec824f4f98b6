package blindlap.exchange;

import blindlap.fault.CanonicalJson;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import blindlap.session.CausalOrder;
import blindlap.session.Chains;
import blindlap.session.EntryFault;
import blindlap.session.Hash;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One session as one text file, to move it from notebook to notebook: a first line, its entries one
 * a line as they are stored, sealed if it is sealed, and a closing line with their number and the
 * hash of all lines above (docs/file-format.md).
 */
public final class SessionFile {
  /** The form this program writes. */
  public static final String VERSION = "blindlap-session-1";

  /** How the file of a session begins, in any form. */
  public static final String BEGINNING = "{\"form\":\"blindlap-session-";

  private static final String ID = "[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}";
  private static final Pattern FIRST =
      Pattern.compile(
          "\\{\"form\":\"(blindlap-session-\\d+)\"(?:,\"session\":\"(" + ID + ")\"\\})?.*");
  private static final Pattern CLOSING =
      Pattern.compile("\\{\"entries\":\"(\\d{1,9})\",\"sha256\":\"([0-9a-f]{64})\"\\}");

  private final List<Problem> problems = new ArrayList<>();
  private final List<StoredEntry> entries = new ArrayList<>();

  private SessionFile() {}

  /**
   * What a file holds.
   *
   * @param session which session; empty if the file does not say
   * @param entries its entries in causal order; none if there is any problem
   * @param problems of {@link SessionFileFault} and {@link blindlap.session.ChainFault}
   */
  public record Reading(
      Optional<SessionId> session, List<StoredEntry> entries, List<Problem> problems) {
    public Reading {
      entries = List.copyOf(entries);
      problems = List.copyOf(problems);
    }
  }

  /**
   * The text of a session. The same entries always give the same text.
   *
   * @param session which session
   * @param entries all its entries, in any order
   * @throws IllegalArgumentException if they are not a whole session
   */
  public static String text(SessionId session, List<StoredEntry> entries) {
    List<Problem> problems = Chains.problems(session, entries);
    if (entries.isEmpty() || !problems.isEmpty()) {
      throw new IllegalArgumentException("not a whole session: " + problems);
    }
    StringBuilder text = new StringBuilder();
    text.append(CanonicalJson.text(Map.of("form", VERSION, "session", session.text())))
        .append('\n');
    for (StoredEntry entry : CausalOrder.sort(entries)) {
      text.append(entry.text()).append('\n');
    }
    return text + closing(text.toString(), entries.size()) + "\n";
  }

  private static String closing(String above, int entries) {
    return CanonicalJson.text(
        Map.of("entries", String.valueOf(entries), "sha256", Hash.of(above).hex()));
  }

  /**
   * Reads and checks a file: its form, its hash, every entry, every chain.
   *
   * @param bytes the file's bytes
   */
  public static Reading read(byte[] bytes) {
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      return refused(Problem.of(SessionFileFault.NOT_UTF8, ""));
    }
    // Entries hold neither mark nor carriage return, so what mail or editors add can be taken off.
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    return new SessionFile().lines(List.of(plain.replace("\r\n", "\n").split("\n", -1)));
  }

  private static Reading refused(Problem problem) {
    return new Reading(Optional.empty(), List.of(), List.of(problem));
  }

  private Reading lines(List<String> lines) {
    Matcher first = FIRST.matcher(lines.get(0));
    if (!first.matches()) {
      return refused(Problem.of(SessionFileFault.NOT_A_SESSION, ""));
    }
    if (!first.group(1).equals(VERSION)) {
      return refused(Problem.of(SessionFileFault.TOO_NEW, "", first.group(1)));
    }
    if (first.group(2) == null) {
      return refused(Problem.of(SessionFileFault.NOT_A_SESSION, ""));
    }
    SessionId session = new SessionId(first.group(2));
    int end = lines.size() - 1;
    while (end > 0 && lines.get(end).isBlank()) {
      end--;
    }
    Matcher closing = CLOSING.matcher(lines.get(end));
    boolean closed = end > 0 && closing.matches();
    read(lines.subList(1, closed ? end : lines.size()));
    if (!closed) {
      problems.add(Problem.of(SessionFileFault.CUT_OFF, "", entries.size()));
    } else {
      check(closing, lines.subList(0, end));
    }
    // A line that is no entry leaves a gap: the chains would only say the same again.
    if (problems.stream()
        .noneMatch(p -> p.fault() instanceof SessionFileFault f && f.ofOneEntry())) {
      problems.addAll(Chains.problems(session, entries));
    }
    return problems.isEmpty() && !entries.isEmpty()
        ? new Reading(Optional.of(session), CausalOrder.sort(entries), List.of())
        : new Reading(Optional.of(session), List.of(), problems);
  }

  private void read(List<String> lines) {
    for (int i = 0; i < lines.size(); i++) {
      if (i == lines.size() - 1 && lines.get(i).isEmpty()) {
        return;
      }
      try {
        entries.add(EntryText.read(lines.get(i)));
      } catch (Unreadable e) {
        problems.add(noEntry("line " + (i + 2), e.problem()));
      }
    }
  }

  private static Problem noEntry(String where, Problem why) {
    EntryFault fault = (EntryFault) why.fault();
    Object[] details = why.details().toArray();
    return switch (fault) {
      case UNKNOWN_KIND -> Problem.of(SessionFileFault.UNKNOWN_KIND, where, details);
      case UNKNOWN_VALUE -> Problem.of(SessionFileFault.UNKNOWN_VALUE, where, details);
      case NOT_IN_FORM ->
          details.length == 2
              ? Problem.of(SessionFileFault.WRONG_FIELD, where, details)
              : Problem.of(SessionFileFault.NOT_AN_ENTRY, where, fault.name());
      case NOT_JSON, UNKNOWN_FORM, NOT_CANONICAL, HASH_DIFFERS, IN_A_CIRCLE, NO_COMMIT ->
          Problem.of(SessionFileFault.NOT_AN_ENTRY, where, fault.name());
    };
  }

  private void check(Matcher closing, List<String> above) {
    int told = Integer.parseInt(closing.group(1));
    int found = above.size() - 1;
    if (told != found || told == 0) {
      problems.add(Problem.of(SessionFileFault.COUNT_DIFFERS, "", told, found));
    }
    if (!Hash.of(String.join("\n", above) + "\n").hex().equals(closing.group(2))) {
      problems.add(Problem.of(SessionFileFault.CHANGED, ""));
    }
  }
}
