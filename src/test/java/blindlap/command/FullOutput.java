package blindlap.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;

/** A standard output that takes so many bytes and then is full. */
final class FullOutput extends OutputStream {
  private final int room;
  private final ByteArrayOutputStream taken = new ByteArrayOutputStream();

  FullOutput(int room) {
    this.room = room;
  }

  @Override
  public void write(int value) throws IOException {
    if (taken.size() >= room) {
      throw new IOException("no space left");
    }
    taken.write(value);
  }

  PrintWriter writer() {
    return new PrintWriter(this, true, StandardCharsets.UTF_8);
  }

  /** What got out. */
  String text() {
    return taken.toString(StandardCharsets.UTF_8);
  }
}
