package blindlap.desk;

import blindlap.exchange.Protocols;
import blindlap.plan.Protocol;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The protocols that come with the program: the files of the folder {@code protocols}. */
public final class BundledProtocols {
  /** Names of the files, in the order in which they are offered. */
  public static final List<String> NAMES =
      List.of(
          "blocks-of-four",
          "pairs",
          "eight-stints",
          "whole-day",
          "limited-runs",
          "there-and-back",
          "three-setups",
          "four-setups",
          "three-levels",
          "four-levels",
          "five-levels",
          "six-levels");

  private BundledProtocols() {}

  /** Reads all of them. */
  public static Protocols load() {
    List<Protocol> protocols = new ArrayList<>();
    for (String name : NAMES) {
      String file = name + ".yaml";
      protocols.add(Protocols.read(text("/blindlap/protocols/" + file), file));
    }
    return new Protocols(protocols);
  }

  public static String text(String resource) {
    try (InputStream in = BundledProtocols.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its resource " + resource);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
