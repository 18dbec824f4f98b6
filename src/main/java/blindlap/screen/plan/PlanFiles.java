package blindlap.screen.plan;

import blindlap.desk.Planning;
import blindlap.screen.part.Background;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Problems;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.Consumer;

/** Plan files in and out. */
final class PlanFiles {
  private final Planning planning;
  private final Background background;
  private final Consumer<String> say;

  /**
   * @param say one sentence on what came of it; empty if nothing is to be said
   */
  PlanFiles(Planning planning, Background background, Consumer<String> say) {
    this.planning = planning;
    this.background = background;
    this.say = say;
  }

  /**
   * @param start gets the fields, unless the file cannot be read
   */
  void read(Path file, Consumer<Map<String, Object>> start) {
    background.run(
        () -> planning.importFile(file), read -> imported(read, start), e -> trouble(file));
  }

  private void imported(Planning.Imported read, Consumer<Map<String, Object>> start) {
    if (!read.problems().isEmpty()) {
      say.accept(String.join(" ", Problems.sentences(read.problems())));
      return;
    }
    say.accept("");
    start.accept(read.fields());
  }

  void write(Path file, Map<String, Object> fields) {
    background.run(
        () -> {
          planning.exportFile(file, fields);
          return file;
        },
        done -> say.accept(PlanWords.say("file.written", done)),
        e -> trouble(file));
  }

  private void trouble(Path file) {
    say.accept(PlanWords.say("file.trouble", file));
  }
}
