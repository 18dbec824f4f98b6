package blindlap.plan;

import blindlap.exchange.PlanReader;
import blindlap.exchange.PlanText;
import blindlap.exchange.Protocols;
import blindlap.fault.CanonicalJson;
import blindlap.fault.Fault;
import blindlap.fault.Problem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Plans for tests: the invented day of the sample session, with fields put in place of its own. */
public final class Plans {
  private static final Path SAMPLE =
      Path.of("sample-sessions", "shocks-on-quarry-loop", "plan.yaml");

  private Plans() {}

  /** The sample's plan with some top-level fields replaced. */
  public static Plan with(String yaml) {
    PlanReader.Reading reading = PlanReader.read(text(yaml), protocols());
    if (reading.plan() == null || !reading.problems().isEmpty()) {
      throw new IllegalArgumentException(reading.problems().toString());
    }
    return reading.plan();
  }

  /** The sample's plan file with some top-level fields replaced. */
  public static String text(String yaml) {
    Map<String, Object> fields = new LinkedHashMap<>(PlanText.read(read(SAMPLE)).fields());
    if (!yaml.isBlank()) {
      fields.putAll(PlanText.read(yaml).fields());
    }
    return CanonicalJson.text(fields);
  }

  /** Faults of a plan, in order. */
  public static List<Fault> faults(String yaml) {
    return PlanCheck.problems(with(yaml)).stream().map(Problem::fault).toList();
  }

  /** The protocol files of the repository. */
  public static Protocols protocols() {
    List<Protocol> protocols = new ArrayList<>();
    try (Stream<Path> files = Files.list(Path.of("protocols"))) {
      files.sorted().forEach(f -> protocols.add(Protocols.read(read(f), f.toString())));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new Protocols(protocols);
  }

  static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
