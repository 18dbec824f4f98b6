package blindlap.exchange;

import blindlap.seal.SealedKey;
import blindlap.session.Fact;
import blindlap.session.MasksGuessed;
import blindlap.session.MasksRead;
import blindlap.session.MasksSealed;
import blindlap.session.SetupShown;
import blindlap.session.StintMounted;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** Reads the bodies of a day without a helper. */
final class OnePersonReader {
  static final Map<String, Function<JsonNode, Fact>> KINDS =
      Map.of(
          "SetupShown",
          b -> new SetupShown(FactReader.whole(b, "stint"), FactReader.whole(b, "setup") - 1),
          "StintMounted",
          b -> new StintMounted(FactReader.whole(b, "stint"), FactReader.text(b, "record")),
          "MasksSealed",
          b -> new MasksSealed(SealedKey.of(FactReader.texts(FactReader.field(b, "key")))),
          "MasksGuessed",
          b -> new MasksGuessed(setups(b)),
          "MasksRead",
          b -> new MasksRead(setups(b), FactReader.option(b, "from", MasksRead.From.class)));

  private OnePersonReader() {}

  /** Setups by label, numbered from 1 in the file. */
  private static List<Integer> setups(JsonNode body) {
    List<Integer> setups = new ArrayList<>();
    FactReader.field(body, "setups").forEach(setup -> setups.add(FactReader.code(setup) - 1));
    return setups;
  }
}
