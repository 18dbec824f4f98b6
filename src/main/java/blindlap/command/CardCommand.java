package blindlap.command;

import blindlap.desk.Desk;
import blindlap.session.SessionState;
import java.nio.file.Path;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the card of an unsealed session. */
@Command(
    name = "card",
    description = {
      "Writes the card of an unsealed session, the picture of its finding to publish: PNG and SVG"
          + " in 1600 by 900 and 1080 by 1350, and everything on it as a text for who cannot see"
          + " it.",
      "The words are those of the review; none can be left out or typed over."
    })
final class CardCommand extends SessionCommand {
  @Parameters(paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "The folder to write to; without it the current one.")
  Path out = Path.of(".");

  @Option(names = "--black", description = "Black on white instead of colour.")
  boolean black;

  CardCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      desk.reviews()
          .refuse(state)
          .ifPresent(
              problems -> {
                throw complaint(problems);
              });
      Map<String, byte[]> files = desk.reviews().card(state, black);
      Files.write(out, files);
      did(Done.WRITTEN);
      files.keySet().forEach(name -> say("Card written to " + out.resolve(name).normalize()));
      return ExitCode.DONE;
    }
  }
}
