package blindlap.exchange;

import static blindlap.exchange.BodyFields.decimal;
import static blindlap.exchange.BodyFields.field;
import static blindlap.exchange.BodyFields.known;
import static blindlap.exchange.BodyFields.lap;
import static blindlap.exchange.BodyFields.option;
import static blindlap.exchange.BodyFields.text;
import static blindlap.exchange.BodyFields.truth;

import blindlap.fault.Unreadable;
import blindlap.plan.Sector;
import blindlap.session.EntryFault;
import blindlap.session.Fact;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.SectorVoidWithdrawn;
import blindlap.session.SectorVoided;
import blindlap.session.day.VoidEvent;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Reads the bodies that {@link RecordingWriter} writes. */
final class RecordingReader {
  private RecordingReader() {}

  static Map<String, Function<JsonNode, Fact>> kinds() {
    return Map.of(
        "RecordingBroughtIn",
        RecordingReader::broughtIn,
        "SectorVoided",
        b ->
            new SectorVoided(
                lap(b),
                sector(b),
                known(b, "event", text -> VoidEvent.parse(text).orElseThrow()),
                text(b, "words"),
                truth(b, "after_values_seen")),
        "SectorVoidWithdrawn",
        b -> new SectorVoidWithdrawn(lap(b), sector(b), text(b, "reason")));
  }

  private static Fact broughtIn(JsonNode b) {
    List<BigDecimal> borders = new ArrayList<>();
    for (JsonNode border : field(b, "borders")) {
      BigDecimal metres = number(border, "borders");
      if (metres == null) {
        throw new Unreadable(EntryFault.NOT_IN_FORM, "borders");
      }
      borders.add(metres);
    }
    List<RecordedLap> laps = new ArrayList<>();
    field(b, "laps").forEach(lap -> laps.add(recordedLap(lap)));
    return new RecordingBroughtIn(
        text(b, "file"), text(b, "sha256"), text(b, "trail"), decimal(b, "offset"), borders, laps);
  }

  private static RecordedLap recordedLap(JsonNode b) {
    List<RecordedPass> passes = new ArrayList<>();
    field(b, "passes")
        .forEach(
            pass ->
                passes.add(
                    new RecordedPass(
                        decimal(pass, "seconds"),
                        decimal(pass, "uncertainty"),
                        pass.has("doubtful")
                            ? option(pass, "doubtful", RecordedPass.Doubt.class)
                            : null)));
    List<@Nullable BigDecimal> pieces = new ArrayList<>();
    field(b, "pieces").forEach(piece -> pieces.add(number(piece, "pieces")));
    return new RecordedLap(
        lap(b),
        passes,
        pieces,
        b.has("positions") ? text(b, "positions") : null,
        option(b, "settled", RecordedLap.Settled.class));
  }

  private static @Nullable BigDecimal number(JsonNode node, String name) {
    try {
      return node.isNull() ? null : new BigDecimal(node.textValue());
    } catch (RuntimeException e) {
      throw new Unreadable(EntryFault.NOT_IN_FORM, name);
    }
  }

  private static Sector sector(JsonNode b) {
    return new Sector(text(b, "from"), text(b, "to"));
  }
}
