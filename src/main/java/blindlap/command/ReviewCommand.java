package blindlap.command;

import blindlap.compute.NoiseJson;
import blindlap.desk.Desk;
import blindlap.desk.PackageReview;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import blindlap.fault.Unusable;
import blindlap.review.NoiseRecord;
import blindlap.session.SessionState;
import blindlap.wording.NoiseRunWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints the finding of an unsealed session. */
@Command(
    name = "review",
    description = {
      "Prints the finding of an unsealed session: verdict first, then the evidence; of an open"
          + " noise run what it tells of the rider's noise.",
      "With --json the numbers come with fixed names, for other programs.",
      "With --from a data package is held against itself first: every hash, every table against the"
          + " session inside, the finding against the tables. What differs is named, and nothing is"
          + " printed (exit code 1)."
    })
final class ReviewCommand extends SessionCommand {
  /** Far above any file of a package; what is larger is not read into memory to find out. */
  private static final long LARGEST_FILE = 64L << 20;

  @Parameters(paramLabel = "SESSION", arity = "0..1", description = WHICH)
  @Nullable String session;

  @Option(
      names = "--from",
      paramLabel = "PACKAGE",
      description = "A data package to read instead of a notebook: its folder.")
  @Nullable Path from;

  @Option(
      names = "--anyway",
      description =
          "With --from: print the finding of a package that was altered, marked as altered.")
  boolean anyway;

  @Option(names = "--json", description = "Print the numbers as JSON.")
  boolean json;

  ReviewCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    if ((from == null) == (session == null)) {
      throw new Complaint(
          ExitCode.BAD_INPUT, "Name either a session, or a data package with --from.");
    }
    return from == null ? ofNotebook(Objects.requireNonNull(session)) : ofPackage(from);
  }

  private int ofPackage(Path folder) {
    try {
      PackageReview review = PackageReview.of(files(folder));
      boolean altered = !review.altered().isEmpty();
      if (altered && !anyway) {
        List<String> sentences = new ArrayList<>();
        sentences.add(Words.of("package").say("altered", folder));
        sentences.addAll(review.differences());
        review.notes().forEach(sentences::add);
        throw new Complaint(ExitCode.CHECK_FAILED, sentences);
      }
      if (json) {
        say(altered ? review.markedJson() : review.json());
        review.notes().forEach(this::complain);
      } else {
        (altered ? review.markedText() : review.text()).forEach(this::say);
        review.notes().forEach(this::say);
      }
      return altered ? ExitCode.CHECK_FAILED : ExitCode.DONE;
    } catch (Unreadable e) {
      throw refused(folder, e.problem());
    } catch (Unusable e) {
      throw refused(folder, e.problem());
    }
  }

  /** Every file of the folder; of what is too large to be of a package only the name. */
  private static Map<String, byte[]> files(Path folder) {
    Map<String, byte[]> files = new TreeMap<>();
    if (!java.nio.file.Files.isDirectory(folder)) {
      return files;
    }
    try (Stream<Path> all = java.nio.file.Files.list(folder)) {
      for (Path file : all.toList()) {
        boolean taken =
            java.nio.file.Files.isRegularFile(file)
                && java.nio.file.Files.size(file) <= LARGEST_FILE;
        files.put(
            String.valueOf(file.getFileName()), taken ? ReadFile.PACKAGE.bytes(file) : new byte[0]);
      }
      return files;
    } catch (IOException | UncheckedIOException e) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE, Words.of("package").say("folder.unreadable", folder));
    }
  }

  private static Complaint refused(Path folder, Problem why) {
    return new Complaint(
        ExitCode.BAD_INPUT, Words.of("package").say("refused", folder, Problems.sentence(why)));
  }

  private int ofNotebook(String typed) {
    try (Desk desk = open()) {
      SessionState state = find(desk, typed);
      if (!state.hasKey()) {
        if (json) {
          say(NoiseJson.write(NoiseRecord.ofOneDay(state)));
        } else {
          NoiseRunWords.lines(state).forEach(this::say);
          say(Words.of("cautions").say("short"));
        }
        return ExitCode.DONE;
      }
      desk.reviews()
          .refuse(state)
          .ifPresent(
              problems -> {
                throw complaint(problems);
              });
      if (json) {
        say(desk.reviews().json(state));
      } else {
        desk.reviews().text(state).forEach(this::say);
      }
      return ExitCode.DONE;
    }
  }
}
