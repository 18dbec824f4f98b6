package blindlap.command;

import blindlap.wording.day.Shown;
import java.io.FilterWriter;
import java.io.IOException;
import java.io.PrintWriter;

/** What goes to a terminal: nothing that a terminal would act on in place of showing it. */
final class ShownWriter extends FilterWriter {
  private final PrintWriter to;

  ShownWriter(PrintWriter to) {
    super(to);
    this.to = to;
  }

  /** A print writer keeps quiet about what it could not write; whoever stands above must know. */
  @Override
  public void flush() throws IOException {
    if (to.checkError()) {
      throw new IOException("the output takes no more");
    }
  }

  @Override
  public void write(int c) throws IOException {
    // One half of a pair, or of a line's end, says nothing of the other.
    boolean half = Character.isSurrogate((char) c) || c == '\r';
    if (half) {
      out.write(c);
    } else {
      write(String.valueOf((char) c));
    }
  }

  @Override
  public void write(char[] text, int from, int length) throws IOException {
    write(new String(text, from, length));
  }

  @Override
  public void write(String text, int from, int length) throws IOException {
    out.write(Shown.text(text.substring(from, from + length)));
  }
}
