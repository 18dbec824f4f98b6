package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.FieldBook;
import blindlap.wording.FieldProfilesWords;
import blindlap.wording.FieldWords;
import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Says how setups of several days stand to one of them. */
@Command(
    name = "field",
    description = {
      "Says how setups of several unsealed days of one rider, trail and measure stand to one of"
          + " them, what was ridden on one day and what only follows.",
      "It gives no verdict and no order of merit."
    })
final class FieldCommand extends SessionCommand {
  @Option(names = "--rider", paramLabel = "NAME", description = "Whose days.")
  @Nullable String rider;

  @Option(names = "--trail", paramLabel = "NAME", description = "On which trail.")
  @Nullable String trail;

  @Option(names = "--measure", paramLabel = "NAME", description = "By which primary measure.")
  @Nullable String measure;

  @Option(
      names = "--reference",
      paramLabel = "SETUP",
      description =
          "Name or id of the setup that others are compared with; the one of most days if not"
              + " given.")
  @Nullable String reference;

  @Option(
      names = "--json",
      description =
          "Print the numbers as JSON, with the calculation request that gives them again.")
  boolean json;

  @Option(
      names = "--report",
      paramLabel = "DIR",
      description = "Write the report of the field: a PDF, and one HTML file.")
  @Nullable Path report;

  @Option(names = "--black", description = "The report black on white instead of colour.")
  boolean black;

  FieldCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    AskedReport.check(report != null, report != null, json, black);
    try (Desk desk = open()) {
      FieldBook.Result result =
          desk.field().find(new FieldBook.Wanted(rider, trail, measure, reference));
      if (result instanceof FieldBook.Result.Refused refused) {
        throw complaint(refused.problems());
      }
      FieldBook.Result.Found found = (FieldBook.Result.Found) result;
      Path folder = report;
      if (folder != null) {
        Map<String, byte[]> files = desk.field().report(found, black);
        Files.write(folder, files);
        did(Done.WRITTEN);
        files.keySet().forEach(name -> say(FieldWords.say("report.at", folder.resolve(name))));
        return ExitCode.DONE;
      }
      if (json) {
        say(FieldBook.json(found));
        return ExitCode.DONE;
      }
      new FieldWords(found.finding()).lines().forEach(this::say);
      FieldProfilesWords.of(found.finding(), found.beside())
          .ifPresent(profiles -> profiles.lines().forEach(this::say));
      say(Words.of("cautions").say("trust.field"));
      return ExitCode.DONE;
    }
  }
}
