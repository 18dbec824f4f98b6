package blindlap.desk;

import blindlap.plan.Problem;
import blindlap.session.Fact;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/**
 * Writes the helper's card to a folder the helper chooses: straight from memory, under a name that
 * says nothing, never over a file that is there.
 */
public final class HelperCards {
  private final Desk desk;

  HelperCards(Desk desk) {
    this.desk = desk;
  }

  /** What became of a card. */
  public sealed interface Result {
    /** Written whole. */
    record Written(Path file) implements Result {}

    /** Not written. */
    record Refused(List<Problem> problems) implements Result {}
  }

  /**
   * Writes a card; needs the phrase. Writing it again is an entry.
   *
   * @param typed the helper phrase as typed
   * @param folder an existing folder
   * @param again true if a card of this session was written before
   */
  public Result write(SessionState state, String typed, Path folder, boolean again) {
    Keys.Result result = desk.keys().helper(state, typed);
    if (result instanceof Keys.Result.Refused refused) {
      return new Result.Refused(refused.problems());
    }
    Path file = folder.resolve("card-" + state.id().text().substring(0, 8) + ".html");
    if (again) {
      Sessions.Result noted =
          desk.sessions()
              .act(state.id(), latest -> Outcome.accepted(new Fact.SheetReprinted("helper card")));
      if (noted instanceof Sessions.Result.Refused refused) {
        return new Result.Refused(refused.problems());
      }
    }
    String html = desk.cards().helper(state, (Keys.Result.Open) result);
    try {
      Files.write(file, html.getBytes(StandardCharsets.UTF_8), StandardOpenOption.CREATE_NEW);
      return new Result.Written(file);
    } catch (FileAlreadyExistsException e) {
      return refused(DeskFault.CARD_EXISTS, file);
    } catch (IOException e) {
      return refused(DeskFault.CARD_NOT_WRITTEN, folder);
    }
  }

  private static Result refused(DeskFault fault, Path where) {
    return new Result.Refused(List.of(Problem.of(fault, "", where)));
  }
}
