package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.session.Fact;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Writes the helper's sheet to a folder the helper chooses: straight from memory, under a name that
 * says nothing, whole or not at all, never over a file that is there.
 */
public final class HelperSheets {
  private final Keys keys;
  private final Sheets sheets;
  private final Sessions sessions;

  HelperSheets(Keys keys, Sheets sheets, Sessions sessions) {
    this.keys = keys;
    this.sheets = sheets;
    this.sessions = sessions;
  }

  /** What became of a sheet. */
  public sealed interface Result {
    /** Written whole. */
    record Written(Path file) implements Result {}

    /** Not written. */
    record Refused(List<Problem> problems) implements Result {}
  }

  /**
   * Writes a sheet; needs the phrase. Writing it again is an entry.
   *
   * @param typed the helper phrase as typed
   * @param folder an existing folder
   * @param again true if a sheet of this session was written before
   */
  public Result write(
      SessionState state, String typed, Path folder, Sheets.Paper paper, boolean again) {
    Keys.Result result = keys.helper(state, typed);
    if (result instanceof Keys.Result.Refused refused) {
      return new Result.Refused(refused.problems());
    }
    String name = state.id().text().substring(0, 8) + "-" + paper.name().toLowerCase(Locale.ROOT);
    Path file = folder.resolve("sheet-" + name + ".pdf");
    byte[] sheet = sheets.helper(state, (Keys.Result.Open) result, typed, paper);
    if (Files.exists(file)) {
      return refused(DeskFault.SHEET_EXISTS, file);
    }
    try (WholeFiles whole =
        WholeFiles.beside(folder, Map.of(String.valueOf(file.getFileName()), sheet))) {
      if (again && noteAgain(state) instanceof Sessions.Result.Refused refused) {
        return new Result.Refused(refused.problems());
      }
      whole.settleFresh();
      return new Result.Written(file);
    } catch (FileAlreadyExistsException e) {
      return refused(DeskFault.SHEET_EXISTS, file);
    } catch (IOException e) {
      return refused(DeskFault.SHEET_NOT_WRITTEN, folder);
    }
  }

  /**
   * Writes the page for a helper who has never seen the program; it holds nothing of any session.
   *
   * @param folder an existing folder
   */
  public Result quickStart(Path folder, Sheets.Paper paper) {
    Path file = folder.resolve("quick-start-" + paper.name().toLowerCase(Locale.ROOT) + ".pdf");
    if (Files.exists(file)) {
      return refused(DeskFault.SHEET_EXISTS, file);
    }
    String name = String.valueOf(file.getFileName());
    try (WholeFiles whole = WholeFiles.beside(folder, Map.of(name, sheets.quickStart(paper)))) {
      whole.settleFresh();
      return new Result.Written(file);
    } catch (FileAlreadyExistsException e) {
      return refused(DeskFault.SHEET_EXISTS, file);
    } catch (IOException e) {
      return refused(DeskFault.SHEET_NOT_WRITTEN, folder);
    }
  }

  /** Records that the helper's sheet was written again, while that still gives something away. */
  public Sessions.Result noteAgain(SessionState state) {
    return sessions.act(
        state.id(),
        latest ->
            latest.step().sealed()
                ? Outcome.accepted(new Fact.SheetReprinted("helper sheet"))
                : new Outcome.Accepted(List.of()));
  }

  private static Result refused(DeskFault fault, Path where) {
    return new Result.Refused(List.of(Problem.of(fault, "", where)));
  }
}
