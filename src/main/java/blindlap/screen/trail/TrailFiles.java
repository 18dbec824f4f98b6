package blindlap.screen.trail;

import blindlap.desk.TrailBook;
import blindlap.desk.TrailDraft;
import blindlap.desk.WholeFiles;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.recording.Track;
import blindlap.wording.TrailWords;
import blindlap.wording.day.Problems;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Files of the Trail page; what cannot be used is one sentence. */
final class TrailFiles {
  private static final int MOST_RECORDING = 100_000_000;
  private static final int MOST_TRAIL = 16_000_000;
  private static final int MEGA = 1_000_000;

  private TrailFiles() {}

  /** A file that cannot be used; the message is a sentence. */
  static final class Unusable extends Exception {
    private static final long serialVersionUID = 1L;

    Unusable(String sentence) {
      super(sentence);
    }

    String sentence() {
      return String.valueOf(getMessage());
    }
  }

  static Track recording(Path file) throws Unusable {
    byte[] bytes = bytes(file, MOST_RECORDING);
    try {
      return TrailBook.recording(bytes);
    } catch (Unreadable e) {
      throw new Unusable(Problems.sentence(e.problem()));
    }
  }

  static TrailDraft lap(String name, Track track, double from, double to) throws Unusable {
    try {
      return TrailBook.draft(name, track, from, to);
    } catch (Unreadable e) {
      throw new Unusable(Problems.sentence(e.problem()));
    }
  }

  static Trail trail(Path file) throws Unusable {
    byte[] bytes = bytes(file, MOST_TRAIL);
    try {
      return TrailBook.read(bytes);
    } catch (Unreadable e) {
      throw new Unusable(Problems.sentence(e.problem()));
    }
  }

  static Path write(Trail trail, Path target) throws Unusable {
    try {
      WholeFiles.write(target, TrailBook.geoJson(trail));
      return target;
    } catch (IOException e) {
      throw new Unusable(TrailWords.say("page.not.written", target));
    }
  }

  private static byte[] bytes(Path file, int most) throws Unusable {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(most + 1);
      if (bytes.length > most) {
        throw new Unusable(TrailWords.say("page.too.large", String.valueOf(most / MEGA)));
      }
      return bytes;
    } catch (IOException e) {
      throw new Unusable(TrailWords.say("page.no.file", file));
    }
  }
}
