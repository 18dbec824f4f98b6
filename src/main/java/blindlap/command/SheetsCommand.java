package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.Keys;
import blindlap.desk.Sheets;
import blindlap.session.SessionState;
import blindlap.wording.PhraseWords;
import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the sheets of the day. */
@Command(
    name = "sheets",
    description = {
      "Writes the sheets of the day as PDF: score sheets, starter's sheet, timetable. Print them at"
          + " 100 %%.",
      "Where the rider swaps alone also a sheet to mount by, and labels for prepared units; for"
          + " whoever scores by code a by-code sheet.",
      "With --helper the helper's sheet, too. Asks for the helper phrase; the rider looks away."
    })
final class SheetsCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--out",
      required = true,
      paramLabel = "DIR",
      description = "Folder for the sheets; made if it is not there.")
  @Nullable Path out;

  @Option(names = "--paper", paramLabel = "PAPER", description = "A4 or LETTER.")
  Sheets.Paper paper = Sheets.Paper.A4;

  @Option(names = "--helper", description = "Write the helper's sheet, too; it holds the key.")
  boolean helper;

  SheetsCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      Map<String, byte[]> sheets = new LinkedHashMap<>(desk.sheets().open(state, paper));
      Path folder = Objects.requireNonNull(out);
      if (!helper) {
        Files.write(folder, sheets);
      } else {
        String phrase = phrase(state);
        Keys.Result result = desk.keys().helper(state, phrase);
        if (result instanceof Keys.Result.Refused refused) {
          throw complaint(refused.problems());
        }
        sheets.put(
            "helper-sheet.pdf",
            desk.sheets().helper(state, (Keys.Result.Open) result, phrase, paper));
        Files.write(folder, sheets, () -> done(desk.helperSheets().noteAgain(state)));
      }
      did(Done.WRITTEN);
      sheets.keySet().forEach(name -> say("Written: " + folder.resolve(name)));
      if (helper) {
        say(PhraseWords.of(state.plan().level()).say("sheet.print"));
      }
      say(Words.of("cautions").say("short"));
      say(Words.of("cautions").say("ride"));
      return ExitCode.DONE;
    }
  }
}
